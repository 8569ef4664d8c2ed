import { describe, expect, test } from 'vitest';
import { findStretches, type Piece, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { inches, type Length, lengthOf } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

/** The stretches of a room's first band, set out; lengths below are in inches. */
function setOut(roomFacts: Loose, covering: Loose = {}, rules: Loose = {}): readonly StretchLayout[] {
  const house = houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [roomFacts], rules }));
  const [found] = house.rooms;
  const [band] = bandsOf(found);
  const [paper] = house.coverings;
  if (paper?.kind !== 'wallcovering') throw new Error('a wallcovering');
  return findStretches(found!, band!).map((stretch) => setOutStrips(stretch, band!, paper, house.rules));
}

const one = (...parts: Parameters<typeof setOut>): StretchLayout => {
  const stretches = setOut(...parts);
  expect(stretches).toHaveLength(1);
  return stretches[0]!;
};
const inInches = (length: Length | number) => length / inches(1);
const spans = ({ strips }: StretchLayout) => strips.map(({ from, to }) => [inInches(from), inInches(to)]);
const numbers = ({ strips }: StretchLayout) => strips.map(({ number }) => number);
const pieces = ({ strips }: StretchLayout): readonly Piece[] => strips.flatMap((strip) => strip.pieces);
const heights = (list: readonly Piece[]) => list.map(({ label, length }) => [label, inInches(length)]);
const door = (facts: Loose = {}) => ({ id: 'door', kind: 'door', from: '30 in', width: '30 in', height: '80 in', ...facts });
const open = (from: Loose, walls: Loose = {}) => room([from], {}, [walls]);

describe('the worked example: 12 ft 4 in by 10 ft 2 in, strips of 20 1/2 in', () => {
  const layout = one(
    room(["12' 4\"", "10' 2\"", "12' 4\"", "10' 2\""], {}, [{ openings: [door({ from: '2 ft', width: `2' 8"` })] }]),
    { width: '20.5 in', rollLength: '33 ft', repeat: '21 in' },
  );

  test('takes 540 in and three wraps: 26 full strips and one of 7 3/8 in, cut 7 1/2', () => {
    expect(numbers(layout)).toEqual(Array.from({ length: 27 }, (_, index) => index));
    expect(layout.strips.slice(0, 26).every(({ cutWidth }) => cutWidth === inches(20.5))).toBe(true);
    const last = layout.strips.at(-1)!;
    expect(inInches(last.to - last.from)).toBe(7.375);
    expect(inInches(last.cutWidth)).toBe(7.5);
    expect(inInches(layout.grid.to - layout.grid.from)).toBe(540.375);
  });

  test('gives 27 pieces of 8 ft 4 in, no sliver, and a mismatch of 7 3/8 in at the first corner', () => {
    expect(pieces(layout).map(({ length }) => inInches(length))).toEqual(Array.from({ length: 27 }, () => 100));
    expect(layout.slivers).toEqual([]);
    expect(layout.mismatch).toEqual({ amount: inches(7.375), side: 'over', vertical: 0 });
    expect([layout.start, layout.kill]).toEqual([{ wall: 'A', at: 0 }, { wall: 'A', at: 0 }]);
  });

  test('begins each piece a trim above the wall, so 2 in before the repeat begins', () => {
    expect(new Set(pieces(layout).map(({ phase }) => inInches(phase)))).toEqual(new Set([19]));
  });

  test('splits the strip at an inside corner after a wrap, which belongs to its first part', () => {
    const [strip] = layout.strips.filter(({ parts }) => parts.length > 1);
    expect(strip!.number).toBe(7);
    expect(strip!.parts.map(({ wall, from, to }) => [wall, inInches(from), inInches(to)])).toEqual([['A', 143.5, 148], ['B', 0, 15.875]]);
  });
});

