import { describe, expect, test } from 'vitest';
import { type BorderLayout, findStretches, setOutBorder } from '../../shared-core/setting-out/index.ts';
import { inches, type Length } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room } from '../builders.ts';

function setOut(roomFacts: Loose, covering: Loose = {}, rules: Loose = {}): BorderLayout {
  const border = { id: 'paper', kind: 'border', width: '6 in', rollLength: '15 ft', repeat: '20.5 in', ...covering };
  const house = houseOf(documentOf({ coverings: [border], rooms: [roomFacts], rules }));
  const [found] = house.rooms;
  const [paper] = house.coverings;
  if (!found || paper?.kind !== 'border') throw new Error('a room with a border');
  return setOutBorder(findStretches(found, bandsOf(found)[0]!)[0]!, bandsOf(found)[0]!, paper, house.rules);
}

const inInches = (length: Length | number) => length / inches(1);
const pieces = ({ lengths }: BorderLayout) => lengths.flatMap((length) => length.pieces);
const cuts = (layout: BorderLayout) => pieces(layout).map(({ label, length, phase }) => [label, inInches(length), inInches(phase)]);
const bed = (band: Loose = {}, wallFacts: readonly Loose[] = []) => room(["12' 4\"", "10' 2\"", "12' 4\"", "10' 2\""], { bands: [{ id: 'top', covering: 'paper', walls: ['A', 'B', 'C', 'D'], from: '90 in', ...band }] }, wallFacts);

describe('a border round a room', () => {
  test('takes a length for each wall, 1 in more at each end, the match carried through the corners', () => {
    // Runs before each wall: 0, 148, 270, 418 in; less 1 in, in a repeat of 20 1/2 in.
    expect(cuts(setOut(bed()))).toEqual([
      ['A1', 150, 19.5],
      ['B1', 124, 3.5],
      ['C1', 150, 2.5],
      ['D1', 124, 7],
    ]);
  });

  test('has its mismatch at the kill point by its run of 540 in', () => {
    expect(setOut(bed()).mismatch).toEqual({ amount: inches(7), side: 'over', vertical: 0 });
    expect(setOut(bed(), { repeat: '18 in' }).mismatch).toMatchObject({ amount: 0, side: 'none' });
    expect(setOut(bed(), { repeat: '0 in' })).toMatchObject({ mismatch: { amount: 0 }, lengths: [{ pieces: [{ phase: 0 }] }, {}, {}, {}] });
  });

  test('begins in the pattern where the user says', () => {
    expect(cuts(setOut(bed({ position: '4 in' }))).map(([, , phase]) => phase)).toEqual([3, 7.5, 6.5, 11]);
  });

  test('stands at its height above the floor', () => {
    expect(pieces(setOut(bed())).map(({ top, bottom }) => [inInches(top), inInches(bottom)])).toEqual(Array.from({ length: 4 }, () => [96, 90]));
    expect(pieces(setOut(bed({ from: '30 in', to: '36 in' }, [{ base: '10 in' }]))).map(({ top }) => inInches(top))).toEqual([46, 36, 36, 36]);
  });

  test('hung to the left ends where it began', () => {
    const layout = setOut(bed({ layout: { start: { wall: 'A', at: '0 in' }, direction: 'left' } }));
    expect(layout.kill).toEqual({ wall: 'A', at: 0 });
    expect(inInches(layout.grid.from)).toBe(-540);
    // A begins 540 in before the start, 26 repeats and 7 in: 13 1/2 in into the pattern, less the inch that is added.
    expect(cuts(layout)[0]).toEqual(['A1', 150, 12.5]);
    // D begins 122 in before the start, and an inch more is six repeats.
    expect(cuts(layout).at(-1)).toEqual(['D1', 124, 0]);
  });

  test('wraps an outside corner without a cut', () => {
    const layout = setOut(room(['50 in', '40 in', '60 in'], { bands: [{ id: 'top', covering: 'paper', walls: ['A', 'B', 'C'], from: '90 in' }] }, [{ turn: 'outside' }, {}, {}]));
    expect(cuts(layout).map(([label, length]) => [label, length])).toEqual([['A1', 92], ['C1', 62]]);
  });

  test('stops at the sides of a door and goes over a low window', () => {
    const door = { id: 'door', kind: 'door', from: '2 ft', width: '32 in', height: '80 in' };
    const window = { id: 'w', kind: 'window', from: '2 ft', width: '32 in', sill: '10 in', height: '22 in' };
    const band = { id: 'dado', covering: 'paper', walls: ['A'], from: '30 in', to: '36 in' };
    expect(cuts(setOut(room(['100 in'], { bands: [band] }, [{ openings: [door] }])))).toEqual([
      ['A1', 26, 19.5],
      ['A2', 46, 14],
    ]);
    expect(cuts(setOut(room(['100 in'], { bands: [band] }, [{ openings: [window] }])))).toEqual([['A1', 102, 19.5]]);
  });
});

