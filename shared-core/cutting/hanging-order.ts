import { assert } from '../base/index.ts';
import type { CuttingPlan, CuttingProblem } from './problem.ts';
import { gapBefore } from './tape.ts';

/** The pieces of the house numbered through in hanging order, and what a roll gives of them. */
export interface HungPieces {
  /** Of one roll, measured as `from` of a cut is. */
  readonly capacity: number;
  readonly repeat: number;
  readonly types: readonly HungType[];
  /** By piece: its type. */
  readonly typeOf: readonly number[];
  /** By piece: its stretch. */
  readonly stretchOf: readonly number[];
  /** By stretch: its first piece. */
  readonly firstOf: readonly number[];
}

export interface HungType {
  readonly length: number;
  readonly phase: number;
  /** From a roll's start to the piece's top where it is cut first. */
  readonly lead: number;
  /** Its length and the least gap to any piece that may be cut after it. */
  readonly least: number;
}

/** Numbers the pieces of all stretches through; stretches that do not hold exactly the pieces wanted are a bug of the caller. */
export function layOutPieces(problem: CuttingProblem, plan: CuttingPlan, hanging: readonly (readonly number[])[]): HungPieces {
  const { rollLength, repeat, rollStart, pieces } = problem;
  const typeOf = hanging.flat();
  const impossible = new Set(plan.impossible);
  const counts = pieces.map(() => 0);
  for (const type of typeOf) counts[type] = (counts[type] ?? 0) + 1;
  assert(counts.length === pieces.length && counts.every((count, type) => count === (impossible.has(type) ? 0 : pieces[type]!.count)), 'the stretches hold other pieces than are wanted');
  const firstOf: number[] = [];
  let first = 0;
  for (const stretch of hanging) {
    firstOf.push(first);
    first += stretch.length;
  }
  const phases = [...new Set(typeOf.map((type) => pieces[type]!.phase))].sort((one, other) => one - other);
  return {
    capacity: rollStart === 'anywhere' ? rollLength - repeat : rollLength,
    repeat,
    types: pieces.map(({ length, phase }) => ({ length, phase, lead: rollStart === 'anywhere' ? 0 : phase, least: length + leastGap(phase + length, phases, repeat) })),
    typeOf,
    stretchOf: hanging.flatMap((stretch, index) => stretch.map(() => index)),
    firstOf,
  };
}

/** From a cut's end to the first place in phase of any of the pieces, whose phases come in rising order. */
function leastGap(end: number, phases: readonly number[], repeat: number): number {
  if (repeat === 0 || phases.length === 0) return 0;
  const place = end % repeat;
  let [low, high] = [0, phases.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (phases[middle]! < place) low = middle + 1;
    else high = middle;
  }
  return low < phases.length ? phases[low]! - place : phases[0]! + repeat - place;
}

/** The top of a cut after one that ends at `end`, or of a roll's first cut where `last` is null. */
export function topAfter({ repeat }: HungPieces, last: HungType | null, end: number, next: HungType): number {
  if (last === null) return next.lead;
  return end + gapBefore(next.phase, last.phase, last.length, repeat);
}

/** Two pieces that hang side by side. */
export function areNeighbours({ stretchOf }: HungPieces, piece: number, next: number): boolean {
  return next === piece + 1 && stretchOf[piece] === stretchOf[next];
}
