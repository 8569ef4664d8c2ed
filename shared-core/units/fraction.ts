import { assert, fault, good, type Outcome } from '../base/index.ts';
import { VULGAR_FRACTIONS } from './vulgar-fractions.ts';
import { say } from '../words/index.ts';

/** A part of a whole, in lowest terms: a half-drop is 1 over 2. */
export interface Fraction {
  readonly numerator: number;
  readonly denominator: number;
}

/** The finest part that is read; no match comes near it. */
export const MAX_DENOMINATOR = 64;

const EXAMPLES = say`write for example 1/2 or 1/3`;

/**
 * The proper fraction that somebody wrote, in lowest terms.
 *
 * Reads `1/2`, `1 / 2`, `1⁄2` and `½`: more than nothing, less than one, with a denominator up to 64. Fails, with a
 * message that quotes the text and says what would be accepted, on anything else.
 *
 * `parseFraction('2/4')` is 1 over 2.
 */
export function parseFraction(text: string): Outcome<Fraction> {
  const trimmed = text.trim();
  if (trimmed === '') return fault('', say`There is no fraction here; ${EXAMPLES}`);
  const shown = trimmed.length > 30 ? `${trimmed.slice(0, 30)}…` : trimmed;
  const vulgar = VULGAR_FRACTIONS.get(trimmed);
  if (vulgar !== undefined) return good(reduced(vulgar[0], vulgar[1]));
  const written = trimmed.length > 30 ? null : /^(\d+)\s*[/⁄∕]\s*(\d+)$/.exec(trimmed);
  if (written === null) return fault('', say`‘${shown}’ is not a fraction; ${EXAMPLES}`);
  const over = BigInt(written[1] ?? '');
  const under = BigInt(written[2] ?? '');
  if (under === 0n) return fault('', say`‘${shown}’ has a zero under the line; ${EXAMPLES}`);
  if (under > BigInt(MAX_DENOMINATOR)) {
    return fault('', say`‘${shown}’ is too fine; the number under the line may be up to ${MAX_DENOMINATOR}`);
  }
  if (over === 0n) return fault('', say`‘${shown}’ is nothing; ${EXAMPLES}`);
  if (over >= under) return fault('', say`‘${shown}’ is not less than one; ${EXAMPLES}`);
  return good(reduced(Number(over), Number(under)));
}

/**
 * A fraction as `parseFraction` reads it.
 *
 * `printFraction({ numerator: 1, denominator: 2 })` is `1/2`.
 */
export function printFraction({ numerator, denominator }: Fraction): string {
  return `${numerator}/${denominator}`;
}

/**
 * A fraction in lowest terms.
 *
 * Takes safe integers, `numerator` not negative and `denominator` above zero; anything else is a bug of ours.
 *
 * `reduced(32, 64)` is 1 over 2.
 */
export function reduced(numerator: number, denominator: number): Fraction {
  assert(Number.isSafeInteger(numerator) && numerator >= 0, `the numerator ${numerator} is a count`);
  assert(Number.isSafeInteger(denominator) && denominator > 0, `the denominator ${denominator} is above zero`);
  let divisor = denominator;
  let rest = numerator;
  while (rest !== 0) [divisor, rest] = [rest, divisor % rest];
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}
