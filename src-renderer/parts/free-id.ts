/** An id that says what the thing is, and which none of the others has. */
export function idFor(name: string, otherwise: string, taken: readonly string[]): string {
  const stem = name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+/, '').slice(0, 30).replace(/-+$/, '');
  return freeId(stem || otherwise, taken);
}

export function freeId(stem: string, taken: readonly string[]): string {
  if (!taken.includes(stem)) return stem;
  let number = 2;
  while (taken.includes(`${stem}${number}`)) number += 1;
  return `${stem}${number}`;
}
