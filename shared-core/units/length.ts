import { assert, type Brand } from '../base/index.ts';
import { ratio, roundRatio, writtenRatio } from './ratio.ts';

/**
 * A length in units of 1/320 mm, which is 1/8128 in: 0.1 mm (32 units) and 1/64 in (127 units) are both exact.
 *
 * A safe integer, made by `lengthOf`. Sums and whole multiples are plain arithmetic, made a length again by
 * `lengthOf`; divisions go through `floorDivide` and its like.
 */
export type Length = Brand<number, 'Length'>;

/** How a house shows its lengths. */
export type LengthStyle = 'imperial' | 'metric';

export const UNITS_PER_MILLIMETRE = 320;
export const UNITS_PER_INCH = 8128;
export const UNITS_PER_FOOT = 12 * UNITS_PER_INCH;
export const UNITS_PER_METRE = 1000 * UNITS_PER_MILLIMETRE;

/**
 * So many units of 1/320 mm as a length.
 *
 * A number that is not a safe integer is a bug of ours.
 *
 * `lengthOf(8128)` is one inch.
 */
export function lengthOf(units: number): Length {
  assert(Number.isSafeInteger(units), `${units} units of length is a safe integer`);
  // Adding zero turns -0 into 0, which would otherwise be told apart by deep comparison.
  return (units + 0) as Length;
}

/**
 * So many millimetres as a length, rounded half away from zero to the unit of 1/320 mm.
 *
 * Takes the decimal as written: 2.7 is exactly 27/10. A number that is not finite, or too large for a safe integer of
 * units, is a bug of ours. For numbers in code; what people type goes through `parseLength`.
 *
 * `millimetres(2.7)` is 864 units.
 */
export function millimetres(count: number): Length {
  return written(count, UNITS_PER_MILLIMETRE);
}

/**
 * So many inches as a length, rounded half away from zero to the unit of 1/8128 in.
 *
 * Takes the decimal as written. A number that is not finite, or too large for a safe integer of units, is a bug of
 * ours. One inch is 25.4 mm exactly (NIST SP 811).
 *
 * `inches(0.5)` is 4064 units; `inches(0.1)` is 812.8, so 813 units.
 */
export function inches(count: number): Length {
  return written(count, UNITS_PER_INCH);
}

function written(count: number, unitsPerOne: number): Length {
  if (Number.isSafeInteger(count)) return lengthOf(count * unitsPerOne);
  const { numerator, denominator } = writtenRatio(count);
  return lengthOf(Number(roundRatio(ratio(numerator * BigInt(unitsPerOne), denominator))));
}

export const ZERO_LENGTH = lengthOf(0);

/** 1000 m: longer than any roll or wall, and short enough that sums of thousands stay safe integers. */
export const MAX_LENGTH = lengthOf(1000 * UNITS_PER_METRE);
