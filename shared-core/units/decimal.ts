import { assert } from '../base/index.ts';

/**
 * A whole count of tenths, hundredths and so on, not negative, as a plain decimal with all its decimals.
 *
 * `fixedDecimal(8400, 2)` is `84.00`; `fixedDecimal(7, 0)` is `7`.
 */
export function fixedDecimal(count: number, decimals: number): string {
  assert(Number.isSafeInteger(count) && count >= 0, `${count} is a safe integer and not negative`);
  if (decimals === 0) return String(count);
  const digits = String(count).padStart(decimals + 1, '0');
  return `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/**
 * The same without the zeros at its end.
 *
 * `shortDecimal(37600, 4)` is `3.76`; `shortDecimal(20000, 4)` is `2`.
 */
export function shortDecimal(count: number, decimals: number): string {
  const fixed = fixedDecimal(count, decimals);
  return decimals === 0 ? fixed : fixed.replace(/\.?0+$/, '');
}
