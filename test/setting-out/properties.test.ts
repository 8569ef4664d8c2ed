import fc from 'fast-check';
import { expect, test } from 'vitest';
import { laidWidthOf } from '../../shared-core/house/index.ts';
import { findStretches, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { modulo } from '../../shared-core/units/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';

const tenths = (least: number, most: number) => fc.integer({ min: least * 10, max: most * 10 }).map((tenth) => `${tenth / 10} in`);

/** Rooms that close: a rectangle, or a rectangle with a corner taken out. */
const outline = fc
  .record({ isL: fc.boolean(), across: fc.integer({ min: 90, max: 260 }), deep: fc.integer({ min: 90, max: 260 }), inX: fc.integer({ min: 20, max: 60 }), inY: fc.integer({ min: 20, max: 60 }) })
  .map(({ isL, across, deep, inX, inY }) => {
    const rectangle: (readonly [number, string])[] = [[across, 'inside'], [deep, 'inside'], [across, 'inside'], [deep, 'inside']];
    const cut: (readonly [number, string])[] = [[across, 'inside'], [deep - inY, 'inside'], [inX, 'outside'], [inY, 'inside'], [across - inX, 'inside'], [deep, 'inside']];
    return (isL ? cut : rectangle).map(([length, turn], index) => ({ id: String.fromCharCode(65 + index), length: `${length} in`, turn, height: '96 in', openings: [] as Loose[] }));
  });

const layout = (walls: readonly { readonly id: string; readonly length: string }[]) => {
  const place = fc.constantFrom(...walls).chain(({ id, length }) => tenths(0, Number.parseInt(length, 10)).map((at) => ({ wall: id, at })));
  return fc.oneof(
    fc.constant(undefined),
    fc.record({ start: fc.tuple(place, fc.constantFrom('left', 'centre', 'right')).map(([start, edge]) => ({ ...start, edge })), direction: fc.constantFrom('left', 'right'), kill: fc.oneof(fc.constant('start'), place) }),
    fc.record({ start: place, direction: fc.constant('both'), kill: place }),
  );
};

const hung = outline.chain((walls) =>
  fc.record({
    walls: fc.constant(walls),
    layout: layout(walls),
    covering: fc.record({ width: tenths(18, 36), repeat: tenths(1, 40), match: fc.constantFrom('free', 'straight', 'drop'), rollStart: fc.constantFrom('anywhere', 'at-repeat') }),
    holes: fc.array(fc.record({ wall: fc.nat(walls.length - 1), from: fc.integer({ min: 0, max: 40 }), width: fc.integer({ min: 5, max: 50 }), sill: fc.integer({ min: 0, max: 60 }), height: fc.integer({ min: 5, max: 36 }) }), { maxLength: 3 }),
  }),
);

type Hung = typeof hung extends fc.Arbitrary<infer Value> ? Value : never;

function setOut({ walls, layout: chosen, covering, holes }: Hung) {
  const taken = new Set<number>();
  const withHoles = walls.map((wall) => ({ ...wall, openings: [...wall.openings] }));
  holes.forEach(({ wall, from, width, sill, height }, index) => {
    const length = Number.parseInt(walls[wall]!.length, 10);
    if (taken.has(wall) || from + width > length) return;
    taken.add(wall);
    withHoles[wall]!.openings.push({ id: `hole${index}`, kind: 'window', from: `${from} in`, width: `${width} in`, sill: `${sill} in`, height: `${height} in` });
  });
  const house = houseOf(
    documentOf({
      coverings: [wallcovering({ ...covering, ...(covering.match === 'drop' ? { dropBy: '1/3' } : {}) })],
      rooms: [{ id: 'room', name: 'Room', walls: withHoles, bands: [{ id: 'main', covering: 'paper', walls: walls.map(({ id }) => id), ...(chosen ? { layout: chosen } : {}) }] }],
    }),
  );
  const [room] = house.rooms;
  const [paper] = house.coverings;
  if (!room || paper?.kind !== 'wallcovering') throw new Error('a room hung with a wallcovering');
  const [stretch] = findStretches(room, bandsOf(room)[0]!);
  return { house, room, paper, layout: setOutStrips(stretch!, bandsOf(room)[0]!, paper, house.rules) };
}

const check = (property: (set: ReturnType<typeof setOut>) => void) => fc.assert(fc.property(hung, (facts) => property(setOut(facts))), { numRuns: 400 });
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
            if (!isOpen) expect(strip.pieces.some(({ top, bottom }) => bottom <= y && y < top)).toBe(true);
          }
        }
      }
    }
  });
}, 60_000);
const wallHeight = 96 * 8128;

test('phases lie in the repeat, and the pattern runs level across every seam but for its drop', () => {
  check((set) => {
    const repeat = repeatOf(set);
    const { layout, paper, house } = set;
    for (const strip of layout.strips) {
      for (const { phase, top } of strip.pieces) {
        if (repeat === 0) {
          expect(phase).toBe(0);
          continue;
        }
        expect(phase).toBeGreaterThanOrEqual(0);
        expect(phase).toBeLessThan(repeat);
        // What of the pattern lies at the datum, seen from this piece: the same for all, lower by the drop.
        const atDatum = modulo(phase + top + house.rules.trim.length - layout.datum, repeat);
        const drop = paper.match === 'drop' ? Math.floor((repeat * modulo(strip.number, 3)) / 3) : 0;
        expect(atDatum).toBe(drop);
      }
    }
  });
});

test('a room typed from another wall on is hung alike from the same place', () => {
  fc.assert(
    fc.property(hung, fc.nat(5), (facts, by) => {
      const start = facts.layout ?? { start: { wall: 'A', at: '0 in' }, direction: 'right', kill: 'start' };
      const shift = by % facts.walls.length;
      const turned = [...facts.walls.slice(shift), ...facts.walls.slice(0, shift)];
      const one = setOut({ ...facts, holes: [], layout: start as Hung['layout'] }).layout;
      const other = setOut({ ...facts, walls: turned, holes: [], layout: start as Hung['layout'] }).layout;
      const seen = ({ strips, mismatch, slivers, kill }: StretchLayout) => ({ mismatch, slivers, kill, strips: strips.map(({ number, cutWidth, parts, pieces }) => ({ number, cutWidth, parts, pieces: pieces.map(({ length, phase }) => [length, phase]) })) });
      expect(seen(other)).toEqual(seen(one));
    }),
    { numRuns: 300 },
  );
});
