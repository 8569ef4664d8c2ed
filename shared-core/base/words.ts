const NOT_SPELLED = /[^\p{L}\p{N}]+/gu;
const MARKS = /\p{M}+/gu;
/** Letters that no mark can be taken from. */
const PLAIN_LETTERS: Readonly<Record<string, string>> = { ß: 'ss', ø: 'o', ł: 'l', đ: 'd', æ: 'ae', œ: 'oe' };

/**
 * A text without what people spell differently: capitals, accents, and whatever is neither letter nor figure.
 *
 * Example: 'K-2041 Café' is 'k2041cafe'.
 */
export function squeeze(text: string): string {
  return text.normalize('NFKD').replace(MARKS, '').toLowerCase().replace(/[ßøłđæœ]/g, (letter) => PLAIN_LETTERS[letter]!).replace(NOT_SPELLED, '');
}

/**
 * The words of what was typed into a field that finds, each squeezed; what has no letter and no figure is no word.
 *
 * Example: ' K-2041 & hall' is 'k2041' and 'hall'.
 */
export function wordsTyped(typed: string): readonly string[] {
  return typed.split(/\s+/).map(squeeze).filter((word) => word !== '');
}

/**
 * Whether every word typed is said of something, wherever it stands; nothing typed is said of everything.
 *
 * Example: 'k2041 bed' is said of ['K-2041', 'Front bedroom'], 'hall' is not.
 */
export function isSaid(typed: string, said: readonly string[]): boolean {
  const there = said.map(squeeze).join(' ');
  return wordsTyped(typed).every((word) => there.includes(word));
}

/** A text as the beginning of a sentence: `capital('wall A')` is 'Wall A'. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
