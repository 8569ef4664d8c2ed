import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './make-paper.ts';
import type { Sheet } from './pdf/sheet.ts';

export function cutListSheets({ house }: PaperFacts): readonly Sheet[] {
  return [{ title: say`Cut list`, about: null, blocks: [{ kind: 'text', text: house.name }] }];
}
