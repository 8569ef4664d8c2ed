import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './make-paper.ts';
import type { Sheet } from './pdf/sheet.ts';

export function quoteSheet({ house }: PaperFacts): Sheet {
  return { title: say`Quote`, about: null, blocks: [{ kind: 'text', text: house.name }] };
}
