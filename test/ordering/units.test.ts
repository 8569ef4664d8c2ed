import { describe, expect, test } from 'vitest';
import { findRunParts, insideCorners, type RoomPieces } from '../../shared-core/ordering/index.ts';
import { unitsOf } from '../../shared-core/ordering/units.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import type { Strip } from '../../shared-core/setting-out/index.ts';
import type { Loose } from '../builders.ts';
import { fernHouse } from './fern-house.ts';

const hanging = (room: string, parts = 1): RoomPieces => ({ room, parts: Array.from({ length: parts }, () => []) });
const unitsIn = (facts: Loose, hangings: readonly RoomPieces[]) => {
  const rooms = hangings.map(({ room }) => ({ id: room, name: room }));
  return unitsOf(fernHouse({ rooms, ...facts }), 'fern', hangings).map(({ rooms: own, hangings: parts, run, isHung }) => [own, parts.flatMap((one) => one.parts).length, run, isHung]);
};
const three = [hanging('bed'), hanging('hall'), hanging('landing')];

describe('what hangs from one run', () => {
  test('of bed, hall and landing, hall and landing tied, are two units', () => {
    expect(unitsIn({ matching: [{ rooms: ['hall', 'landing'] }] }, three)).toEqual([[['bed'], 1, null, false], [['hall', 'landing'], 2, null, false]]);
  });

  test('carries over from tie to tie, whatever their order', () => {
    const all = [[['bed', 'hall', 'landing'], 3, null, false]];
    expect(unitsIn({ matching: [{ rooms: ['hall', 'landing'] }, { rooms: ['landing', 'bed'] }] }, three)).toEqual(all);
    expect(unitsIn({ matching: [{ rooms: ['landing', 'hall', 'bed'] }] }, three)).toEqual(all);
  });

  test('carries over to all that either room is tied to', () => {
    const four = [...three, hanging('den')];
    expect(unitsIn({ matching: [{ rooms: ['bed', 'hall'] }, { rooms: ['landing', 'den'] }, { rooms: ['hall', 'den'] }] }, four)).toEqual([[['bed', 'hall', 'landing', 'den'], 4, null, false]]);
  });

  test('is tied by a list for its own covering or for all, and by no room in which it does not hang', () => {
    const moss = { id: 'moss', kind: 'lining', width: '56 cm', rollLength: '10 m' };
    const fern = { id: 'fern', kind: 'lining', width: '56 cm', rollLength: '10 m' };
    expect(unitsIn({ coverings: [fern, moss], matching: [{ covering: 'moss', rooms: ['bed', 'hall'] }] }, three)).toHaveLength(3);
    expect(unitsIn({ coverings: [fern, moss], matching: [{ covering: 'fern', rooms: ['bed', 'hall'] }] }, three)).toHaveLength(2);
    const rooms = ['bed', 'hall', 'bath'].map((id) => ({ id, name: id }));
    expect(unitsIn({ rooms, matching: [{ rooms: ['bed', 'bath'] }, { rooms: ['bath', 'hall'] }] }, three.slice(0, 2))).toHaveLength(2);
  });

  test('is set to the run chosen for it; a tied room without one goes with those that have', () => {
    const choice = (room: string, run: string, hung = false) => ({ covering: 'fern', room, run, hung });
    const matching = [{ rooms: ['hall', 'landing'] }];
    expect(unitsIn({ runChoices: [choice('bed', '7')] }, three)).toEqual([[['bed'], 1, '7', false], [['hall'], 1, null, false], [['landing'], 1, null, false]]);
    expect(unitsIn({ matching, runChoices: [choice('landing', '7', true)] }, three)).toEqual([[['bed'], 1, null, false], [['hall', 'landing'], 2, '7', true]]);
    const rooms = three.map(({ room }) => ({ id: room, name: room }));
    expect(unitsOf(fernHouse({ rooms, matching, runChoices: [choice('landing', '7')] }), 'fern', three).map(({ chosen }) => chosen)).toEqual([[], ['landing']]);
    expect(unitsIn({ matching, runChoices: [choice('hall', '7'), choice('landing', '8', true)] }, three)).toEqual([[['bed'], 1, null, false], [['hall'], 1, '7', false], [['landing'], 1, '8', true]]);
  });

  test('of a room in parts is each part, but not where it is tied or set to a run', () => {
    const parted = [hanging('bed', 2), hanging('hall')];
    expect(unitsIn({}, parted)).toEqual([[['bed'], 1, null, false], [['bed'], 1, null, false], [['hall'], 1, null, false]]);
    expect(unitsIn({ matching: [{ rooms: ['bed', 'hall'] }] }, parted)).toEqual([[['bed', 'hall'], 3, null, false]]);
    expect(unitsIn({ runChoices: [{ covering: 'fern', room: 'bed', run: '7' }] }, parted)).toEqual([[['bed'], 2, '7', false], [['hall'], 1, null, false]]);
  });
});

