import type { Roll } from './tape.ts';

export const FINEST_SCALE = 2 ** 32;

/** What is asked: by rank, what a piece counts for, a whole number, and how many are wanted. */
export interface Question {
  readonly duals: ArrayLike<number>;
  readonly wanted: ArrayLike<number>;
  /** Rolls are looked for whose pieces count for more than this. */
  readonly above: number;
  /** So much some roll surely counts for. */
  readonly surely: number;
  /** About so many rolls are enough; where it is one, the dearest of all that are at hand. */
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
  /** What one roll counts for, about: ever finer, the first quick to answer and the next to be asked where that was not enough. */
  readonly scales: readonly number[];
  readonly within: (question: Question) => Dearest;
  /** The most that any roll counts for, however many pieces of a kind it holds; null where that took too long to find. */
  readonly mostOverAll: (duals: ArrayLike<number>) => number | null;
  /** By lane and end of the last cut: no more than this can be had from there on, however many pieces of a kind. */
  readonly rest: (duals: ArrayLike<number>) => (lane: number, end: number) => number;
}
