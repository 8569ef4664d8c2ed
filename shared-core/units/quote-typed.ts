import { say } from '../words/index.ts';

const LONGEST_QUOTE = 40;

/**
 * What somebody typed, pasted or scanned as it stands in a message: in quotes, short, and with control characters in sight.
 *
 * `quoteTyped('10\u001d37')` is `‘10␝37’`.
 */
export function quoteTyped(text: string): string {
  const characters = [...text.slice(0, 2 * LONGEST_QUOTE)];
  const shown = characters.slice(0, LONGEST_QUOTE).map(inSight).join('');
  return say`‘${characters.length > LONGEST_QUOTE ? `${shown}…` : shown}’`;
}

/** Unicode has a picture of each control character of ASCII, from U+2400 on, and a sign for what has none. */
function inSight(character: string): string {
  const code = character.codePointAt(0)!;
  if (code < 0x20) return String.fromCodePoint(0x2400 + code);
  if (code === 0x7f) return '\u2421';
  return code > 0x7f && code < 0xa0 ? '\ufffd' : character;
}
