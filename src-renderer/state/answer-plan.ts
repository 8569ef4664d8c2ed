import type { Effort } from '../../shared-core/cutting/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { type HousePlan, planHouse } from '../../shared-core/plan/index.ts';
import { isDropped, isStopped, type StopFlag } from './stop-flag.ts';

export interface PlanRequest {
  readonly number: number;
  readonly house: House;
  readonly effort: Exclude<Effort, 'instant'>;
  readonly stops: StopFlag | null;
}

export type PlanAnswer = { readonly number: number } & (
  | {
      readonly kind: 'plan';
      readonly plan: HousePlan;
      /** False for the quick answer that a better one follows. */
      readonly isLast: boolean;
      /** The window had seen enough before the plan was at its end. */
      readonly isCutShort: boolean;
    }
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  /** A later house waits: nothing more comes of this request. */
  | { readonly kind: 'dropped' }
);

/** What is not known after so long is answered quickly first, so that an edit shows its order within a tenth of a second. */
export const SOON_MILLISECONDS = 4;

/**
 * Answers a request of the window: a plan, before it a quick one where it would not come soon, and how far it is.
 *
 * Example: of forty rooms never seen the first answer has most rooms set out from the first corner, the last has all of
 * them searched; after an edit of one room the first is the last.
 */
export function answerPlan({ number, house, effort, stops }: PlanRequest, now: () => number, answer: (answer: PlanAnswer) => void): void {
  let isCutShort = false;
  const isEnough = () => (isCutShort ||= isStopped(stops, number));
  const give = (plan: HousePlan, isLast: boolean) => answer(isDropped(stops, number) ? { kind: 'dropped', number } : { kind: 'plan', number, plan, isLast, isCutShort });

  // Whoever looks longer has the usual answer on screen.
  if (effort === 'usual') {
    const until = now() + SOON_MILLISECONDS;
    let isLate = false;
    const soon = planHouse(house, effort, { isStopped: () => (isLate ||= isEnough() || now() > until) });
    const isLast = !isLate || isEnough();
    give(soon, isLast);
    if (isLast) return;
  }
  give(planHouse(house, effort, { isStopped: isEnough, progress: (done, of) => answer({ kind: 'progress', number, done, of }) }), true);
}
