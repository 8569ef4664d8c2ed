import { memoryOf } from '../base/index.ts';
import { arrangeCuts, type ArrangedRolls, type CuttingPlan, type CuttingProblem, type Effort, planCuts } from '../cutting/index.ts';

/** Somebody who watches a plan being made, and may have seen enough. */
export interface Watch {
  /** Asked now and then. Once it says yes, what is not yet known is answered as quickly as can be. */
  isStopped(): boolean;
  /** How many patterns have been cut, of how many. */
  progress?(done: number, of: number): void;
}

const EFFORTS: readonly Effort[] = ['instant', 'brief', 'usual', 'patient'];
const known = memoryOf<CuttingPlan>(4_000);

/** The efforts from one on, the most patient first: in this order a watched plan takes what is known. */
export function atLeast(effort: Effort): readonly Effort[] {
  return EFFORTS.slice(EFFORTS.indexOf(effort)).toReversed();
}

/**
 * A cutting plan, worked out once for the same problem and effort, so that an edit cuts only what it touches.
 *
 * Without a watch the plan is that of `planCuts` and nothing else. With one, a more patient answer that is already
 * known is taken; and once the watch is stopped the best that is known or has been found so far, by first fit at the
 * least, which is safe to cut but perhaps not proved. Only answers that ran to their end are remembered, some thousands of them; the one that was
 * not asked for longest goes first.
 *
 * Example: of two patterns of which an edit touches one, the other's answer comes from memory.
 */
export function knownCuts(problem: CuttingProblem, effort: Effort, watch?: Watch): CuttingPlan {
  const facts = JSON.stringify(problem);
  const before = (watch ? atLeast(effort) : [effort]).flatMap((tried) => known.recall(`${tried} ${facts}`) ?? [])[0];
  if (before) return before;
  if (!watch || effort === 'instant') return known.remember(`${effort} ${facts}`, planCuts(problem, effort));
  if (watch.isStopped()) return lesserKnown(facts, effort) ?? planCuts(problem, 'instant', watch.isStopped);

  let isCutShort = false;
  const found = planCuts(problem, effort, () => (isCutShort ||= watch.isStopped()));
  if (!isCutShort) return known.remember(`${effort} ${facts}`, found);
  const lesser = lesserKnown(facts, effort);
  return lesser && isBetter(lesser, found) ? lesser : found;
}

/** The best answer known at an effort below the one asked for. */
function lesserKnown(facts: string, effort: Effort): CuttingPlan | undefined {
  return EFFORTS.slice(0, EFFORTS.indexOf(effort))
    .toReversed()
    .flatMap((tried) => known.recall(`${tried} ${facts}`) ?? [])[0];
}

function isBetter(one: CuttingPlan, other: CuttingPlan): boolean {
  return one.rollCount !== other.rollCount ? one.rollCount < other.rollCount : one.lowerBound > other.lowerBound;
}

/** The last answer for a plan, and the stretches that it is for. */
const arranged = new WeakMap<CuttingPlan, { readonly hanging: string; readonly rolls: ArrangedRolls }>();

/**
 * A plan's cuts arranged along the walls, worked out once for the same stretches; as far as it has come where the watch
 * is stopped, and then not remembered.
 *
 * Example: of two patterns of which an edit touches one, the other's rolls come from memory.
 */
export function knownArrangement(problem: CuttingProblem, plan: CuttingPlan, stretches: readonly (readonly number[])[], watch?: Watch): ArrangedRolls {
  const hanging = JSON.stringify(stretches);
  const before = arranged.get(plan);
  if (before?.hanging === hanging) return before.rolls;
  let isCutShort = false;
  const rolls = arrangeCuts(problem, plan, stretches, watch && (() => (isCutShort ||= watch.isStopped())));
  if (!isCutShort) arranged.set(plan, { hanging, rolls });
  return rolls;
}
