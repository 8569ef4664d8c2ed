import type { House } from '../../shared-core/house/index.ts';
import type { HousePlan } from '../../shared-core/plan/index.ts';
import type { PlanAnswer, PlanRequest } from './plan-worker.ts';
import PlanWorker from './plan-worker.ts?worker';

/** Keeps the plan of the latest house; while one is being planned only the newest of those that wait is kept. */
export class Planner {
  /** The last plan that was answered; null until the first one. */
  plan = $state.raw<HousePlan | null>(null);
  /** The house that `plan` was made of. */
  planned = $state.raw<House | null>(null);
  isWorking = $state(false);
  /** Whether the figures are those of the quick answer, which a better one follows. */
  isQuick = $state(false);
  /** Why the last house could not be planned; a fault of the program. */
  trouble = $state<string | null>(null);

  readonly #worker = new PlanWorker();
  #number = 0;
  #current: House | null = null;
  #waiting: House | null = null;

  constructor() {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswer>) => this.#take(data));
    this.#worker.addEventListener('error', (event) => {
      this.trouble = `The plan could not be made (${event.message || 'the planner stopped'}). The house is saved; undo the last change to see its plan again.`;
      this.#finish();
    });
  }

  ask(house: House): void {
    if (this.#current) this.#waiting = house;
    else this.#send(house);
  }

  close(): void {
    this.#worker.terminate();
  }

  #send(house: House): void {
    this.#number += 1;
    this.#current = house;
    this.isWorking = true;
    // No plan looks at pictures, and they would be copied at every keystroke.
    this.#worker.postMessage({ number: this.#number, house: { ...house, pictures: [] } } satisfies PlanRequest);
  }

  #take({ number, plan, isLast }: PlanAnswer): void {
    if (number !== this.#number || !this.#current) return;
    this.plan = plan;
    this.planned = this.#current;
    this.isQuick = !isLast;
    this.trouble = null;
    if (isLast) this.#finish();
  }

  #finish(): void {
    const next = this.#waiting;
    this.#current = null;
    this.#waiting = null;
    this.isWorking = false;
    if (next) this.#send(next);
  }
}
