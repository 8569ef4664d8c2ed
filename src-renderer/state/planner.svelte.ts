import type { House } from '../../shared-core/house/index.ts';
import type { HousePlan } from '../../shared-core/plan/index.ts';
import { say, spokenLanguage } from '../../shared-core/words/index.ts';
import type { PlanAnswer, PlanRequest } from './answer-plan.ts';
import { factsOfPlans } from './facts-of-plans.ts';
import { isAlike } from './is-alike.ts';
import PlanWorker from './plan-worker.ts?worker';
import { answerReceiver, type SentAnswer } from './sent-answer.ts';
import { dropUpTo, newStopFlag, stopUpTo } from './stop-flag.ts';

/** Where a plan cannot be told to stop, its worker is ended instead, and with it all that it remembers: not before this long. */
const ENDED_AFTER_MILLISECONDS = 500;

interface Asked {
  readonly house: House;
  readonly effort: PlanRequest['effort'];
}

/** Keeps the plan of the latest house; while one is being planned only the newest of those that wait is kept. */
export class Planner {
  /** The last plan that was answered; null until the first one. */
  plan = $state.raw<HousePlan | null>(null);
  /** The house that `plan` was made of. */
  planned = $state.raw<House | null>(null);
  isWorking = $state(false);
  /** Whether the figures are those of the quick answer, which a better one follows. */
  isQuick = $state(false);
  /** Whether a longer look than the usual one is being taken; the answer before it stays. */
  isLookingLonger = $state(false);
  /** Whether the plan was stopped before its end. */
  isCutShort = $state(false);
  /** Whether the plan has been looked at for longer than usual. */
  hasLookedLonger = $state(false);
  /** How many patterns have been cut, of how many; null where that is not known. */
  progress = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  /** Why the last house could not be planned; a fault of the program. */
  trouble = $state<string | null>(null);

  readonly #stops = newStopFlag(globalThis.crossOriginIsolated);
  #worker = this.#newWorker();
  #number = 0;
  #began = 0;
  #current: Asked | null = null;
  #waiting: House | null = null;
  #ending: ReturnType<typeof setTimeout> | undefined;

  ask(house: House): void {
    const latest = this.#waiting ?? this.#current?.house ?? this.planned;
    // The host's answer to an edit brings the facts that are shown already.
    if (latest && isAlike(factsOfPlans(house), factsOfPlans(latest))) {
      if (this.#waiting) this.#waiting = house;
      else if (this.#current) this.#current = { ...this.#current, house };
      else this.planned = house;
      return;
    }
    if (!this.#current) {
      this.#send({ house, effort: 'usual' });
      return;
    }
    this.#waiting = house;
    if (this.#stops) dropUpTo(this.#stops, this.#number);
    else this.#ending ??= setTimeout(() => this.#endWorker(), this.#current.effort === 'patient' ? 0 : Math.max(0, this.#began + ENDED_AFTER_MILLISECONDS - performance.now()));
  }

  /** Goes on looking for fewer rolls and for proofs, while the plan that is there stays. */
  lookLonger(): void {
    if (!this.#current && this.planned) this.#send({ house: this.planned, effort: 'patient' });
  }

  /** Takes the best that has been found so far. */
  stop(): void {
    if (!this.#current) return;
    if (this.#stops) stopUpTo(this.#stops, this.#number);
    else {
      this.isCutShort = true;
      this.#endWorker();
    }
  }

  close(): void {
    clearTimeout(this.#ending);
    this.#worker.terminate();
  }

  #newWorker(): Worker {
    const worker = new PlanWorker({ name: spokenLanguage().code });
    const received = answerReceiver();
    worker.addEventListener('message', ({ data }: MessageEvent<SentAnswer>) => this.#take(received(data)));
    worker.addEventListener('error', (event) => {
      this.trouble = say`The plan could not be made (${event.message || say`the planner stopped`}). The house is saved; undo the last change to see its plan again.`;
      this.#finish();
    });
    return worker;
  }

  #endWorker(): void {
    this.#worker.terminate();
    this.#worker = this.#newWorker();
    this.#finish();
  }

  #send(asked: Asked): void {
    this.#number += 1;
    this.#current = asked;
    this.#began = performance.now();
    this.isWorking = true;
    this.isLookingLonger = asked.effort === 'patient';
    this.#worker.postMessage({ number: this.#number, house: factsOfPlans(asked.house), effort: asked.effort, stops: this.#stops } satisfies PlanRequest);
  }

  #take(answer: PlanAnswer): void {
    if (answer.number !== this.#number || !this.#current) return;
    if (answer.kind === 'progress') this.progress = answer;
    else if (answer.kind === 'dropped') this.#finish();
    else {
      this.plan = answer.plan;
      this.planned = this.#current.house;
      this.isQuick = !answer.isLast;
      this.isCutShort = answer.isCutShort;
      this.hasLookedLonger = this.isLookingLonger;
      this.trouble = null;
      if (answer.isLast) this.#finish();
    }
  }

  #finish(): void {
    const next = this.#waiting;
    clearTimeout(this.#ending);
    this.#ending = undefined;
    this.#current = null;
    this.#waiting = null;
    this.isWorking = false;
    this.isLookingLonger = false;
    this.progress = null;
    if (next) this.#send({ house: next, effort: 'usual' });
  }
}