test('below the ceiling it is marked about every 2 ft, half its width under its top; at the ceiling measured down from it', () => {
  const dado = setOut(bed({ from: '30 in', to: '36 in' }));
  const marksOf = ({ marks }: typeof dado) => marks.map(({ wall, from, distance, at }) => [wall, from, inInches(distance), at.length]);
  expect(marksOf(dado)).toEqual([['A', 'floor', 33, 8], ['B', 'floor', 33, 7], ['C', 'floor', 33, 8], ['D', 'floor', 33, 7]]);
  const under = inInches(setOut(bed()).lengths[0]!.pieces[0]!.top - setOut(bed()).lengths[0]!.pieces[0]!.bottom) / 2;
  for (const band of [bed(), bed({ to: '96 in' })]) expect(marksOf(setOut(band))).toEqual([['A', 'ceiling', under, 8], ['B', 'ceiling', under, 7], ['C', 'ceiling', under, 8], ['D', 'ceiling', under, 7]]);
});

test('longer than 12 ft it takes two people', () => {
  expect(setOut(bed()).lengths.map(({ needsTwo }) => needsTwo)).toEqual([true, false, true, false]);
  expect(setOut(room(['144 in'], { bands: [{ id: 'top', covering: 'paper', walls: ['A'], from: '90 in' }] })).lengths[0]!.needsTwo).toBe(false);
});

describe('a length longer than a spool surely gives', () => {
  const long = (length: string, covering: Loose = {}) => setOut(room([length], { bands: [{ id: 'top', covering: 'paper', walls: ['A'], from: '90 in' }] }), { repeat: '20 in', ...covering });

  test('is joined with a lap of 2 in, the pattern carried on', () => {
    // 180 in less a repeat of 20 in is 160 in for sure; 202 in are wanted.
    expect(cuts(long('200 in'))).toEqual([
      ['A1 joint 1', 160, 19],
      ['A1 joint 2', 44, 17],
    ]);
    // A spool of 180 in that begins at its repeat gives 161 in from 19 in on; the next begins 158 in along, 17 in into it.
    expect(cuts(long('200 in', { rollStart: 'at-repeat' }))).toEqual([
      ['A1 joint 1', 161, 19],
      ['A1 joint 2', 43, 18],
    ]);
    expect(cuts(long('200 in', { rollStart: 'at-repeat', repeat: '0 in' }))[0]).toEqual(['A1 joint 1', 180, 0]);
    expect(cuts(long('158 in'))).toEqual([['A1', 160, 19]]);
  });

  test('is joined further back where the rest would be a sliver', () => {
    // 161 in are wanted: 160 in would leave 3 in, of which laps and end take all.
    const [first, second] = pieces(long('159 in'));
    expect(inInches(second!.length)).toBe(5);
    expect(inInches(first!.length)).toBe(158);
  });

  test('is joined as often as it takes, each piece no longer than the spool gives and each overlapping the next', () => {
    const all = pieces(long('800 in'));
    expect(all.every(({ length }) => length <= inches(160))).toBe(true);
    expect(inInches(all.reduce((sum, { length }) => sum + length, 0))).toBe(802 + 2 * (all.length - 1));
  });
});
