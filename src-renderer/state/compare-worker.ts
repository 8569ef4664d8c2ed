import type { House } from '../../shared-core/house/index.ts';
import type { OrderLine } from '../../shared-core/ordering/index.ts';
import { languageOf, speak } from '../../shared-core/words/index.ts';

export interface CompareRequest {
  readonly house: House;
  readonly line: OrderLine;
}

speak(languageOf(self.name));
const loaded = import('../../shared-core/plan/index.ts');
self.addEventListener('message', ({ data }: MessageEvent<CompareRequest>) => {
  loaded.then(({ countOtherwise }) => self.postMessage(countOtherwise(data.house, data.line))).catch(reportError);
});
