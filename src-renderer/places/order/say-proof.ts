import { type House, nameCovering } from '../../../shared-core/house/index.ts';
import type { OrderLine } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** How far the planner is. */
export interface Looking {
  readonly isWorking: boolean;
  readonly isQuick: boolean;
  readonly isLookingLonger: boolean;
  readonly isCutShort: boolean;
  readonly hasLookedLonger: boolean;
  readonly progress: { readonly done: number; readonly of: number } | null;
}

export interface Proof {
  readonly words: string;
  /** Whether something is left to look for. */
  readonly isOpen: boolean;
  readonly offer: 'stop' | 'look-longer' | null;
}

/** How far the looking for fewer rolls and for proofs has come, and what the user can do about it. */
export function sayProof(house: House, order: readonly OrderLine[], planner: Looking): Proof {
  if (planner.isWorking && (planner.isQuick || planner.isLookingLonger)) {
    const { progress } = planner;
    const far = progress && progress.of > 1 ? say`${sayLooking(planner)}: ${progress.done} of ${progress.of} patterns done.` : `${sayLooking(planner)}.`;
    return { words: `${far} ${say`What is shown can be cut as it stands.`}`, isOpen: true, offer: 'stop' };
  }
  const open = [...new Set(order.filter(({ isProvenMinimum }) => !isProvenMinimum).map(({ covering }) => nameCovering(house, covering)))];
  if (planner.isCutShort || planner.isQuick) return { words: say`Stopped. What is shown can be cut as it stands; fewer rolls may do.`, isOpen: true, offer: 'look-longer' };
  if (open.length === 0) return { words: say`Proved: no way of cutting these pieces takes fewer rolls.`, isOpen: false, offer: null };
  const names = open.length > 3 ? say`${open.length} patterns` : open.join(', ');
  return planner.hasLookedLonger
    ? { words: say`Whether fewer rolls of ${names} would do could not be settled by looking longer.`, isOpen: true, offer: null }
    : { words: say`Whether fewer rolls of ${names} would do is not yet proved.`, isOpen: true, offer: 'look-longer' };
}

function sayLooking({ isQuick, isLookingLonger }: Looking): string {
  if (!isQuick) return say`Looking longer for fewer rolls`;
  return isLookingLonger ? say`Not yet proved: looking longer for fewer rolls` : say`Not yet proved: looking for fewer rolls`;
}

/**
 * What is proved of a line that is not proved to be the fewest.
 *
 * Example: '26 rolls; fewer than 25 will not do. Not yet proved.'
 */
export function sayGap(house: House, line: OrderLine): string {
  return say`${sayUnits(house, line.covering, line.rollsNeeded)}; fewer than ${line.lowerBound} will not do. Not yet proved.`;
}
