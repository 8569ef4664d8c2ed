import type { House } from '../../shared-core/house/index.ts';
import type { OrderLine } from '../../shared-core/ordering/index.ts';
import { countOtherwise } from '../../shared-core/plan/index.ts';

export interface CompareRequest {
  readonly house: House;
  readonly line: OrderLine;
}

self.addEventListener('message', ({ data }: MessageEvent<CompareRequest>) => self.postMessage(countOtherwise(data.house, data.line)));
