import { assert } from '../base/index.ts';
import { shortDecimal } from './decimal.ts';
import { reduced } from './fraction.ts';
import { floorDivide, modulo, roundedDivide } from './integer.ts';
import { type Length, type LengthStyle, lengthOf, UNITS_PER_INCH, UNITS_PER_MILLIMETRE } from './length.ts';
import { sayDecimal } from '../words/index.ts';

const FINEST_INCH_DENOMINATOR = 64;
const UNITS_PER_SIXTY_FOURTH = UNITS_PER_INCH / FINEST_INCH_DENOMINATOR;
const UNITS_PER_TENTH_MILLIMETRE = UNITS_PER_MILLIMETRE / 10;
const TENTHS_PER_CENTIMETRE = 100;
const TENTHS_PER_METRE = 10_000;
/** One unit, 1/320 mm, is 3125 millionths of a millimetre: every length ends within six decimals. */
const MILLIONTHS_PER_UNIT = 1_000_000 / UNITS_PER_MILLIMETRE;

/**
 * A length written out exactly, so that reading it gives the same length again.
 *
 * Imperial prints whole 64ths of an inch: from one foot `12' 4 1/2"`, `8'`, `8' 0 1/2"`; below it `7 3/8 in`. Metric
 * prints whole tenths of a millimetre: `3.76 m` from 1 m, `62.5 cm` from 1 cm, else `3.2 mm`. A length that is not
 * whole in its style is printed as exact decimal millimetres, `0.003125 mm`. A negative length has a minus sign in
 * front. No rounding, no locale.
 *
 * `printLength(inches(148.5), 'imperial')` is `12' 4 1/2"`; `printLength(millimetres(3760), 'metric')` is `3.76 m`.
 */
export function printLength(length: Length, style: LengthStyle): string {
  const size = lengthOf(Math.abs(length));
  const sign = length < 0 ? '-' : '';
  if (style === 'imperial' && modulo(size, UNITS_PER_SIXTY_FOURTH) === 0) {
    return sign + printSixtyFourths(floorDivide(size, UNITS_PER_SIXTY_FOURTH));
  }
  if (style === 'metric' && modulo(size, UNITS_PER_TENTH_MILLIMETRE) === 0) {
    return sign + printTenths(floorDivide(size, UNITS_PER_TENTH_MILLIMETRE));
  }
  return sign + printMillimetres(size);
}

/**
 * A length for reading on the screen, rounded half away from zero, spelled as `printLength` spells it but with the
 * decimal mark of the language.
 *
 * Imperial is rounded to one `finestDenominator`th of an inch: 1, 2, 4, 8, 16, 32 or 64 (another one is a bug of ours).
 * Metric is rounded to 1 mm. The rounding is only for reading: nothing is computed, kept or sent on from it.
 *
 * `showLength(millimetres(3760), 'imperial')` is `12' 4 1/16"`; `showLength(inches(7.4), 'metric')` is `18.8 cm`.
 */
export function showLength(length: Length, style: LengthStyle, finestDenominator = 16): string {
  assert(
    Number.isSafeInteger(finestDenominator) &&
      finestDenominator > 0 &&
      modulo(FINEST_INCH_DENOMINATOR, finestDenominator) === 0,
    `the finest denominator ${finestDenominator} is a power of two up to 64`,
  );
  const step = style === 'imperial' ? floorDivide(UNITS_PER_INCH, finestDenominator) : UNITS_PER_MILLIMETRE;
  return sayDecimal(printLength(lengthOf(roundedDivide(length, step) * step), style));
}

function printSixtyFourths(count: number): string {
  const wholeInches = floorDivide(count, FINEST_INCH_DENOMINATOR);
  const over = modulo(count, FINEST_INCH_DENOMINATOR);
  const { numerator, denominator } = reduced(over, FINEST_INCH_DENOMINATOR);
  const fraction = over === 0 ? '' : `${numerator}/${denominator}`;
  const feet = floorDivide(wholeInches, 12);
  const inches = modulo(wholeInches, 12);
  if (feet === 0) {
    if (fraction === '') return `${inches} in`;
    return inches === 0 ? `${fraction} in` : `${inches} ${fraction} in`;
  }
  if (fraction !== '') return `${feet}' ${inches} ${fraction}"`;
  return inches === 0 ? `${feet}'` : `${feet}' ${inches}"`;
}

function printTenths(count: number): string {
  if (count >= TENTHS_PER_METRE) return `${shortDecimal(count, 4)} m`;
  if (count >= TENTHS_PER_CENTIMETRE) return `${shortDecimal(count, 2)} cm`;
  return `${shortDecimal(count, 1)} mm`;
}

function printMillimetres(size: Length): string {
  // Whole millimetres and the rest apart, so that the millionths stay a safe integer however long the length.
  const millionths = modulo(size, UNITS_PER_MILLIMETRE) * MILLIONTHS_PER_UNIT;
  return `${floorDivide(size, UNITS_PER_MILLIMETRE)}${shortDecimal(millionths, 6).slice(1)} mm`;
}