describe('where the line is struck', () => {
  const square = ['100 in', '100 in', '100 in', '100 in'];
  const none = { insideWrap: '0 in', sliver: '0 in' };
  const withLayout = (layout: Loose) => room(square, { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'], layout }] });

  test('in the middle of a wall, all four corners are passed and the ends meet there', () => {
    const layout = one(withLayout({ start: { wall: 'B', at: '30 in' } }));
    expect(inInches(layout.grid.to - layout.grid.from)).toBe(400.5);
    expect(layout.kill).toEqual({ wall: 'B', at: inches(30) });
    expect(layout.strips.at(-1)!.cutWidth).toBe(inches(0.5));
    expect(layout.mismatch).toMatchObject({ amount: inches(0.5), side: 'over' });
  });

  test.each([
    ['left', 130],
    ['centre', 120],
    ['right', 110],
  ] as const)('its %s edge stands at the place', (edge, from) => {
    const layout = one(withLayout({ start: { wall: 'B', at: '30 in', edge } }), {}, none);
    expect(spans(layout)[0]).toEqual([from, from + 20]);
    expect(inInches(layout.kill!.at)).toBe(from - 100);
  });

  test('and hung to the left, numbers count down and the ends meet at the right of strip 0', () => {
    const layout = one(withLayout({ start: { wall: 'B', at: '30 in' }, direction: 'left' }), {}, none);
    expect(numbers(layout)).toEqual(Array.from({ length: 20 }, (_, index) => index - 19));
    expect(spans(layout).at(-1)).toEqual([130, 150]);
    expect(layout.kill).toEqual({ wall: 'B', at: inches(50) });
  });

  test('and hung both ways, the ends meet at the kill point', () => {
    const layout = one(withLayout({ start: { wall: 'A', at: '50 in', edge: 'centre' }, direction: 'both', kill: { wall: 'C', at: '55 in' } }), {}, none);
    expect(layout.kill).toEqual({ wall: 'C', at: inches(55) });
    expect(spans(layout)[0]![0]).toBe(255 - 400);
    expect(spans(layout).at(-1)![1]).toBe(255);
    expect(layout.strips.find(({ number }) => number === 0)).toMatchObject({ from: inches(40), to: inches(60) });
    expect(layout.mismatch!.amount).toBe(0);
  });

  test('and killed in a far corner, the wrap there is not passed', () => {
    const layout = one(withLayout({ start: { wall: 'A', at: '0 in' }, direction: 'right', kill: { wall: 'C', at: '0 in' } }));
    expect(layout.kill).toEqual({ wall: 'C', at: 0 });
    expect(inInches(layout.grid.to - layout.grid.from)).toBe(400.375);
    // Strip 0 stands after the corner's wrap; ten strips reach 200 in, the last eighth before the far corner takes one more.
    expect(numbers(layout).filter((number) => number >= 0)).toHaveLength(11);
  });

  test('and what is left with its wrap is wider than a strip, one more is hung', () => {
    const plain = one(room(['100 in', '100 in', '100 in', '99.625 in']));
    expect(inInches(plain.grid.to - plain.grid.from)).toBe(400);
    expect(numbers(plain)).toHaveLength(21);
    expect(plain.strips.at(-2)!.cutWidth).toBe(inches(20));
    expect(plain.strips.at(-1)!.cutWidth).toBe(inches(0.125));
    const fits = one(room(['100 in', '100 in', '100 in', '99.5 in']));
    expect(numbers(fits)).toHaveLength(20);
    expect(fits.strips.at(-1)!.cutWidth).toBe(inches(20));
  });
});

describe('openings', () => {
  const covering = { repeat: '0 in' };
  const at = (facts: Loose) => pieces(one(open('100 in', { openings: [door(facts)] }), covering));

  test('a strip wholly over a door is one piece above it; one that only meets it stays whole', () => {
    // Strips 0-20, 20-40, 40-60, 60-80, 80-100; the door takes 30-60 and so only the third one whole.
    expect(heights(at({}))).toEqual([['A1', 100], ['A2', 100], ['A3 above', 20], ['A4', 100], ['A5', 100]]);
  });

  test('exactly as wide as its strips, all of them are cut above it', () => {
    expect(heights(at({ from: '20 in', width: '40 in' }))).toEqual([['A1', 100], ['A2 above', 20], ['A3 above', 20], ['A4', 100], ['A5', 100]]);
    expect(heights(at({ from: '20 in', width: '39.9 in' }))).toEqual([['A1', 100], ['A2 above', 20], ['A3', 100], ['A4', 100], ['A5', 100]]);
  });

  test('a window leaves a piece above and a piece below', () => {
    const [, , above, below] = at({ kind: 'window', sill: '30 in', height: '40 in' });
    expect(above).toMatchObject({ label: 'A3 above', length: inches(26 + 4), top: inches(96), bottom: inches(70) });
    expect(below).toMatchObject({ label: 'A3 below', length: inches(30 + 4), top: inches(30), bottom: 0 });
  });

  test('up to the ceiling, nothing is hung above', () => {
    expect(heights(at({ height: '96 in' }))).toEqual([['A1', 100], ['A2', 100], ['A4', 100], ['A5', 100]]);
  });

  test('one over another leaves what is between, whichever was typed first', () => {
    const lower = door({ from: '40 in', width: '20 in' });
    const upper = { id: 'light', kind: 'window', from: '40 in', width: '20 in', sill: '84 in', height: '8 in' };
    for (const openings of [[lower, upper], [upper, lower]]) {
      expect(heights(pieces(one(open('100 in', { openings }), covering)))).toEqual([['A1', 100], ['A2', 100], ['A3 above', 8], ['A3 between', 8], ['A4', 100], ['A5', 100]]);
    }
  });

  test('side by side are one hole where they are both open', () => {
    const openings = [door({ id: 'one', from: '40 in', width: '10 in' }), { id: 'two', kind: 'window', from: '50 in', width: '10 in', sill: '36 in', height: '30 in' }];
    expect(heights(pieces(one(open('100 in', { openings }), covering))).slice(2, 4)).toEqual([['A3 above', 34], ['A3 below', 40]]);
  });

  test('outside of the band take nothing from it', () => {
    const dado = room(['100 in'], { bands: [{ id: 'low', covering: 'paper', walls: ['A'], to: '3 ft' }] }, [{ openings: [{ id: 'w', kind: 'window', from: '40 in', width: '20 in', sill: '36 in', height: '40 in' }] }]);
    expect(heights(pieces(one(dado, covering)))).toEqual(['A1', 'A2', 'A3', 'A4', 'A5'].map((label) => [label, 40]));
  });
});

describe('walls that are not plain', () => {
  test('a raked wall is cut to its highest over the strip', () => {
    const layout = one(open('100 in', { height: ['50 in', '100 in'] }));
    expect(pieces(layout).map(({ length }) => inInches(length))).toEqual([64, 74, 84, 94, 104]);
    expect(layout.datum).toBe(inches(100));
    // The first top lies 40 in below the datum, less a trim of 2 in, in a repeat of 20 in.
    expect(pieces(layout).map(({ phase }) => inInches(phase))).toEqual([18, 8, 18, 8, 18]);
  });

  test('stairs are cut from the highest ceiling to the lowest step', () => {
    const layout = one(open('100 in', { height: '100 in', base: ['0 in', '50 in'] }));
    expect(pieces(layout).map(({ length }) => inInches(length))).toEqual([114, 114, 114, 114, 114]);
  });

  test('an outside corner adds no wrap, and a seam at it or near it is a sliver', () => {
    const turns = [{ turn: 'outside' }, {}];
    const onCorner = one(room(['40 in', '60 in'], {}, turns));
    expect(inInches(onCorner.grid.to)).toBe(100);
    expect(onCorner.slivers).toHaveLength(1);
    expect(one(room(['42 in', '58 in'], {}, turns)).slivers).toEqual([]);
    expect(one(room(['41.9 in', '58.1 in'], {}, turns)).slivers).toHaveLength(1);
  });

  test('a straight joint of two walls is no corner at all', () => {
    const layout = one(room(['41 in', '59 in'], {}, [{ turn: 'straight' }, {}]));
    expect(inInches(layout.grid.to)).toBe(100);
    expect(layout.slivers).toEqual([]);
  });

  test('a narrow part at an inside corner or at an opening is a sliver, a seam exactly there is none', () => {
    expect(one(room(['61 in', '50 in'])).slivers).toHaveLength(1);
    expect(one(room(['60 in', '59.875 in'])).slivers).toEqual([]);
    expect(one(open('100 in', { openings: [door({ from: '41 in', width: '30 in' })] })).slivers).toHaveLength(1);
    expect(one(open('100 in', { openings: [door({ from: '40 in', width: '30 in' })] })).slivers).toEqual([]);
  });
});

describe('stretches', () => {
  const walls = (ids: readonly string[]) => room(['100 in', '80 in', '100 in', '80 in'], { bands: [{ id: 'main', covering: 'paper', walls: ids }] });
  const named = (stretches: readonly StretchLayout[]) => stretches.map(({ axis }) => axis.walls.map(({ wall }) => wall.id).join(''));

  test('join walls that are neighbours, round the last corner too', () => {
    expect(named(setOut(walls(['A', 'B'])))).toEqual(['AB']);
    expect(named(setOut(walls(['D', 'A', 'C'])))).toEqual(['CDA']);
    expect(named(setOut(walls(['A', 'C'])))).toEqual(['A', 'C']);
    expect(named(setOut(walls(['D', 'B', 'C', 'A'])))).toEqual(['ABCD']);
  });

  test('that are open have neither kill point nor mismatch and begin at their left end', () => {
    const layout = one(walls(['B', 'C']));
    expect([layout.kill, layout.mismatch, layout.start]).toEqual([null, null, { wall: 'B', at: 0 }]);
    expect(inInches(layout.grid.to)).toBe(180.125);
    expect(inInches(layout.strips.at(-1)!.cutWidth)).toBe(0.125);
  });

  test('that are open and struck at their right end are hung from there', () => {
    const layout = one({ ...walls(['A']), bands: [{ id: 'main', covering: 'paper', walls: ['A'], layout: { start: { wall: 'A', at: '100 in' }, direction: 'left' } }] });
    expect(spans(layout)).toEqual([[0, 20], [20, 40], [40, 60], [60, 80], [80, 100]]);
    expect(numbers(layout)).toEqual([-4, -3, -2, -1, 0]);
  });
});

describe('the match', () => {
  const phases = (covering: Loose, band: Loose = {}) =>
    pieces(one(room(['100 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A'], ...band }] }), { repeat: '24 in', ...covering })).map(({ phase }) => inInches(phase));

  test('straight: every strip alike, 2 in before the repeat', () => {
    expect(phases({})).toEqual([22, 22, 22, 22, 22]);
  });

  test('half-drop: every other strip half a repeat lower', () => {
    expect(phases({ match: 'drop', dropBy: '1/2' })).toEqual([22, 10, 22, 10, 22]);
  });

  test('third-drop and two-thirds-drop, the latter the former backwards', () => {
    expect(phases({ match: 'drop', dropBy: '1/3' })).toEqual([22, 6, 14, 22, 6]);
    expect(phases({ match: 'drop', dropBy: '2/3' })).toEqual([22, 14, 6, 22, 14]);
  });

  test('drops count back to the left of the start', () => {
    const layout = { start: { wall: 'A', at: '60 in' } };
    expect(phases({ match: 'drop', dropBy: '1/3' }, { layout })).toEqual([22, 6, 14, 22, 6]);
    expect(phases({ match: 'drop', dropBy: '1/3' }, { layout: { start: { wall: 'A', at: '40 in' } } })).toEqual([6, 14, 22, 6, 14]);
  });

  test('free: no phase; and the position at the top moves the others', () => {
    expect(phases({ match: 'free' })).toEqual([0, 0, 0, 0, 0]);
    expect(phases({}, { position: '5 in' })).toEqual([3, 3, 3, 3, 3]);
  });

  test('at the kill point of a drop, how far the two strips stand apart in height', () => {
    const layout = one(room(['60 in', '30 in', '60 in', '30 in'], {}), { repeat: '24 in', match: 'drop', dropBy: '1/2' }, { insideWrap: '0 in' });
    expect(numbers(layout)).toHaveLength(9);
    expect(layout.mismatch).toEqual({ amount: 0, side: 'none', vertical: inches(12) });
  });

  test('across more than one strip counts by its own repeat', () => {
    const layout = one(room(['100 in', '100 in', '100 in', '100 in']), { horizontalRepeat: '60 in' }, { insideWrap: '0 in' });
    expect(layout.mismatch).toEqual({ amount: inches(20), side: 'short', vertical: 0 });
  });

  test('selvedges and a double-cut seam narrow what is laid', () => {
    expect(numbers(one(room(['100 in']), { width: '21 in', selvedge: '1/4 in', seam: 'double-cut', seamOverlap: '1/2 in' }))).toEqual([0, 1, 2, 3, 4]);
    expect(spans(one(room(['100 in']), { width: '21 in', selvedge: '1/2 in' }))[0]).toEqual([0, 20]);
  });
});

test('lengths are whole units whatever the angles and fractions', () => {
  const layout = one(room(['3.333 m', '2.777 m'], {}, [{ height: ['2.111 m', '2.999 m'], turn: '135' }, { height: '2.5 m' }]), { width: '53 cm', rollLength: '10.05 m', repeat: '64.1 cm', match: 'drop', dropBy: '1/3' });
  for (const { length, phase } of pieces(layout)) expect([lengthOf(length), lengthOf(phase)]).toEqual([length, phase]);
  expect(pieces(layout).length).toBeGreaterThan(10);
});
