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

self.addEventListener('message', ({ data }: MessageEvent<PlanRequest>) => {
  const answer = (plan: HousePlan, isLast: boolean) => self.postMessage({ number: data.number, plan, isLast } satisfies PlanAnswer);
  answer(planHouse(data.house, 'instant'), false);
  answer(planHouse(data.house, 'usual'), true);
});
