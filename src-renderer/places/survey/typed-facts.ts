import { type LengthStyle, type Measure, parseMeasure } from '../../../shared-core/units/index.ts';

/** One length as text, or two for the left and the right end. */
export type Height = string | [string, string];

const TURN_WORDS = ['inside', 'outside', 'straight'] as const;

export const TURN_HELP = 'A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.';

/** A turn as typed: a word or its beginning, or the inner angle in degrees with or without its mark. */
export function readTurnTyped(typed: string): string | null {
  const plain = typed.trim().toLowerCase().replace(/\s*(°|deg|degrees)$/, '');
  const word = plain === '' ? undefined : TURN_WORDS.find((candidate) => candidate.startsWith(plain));
  if (word) return word;
  return /^\d{1,3}([.,]\d{1,2})?$/.test(plain) ? plain.replace(',', '.') : null;
}

export function heightText(height: Measure | readonly [Measure, Measure]): string {
  return 'typed' in height ? height.typed : `${height[0].typed} to ${height[1].typed}`;
}

type HeightRead = { readonly height: Height } | { readonly trouble: string };

/** A height as typed: one length, or two with 'to' between them where the ceiling slopes along the wall. */
export function readHeightTyped(typed: string, style: LengthStyle): HeightRead {
  const ends = typed.split(/\s+to\s+/i).map((end) => parseMeasure(end, style));
  const [left, right] = ends;
  const wrong = ends.find((end) => !end.ok);
  if (wrong && !wrong.ok) return { trouble: `${wrong.faults.map(({ message }) => message).join(' ')}. Nothing was changed.` };
  if (ends.length > 2) return { trouble: "A height is one length, or two for the left and the right end, such as 8' to 9' 6\"." };
  if (!left?.ok) return { trouble: 'A height takes a length.' };
  return { height: right?.ok ? [left.value.typed, right.value.typed] : left.value.typed };
}
