import type { Roll, Tape } from './tape.ts';

/** What is asked: by rank, what a piece counts for, a whole number, and how many are wanted. */
export interface Question {
  readonly duals: ArrayLike<number>;
  readonly wanted: ArrayLike<number>;
  /** Rolls are looked for whose pieces count for more than this. */
  readonly above: number;
  /** So much some roll surely counts for. */
  readonly surely: number;
  /** About so many rolls are enough. */
  readonly enough: number;
  /** How many beginnings of rolls may be kept in mind in looking for the dearest within demand; 0 where that is not asked for. */
  readonly patience: number;
}

export interface Dearest {
  /** Rolls whose pieces count for more than was asked, none of them with more of a kind than is wanted; the dearest first. */
  readonly rolls: readonly Roll[];
  /** Where no roll was found: the most that any roll can count for which holds no more of a kind than is wanted; null where that took too long to find. */
  readonly most: number | null;
}

/** The rolls of a tape whose pieces count for most. */
export interface FindDearest {
  readonly within: (question: Question) => Dearest;
  /** By lane and end of the last cut: the most that can be cut from there on, however many pieces of a kind; null where that is out of reach. */
  readonly rest: (duals: ArrayLike<number>) => ((lane: number, end: number) => number) | null;
}

/** The most that any roll counts for, however many pieces of a kind it holds; null where that is out of reach. */
export function mostOverAll(tape: Tape, find: FindDearest, duals: ArrayLike<number>): number | null {
  const rest = find.rest(duals);
  return rest && tape.lanes.reduce((most, _, lane) => Math.max(most, rest(lane, 0)), 0);
}
