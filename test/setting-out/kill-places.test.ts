import { describe, expect, test } from 'vitest';
import { findStretches, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { inches, type Length } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const NO_WRAP = { insideWrap: '0 in', sliver: '0 in' };
const SQUARE = ['100 in', '100 in', '100 in', '100 in'];

/** A square room hung all round in strips of 20 in by a chosen layout. */
function hang(layout: Loose, rules: Loose = NO_WRAP, covering: Loose = {}, lengths = SQUARE, wallFacts: readonly Loose[] = []): StretchLayout {
  const facts = room(lengths, {}, wallFacts);
  facts.bands[0].layout = layout;
  const house = houseOf(documentOf({ coverings: [wallcovering(covering)], rooms: [facts], rules }));
  const [found] = house.rooms;
  const [paper] = house.coverings;
  if (paper?.kind !== 'wallcovering') throw new Error('a wallcovering');
  return setOutStrips(findStretches(found!, bandsOf(found)[0]!)[0]!, bandsOf(found)[0]!, paper, house.rules);
}

const inInches = (length: Length | number) => length / inches(1);
const range = ({ grid }: StretchLayout) => [inInches(grid.from), inInches(grid.to)];
const stripOf = ({ strips }: StretchLayout, wanted: number) => strips.find(({ number }) => number === wanted);
const spanOf = (layout: StretchLayout, wanted: number) => {
  const strip = stripOf(layout, wanted);
  return strip && [inInches(strip.from), inInches(strip.to)];
};

describe('a kill place away from the start', () => {
  // Wall C runs from 200 to 300 in on the axis, so its 55 in are 255 in, or 145 in to the left of the first corner.
  const kill = { wall: 'C', at: '55 in' };

  test.each([
    ['left', [50, 70], [255 - 400, 255]],
    ['centre', [40, 60], [255 - 400, 255]],
    ['right', [30, 50], [255 - 400, 255]],
  ] as const)('ends the hanging on both sides of strip 0, its %s edge at the start', (edge, strip, hung) => {
    for (const direction of ['left', 'right', 'both']) {
      const layout = hang({ start: { wall: 'A', at: '50 in', edge }, direction, kill });
      expect([spanOf(layout, 0), range(layout)]).toEqual([strip, hung]);
      expect([layout.start, layout.kill]).toEqual([{ wall: 'A', at: inches(50) }, { wall: 'C', at: inches(55) }]);
      // 400 in are twenty repeats of a strip's width, wherever they are cut.
      expect(layout.mismatch).toEqual({ amount: 0, side: 'none', vertical: 0 });
    }
  });

  test('on a wall passes all four wraps, in a corner three', () => {
    const start = { wall: 'A', at: '50 in' };
    expect(hang({ start, kill }, {}).mismatch!.amount).toBe(inches(0.5));
    const corner = hang({ start, kill: { wall: 'C', at: '0 in' } }, {});
    expect(corner.mismatch!.amount).toBe(inches(0.375));
    expect(corner.grid.lappedEnd).toBe('right');
  });

  test('at the right end of a wall is the same corner as at the left of the next', () => {
    const start = { wall: 'A', at: '50 in' };
    const right = hang({ start, kill: { wall: 'B', at: '100 in' } }, {});
    expect(right).toEqual(hang({ start, kill: { wall: 'C', at: '0 in' } }, {}));
  });

  test('at an outside corner is passed without a wrap and laps nothing', () => {
    const lengths = ['200 in', '100 in', '80 in', '60 in', '120 in', '160 in'];
    const turns = [{}, {}, { turn: 'outside' }, {}, {}, {}];
    const layout = hang({ start: { wall: 'A', at: '0 in' }, kill: { wall: 'D', at: '0 in' } }, {}, {}, lengths, turns);
    // 720 in and a wrap at each of five inside corners.
    expect(inInches(layout.grid.to - layout.grid.from)).toBe(720.625);
    expect([layout.kill, layout.grid.lappedEnd]).toEqual([{ wall: 'D', at: 0 }, null]);
  });
});

describe('a kill place within strip 0', () => {
  test.each([
    // The line stands at 50 in; what is hung holds it, and ends at 45 or 55 in.
    ['left', '55 in', [55 - 400, 55], [50, 55]],
    ['right', '45 in', [45, 445], [45, 50]],
    ['centre', '55 in', [55 - 400, 55], [40, 55]],
    ['centre', '45 in', [45, 445], [45, 60]],
  ] as const)('%s edge at 50 in, ends meeting at %s: the line that was struck is still a line', (edge, at, hung, strip) => {
    for (const direction of ['left', 'right', 'both']) {
      const layout = hang({ start: { wall: 'A', at: '50 in', edge }, direction, kill: { wall: 'A', at } });
      expect([range(layout), spanOf(layout, 0)]).toEqual([hung, strip]);
    }
  });

  test.each([
    ['left', [50, 450], [50, 70]],
    ['right', [50 - 400, 50], [30, 50]],
  ] as const)('at its %s edge is the start itself, and strip 0 is whole', (edge, hung, strip) => {
    const layout = hang({ start: { wall: 'A', at: '50 in', edge }, direction: 'both', kill: { wall: 'A', at: '50 in' } });
    expect([range(layout), spanOf(layout, 0)]).toEqual([hung, strip]);
  });

  test('in the corner where the line is struck hangs strip 0 beside that corner, at whichever end the corner was named', () => {
    const ends = [{ wall: 'D', at: '100 in' }, { wall: 'A', at: '0 in' }];
    for (const start of ends) {
      for (const kill of ends) {
        const right = hang({ start: { ...start, edge: 'left' }, direction: 'both', kill }, {});
        expect(Math.min(...right.strips.map(({ number }) => number))).toBe(0);
        expect([right.strips[0]!.parts[0]!.wall, right.strips[0]!.parts[0]!.from]).toEqual(['A', 0]);
        const left = hang({ start: { ...start, edge: 'right' }, direction: 'left', kill }, {});
        expect(Math.max(...left.strips.map(({ number }) => number))).toBe(0);
        expect([left.strips.at(-1)!.parts.at(-1)!.wall, left.strips.at(-1)!.parts.at(-1)!.to]).toEqual(['D', inches(100)]);
      }
    }
  });
});

describe('the lap in the corner where the ends meet', () => {
  const leftFrom = (lastWall: string) =>
    hang({ start: { wall: 'D', at: '100 in', edge: 'right' }, direction: 'left', kill: { wall: 'A', at: '0 in' } }, {}, {}, [lastWall, '100 in', '100 in', '100 in']);

  test('hung to the left is turned by the leftmost strip', () => {
    const layout = leftFrom('95 in');
    // 395 in and three wraps leave 15 3/8 in for the strip in the corner, cut a wrap wider.
    expect(layout.grid.lappedEnd).toBe('left');
    const [first] = layout.strips;
    expect([first!.number, inInches(first!.to - first!.from), inInches(first!.cutWidth)]).toEqual([-19, 15.375, 15.5]);
    expect(layout.strips.at(-1)!.cutWidth).toBe(inches(20));
  });

  test('hung to the left takes a strip more at the left where the wrap no longer fits', () => {
    const layout = leftFrom('99.625 in');
    const [extra, whole] = layout.strips;
    expect([extra!.number, inInches(extra!.cutWidth), extra!.from === extra!.to]).toEqual([-20, 0.125, true]);
    expect([whole!.number, inInches(whole!.cutWidth)]).toEqual([-19, 20]);
    expect(layout.mismatch).toEqual({ amount: 0, side: 'none', vertical: 0 });
  });

  test('where only part of it fits, the strip is cut whole and one more turns what is left of it', () => {
    const facts = room(['100 in', '100 in', '100 in', '99.5625 in']);
    const layout = hang({ start: { wall: 'A', at: '0 in' } }, {}, {}, facts.walls.map(({ length }: Loose) => length));
    // 399 15/16 in leave 1/16 in of the twentieth strip; the other 1/16 in of the wrap takes a strip of its own.
    const [whole, extra] = layout.strips.slice(-2);
    expect([inInches(whole!.to - whole!.from), inInches(whole!.cutWidth)]).toEqual([19.9375, 20]);
    expect([extra!.number, inInches(extra!.cutWidth)]).toEqual([20, 0.0625]);
    expect(extra!.pieces.map(({ label, length }) => [label.slice(0, 1), inInches(length)])).toEqual([['A', 100]]);
  });

  test('adds nothing to the mismatch', () => {
    expect(hang({ start: { wall: 'A', at: '0 in' } }, { insideWrap: '1 in' }).mismatch).toEqual({ amount: inches(3), side: 'over', vertical: 0 });
    expect(hang({ start: { wall: 'A', at: '0 in' } }, { insideWrap: '5 in' }).mismatch).toEqual({ amount: inches(5), side: 'short', vertical: 0 });
  });
});

describe('the mismatch at the kill point', () => {
  const worked = (covering: Loose) => hang({ start: { wall: 'A', at: '0 in' } }, {}, { width: '20.5 in', rollLength: '33 ft', repeat: '21 in', ...covering }, ['148 in', '122 in', '148 in', '122 in']).mismatch;

  test('counts by a horizontal repeat that is part of a strip, or more than one', () => {
    // 540 3/8 in: 52 halves of a strip and 7 3/8 in, nearer to a whole 53; 13 doubles and 7 3/8 in.
    expect(worked({ horizontalRepeat: '10.25 in' })).toEqual({ amount: inches(2.875), side: 'short', vertical: 0 });
    expect(worked({ horizontalRepeat: '41 in' })).toEqual({ amount: inches(7.375), side: 'over', vertical: 0 });
  });

  test('half a repeat over is as much as it can be', () => {
    expect(hang({ start: { wall: 'A', at: '0 in' } }, NO_WRAP, {}, ['100 in', '105 in', '100 in', '105 in']).mismatch).toEqual({ amount: inches(10), side: 'over', vertical: 0 });
  });

  test('of a free match is none', () => {
    expect(worked({ match: 'free' })).toEqual({ amount: 0, side: 'none', vertical: 0 });
    expect(worked({ match: 'free', repeat: '0 in' })).toEqual({ amount: 0, side: 'none', vertical: 0 });
  });

  describe('of a drop match', () => {
    const drop = (layout: Loose, last: string, covering: Loose = {}, rules: Loose = NO_WRAP) =>
      hang(layout, rules, { repeat: '24 in', match: 'drop', dropBy: '1/2', ...covering }, ['100 in', '100 in', '100 in', last]).mismatch;
    const start = { wall: 'A', at: '0 in' };

    test('is upright too where an odd number of strips goes round', () => {
      expect(drop({ start }, '100 in')).toEqual({ amount: 0, side: 'none', vertical: 0 });
      expect(drop({ start }, '80 in')).toEqual({ amount: 0, side: 'none', vertical: inches(12) });
      // 19 strips are one more than whole rounds of three: a third of 24 in; 20 are two more, so a third the other way.
      expect(drop({ start }, '80 in', { dropBy: '1/3' })!.vertical).toBe(inches(8));
      expect(drop({ start }, '100 in', { dropBy: '1/3' })!.vertical).toBe(inches(8));
    });

    test('is judged where the pattern comes nearest: before a narrow last strip, after a wide one', () => {
      // 20 strips and 3 in: without the 3 in the pattern would go on alike. 19 and 17 in: 3 in more make it 20.
      expect(drop({ start }, '103 in')).toEqual({ amount: inches(3), side: 'over', vertical: 0 });
      expect(drop({ start }, '97 in')).toEqual({ amount: inches(3), side: 'short', vertical: 0 });
      expect(drop({ start }, '83 in')).toEqual({ amount: inches(3), side: 'over', vertical: inches(12) });
    });

    test('is none where the ends of one whole strip meet in the middle of it', () => {
      // Strip 12 is cut at 250 in, and strip -8 begins there; twenty apart they stand alike.
      expect(drop({ start, kill: { wall: 'C', at: '50 in' } }, '100 in')).toEqual({ amount: 0, side: 'none', vertical: 0 });
      expect(drop({ start, kill: { wall: 'C', at: '50 in' } }, '80 in')).toEqual({ amount: 0, side: 'none', vertical: inches(12) });
    });

    test('does not count a strip that only turns the lap', () => {
      const layout = hang({ start }, {}, { repeat: '24 in', match: 'drop', dropBy: '1/2' }, ['100 in', '100 in', '100 in', '99.625 in']);
      expect(layout.strips).toHaveLength(21);
      expect(layout.mismatch).toEqual({ amount: 0, side: 'none', vertical: 0 });
    });
  });
});
