import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findStretches, setOutStrips, type StretchLayout } from '../../shared-core/setting-out/index.ts';
import { bandsOf, documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';
import { ROOMS } from './random-rooms.ts';

interface Hole {
  readonly from: number;
  readonly width: number;
  readonly sill: number;
  readonly height: number;
  readonly reveal: { readonly depth: number; readonly sides: readonly string[] } | null;
}

/** A wall in whole inches; its height is the ceiling's at both its corners. */
interface Wall {
  readonly id: string;
  readonly length: number;
  readonly height: readonly [number, number];
  readonly turn: string;
  readonly holes: readonly Hole[];
}

interface Place {
  readonly wall: string;
  readonly at: number;
}

interface Hanging {
  readonly walls: readonly Wall[];
  readonly start: Place;
  readonly edge: 'left' | 'centre' | 'right';
  readonly direction: 'left' | 'right';
  readonly kill: 'start' | Place;
  readonly drop: readonly [number, number];
}

const OTHER = { left: 'right', right: 'left', centre: 'centre' } as const;

const walls = fc
  .record({
    isL: fc.boolean(),
    across: fc.integer({ min: 90, max: 200 }),
    deep: fc.integer({ min: 90, max: 200 }),
    cut: fc.integer({ min: 20, max: 60 }),
    ceiling: fc.array(fc.integer({ min: 84, max: 120 }), { minLength: 6, maxLength: 6 }),
    holes: fc.array(fc.record({ from: fc.integer({ min: 0, max: 40 }), width: fc.integer({ min: 15, max: 49 }), sill: fc.integer({ min: 1, max: 50 }), height: fc.integer({ min: 5, max: 34 }), reveal: fc.option(fc.record({ depth: fc.integer({ min: 1, max: 12 }), sides: fc.subarray(['left', 'right', 'head', 'sill'], { minLength: 1 }) })) }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ isL, across, deep, cut, ceiling, holes }): readonly Wall[] => {
    const rectangle: (readonly [number, string])[] = [[across, 'inside'], [deep, 'inside'], [across, 'inside'], [deep, 'inside']];
    const outline: (readonly [number, string])[] = isL ? [[across, 'inside'], [deep - cut, 'inside'], [cut, 'outside'], [cut, 'inside'], [across - cut, 'inside'], [deep, 'inside']] : rectangle;
    return outline.map(([length, turn], index) => ({
      id: String.fromCharCode(65 + index),
      length,
      turn,
      height: [ceiling[index]!, ceiling[(index + 1) % outline.length]!],
      holes: holes.slice(index, index + 1).filter(({ from, width }) => from + width <= length),
    }));
  });

const hanging = walls.chain((list): fc.Arbitrary<Hanging> => {
  const place = fc.constantFrom(...list).chain(({ id, length }) => fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 0, max: length }) }, { weight: 1, arbitrary: fc.constantFrom(0, length) }).map((at) => ({ wall: id, at })));
  return fc.record({
    walls: fc.constant(list),
    start: place,
    edge: fc.constantFrom('left', 'centre', 'right'),
    direction: fc.constantFrom('left', 'right'),
    kill: fc.oneof(fc.constant('start' as const), place),
    drop: fc.constantFrom([0, 1] as const, [1, 2] as const, [1, 3] as const, [2, 3] as const),
  });
});

/** Where ends meet in the very middle of strip 0, neither half of it is more strip 0 than the other. */
const isEven = ({ edge, start, kill, walls: list }: Hanging) => edge !== 'centre' || kill === 'start' || cornerOrPlace(start, list) !== cornerOrPlace(kill, list);

function cornerOrPlace({ wall, at }: Place, list: readonly Wall[]): string {
  const index = list.findIndex(({ id }) => id === wall);
  return at === list[index]!.length ? `${list[(index + 1) % list.length]!.id} 0` : `${wall} ${at}`;
}

