import { say } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './make-paper.ts';
import type { Sheet } from './pdf/sheet.ts';

export function jobSheet({ house }: PaperFacts, _room: string, _size: string): Sheet {
  return { title: say`Job sheet`, about: null, blocks: [{ kind: 'text', text: house.name }] };
}
