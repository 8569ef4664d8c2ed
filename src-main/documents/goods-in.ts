import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './make-paper.ts';
import type { Sheet } from './pdf/sheet.ts';

export function goodsInSheets({ house }: PaperFacts): readonly Sheet[] {
  return [{ title: say`Goods in`, about: null, blocks: [{ kind: 'text', text: house.name }] }];
}
