import { describe, expect, test } from 'vitest';
import type { RoomPieces } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { hangingOf } from '../../shared-core/plan/hangings.ts';
import type { Loose } from '../builders.ts';
import { FERN, fernHouse } from '../ordering/fern-house.ts';

/** Four walls of 61 1/2 in without a wrap, three strips each, worked from the corner of D and A. */
function roomOf(bands: readonly Loose[], facts: Loose = {}): readonly RoomPieces[] {
  const walls = ['A', 'B', 'C', 'D'].map((id) => ({ id, length: '61.5 in', height: '8 ft' }));
  const house = fernHouse({ rules: { spareRolls: 0, insideWrap: '0 in' }, coverings: [FERN, { ...FERN, id: 'moss' }], rooms: [{ id: 'bed', name: 'Bed', walls, bands, ...facts }] });
  return hangingOf(house, planHouse(house).rooms[0]!, 'fern');
}
const round = (facts: Loose = {}): Loose => ({ id: 'main', covering: 'fern', walls: ['A', 'B', 'C', 'D'], layout: { start: { wall: 'A' }, direction: 'right', kill: 'start' }, ...facts });
const sizes = ([hanging]: readonly RoomPieces[]) => hanging!.parts.map((part) => part.length);
const everywhere = ([hanging]: readonly RoomPieces[]) => hanging!.corners!.at(hanging!.corners!.inside);
const labels = ([hanging]: readonly RoomPieces[]) => hanging!.parts.map((part) => part.map(({ piece }) => piece.label).join(' '));

describe('what hangs of a covering in a room', () => {
  test('is nothing where none of it does', () => {
    expect(roomOf([round({ covering: 'moss' })])).toEqual([]);
  });

  test('is one part unless its run may change', () => {
    expect(labels(roomOf([round()]))).toEqual(['A1 A2 A3 B1 B2 B3 C1 C2 C3 D1 D2 D3']);
    expect(labels(roomOf([round({ runMayChange: ['A', 'C'] })]))).toEqual(['A1 A2 A3', 'B1 B2 B3 C1 C2 C3', 'D1 D2 D3']);
  });

  test('knows what its parts would be at every corner, and where they meet', () => {
    const { parts, changes } = everywhere(roomOf([round()]));
    expect(parts.map((part) => part.length)).toEqual([3, 3, 3, 3]);
    expect(changes).toEqual([{ after: 'A', from: 0, to: 1 }, { after: 'B', from: 1, to: 2 }, { after: 'C', from: 2, to: 3 }]);
  });

  test('is one part with its end where the last strip meets the first on a wall', () => {
    const onWall = { start: { wall: 'A', at: '30.75 in' }, direction: 'right', kill: 'start' };
    const { parts, changes } = everywhere(roomOf([round({ layout: onWall })]));
    // Two strips before the corner after A and two behind that after D, whose corners each strip turns; 4 on the others.
    expect(parts.map((part) => part.length)).toEqual([4, 4, 4, 4]);
    expect(changes).toEqual([{ after: 'A', from: 0, to: 1 }, { after: 'B', from: 1, to: 2 }, { after: 'C', from: 2, to: 3 }, { after: 'D', from: 3, to: 0 }]);
  });

  test('goes with the first part where it hangs overhead', () => {
    // 61 1/2 in across the ceiling are three strips.
    expect(sizes(roomOf([round({ runMayChange: ['B'] })], { ceiling: { covering: 'fern' } }))).toEqual([6 + 3, 6]);
    expect(sizes(roomOf([], { ceiling: { covering: 'fern' } }))).toEqual([3]);
  });

  test('is not parted where it hangs in more than one stretch', () => {
    const two = roomOf([round({ walls: ['A', 'C'], runMayChange: ['A'], layout: undefined })]);
    expect(sizes(two)).toEqual([6]);
    expect(two[0]!.corners).toBeUndefined();
    const bands = roomOf([round({ to: '3 ft', runMayChange: ['B'] }), round({ id: 'upper', from: '3 ft' })]);
    expect(sizes(bands)).toEqual([24]);
  });
});