function mirrored({ walls: list, start, edge, direction, kill, drop: [numerator, denominator] }: Hanging): Hanging {
  const flip = ({ wall, at }: Place): Place => ({ wall, at: list.find(({ id }) => id === wall)!.length - at });
  return {
    walls: list.toReversed().map((wall): Wall => ({
      ...wall,
      height: [wall.height[1], wall.height[0]],
      turn: list.at(list.indexOf(wall) - 1)!.turn,
      holes: wall.holes.map(({ reveal, ...hole }) => ({ ...hole, from: wall.length - hole.from - hole.width, reveal: reveal && { ...reveal, sides: reveal.sides.map((side) => (side === 'left' ? 'right' : side === 'right' ? 'left' : side)) } })),
    })),
    start: flip(start),
    edge: OTHER[edge],
    direction: OTHER[direction],
    kill: kill === 'start' ? kill : flip(kill),
    drop: numerator === 0 ? [0, 1] : [denominator - numerator, denominator],
  };
}

function setOut({ walls: list, start, edge, direction, kill, drop: [numerator, denominator] }: Hanging): StretchLayout {
  const inInches = ({ wall, at }: Place) => ({ wall, at: `${at} in` });
  const document: Loose = documentOf({
    // Repeats in whole thirds and halves of an inch's units, so that drops to the left and to the right are cut alike.
    coverings: [wallcovering({ repeat: '18 in', ...(numerator > 0 ? { match: 'drop', dropBy: `${numerator}/${denominator}` } : {}) })],
    rooms: [
      {
        id: 'room',
        name: 'Room',
        walls: list.map(({ id, length, height, turn, holes }) => ({ id, length: `${length} in`, turn, height: height.map((one) => `${one} in`), openings: holes.map((hole) => ({ id: 'hole', kind: 'window', from: `${hole.from} in`, width: `${hole.width} in`, sill: `${hole.sill} in`, height: `${hole.height} in`, ...(hole.reveal ? { reveal: { depth: `${hole.reveal.depth} in`, sides: hole.reveal.sides } } : {}) })) })),
        bands: [{ id: 'main', covering: 'paper', walls: list.map(({ id }) => id), layout: { start: { ...inInches(start), edge }, direction, kill: kill === 'start' ? kill : inInches(kill) } }],
      },
    ],
  });
  const house = houseOf(document);
  const [room] = house.rooms;
  const [paper] = house.coverings;
  if (paper?.kind !== 'wallcovering') throw new Error('a wallcovering');
  return setOutStrips(findStretches(room!, bandsOf(room)[0]!)[0]!, bandsOf(room)[0]!, paper, house.rules);
}

/** What is cut and where it hangs, without the names that depend on where the room was begun to be typed. */
function seen({ strips, mismatch, slivers, datum }: StretchLayout) {
  return {
    mismatch,
    slivers: slivers.map(({ from, to }) => to - from).toSorted((one, other) => one - other),
    datum,
    strips: strips.map(({ number, from, to, cutWidth, parts, pieces }) => ({
      number,
      cutWidth,
      // A strip that only turns a lap stands on neither wall.
      parts: from === to ? [] : parts.map((part) => [part.wall, part.from, part.to]),
      // Sides are told from the left, so in the mirror they are told the other way round.
      pieces: from === to ? [] : pieces.map(({ length, phase, part, top, bottom, width }) => ({ length, phase, part, top, bottom, width })).toSorted((one, other) => one.part.localeCompare(other.part) || one.top - other.top || one.length - other.length),
    })),
  };
}

test('hung to the left, a room is hung as its mirror image is to the right', () => {
  fc.assert(
    fc.property(hanging.filter(isEven), (facts) => {
      const lengths = new Map(setOut(facts).axis.walls.map(({ wall }) => [wall.id, wall.length]));
      const image = seen(setOut(mirrored(facts)));
      const unmirrored = {
        ...image,
        strips: image.strips.toReversed().map(({ number, parts, ...strip }) => ({
          ...strip,
          number: 0 - number,
          parts: parts.toReversed().map(([wall, from, to]) => [wall, lengths.get(String(wall))! - Number(to), lengths.get(String(wall))! - Number(from)]),
        })),
      };
      expect(unmirrored).toEqual(seen(setOut(facts)));
    }),
    { numRuns: ROOMS },
  );
});
