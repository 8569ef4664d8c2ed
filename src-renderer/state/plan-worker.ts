import type { House } from '../../shared-core/house/index.ts';
import { type HousePlan, planHouse } from '../../shared-core/plan/index.ts';

export interface PlanRequest {
  readonly number: number;
  readonly house: House;
}

export interface PlanAnswer {
  readonly number: number;
  readonly plan: HousePlan;
  /** False for the quick answer that a better one follows. */
  readonly isLast: boolean;
}

/** An answer later than this is preceded by a quick one. */
const SOON_MILLISECONDS = 80;
let lastTook = Infinity;

self.addEventListener('message', ({ data }: MessageEvent<PlanRequest>) => {
  const answer = (plan: HousePlan, isLast: boolean) => self.postMessage({ number: data.number, plan, isLast } satisfies PlanAnswer);
  if (lastTook > SOON_MILLISECONDS) answer(planHouse(data.house, 'instant'), false);
  const began = performance.now();
  const plan = planHouse(data.house, 'usual');
  lastTook = performance.now() - began;
  answer(plan, true);
});
