import { bad, freeId, good, type Outcome } from '../base/index.ts';
import { type LengthStyle, type Measure, parseMeasure } from '../units/index.ts';
import { say, sayDecimal } from '../words/index.ts';

/** One length as the exchange document writes it, or two for the left and the right end. */
export type Ends = string | [string, string];

const TURN_WORDS = { inside: say`inside`, outside: say`outside`, straight: say`straight` };
const TURNS = Object.keys(TURN_WORDS) as readonly (keyof typeof TURN_WORDS)[];

/** After an angle, which may stand without. */
export const DEGREES = `(?:°|deg|degrees|${say`degrees`})`;
const DEGREES_BEHIND = new RegExp(`\\s*${DEGREES}$`, 'i');

/** Between the two ends of a height as somebody types it. */
const TO = say`to`;
const BETWEEN_ENDS = new RegExp(`\\s+(?:to|${TO})\\s+`, 'i');

export const TURN_HELP = say`A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.`;

/**
 * A turn as typed: a word, in the language that is spoken too, or its beginning, or the inner angle in degrees with or without its mark; null for anything else.
 *
 * `readTurnTyped('Out')` is `outside`; `readTurnTyped('92,5°')` is `92.5`.
 */
export function readTurnTyped(typed: string): string | null {
  const plain = typed.trim().toLowerCase().replace(DEGREES_BEHIND, '');
  const word = plain === '' ? undefined : TURNS.find((candidate) => candidate.startsWith(plain) || TURN_WORDS[candidate].startsWith(plain));
  if (word) return word;
  return /^\d{1,3}([.,]\d{1,2})?$/.test(plain) ? plain.replace(',', '.') : null;
}

/** A turn in words, or its angle as a number of the language that is spoken: `turnText('92.5')` is `92.5` in English. */
export function turnText(turn: string): string {
  return (TURN_WORDS as Readonly<Record<string, string>>)[turn] ?? sayDecimal(turn);
}

/**
 * A height or a floor line as its field shows it, and `readEndsTyped` reads it.
 *
 * Ends of 8' and 9' are `8' to 9'`.
 */
export function heightText(height: Measure | readonly [Measure, Measure]): string {
  return 'typed' in height ? height.typed : endsText([height[0].typed, height[1].typed]);
}

/** Both ends of a height in words: `endsText(["8'", "9'"])` is `8' to 9'`. */
export function endsText(ends: string | readonly string[]): string {
  return typeof ends === 'string' ? ends : ends.join(` ${TO} `);
}

/** The ends of a height as typed, each for itself: `8' to 9'` is `8'` and `9'`. */
export function splitEnds(typed: string): readonly string[] {
  return typed.split(BETWEEN_ENDS);
}

/**
 * A height as typed: one length, or two with 'to' between them for the left and the right end of a wall.
 *
 * `style` says how a length without a unit is read. Fails with a sentence that lacks its full stop.
 * `readEndsTyped('8 ft to 9 6', 'imperial')` is `8 ft` and `9' 6"`.
 */
export function readEndsTyped(typed: string, style: LengthStyle, what = say`A height`, example = say`8' to 9' 6"`): Outcome<Ends, string> {
  const ends: string[] = [];
  for (const end of splitEnds(typed)) {
    const read = parseMeasure(end, style);
    if (!read.ok) return bad(read.faults.map(({ message }) => message).join(' '));
    ends.push(read.value.typed);
  }
  const [left = '', right] = ends;
  if (ends.length > 2) return bad(say`${what} is one length, or two for the left and the right end, such as ${example}`);
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
