/**
 * An id that says what the thing is, and which none of the others has.
 *
 * `idFor('Picture rail', 'rail', ['picture-rail'])` is `picture-rail2`; a name without a letter or a digit gives `otherwise`.
 */
export function idFor(name: string, otherwise: string, taken: readonly string[]): string {
  const plain = name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+/, '');
  // By whole letters: half of one is none.
  const stem = [...plain].slice(0, 30).join('').replace(/-+$/, '');
  return freeId(stem || otherwise, taken);
}

/**
 * The stem, or the stem with the first number from 2 on that makes it one that is not taken.
 *
 * `freeId('door', ['door', 'door2'])` is `door3`.
 */
export function freeId(stem: string, taken: readonly string[]): string {
  const there = new Set(taken);
  if (!there.has(stem)) return stem;
  let number = 2;
  while (there.has(`${stem}${number}`)) number += 1;
  return `${stem}${number}`;
}
