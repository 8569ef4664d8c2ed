const NARROW = /[\s.,:;'’"|!ijlt()/-]/;
const WIDE = /[mwMW−]/;

/**
 * How wide a text is at most, in heights of its own letters, without measuring a font.
 *
 * Figures are tabular and count 0.62. A drawing only asks whether words would touch, so more is better than less.
 * Example: `7 3/8 in` is about 3.6 heights wide.
 */
export function textWidth(text: string): number {
  return [...text].reduce((sum, letter) => sum + (NARROW.test(letter) ? 0.34 : WIDE.test(letter) ? 0.86 : 0.62), 0);
}
