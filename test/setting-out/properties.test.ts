import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { demandCounter, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { lengthOf, modulo } from '../../shared-core/units/index.ts';
import type { Loose } from '../builders.ts';
import { type Hung, hung, ROOMS, setOut, type Wall } from './random-rooms.ts';

const check = (property: (set: ReturnType<typeof setOut>) => void) => fc.assert(fc.property(hung, (facts) => property(setOut(facts))), { numRuns: ROOMS });
const repeatOf = ({ paper }: ReturnType<typeof setOut>) => (paper.match === 'free' ? 0 : paper.repeat.length);

test('strips follow one another without gap or overlap, numbered in order, none wider than the roll lays', () => {
  check(({ paper, layout: { strips, grid } }) => {
    const laid = laidWidthOf(paper);
    expect(strips[0]!.from).toBe(grid.from);
    expect(strips.at(-1)!.to).toBe(grid.to);
    strips.forEach((strip, index) => {
      expect(strip.cutWidth).toBeLessThanOrEqual(laid);
      expect(strip.cutWidth).toBeGreaterThan(0);
      const next = strips[index + 1];
      if (next) expect([next.number, next.from]).toEqual([strip.number + 1, strip.to]);
    });
  });
});

test('every place of every wall is on just one part of a strip, but for wraps', () => {
  check(({ room, layout: { strips } }) => {
    for (const wall of room.walls) {
      const parts = strips.filter(({ from, to }) => from < to).flatMap((strip) => strip.parts).filter((part) => part.wall === wall.id).toSorted((one, other) => one.from - other.from);
      expect(parts[0]!.from).toBe(0);
      expect(parts.at(-1)!.to).toBe(wall.length.length);
      parts.slice(1).forEach((part, index) => expect(part.from).toBe(parts[index]!.to));
    }
  });
});

test('pieces cover every place of the wall that no opening takes', () => {
  check(({ room, layout: { strips } }) => {
    for (const strip of strips.filter(({ from, to }) => from < to)) {
      for (const part of strip.parts) {
        const wall = room.walls.find(({ id }) => id === part.wall)!;
        for (const x of [part.from, part.to - 1, Math.floor((part.from + part.to) / 2)]) {
          for (let y = 0; y < wallHeight; y += wallHeight / 24) {
            const isOpen = wall.openings.some(({ from, width, sill, height }) => from.length <= x && x < from.length + width.length && sill.length <= y && y < sill.length + height.length);
            const isCovered = strip.pieces.some(({ top, bottom }) => bottom <= y && y < top);
            if (!isOpen && !isCovered) throw new Error(`nothing covers ${x}, ${y} of wall ${wall.id}`);
          }
        }
      }
    }
  });
});
const wallHeight = 96 * 8128;

test('phases lie in the repeat, and the pattern runs level across every seam but for its drop', () => {
  check((set) => {
    const repeat = repeatOf(set);
    const { layout, paper } = set;
    for (const strip of layout.strips) {
      for (const { phase, upperEdge } of strip.pieces) {
        if (repeat === 0) {
          expect(phase).toBe(0);
          continue;
        }
        expect(phase).toBeGreaterThanOrEqual(0);
        expect(phase).toBeLessThan(repeat);
        // What of the pattern lies at the datum, seen from this piece: the same for all, lower by the drop.
        const atDatum = modulo(phase + upperEdge - layout.datum, repeat);
        const drop = paper.match === 'drop' ? Math.floor((repeat * modulo(strip.number, 3)) / 3) : 0;
        expect(atDatum).toBe(drop);
      }
    }
  });
});

/** What is cut, and where it hangs, whatever the walls are called. */
const seen = ({ strips, mismatch, slivers, datum }: StretchLayout) => ({ mismatch, slivers: slivers.map(({ from, to }) => to - from), datum, strips: strips.map(({ number, from, to, cutWidth, pieces }) => ({ number, width: to - from, cutWidth, pieces: pieces.map(({ length, phase, part, top, bottom, width }) => [length, phase, part, top, bottom, width]) })) });

test('a room typed from another wall on is hung alike from the same place', () => {
  fc.assert(
    fc.property(hung, fc.nat(5), (facts, by) => {
      const start = (facts.layout ?? { start: { wall: 'A', at: '0 in' }, direction: 'right', kill: 'start' }) as Hung['layout'];
      const shift = by % facts.walls.length;
      const one = setOut({ ...facts, layout: start }).layout;
      const other = setOut({ ...facts, walls: [...facts.walls.slice(shift), ...facts.walls.slice(0, shift)], layout: start }).layout;
      expect(seen(other)).toEqual(seen(one));
      expect(other.kill).toEqual(one.kill);
      expect(other.strips.map(({ parts }) => parts)).toEqual(one.strips.map(({ parts }) => parts));
    }),
    { numRuns: ROOMS },
  );
});

test('a wall cut in two by a corner straight on is hung alike', () => {
  const cutAt = fc.record({ wall: fc.nat(5), share: fc.integer({ min: 1, max: 99 }) });
  let crossed = 0;
  fc.assert(
    fc.property(hung, cutAt, (facts, { wall: number, share }) => {
      const index = number % facts.walls.length;
      const wall = facts.walls[index]!;
      const length = Number.parseInt(wall.length, 10);
      const at = Math.min(length - 1, Math.max(1, Math.round((length * share) / 100)));
      const inches = (typed: string) => Number.parseInt(typed, 10);
      const [opening] = wall.openings;
      const [from, to] = opening ? [inches(opening.from), inches(opening.from) + inches(opening.width)] : [0, 0];
      // A covered reveal cut in two would be two reveals.
      if (opening?.reveal && from < at + 1 && at - 1 < to) return;
      if (from < at && at < to) crossed += 1;
      const half = (start: number, end: number) => (opening && Math.max(from, start) < Math.min(to, end) ? [{ ...opening, from: `${Math.max(from, start) - start} in`, width: `${Math.min(to, end) - Math.max(from, start)} in` }] : []);
      const halves: readonly Wall[] = [
        { ...wall, length: `${at} in`, turn: 'straight', openings: half(0, at) },
        { ...wall, id: 'Z', length: `${length - at} in`, openings: half(at, length) },
      ];
      const moved = (place: Loose): Loose => (place?.wall === wall.id && Number.parseFloat(place.at) >= at ? { ...place, wall: 'Z', at: `${Math.round((Number.parseFloat(place.at) - at) * 10) / 10} in` } : place);
      const chosen = (facts.layout ?? { start: { wall: 'A', at: '0 in' }, direction: 'right', kill: 'start' }) as Loose;
      const whole = setOut({ ...facts, layout: chosen });
      const cut = setOut({ ...facts, walls: facts.walls.flatMap((one) => (one === wall ? halves : [one])), layout: { ...chosen, start: moved(chosen.start), kill: moved(chosen.kill) } });
      expect(seen(cut.layout)).toEqual(seen(whole.layout));
    }),
    { numRuns: ROOMS },
  );
  expect(crossed).toBeGreaterThan(0);
});

test('what a search counts of a layout is what its pieces are', () => {
  check(({ stretch, band, paper, house, layout: { axis, strips } }) => {
    const count = demandCounter(axis, band, paper, house.rules);
    const cut = new Map<string, number>();
    for (const { length, phase } of strips.flatMap(({ pieces }) => pieces)) cut.set(`${length} ${phase}`, (cut.get(`${length} ${phase}`) ?? 0) + 1);
    // Asked for another layout first, so that what is remembered of that is used.
    count(setOutStrips(stretch, band, paper, house.rules, { start: { wall: 'B', at: lengthOf(123_456) }, edge: 'left', direction: 'right', kill: 'start' }).strips);
    expect(new Map(count(strips).pieces().map(({ length, phase, count: many }) => [`${length} ${phase}`, many]))).toEqual(cut);
  });
});
