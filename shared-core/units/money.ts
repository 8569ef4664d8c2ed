import { assert, type Brand, fault, good, type Outcome } from '../base/index.ts';
import { fixedDecimal } from './decimal.ts';
import { ratio, roundRatio } from './ratio.ts';
import { say, sayDecimal } from '../words/index.ts';

/** An amount in a currency's smallest unit (cents, yen, fils): a safe integer. The house says which currency. */
export type Money = Brand<number, 'Money'>;

// ISO 4217, from memory. Codes for accounting units only (CLF, UYW, with four decimals) are left out.
const WITHOUT_DECIMALS = new Set(
  'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' '),
);
const WITH_THREE_DECIMALS = new Set('BHD IQD JOD KWD LYD OMR TND'.split(' '));

/**
 * So many of a currency's smallest unit as an amount.
 *
 * A number that is not a safe integer is a bug of ours. Negative is allowed, for differences.
 *
 * `moneyOf(8400)` is 84.00 in a currency with two decimals.
 */
export function moneyOf(minorUnits: number): Money {
  assert(Number.isSafeInteger(minorUnits), `${minorUnits} minor units is a safe integer`);
  return (minorUnits + 0) as Money;
}

export const ZERO_MONEY = moneyOf(0);

/** The most that is read as one amount, in minor units; sums of thousands of such stay safe integers. */
export const MAX_MONEY = moneyOf(1_000_000_000_000);

/**
 * How many decimals a currency has.
 *
 * Takes the three capital letters of ISO 4217; any code that is not known to have 0 or 3 is taken to have 2.
 *
 * `minorDigits('USD')` is 2; `minorDigits('JPY')` is 0; `minorDigits('KWD')` is 3.
 */
export function minorDigits(currency: string): 0 | 2 | 3 {
  if (WITHOUT_DECIMALS.has(currency)) return 0;
  return WITH_THREE_DECIMALS.has(currency) ? 3 : 2;
}

/**
 * The amount that somebody wrote as a plain decimal.
 *
 * Reads `84`, `84.5`, `84.00` and `84,50`, up to as many decimals as the currency has. Fails, with a message that
 * quotes the text and says what would be accepted, on a sign, a currency mark, marks between thousands, more decimals
 * and more than 1,000,000,000,000 minor units. Nothing is rounded.
 *
 * `parseMoney('84,50', 'USD')` is 8450 cents.
 */
export function parseMoney(text: string, currency: string): Outcome<Money> {
  const digits = minorDigits(currency);
  const examples = say`write for example ${sayDecimal(fixedDecimal(84 * 10 ** digits, digits))}`;
  const trimmed = text.trim();
  if (trimmed === '') return fault('', say`There is no amount here; ${examples}`);
  if (trimmed.length > 40) return fault('', say`‘${trimmed.slice(0, 30)}…’ is too long for an amount; ${examples}`);
  const refused = (problem: string) => fault('', say`‘${trimmed}’ ${problem}`);

  if (/^[-−]/.test(trimmed)) return refused(say`is below zero; ${examples}`);
  const shape = /^(\d*)(?:[.,](\d+))?$/.exec(trimmed);
  if (shape === null) {
    return /^\d[\d.,'’\s]*\d$/.test(trimmed)
      ? refused(say`has marks between thousands; write the digits without them, and ${examples}`)
      : refused(say`is not an amount; ${examples}, without a currency sign`);
  }
  const [, whole = '', decimals = ''] = shape;
  if (decimals.length > digits) {
    return refused(
      digits === 0
        ? say`has too many decimals; ${currency} has no decimals, and there are no marks between thousands`
        : say`has too many decimals; ${currency} has up to ${digits} decimals, and there are no marks between thousands`,
    );
  }
  const minorUnits = BigInt(whole + decimals.padEnd(digits, '0'));
  if (minorUnits > BigInt(MAX_MONEY)) {
    return refused(say`is too much; the most accepted is ${sayDecimal(printMoney(MAX_MONEY, currency))}`);
  }
  return good(moneyOf(Number(minorUnits)));
}

/**
 * An amount as a plain decimal with all the currency's decimals, exactly; no locale.
 *
 * `printMoney(moneyOf(8400), 'USD')` is `84.00`; `printMoney(moneyOf(8400), 'JPY')` is `8400`.
 */
export function printMoney(money: Money, currency: string): string {
  return (money < 0 ? '-' : '') + fixedDecimal(Math.abs(money), minorDigits(currency));
}

/**
 * An amount with its currency, for reading, with the decimal mark of the language.
 *
 * `showMoney(moneyOf(8400), 'USD')` is `84.00 USD`.
 */
export function showMoney(money: Money, currency: string): string {
  return `${sayDecimal(printMoney(money, currency))} ${currency}`;
}

/**
 * A part or a multiple of an amount, rounded once to the smallest unit; a half goes away from zero.
 *
 * Whole numbers in, the denominator above 0; exact at any size, as no float takes part.
 *
 * `scaleMoney(moneyOf(42000), 7250, 100000)` is 3045: 7.25 % of 420.00 is 30.45.
 */
export function scaleMoney(money: Money, numerator: number, denominator: number): Money {
  return moneyOf(Number(roundRatio(ratio(BigInt(money) * BigInt(numerator), BigInt(denominator)))));
}

/**
 * An amount in parts as large as their weights ask for, together exactly the amount.
 *
 * Takes weights that are whole numbers from 0, one of them above 0. Each part is rounded down to the smallest unit of
 * money; what is over goes by one unit each to the parts that lost most, the earlier ones first.
 *
 * `splitMoney(moneyOf(1000), [1, 1, 1])` is 334, 333 and 333.
 */
export function splitMoney(money: Money, weights: readonly number[]): readonly Money[] {
  const whole = weights.reduce((sum, weight) => sum + BigInt(weight), 0n);
  assert(whole > 0n, 'something weighs');
  const shares = weights.map((weight, index) => {
    const exact = BigInt(money) * BigInt(weight);
    return { index, part: exact / whole, lost: exact % whole };
  });
  let over = BigInt(money) - shares.reduce((sum, { part }) => sum + part, 0n);
  for (const share of shares.toSorted((one, other) => Number(other.lost - one.lost))) {
    if (over === 0n) break;
    share.part += 1n;
    over -= 1n;
  }
  return shares.map(({ part }) => moneyOf(Number(part)));
}
