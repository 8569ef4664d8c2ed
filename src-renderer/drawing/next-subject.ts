import { type Subject, subjectKey, type SubjectKind } from '../../shared-core/drawing/index.ts';

export type Step = 'left' | 'right' | 'up' | 'down' | 'first' | 'last';

/** What the keyboard comes to first; other kinds follow in the order in which they are painted. */
const FIRST_KINDS: readonly SubjectKind[] = ['strip', 'border-length', 'wall'];

/**
 * Where a step leads from one subject of a drawing: left and right to its neighbours of the same kind, down and up to
 * the first of the next kind, first and last to the ends of its kind; null where nothing is drawn.
 *
 * From nowhere any of them leads to the first: strip 0 of an elevation, the first wall of a plan.
 */
export function nextSubject(subjects: readonly Subject[], from: string | null, step: Step): Subject | null {
  const drawn = new Set(subjects.map(({ kind }) => kind));
  const kinds = [...FIRST_KINDS.filter((kind) => drawn.has(kind)), ...[...drawn].filter((kind) => !FIRST_KINDS.includes(kind))];
  const ofKind = (kind: SubjectKind | undefined) => subjects.filter((subject) => subject.kind === kind);
  const current = subjects.find((subject) => subjectKey(subject) === from);
  if (!current) return ofKind(kinds[0])[0] ?? null;
  const row = ofKind(current.kind);
  const [place, kindPlace] = [row.indexOf(current), kinds.indexOf(current.kind)];
  switch (step) {
    case 'left':
      return row[Math.max(0, place - 1)]!;
    case 'right':
      return row[Math.min(row.length - 1, place + 1)]!;
    case 'first':
      return row[0]!;
    case 'last':
      return row.at(-1)!;
    default: {
      const next = kinds[kindPlace + (step === 'down' ? 1 : -1)];
      return next ? ofKind(next)[0]! : current;
    }
  }
}
