import { languageOf, speak } from '../../shared-core/words/index.ts';
import type { PlanRequest } from './answer-plan.ts';
import { answerSender } from './sent-answer.ts';

speak(languageOf(self.name));
const sent = answerSender();
const loaded = import('./answer-plan.ts');
self.addEventListener('message', ({ data }: MessageEvent<PlanRequest>) => {
  loaded.then(({ answerPlan }) => answerPlan(data, () => performance.now(), (answer) => self.postMessage(sent(answer)))).catch(reportError);
});
