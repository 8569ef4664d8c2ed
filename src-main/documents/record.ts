import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './make-paper.ts';
import type { Sheet } from './pdf/sheet.ts';

export function recordSheets({ house }: PaperFacts): readonly Sheet[] {
  return [{ title: say`House record`, about: null, blocks: [{ kind: 'text', text: house.name }] }];
}
