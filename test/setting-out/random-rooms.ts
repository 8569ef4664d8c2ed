import fc from 'fast-check';
import { inject } from 'vitest';
import { findStretches, setOutStrips } from '../../shared-core/setting-out/index.ts';
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

const hole = fc.record({ wall: fc.nat(5), from: fc.integer({ min: 0, max: 40 }), width: fc.integer({ min: 5, max: 50 }), sill: fc.integer({ min: 0, max: 60 }), height: fc.integer({ min: 5, max: 36 }), depth: fc.integer({ min: -12, max: 12 }) });

/** A hole in a wall, its sides and head covered where it has a depth; the first that a wall has room for. */
function withHoles(walls: readonly Wall[], holes: readonly (typeof hole extends fc.Arbitrary<infer Value> ? Value : never)[]): readonly Wall[] {
  return walls.map((wall, index) => {
    const own = holes.find((one) => one.wall % walls.length === index && one.from + one.width <= Number.parseInt(wall.length, 10));
    if (!own) return wall;
    const { from, width, sill, height, depth } = own;
    const reveal = depth > 0 ? { reveal: { depth: `${depth} in`, sides: sill > 0 ? ['left', 'right', 'head', 'sill'] : ['left', 'head'] } } : {};
    return { ...wall, openings: [{ id: 'hole', kind: 'window', from: `${from} in`, width: `${width} in`, sill: `${sill} in`, height: `${height} in`, ...reveal }] };
  });
}

export interface Wall {
  readonly id: string;
  readonly length: string;
  readonly turn: string;
  readonly height: string;
  readonly openings: readonly Loose[];
}

export const hung = outline.chain((walls) =>
  fc.record({
    walls: fc.array(hole, { maxLength: 4 }).map((holes) => withHoles(walls, holes)),
    layout: layout(walls),
    covering: fc.record({ width: tenths(18, 36), repeat: tenths(2, 40), match: fc.constantFrom('free', 'straight', 'drop'), rollStart: fc.constantFrom('anywhere', 'at-repeat') }),
  }),
);

export type Hung = typeof hung extends fc.Arbitrary<infer Value> ? Value : never;

export function setOut({ walls, layout: chosen, covering }: Hung) {
  const house = houseOf(
    documentOf({
      coverings: [wallcovering({ ...covering, ...(covering.match === 'drop' ? { dropBy: '1/3' } : {}) })],
      rooms: [{ id: 'room', name: 'Room', walls, bands: [{ id: 'main', covering: 'paper', walls: walls.map(({ id }) => id), ...(chosen ? { layout: chosen } : {}) }] }],
    }),
  );
  const [room] = house.rooms;
  const [paper] = house.coverings;
  const [band] = bandsOf(room);
  if (!room || !band || paper?.kind !== 'wallcovering') throw new Error('a room hung with a wallcovering');
  const [stretch] = findStretches(room, band);
  return { house, room, paper, band, stretch: stretch!, layout: setOutStrips(stretch!, band, paper, house.rules) };
}

/** Random rooms that each property is held to; those that are searched take some 70 ms each. */
export const { rooms: ROOMS, searched: SEARCHED_ROOMS } = inject('randomRooms');
