import { assert } from '../base/index.ts';

/** An exact number of any size, while it is being read; not reduced. The denominator is above zero. */
export interface Ratio {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export function ratio(numerator: bigint, denominator = 1n): Ratio {
  assert(denominator > 0n, 'the denominator is above zero');
  return { numerator, denominator };
}

export function addRatios(first: Ratio, second: Ratio): Ratio {
  return ratio(
    first.numerator * second.denominator + second.numerator * first.denominator,
    first.denominator * second.denominator,
  );
}

/**
 * The nearest whole number; a half goes away from zero.
 *
 * `roundRatio(ratio(5n, 2n))` is 3n; `roundRatio(ratio(-5n, 2n))` is -3n.
 */
export function roundRatio({ numerator, denominator }: Ratio): bigint {
  const size = numerator < 0n ? -numerator : numerator;
  const rounded = (2n * size + denominator) / (2n * denominator);
  return numerator < 0n ? -rounded : rounded;
}

/**
 * The exact value of unsigned decimal digits, as `12`, `3.76`, `3,76` or `.5`.
 *
 * The caller has checked the shape; anything else is a bug of ours.
 *
 * `decimalRatio('3,76')` is 376/100.
 */
export function decimalRatio(digits: string): Ratio {
  const shape = /^(\d*)(?:[.,](\d+))?$/.exec(digits);
  assert(shape !== null && digits !== '', `‘${digits}’ is decimal digits`);
  const decimals = shape[2] ?? '';
  return ratio(BigInt((shape[1] ?? '') + decimals), 10n ** BigInt(decimals.length));
}

/**
 * The decimal that a number is written as in source code: 2.7 is 27/10 and not the binary value next to it.
 *
 * Takes any finite number; anything else is a bug of ours.
 *
 * `writtenRatio(2.7)` is 27/10.
 */
export function writtenRatio(value: number): Ratio {
  assert(Number.isFinite(value), `${value} is a finite number`);
  const [digits = '', exponent = '0'] = String(Math.abs(value)).split('e');
  const { numerator, denominator } = decimalRatio(digits);
  const power = 10n ** BigInt(exponent.replace(/^[+-]/, ''));
  const signed = value < 0 ? -numerator : numerator;
  return exponent.startsWith('-') ? ratio(signed, denominator * power) : ratio(signed * power, denominator);
}
