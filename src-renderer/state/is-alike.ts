/**
 * Whether two values of plain data say the same, in whatever order their keys stand.
 *
 * Example: { a: 1, b: [2] } and { b: [2], a: 1 } do; a key that is undefined is as good as none.
 */
export function isAlike(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null || Array.isArray(one) !== Array.isArray(other)) return false;
  const [ofOne, ofOther] = [one, other] as readonly Readonly<Record<string, unknown>>[];
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].every((key) => isAlike(ofOne![key], ofOther![key]));
}