/** Four walls of 61 1/2 in, three strips each, without a wrap; worked to the right from a place on wall A. */
function square(at: string, facts: Loose = {}, turns: readonly string[] = []) {
  const walls = ['A', 'B', 'C', 'D'].map((id, index) => ({ id, length: '61.5 in', height: '8 ft', turn: turns[index] ?? 'inside' }));
  const band = { id: 'main', covering: 'fern', walls: ['A', 'B', 'C', 'D'], layout: { start: { wall: 'A', at }, direction: 'right', kill: 'start' }, ...facts };
  const [stretch] = planHouse(fernHouse({ rules: { spareRolls: 0, insideWrap: '0 in' }, rooms: [{ id: 'bed', name: 'Bed', walls, bands: [band] }] })).rooms[0]!.bands[0]!.stretches;
  if (!stretch || !('strips' in stretch)) throw new Error('a stretch of strips');
  return stretch;
}
const numbersOf = (strips: readonly Strip[]) => strips.map(({ number }) => number);

describe('the parts of a stretch', () => {
  test('worked from the corner of D and A, whose run may change after B, are two', () => {
    expect(findRunParts(square('0 in'), ['B']).map(({ strips, after, group }) => [numbersOf(strips), after, group])).toEqual([[[0, 1, 2, 3, 4, 5], null, 0], [[6, 7, 8, 9, 10, 11], 'B', 1]]);
  });

  test('worked from the middle of A are of one run with B alone, and of two with a second corner', () => {
    expect(findRunParts(square('30.75 in'), ['B']).map(({ group }) => group)).toEqual([0, 0]);
    expect(findRunParts(square('30.75 in'), ['B', 'D']).map(({ strips, after, group }) => [numbersOf(strips), after, group])).toEqual([
      [[0, 1, 2, 3, 4], null, 0],
      [[4, 5, 6, 7, 8, 9, 10], 'B', 1],
      [[10, 11], 'D', 0],
    ]);
  });

  test('hold every strip; one that turns a corner where they meet is in both, at its side', () => {
    const stretch = square('30.75 in');
    const parts = findRunParts(stretch, ['A', 'B', 'C', 'D']);
    expect([...new Set(parts.flatMap(({ strips }) => numbersOf(strips)))]).toEqual(numbersOf(stretch.strips));
    expect(parts.slice(1).map(({ strips, after }, index) => [after, numbersOf(parts[index]!.strips).at(-1), numbersOf(strips)[0]])).toEqual([['A', 1, 1], ['B', 4, 4], ['C', 7, 7], ['D', 10, 10]]);
  });

  test('do not end at an outside corner or a straight joint, nor where the last strip meets the first', () => {
    expect(findRunParts(square('0 in', { walls: ['A', 'B', 'C'] }, ['outside', 'straight']), ['A', 'B', 'C'])).toHaveLength(1);
    expect(findRunParts(square('0 in'), ['D'])).toHaveLength(1);
  });

  test('of an open stretch each have a run of their own', () => {
    expect(findRunParts(square('0 in', { walls: ['A', 'B', 'C'] }), ['A', 'B']).map(({ group }) => group)).toEqual([0, 1, 2]);
  });
});

test('the inside corners of a stretch are named by the walls at their left and right', () => {
  expect(insideCorners(square('0 in').axis)).toEqual([{ wall: 'A', next: 'B' }, { wall: 'B', next: 'C' }, { wall: 'C', next: 'D' }, { wall: 'D', next: 'A' }]);
  expect(insideCorners(square('0 in', { walls: ['A', 'B', 'C'] }, ['outside']).axis)).toEqual([{ wall: 'B', next: 'C' }]);
});
