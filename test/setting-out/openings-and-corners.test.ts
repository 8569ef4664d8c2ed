import { describe, expect, test } from 'vitest';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { countSlivers, findStretches, type Piece, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { inches, type Length } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const inInches = (length: Length | number) => length / inches(1);

function setOut(roomFacts: Loose, covering: Loose = {}, rules: Loose = {}) {
  const house = houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [roomFacts], rules }));
  const [found] = house.rooms;
  const [paper] = house.coverings;
  const [band] = bandsOf(found);
  if (!band || paper?.kind !== 'wallcovering') throw new Error('a room hung with a wallcovering');
  return { house, paper, band, layouts: findStretches(found!, band).map((stretch) => setOutStrips(stretch, band, paper, house.rules)) };
}

const one = (...parts: Parameters<typeof setOut>): StretchLayout => {
  const { layouts } = setOut(...parts);
  expect(layouts).toHaveLength(1);
  return layouts[0]!;
};
const pieces = ({ strips }: StretchLayout): readonly Piece[] => strips.flatMap((strip) => strip.pieces);
const cut = (layout: StretchLayout) => pieces(layout).map(({ label, length }) => [label, inInches(length)]);
const opening = (facts: Loose) => ({ id: 'o', kind: 'window', from: '40 in', width: '20 in', sill: '30 in', height: '40 in', ...facts });
const wall = (facts: Loose, band: Loose = {}) => room(['100 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A'], ...band }] }, [facts]);

describe('an opening', () => {
  test('from a sill up to the ceiling leaves only what is below it', () => {
    expect(cut(one(wall({ openings: [opening({ height: '66 in' })] })))).toEqual([['A1', 100], ['A2', 100], ['A3 below', 34], ['A4', 100], ['A5', 100]]);
  });

  test('at the very end of a wall is cut above by the strip that ends there', () => {
    expect(cut(one(wall({ openings: [opening({ kind: 'door', from: '80 in', sill: '0 in', height: '80 in' })] }))).at(-1)).toEqual(['A5 above', 20]);
  });

  test('that ends in a corner does not cut the strip that turns the corner', () => {
    const openings = [opening({ kind: 'door', from: '50 in', width: '50 in', sill: '0 in', height: '80 in' })];
    const layout = one(room(['100 in', '90 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B'], layout: { start: { wall: 'A', at: '10 in' } } }] }, [{ openings }]));
    // Strips stand at 50-70, 70-90 and 90-110 in of the axis; the last of them hangs on B as well.
    expect(cut(layout).slice(3, 6)).toEqual([['A4 above', 20], ['A5 above', 20], ['A6', 100]]);
  });

  test('that holds a strip only where the strip itself is narrow is cut above it too', () => {
    // The last strip of 95 in is 15 in wide, and all of it is over the fireplace.
    const layout = one(room(['95 in'], {}, [{ openings: [opening({ kind: 'fireplace', from: '80 in', width: '15 in', sill: '0 in', height: '48 in' })] }]));
    expect(cut(layout).at(-1)).toEqual(['A5 above', 52]);
  });

  test('lower than where a band begins, or as high as where it ends, takes nothing and is no edge for a sliver', () => {
    const openings = [opening({ from: '41 in', sill: '0 in', height: '36 in' })];
    const layout = one(wall({ openings }, { from: '36 in' }));
    expect(cut(layout)).toEqual(['A1', 'A2', 'A3', 'A4', 'A5'].map((label) => [label, 64]));
    expect(layout.slivers).toEqual([]);
    expect(one(wall({ openings }, { from: '35 in' })).slivers).toHaveLength(2);
  });

  test('taller than what is left of a band leaves nothing of it', () => {
    const layout = one(wall({ openings: [opening({ sill: '0 in', height: '80 in', kind: 'door' })] }, { from: '30 in', to: '60 in' }));
    expect(cut(layout)).toEqual([['A1', 34], ['A2', 34], ['A4', 34], ['A5', 34]]);
  });

  test('under a raked ceiling leaves above it what the ceiling is high there', () => {
    // The ceiling falls from 120 to 100 in; over 40-60 in it stands at 112 in at the most.
    const layout = one(wall({ height: ['120 in', '100 in'], openings: [opening({ kind: 'door', sill: '0 in', height: '80 in' })] }));
    expect(cut(layout)[2]).toEqual(['A3 above', 36]);
    // 120 in is the datum; the piece begins 2 in above 112 in, so 6 in below it.
    expect(inInches(pieces(layout)[2]!.phase)).toBe(6);
  });

  test('on stairs stands on the steps: above it counts from its lowest head, below it to its highest sill', () => {
    // The floor rises by 20 in over the wall, 4 in over each strip; the window's sill 30 in above it, its head 70 in.
    const layout = one(wall({ height: '120 in', base: ['0 in', '20 in'], openings: [opening({})] }));
    const [above, below] = pieces(layout).slice(2, 4);
    // Over 40-60 in the ceiling reaches 132 in, the head is at 78-82 in, the sill at 38-42 in, the floor at 8 in.
    expect([inInches(above!.top), inInches(above!.bottom), inInches(above!.length)]).toEqual([132, 78, 58]);
    expect([inInches(below!.top), inInches(below!.bottom), inInches(below!.length)]).toEqual([42, 8, 38]);
  });
});

