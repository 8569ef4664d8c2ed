import { layPlaces, mostFromEachPlace, type Sort } from './check-places.ts';
import { mostOnAPlainRoll, type Most } from './check-plain-roll.ts';
import { STEPS_OF_A_SEARCH, STEPS_OVER_A_ROLL } from './check-steps.ts';
import { mostWithinDemandOnPlaces } from './check-within-demand.ts';
import type { CuttingProblem } from './problem.ts';

/**
 * The most that the pieces of any one roll can count for, as many of a sort as there is room for.
 *
 * Exact for a least of what the certificate claims or less: what cannot come up to it is not
 * followed. Example: half drop of `checkCertificate`, each piece counting for 1: 4.
 */
export function mostOfAnyRoll(problem: CuttingProblem, sorts: readonly Sort[], least: number): Most {
  const steps = { left: STEPS_OVER_A_ROLL };
  if (problem.repeat === 0) return mostOnAPlainRoll(problem.rollLength, sorts, false, least, steps);
  const places = layPlaces(problem, sorts);
  let most = 0;
  for (const start of places.starts) {
    const fromEachPlace = mostFromEachPlace(places, start, steps);
    if (fromEachPlace === null) return 'unsettled';
    most = Math.max(most, fromEachPlace[start.place] ?? 0);
  }
  return most >= least ? most : 'less';
}

/**
 * The same over the rolls that hold no more of a sort than is wanted.
 *
 * Types that are alike in length, phase and worth are one sort here: rolls that hold no more than
 * is wanted of each type are, but for which piece is whose, those that hold no more of the sort.
 */
export function mostWithinDemand(problem: CuttingProblem, sorts: readonly Sort[], least: number): Most {
  if (problem.repeat === 0) return mostOnAPlainRoll(problem.rollLength, sorts, true, least, { left: STEPS_OVER_A_ROLL });
  return mostWithinDemandOnPlaces(layPlaces(problem, sorts), least, { left: STEPS_OVER_A_ROLL }, { left: STEPS_OF_A_SEARCH });
}
