import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CeilingLayout, setOutCeiling, wallAlong } from '../../shared-core/setting-out/index.ts';
import { drawOutline } from '../../shared-core/survey/index.ts';
import { inches, lengthOf } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const inInches = (units: number) => units / inches(1);
const window = (width: string) => ({ openings: [{ id: 'w', kind: 'window', from: '10 in', width, sill: '30 in', height: '40 in' }] });

function ceilingOf(facts: Loose, covering: Loose = wallcovering()): CeilingLayout | null {
  const house = houseOf(documentOf({ coverings: [covering], rooms: [facts] }));
  const [found] = house.rooms;
  const [overhead] = house.coverings;
  if (!found?.ceiling || (overhead?.kind !== 'wallcovering' && overhead?.kind !== 'lining')) throw new Error('a room with a ceiling');
  return setOutCeiling(found, drawOutline(found), found.ceiling, overhead, house.rules);
}

const over = (lengths: readonly string[], ceiling: Loose = {}, wallFacts: readonly Loose[] = []) => room(lengths, { bands: [], ceiling: { covering: 'paper', ...ceiling } }, wallFacts);
const cuts = (layout: CeilingLayout | null) => layout!.strips.flatMap(({ pieces }) => pieces).map(({ label, length, phase }) => [label, inInches(length), inInches(phase)]);

describe('the strips of a ceiling run', () => {
  test('along the wall with the largest window, else the longest, else as chosen', () => {
    const along = (facts: Loose) => wallAlong(houseOf(documentOf({ coverings: [wallcovering()], rooms: [facts] })).rooms[0]!);
    const sides = ['100 in', '120 in', '100 in', '120 in'];
    expect(along(over(sides, {}, [window('20 in'), {}, window('40 in')]))).toEqual({ wall: 'C', reason: 'window' });
    expect(along(over(sides))).toEqual({ wall: 'B', reason: 'longest' });
    expect(along(over(sides, { along: 'D' }, [window('20 in')]))).toEqual({ wall: 'D', reason: 'chosen' });
  });

  test('away from it, whichever it is; the last as wide as what is left', () => {
    // 100 in from strips of 20: five across, 120 + 4 in long; 120 in along the short side: six, 104 in.
    expect(cuts(ceilingOf(over(['100 in', '120 in', '100 in', '120 in'])))).toEqual([1, 2, 3, 4, 5].map((number) => [`ceiling ${number}`, 124, 18]));
    const short = ceilingOf(over(['100 in', '110 in', '100 in', '110 in'], { along: 'C' }));
    expect(cuts(short)).toHaveLength(6);
    expect(short!.strips.map(({ from, to }) => inInches(to - from))).toEqual([20, 20, 20, 20, 20, 10]);
  });

  test('with drops that count from the wall, and the pattern where it was set', () => {
    const drop = wallcovering({ match: 'drop', dropBy: '1/4', repeat: '24 in' });
    // -2 in of trim, 5 in as set, and 6 in more for each strip: 3, 9, 15, 21, 3.
    expect(cuts(ceilingOf(over(['100 in', '120 in', '100 in', '120 in'], { position: '5 in' }), drop)).map(([, , phase]) => phase)).toEqual([3, 9, 15, 21, 3]);
  });

  test('nowhere where the walls do not go all the way round', () => {
    expect(ceilingOf(over(['100 in', '120 in']))).toBeNull();
  });

  test('of lining without a pattern', () => {
    expect(cuts(ceilingOf(over(['100 in', '120 in', '100 in', '120 in']), { id: 'paper', kind: 'lining', width: '22 in', rollLength: '33 ft' })).map(([, length, phase]) => [length, phase])).toEqual(Array(5).fill([124, 0]));
  });

  test('in two parts where the outline comes between', () => {
    // A U: two arms of 40 in beside a gap of 40 in, 50 in deep, over a foot of 30 in. Strips of 20 in along the top.
    const u = room(['40 in', '50 in', '40 in', '50 in', '40 in', '80 in', '120 in', '80 in'], { bands: [], ceiling: { covering: 'paper', along: 'A' } }, [{}, { turn: 'outside' }, { turn: 'outside' }, {}, {}, {}, {}, {}]);
    const layout = ceilingOf(u);
    expect(layout!.strips.map(({ spans }) => spans.map(({ from, to }) => [inInches(from), inInches(to)]))).toEqual([
      [[0, 40], [80, 120]],
      [[0, 40], [80, 120]],
      [[0, 120]],
      [[0, 120]],
    ]);
    expect(layout!.strips[0]!.pieces.map(({ label }) => label)).toEqual(['ceiling 1 part 1', 'ceiling 1 part 2']);
    // The second part begins 80 in along: 80 - 2 in of 20.
    expect(layout!.strips[0]!.pieces.map(({ phase }) => inInches(phase))).toEqual([18, 18]);
  });

  test('over a bay with slanting walls as long as it is over their whole width', () => {
    // An eighth of a turn in and out at the ends of the short sides: 100 in wide below, 60 in at the top, 20 in higher.
    const bay = room(['60 in', '28.284 in', '80 in', '100 in', '80 in', '28.284 in'], { bands: [], ceiling: { covering: 'paper', along: 'A' } }, [{ turn: '135' }, { turn: '135' }, {}, {}, { turn: '135' }, { turn: '135' }]);
    const [first, second] = ceilingOf(bay)!.strips;
    expect(Math.round(inInches(first!.spans[0]!.to - first!.spans[0]!.from))).toBe(100);
    expect(Math.round(inInches(second!.spans[0]!.to - second!.spans[0]!.from))).toBe(100);
    expect(ceilingOf(bay)!.strips).toHaveLength(5);
  });
});

test('whatever the room, every place of its floor lies under one strip', () => {
  const outlines = fc.record({ across: fc.integer({ min: 90, max: 200 }), deep: fc.integer({ min: 90, max: 200 }), inX: fc.integer({ min: 20, max: 60 }), inY: fc.integer({ min: 20, max: 60 }), along: fc.constantFrom('A', 'B', 'C', 'D', 'E', 'F'), width: fc.integer({ min: 12, max: 60 }), spot: fc.tuple(fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.double({ min: 0.01, max: 0.99, noNaN: true })) });
  fc.assert(
    fc.property(outlines, ({ across, deep, inX, inY, along, width, spot: [right, down] }) => {
      const facts = room([across, deep - inY, inX, inY, across - inX, deep].map((length) => `${length} in`), { bands: [], ceiling: { covering: 'paper', along } }, [{}, {}, { turn: 'outside' }]);
      const layout = ceilingOf(facts, wallcovering({ width: `${width} in` }))!;
      const [x, y] = [inches(across) * right, inches(deep) * down];
      const isFloor = !(x > inches(across - inX) && y > inches(deep - inY));
      const { frame } = layout;
      const seen = { along: (x - frame.x) * frame.stepX + (y - frame.y) * frame.stepY, away: (y - frame.y) * frame.stepX - (x - frame.x) * frame.stepY };
      const strips = layout.strips.filter(({ from, to }) => seen.away >= from && seen.away < to);
      expect(strips).toHaveLength(1);
      if (isFloor) expect(strips[0]!.spans.some(({ from, to }) => seen.along >= from - 1 && seen.along <= to + 1)).toBe(true);
      // No wider than the roll, and together as deep as the room.
      expect(layout.strips.every(({ from, to }) => to - from <= inches(width))).toBe(true);
      expect(layout.strips.at(-1)!.to).toBe(lengthOf(along === 'B' || along === 'D' || along === 'F' ? inches(across) : inches(deep)));
    }),
    { numRuns: 2_000 },
  );
});