describe('phases of pieces at an opening', () => {
  test('go on from where the pattern lies there', () => {
    const layout = one(wall({ openings: [opening({})] }));
    // Below a sill 30 in up the piece begins at 32 in, 64 in below the datum: three repeats of 20 in and 4 in.
    expect(pieces(layout).slice(2, 4).map(({ label, phase }) => [label, inInches(phase)])).toEqual([['A3 above', 18], ['A3 below', 4]]);
  });

  test('are lower by the drop of their strip', () => {
    const layout = one(wall({ openings: [opening({ from: '20 in' })] }), { match: 'drop', dropBy: '1/2' });
    expect(pieces(layout).map(({ label, phase }) => [label, inInches(phase)])).toEqual([['A1', 18], ['A2 above', 8], ['A2 below', 14], ['A3', 18], ['A4', 8], ['A5', 18]]);
  });

  test('move with the position of the pattern, round the repeat', () => {
    const layout = one(wall({ openings: [opening({})] }, { position: '17 in' }));
    expect(pieces(layout).slice(2, 4).map(({ phase }) => inInches(phase))).toEqual([15, 1]);
  });

  test('are none for a free match, whatever its repeat and the position', () => {
    const layout = one(wall({ openings: [opening({})] }, { position: '17 in' }), { match: 'free' });
    expect(pieces(layout).every(({ phase }) => phase === 0)).toBe(true);
  });
});

describe('the datum', () => {
  test('is the highest top of the whole stretch, and lower walls begin further down the pattern', () => {
    const layout = one(room(['100 in', '80 in'], {}, [{ height: '90 in' }, { height: '96 in' }]));
    expect(layout.datum).toBe(inches(96));
    // On A the top lies 6 in below the datum, less a trim of 2 in; strip 5 turns the corner and reaches up to B's ceiling.
    expect(pieces(layout).map(({ label, length, phase }) => [label, inInches(length), inInches(phase)])).toEqual([
      ...['A1', 'A2', 'A3', 'A4', 'A5'].map((label) => [label, 94, 4]),
      ...['B1', 'B2', 'B3', 'B4', 'B5'].map((label) => [label, 100, 18]),
    ]);
  });

  test('of a band that ends below the ceiling is where it ends', () => {
    const layout = one(wall({}, { to: '60 in' }));
    expect([inInches(layout.datum), ...pieces(layout).slice(0, 1).map(({ length, phase }) => [inInches(length), inInches(phase)])]).toEqual([60, [64, 18]]);
  });
});

