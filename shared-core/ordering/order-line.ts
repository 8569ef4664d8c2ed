import type { CuttingProblem } from '../cutting/index.ts';
import type { Length, Money } from '../units/index.ts';
import type { CutRoll } from './cut-roll.ts';
import type { Pack } from './packs.ts';

/** One line of the bulk order: a pattern number and a run number. */
export interface OrderLine {
  readonly covering: string;
  readonly patternNumber: string | null;
  /** Null while nothing is known of the pattern's runs, or for rooms that no known run can hang. */
  readonly run: string | null;
  readonly rooms: readonly string[];
  readonly rollsNeeded: number;
  readonly lowerBound: number;
  readonly isProvenMinimum: boolean;
  /** What the same rooms take when each is cut on its own. */
  readonly rollsByRoom: number;
  readonly spare: number;
  readonly inHand: number;
  /** Ordered and still to come. */
  readonly onOrder: number;
  readonly toBuy: number;
  readonly packs: readonly Pack[];
  readonly price: Money | null;
  /** Of goods by the length: what is cut, what of it is not there nor ordered, and what is bought for that in whole sale units; null of others. */
  readonly running: { readonly needed: Length; readonly wanted: Length; readonly toBuy: Length; readonly units: number } | null;
  /** Rolls of rooms that no run can hang; 0 on every other line. */
  readonly shortfall: number;
  /** Spare rolls that the run's offer does not stretch to. */
  readonly spareLacking: number;
  readonly problems: readonly CuttingProblem[];
}

/** Whether something of a line is still to be bought. */
export function isBought({ toBuy, running }: Pick<OrderLine, 'toBuy' | 'running'>): boolean {
  return running ? running.units > 0 : toBuy > 0;
}

export interface CutList {
  readonly covering: string;
  readonly run: string | null;
  readonly rolls: readonly CutRoll[];
}
