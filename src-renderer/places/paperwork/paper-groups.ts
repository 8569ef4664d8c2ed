import type { PaperKind, PaperListing, PaperName, PaperSize } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';

interface PaperGroup {
  readonly title: string;
  readonly papers: readonly PaperListing[];
}

const GROUPS: readonly { readonly title: string; readonly kinds: readonly PaperKind[] }[] = [
  { title: say`For the supplier`, kinds: ['order', 'orders', 'placed-order', 'goods-in'] },
  { title: say`For the room`, kinds: ['job-sheets', 'job-sheet'] },
  { title: say`For the table`, kinds: ['cut-list', 'shopping-list'] },
  { title: say`For the customer`, kinds: ['quote', 'calendar'] },
  { title: say`To keep`, kinds: ['record'] },
];

export const SIZE_WORDS: Readonly<Record<PaperSize, string>> = { a4: say`A4`, letter: say`US Letter` };

/** The papers by whom they are for, without groups that have none. */
export function groupPapers(papers: readonly PaperListing[]): readonly PaperGroup[] {
  return GROUPS.map(({ title, kinds }) => ({ title, papers: papers.filter(({ kind }) => kinds.includes(kind)) })).filter((group) => group.papers.length > 0);
}

/** Its own among the papers of a house. */
export function keyOf({ kind, of }: PaperName): string {
  return `${kind} ${of ?? ''}`;
}
