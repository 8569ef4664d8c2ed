import { bad, freeId, good, type Outcome } from '../base/index.ts';
import { type LengthStyle, type Measure, parseMeasure } from '../units/index.ts';

/** One length as the exchange document writes it, or two for the left and the right end. */
export type Ends = string | [string, string];

const TURN_WORDS = ['inside', 'outside', 'straight'] as const;

export const TURN_HELP = 'A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.';

/**
 * A turn as typed: a word or its beginning, or the inner angle in degrees with or without its mark; null for anything else.
 *
 * `readTurnTyped('Out')` is `outside`; `readTurnTyped('92,5°')` is `92.5`.
 */
export function readTurnTyped(typed: string): string | null {
  const plain = typed.trim().toLowerCase().replace(/\s*(°|deg|degrees)$/, '');
  const word = plain === '' ? undefined : TURN_WORDS.find((candidate) => candidate.startsWith(plain));
  if (word) return word;
  return /^\d{1,3}([.,]\d{1,2})?$/.test(plain) ? plain.replace(',', '.') : null;
}

/**
 * A height or a floor line as its field shows it, and `readEndsTyped` reads it.
 *
 * Ends of 8' and 9' are `8' to 9'`.
 */
export function heightText(height: Measure | readonly [Measure, Measure]): string {
  return 'typed' in height ? height.typed : `${height[0].typed} to ${height[1].typed}`;
}

/**
 * A height as typed: one length, or two with 'to' between them for the left and the right end of a wall.
 *
 * `style` says how a length without a unit is read. Fails with a sentence that lacks its full stop.
 * `readEndsTyped('8 ft to 9 6', 'imperial')` is `8 ft` and `9' 6"`.
 */
export function readEndsTyped(typed: string, style: LengthStyle, what = 'A height', example = `8' to 9' 6"`): Outcome<Ends, string> {
  const ends: string[] = [];
  for (const end of typed.split(/\s+to\s+/i)) {
    const read = parseMeasure(end, style);
    if (!read.ok) return bad(read.faults.map(({ message }) => message).join(' '));
    ends.push(read.value.typed);
  }
  const [left = '', right] = ends;
  if (ends.length > 2) return bad(`${what} is one length, or two for the left and the right end, such as ${example}`);
  return good(right === undefined ? left : [left, right]);
}

/**
 * The name of the next wall of a room: the first letter that none of them has.
 *
 * `nextWallId(['A', 'C'])` is `B`; after Z comes `W`, then `W2`.
 */
export function nextWallId(taken: readonly string[]): string {
  const letters = Array.from({ length: 26 }, (_, index) => String.fromCharCode(65 + index));
  return letters.find((letter) => !taken.includes(letter)) ?? freeId('W', taken);
}
