import { fault, good, type Outcome } from '../base/index.ts';
import { modulo } from './integer.ts';
import { quoteTyped } from './quote-typed.ts';
import { say } from '../words/index.ts';

/** In digits. */
export const GTIN_LENGTHS: readonly number[] = [8, 12, 13, 14];
const LONGEST = 14;
const TAKES = say`it takes a GTIN of 8, 12, 13 or 14 digits, the last of which checks the others`;

/**
 * The check digit that follows other digits.
 *
 * Weights 3 and 1 in turn from the right; what the sum lacks to the next ten. Source: GS1 General Specifications, check
 * digits (from memory). Example: 629104150021 is followed by 3.
 */
export function checkDigitOf(digits: string): number {
  const sum = [...digits].reverse().reduce((total, digit, index) => total + Number(digit) * (modulo(index, 2) === 0 ? 3 : 1), 0);
  return modulo(-sum, 10);
}

/** What is wrong with a number that ends with its check digit; null where nothing is. */
export function faultOfCheckDigit(digits: string): string | null {
  const due = checkDigitOf(digits.slice(0, -1));
  return digits.endsWith(String(due)) ? null : say`${quoteTyped(digits)} does not check; the last digit should be ${due}: a digit was read or typed wrongly`;
}

/**
 * A GTIN whose length and check digit are right, as it was given.
 *
 * Shapes: 8, 12, 13 or 14 digits and nothing between them. Fails, with a message that names the code, what is wrong and
 * what is accepted. Source: GS1 General Specifications, GTIN and check digits (from memory).
 * Example: 6291041500213 is good; of 6291041500214 the last digit should be 3.
 */
export function checkGtin(digits: string): Outcome<string> {
  if (!/^[0-9]+$/.test(digits)) return fault('', say`${quoteTyped(digits)} is not of digits alone; ${TAKES}`);
  if (digits.length === 1) return fault('', say`${quoteTyped(digits)} has 1 digit; ${TAKES}`);
  if (!GTIN_LENGTHS.includes(digits.length)) return fault('', say`${quoteTyped(digits)} has ${digits.length} digits; ${TAKES}`);
  const wrong = faultOfCheckDigit(digits);
  return wrong === null ? good(digits) : fault('', `${wrong}; ${TAKES}`);
}

/**
 * Whether two GTINs are the same number: zeros in front tell nothing apart.
 *
 * A GTIN-12 is the GTIN-13 with one zero in front and the GTIN-14 with two. Source: GS1 General Specifications, GTINs in
 * databases (from memory). Example: 614141000012 and 00614141000012 are the same.
 */
export function sameGtin(one: string, other: string): boolean {
  return one.padStart(LONGEST, '0') === other.padStart(LONGEST, '0');
}
