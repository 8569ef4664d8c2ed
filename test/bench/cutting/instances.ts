import type { CuttingProblem, RollStart } from '../../../shared-core/cutting/index.ts';
import { falkenauerTriplets, seeded } from '../../cutting/problems.ts';
import { type Draw, dwelling, hotel } from './houses.ts';
import { piecesOf, type Room } from './rooms.ts';

const ROLL_LENGTH = 10_050;
const SEEDS = 10;
const REPEATS = [0, 320, 530, 640, 760];
const ROLL_STARTS: readonly RollStart[] = ['anywhere', 'at-repeat'];
const TRIPLETS = [20, 40, 83, 167];

const HOUSES = {
  '3 rooms': (draw: Draw) => dwelling(3, false, draw),
  '10 rooms': (draw: Draw) => dwelling(10, false, draw),
  '40 rooms': (draw: Draw) => dwelling(40, false, draw),
  'hotel 300': (draw: Draw) => hotel(300, draw),
  'hotel 1000': (draw: Draw) => hotel(1_000, draw),
  '40 rooms measured': (draw: Draw) => dwelling(40, true, draw),
} satisfies Record<string, (draw: Draw) => readonly Room[]>;

export type Family = keyof typeof HOUSES | 'triplets';
export const FAMILIES: readonly Family[] = [...(Object.keys(HOUSES) as (keyof typeof HOUSES)[]), 'triplets'];

export interface Instance {
  /** Such as '40 rooms, 640, half-drop, anywhere, seed 3'; no two are alike. */
  readonly name: string;
  readonly family: Family;
  readonly problem: CuttingProblem;
  /** The fewest rolls, where that is known beforehand. */
  readonly fewest?: number;
}

/**
 * The problems that cutting is measured on, of one family or of all: rolls of 10.05 m × 0.53 m, lengths in mm.
 *
 * Rule: a house for each repeat, match, roll start and seed from 1 to 10, drawn by a generator that the problem's name
 * seeds, so that the same name is the same problem on every machine. A free match has no half-drop, and the roll's start
 * means nothing to it: 17 ways to hang a house, 170 problems a family. Triplets are Falkenauer's, named by their pieces.
 *
 * Example: the first of `instances('3 rooms')` is '3 rooms, 0, free, anywhere, seed 1'.
 */
export function instances(family?: Family): readonly Instance[] {
  if (family === undefined) return FAMILIES.flatMap((each) => instances(each));
  if (family === 'triplets') return TRIPLETS.flatMap((triplets) => seeds().map((seed) => tripletsInstance(triplets, seed)));
  return hangings().flatMap((hanging) => seeds().map((seed) => houseInstance(family, hanging, seed)));
}

interface MatchedRoll {
  readonly repeat: number;
  readonly isHalfDrop: boolean;
  readonly rollStart: RollStart;
}

function hangings(): readonly MatchedRoll[] {
  return REPEATS.flatMap((repeat) =>
    (repeat === 0 ? [false] : [false, true]).flatMap((isHalfDrop) =>
      (repeat === 0 ? (['anywhere'] as const) : ROLL_STARTS).map((rollStart) => ({ repeat, isHalfDrop, rollStart })),
    ),
  );
}

function houseInstance(family: keyof typeof HOUSES, { repeat, isHalfDrop, rollStart }: MatchedRoll, seed: number): Instance {
  const match = repeat === 0 ? 'free' : isHalfDrop ? 'half-drop' : 'straight';
  const name = `${family}, ${repeat}, ${match}, ${rollStart}, seed ${seed}`;
  const random = seeded(seedOf(name));
  const draw: Draw = (least, most, step) => least + step * random((most - least - ((most - least) % step)) / step + 1);
  const trim = [40, 50, 50, 50, 75][draw(0, 4, 1)]!;
  const position = repeat > 0 && draw(1, 2, 1) === 1 ? draw(0, repeat - 10, 10) : 0;
  const pieces = piecesOf(HOUSES[family](draw), { repeat, isHalfDrop, position, trim });
  return { name, family, problem: { rollLength: ROLL_LENGTH, repeat, rollStart, pieces } };
}

function tripletsInstance(triplets: number, seed: number): Instance {
  const single = falkenauerTriplets(triplets, seed);
  const counts = new Map<number, number>();
  for (const { length } of single.pieces) counts.set(length, (counts.get(length) ?? 0) + 1);
  const pieces = [...counts].map(([length, count]) => ({ length, phase: 0, count }));
  return { name: `triplets, t${3 * triplets}, seed ${seed}`, family: 'triplets', problem: { ...single, pieces }, fewest: triplets };
}

function seeds(): readonly number[] {
  return Array.from({ length: SEEDS }, (_, index) => index + 1);
}

/** A number from 1 up to, not including, 2147483647. */
function seedOf(name: string): number {
  return 1 + [...name].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 2_147_483_646, 7);
}
