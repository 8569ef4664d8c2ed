import type { House } from '../../shared-core/house/index.ts';
import type { OrderLine } from '../../shared-core/ordering/index.ts';
import type { OtherCounts } from '../../shared-core/plan/index.ts';
import { spokenLanguage } from '../../shared-core/words/index.ts';
import type { CompareRequest } from './compare-worker.ts';
import CompareWorker from './compare-worker.ts?worker';
import { factsOfPlans } from './facts-of-plans.ts';

/** Of lines that have been compared before, so that a working opened again is there at once. */
const compared = new WeakMap<OrderLine, OtherCounts>();

/** Counts the rolls of an order line otherwise, beside the planner's own work; gives the means to give it up. */
export function compareLine(house: House, line: OrderLine, onanswer: (counts: OtherCounts) => void, onfault: () => void): () => void {
  const before = compared.get(line);
  if (before) {
    onanswer(before);
    return () => {};
  }
  const worker = new CompareWorker({ name: spokenLanguage().code });
  worker.addEventListener('message', ({ data }: MessageEvent<OtherCounts>) => {
    compared.set(line, data);
    worker.terminate();
    onanswer(data);
  });
  worker.addEventListener('error', onfault);
  worker.postMessage({ house: factsOfPlans(house), line } satisfies CompareRequest);
  return () => worker.terminate();
}