describe('an outside corner', () => {
  const turned = (length: string, rules: Loose = {}) => {
    const { layouts, house, paper, band } = setOut(room([length, '55 in'], {}, [{ turn: 'outside' }]), {}, rules);
    const [layout] = layouts;
    return { slivers: layout!.slivers.length, outside: countSlivers(layout!.axis, layout!.grid, laidWidthOf(paper), band, house.rules).outsideSeams };
  };

  test.each([
    ['38 in', 0],
    ['38.1 in', 1],
    ['40 in', 1],
    ['41.9 in', 1],
    ['42 in', 0],
  ])('after %s has %i seams nearer than 2 in, the corner itself included', (length, count) => {
    expect(turned(length)).toEqual({ slivers: count, outside: count });
  });

  test('is not to have a seam nearer than what must go round, where that is more than a sliver', () => {
    expect(turned('42.5 in', { minOutsideWrap: '3 in' }).outside).toBe(1);
    expect(turned('43 in', { minOutsideWrap: '3 in' }).outside).toBe(0);
    expect(turned('41.5 in', { sliver: '0 in' }).outside).toBe(0);
    expect(turned('40.5 in', { sliver: '0 in' }).outside).toBe(1);
  });

  test('is turned by one piece that hangs on both walls', () => {
    const [, , third] = one(room(['50 in', '55 in'], {}, [{ turn: 'outside' }])).strips;
    expect(third!.parts.map(({ wall: on, from, to }) => [on, inInches(from), inInches(to)])).toEqual([['A', 40, 50], ['B', 0, 10]]);
    expect(third!.pieces).toHaveLength(1);
  });
});

describe('slivers', () => {
  test('at an inside corner are counted on either side of its wrap, a seam within the wrap is none', () => {
    const slivers = (length: string) => one(room([length, '50 in'])).slivers.length;
    // Seams at 60 in; the corner takes an eighth of an inch of the axis from the wall's end on.
    expect(['58.1 in', '59.8 in', '59.9 in', '60 in', '60.1 in', '61.9 in', '62 in'].map(slivers)).toEqual([1, 1, 0, 0, 1, 1, 0]);
  });

  test('of exactly the least width are none', () => {
    expect(one(room(['62 in'])).slivers).toEqual([]);
    expect(one(room(['61.9 in'])).slivers).toHaveLength(1);
    expect(one(room(['61.9 in']), {}, { sliver: '1.9 in' }).slivers).toEqual([]);
  });

  test('at the place where the ends meet are counted there', () => {
    const square = (at: string) => {
      const facts = room(['100 in', '100 in', '100 in', '100 in']);
      facts.bands[0].layout = { start: { wall: 'A', at: '50 in' }, kill: { wall: 'C', at } };
      return one(facts, {}, { insideWrap: '0 in' }).slivers.length;
    };
    // Seams stand at 10, 30, 50, 70 and 90 in of every wall; ends that meet 1 in beside one leave a strip of an inch there
    // and one of nineteen.
    expect(square('50 in')).toBe(0);
    expect(square('51 in')).toBe(1);
    expect(square('49 in')).toBe(1);
    expect(square('60 in')).toBe(0);
  });
});

test('each stretch of a band is hung by its own: the chosen start is of the one it stands on', () => {
  const facts = room(['100 in', '80 in', '70 in', '80 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'C'], layout: { start: { wall: 'C', at: '35 in', edge: 'centre' } } }] });
  const [first, second] = setOut(facts).layouts;
  expect([first!.start, second!.start]).toEqual([{ wall: 'A', at: 0 }, { wall: 'C', at: inches(35) }]);
  expect(first!.strips.map(({ number, from }) => [number, inInches(from)])).toEqual([[0, 0], [1, 20], [2, 40], [3, 60], [4, 80]]);
  expect(second!.strips.map(({ number, from, to }) => [number, inInches(from), inInches(to)])).toEqual([[-2, 0, 5], [-1, 5, 25], [0, 25, 45], [1, 45, 65], [2, 65, 70]]);
});

test("a stretch joined through the room's last corner passes that corner with a wrap", () => {
  const facts = room(['100 in', '80 in', '70 in', '90 in'], { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'D'] }] });
  const layout = one(facts);
  expect(layout.axis.walls.map(({ wall: { id }, from, to }) => [id, inInches(from), inInches(to)])).toEqual([['D', 0, 90], ['A', 90.125, 190.125]]);
  const turning = layout.strips.find(({ parts }) => parts.length > 1);
  expect(turning!.parts.map(({ wall: on, from, to }) => [on, inInches(from), inInches(to)])).toEqual([['D', 80, 90], ['A', 0, 9.875]]);
});
