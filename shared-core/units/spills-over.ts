import type { LengthUnit } from './length-unit.ts';
import { lengthTokens } from './length-tokens.ts';
import { type Ratio, ratio } from './ratio.ts';

/**
 * Whether a length was written with more of a smaller unit than goes into the larger one before it, as a slip often is.
 *
 * Example: `spillsOver(`9' 13"`)` and `spillsOver('3 m 120 cm')` are true, `spillsOver(`9' 11 15/16"`)` and
 * `spillsOver('108 in')` false.
 */
export function spillsOver(written: string): boolean {
  const tokens = lengthTokens(written.trim());
  if (!tokens.ok) return false;
  let larger: LengthUnit | null = null;
  let count: Ratio = ratio(0n, 1n);
  for (const token of tokens.value) {
    if (token.kind === 'number') count = token.value;
    if (token.kind !== 'unit') continue;
    const { unit } = token;
    if (larger && larger.units > unit.units && count.numerator * BigInt(unit.units) >= count.denominator * BigInt(larger.units)) return true;
    larger = unit;
  }
  return false;
}
