import { Worker } from 'node:worker_threads';
import { failure, type Reply } from '../../shared-core/contract/index.ts';
import type { PaperForm, PaperName, PaperSize } from '../../shared-core/plan/index.ts';
import { say, spokenLanguage } from '../../shared-core/words/index.ts';
import type { StampedHouse } from './house-files.ts';
import type { PaperFile } from './paper-desk.ts';

export interface PaperQuestion {
  readonly number: number;
  /** Only where it is another state than the question before was about. */
  readonly saved: StampedHouse | null;
  readonly name: PaperName;
  readonly form: PaperForm;
  readonly size: PaperSize;
}

export interface PaperAnswer {
  readonly number: number;
  readonly paper: PaperFile | null;
  readonly trouble: string | null;
}

interface Waiting {
  readonly file: string;
  readonly settle: (reply: Reply<PaperFile>) => void;
}

/** Built, the worker lies beside the program; from its source, beside this file. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './paper-worker.ts' : './paper-worker.js', import.meta.url);

/** Makes papers beside the office, which answers everything else meanwhile: a plan may take seconds. One after the other, of whichever house. */
export class PaperMaker {
  #worker: Worker | null = null;
  /** Which state of which file the worker has once it has come to the last question. */
  #state: string | null = null;
  #number = 0;
  readonly #waiting = new Map<number, Waiting>();

  make(file: string, saved: StampedHouse, name: PaperName, form: PaperForm, size: PaperSize): Promise<Reply<PaperFile>> {
    const state = JSON.stringify([file, saved.revision]);
    const worker = this.#worker ?? this.#start();
    const number = (this.#number += 1);
    return new Promise((settle) => {
      this.#waiting.set(number, { file, settle });
      const question: PaperQuestion = { number, saved: this.#state === state ? null : saved, name, form, size };
      worker.postMessage(question);
      this.#state = state;
    });
  }

  /** Gives up what is being made where any of it is of that house; whoever waits is told so, and may ask again. */
  stop(file: string): void {
    if ([...this.#waiting.values()].some((one) => one.file === file)) this.close();
  }

  close(): void {
    this.#end(failure('stopped', say`The papers were given up before they were made.`));
  }

  #start(): Worker {
    const worker = new Worker(WORKER, { workerData: { language: spokenLanguage().code } });
    worker.unref();
    worker.on('message', ({ number, paper, trouble }: PaperAnswer) => {
      const settle = this.#waiting.get(number)?.settle;
      this.#waiting.delete(number);
      if (trouble !== null) settle?.(failure('host-failure', say`The paper could not be made: ${trouble}. Nothing was changed.`));
      else settle?.(paper ? { ok: true, value: paper } : failure('refused', say`There is nothing to write on this paper yet.`));
    });
    worker.on('error', (error) => {
      if (worker === this.#worker) this.#end(failure('host-failure', say`The paper could not be made: ${error.message}. Nothing was changed.`));
    });
    this.#worker = worker;
    return worker;
  }

  #end(reply: Reply<PaperFile>): void {
    const worker = this.#worker;
    this.#worker = null;
    this.#state = null;
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { settle } of waiting) settle(reply);
    void worker?.terminate();
  }
}
