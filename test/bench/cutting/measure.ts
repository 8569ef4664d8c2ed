import { checkCuts, type CuttingPlan, planCuts } from '../../../shared-core/cutting/index.ts';
import type { HighsOutcome } from './ask-highs.ts';
import type { Instance } from './instances.ts';

export interface Measured {
  readonly instance: Instance;
  readonly plan: Pick<CuttingPlan, 'rollCount' | 'lowerBound' | 'isProven'>;
  readonly milliseconds: number;
  /** What is wrong with the plan, in sentences. */
  readonly faults: readonly string[];
  /** Where HiGHS was asked. */
  readonly highs?: HighsOutcome;
}

/** Plans one problem at the usual effort and measures that; the checker, and what is known of the problem, judge the plan. */
export function measure(instance: Instance, isChecked: boolean): Measured {
  const { problem, fewest } = instance;
  const began = performance.now();
  const plan = planCuts(problem, 'usual');
  const milliseconds = performance.now() - began;
  const faults = isChecked ? checkCuts(problem, plan).map(({ path, message }) => `${path}: ${message}`) : [];
  const { rollCount, lowerBound, isProven } = plan;
  if (plan.impossible.length > 0) faults.push(`${plan.impossible.length} piece types are called impossible, and none is`);
  if (fewest !== undefined && (rollCount !== fewest || !isProven)) {
    faults.push(`${rollCount} rolls, ${isProven ? 'proved' : `at least ${lowerBound}`}; ${fewest} are enough`);
  }
  return { instance, plan: { rollCount, lowerBound, isProven }, milliseconds, faults };
}
