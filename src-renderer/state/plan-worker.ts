import { answerPlan, type PlanRequest } from './answer-plan.ts';

self.addEventListener('message', ({ data }: MessageEvent<PlanRequest>) => answerPlan(data, () => performance.now(), (answer) => self.postMessage(answer)));
