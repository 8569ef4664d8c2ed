import { parentPort, workerData } from 'node:worker_threads';
import { languageOf, speak } from '../../shared-core/words/index.ts';
import type { PaperAnswer, PaperQuestion } from './paper-maker.ts';

speak(languageOf((workerData as { readonly language: string }).language));
// What says something as it is loaded is loaded once it is known in which language.
const { PaperDesk } = await import('./paper-desk.ts');

let desk: InstanceType<typeof PaperDesk> | null = null;
let queue: Promise<void> = Promise.resolve();

parentPort!.on('message', (question: PaperQuestion) => {
  queue = queue.then(async () => {
    if (question.saved) desk = new PaperDesk(question.saved);
    parentPort!.postMessage(await answer(question));
  });
});

async function answer({ number, name, form, size }: PaperQuestion): Promise<PaperAnswer> {
  try {
    return { number, paper: await desk!.make(name, form, size), trouble: null };
  } catch (error) {
    return { number, paper: null, trouble: error instanceof Error ? error.message : String(error) };
  }
}
