import { shortDecimal } from './decimal.ts';
import type { LengthStyle } from './length.ts';
import { ratio, type Ratio, roundRatio, writtenRatio } from './ratio.ts';
import { say, sayDecimal } from '../words/index.ts';

const MILLILITRES_PER_LITRE = 1000n;
const NANOLITRES_PER_MILLILITRE = 1_000_000n;
/** 231 cubic inches, 3.785411784 L. */
export const NANOLITRES_PER_US_GALLON = 3_785_411_784n;
/** 4.54609 L. */
export const NANOLITRES_PER_IMPERIAL_GALLON = 4_546_090_000n;

/**
 * A gallon, or so much of any volume that is written in nanolitres, in millilitres, exactly.
 *
 * `millilitresOf(NANOLITRES_PER_US_GALLON)` is 3785411784/1000000.
 */
export function millilitresOf(nanolitres: bigint): Ratio {
  return ratio(nanolitres, NANOLITRES_PER_MILLILITRE);
}

/**
 * Litres as a number is written, in whole millilitres; what is finer is left out, as a tin of 0.9463 L surely holds 946 mL.
 *
 * Takes a number above 0, as written in source code: 0.75 is exactly 3/4.
 *
 * `wholeMillilitres(0.75)` is 750; `wholeMillilitres(3.7854)` is 3785.
 */
export function wholeMillilitres(litres: number): number {
  const { numerator, denominator } = writtenRatio(litres);
  return Number((numerator * MILLILITRES_PER_LITRE) / denominator);
}

/**
 * Whole millilitres for reading: metric in litres to 0.01 L, imperial in US gallons to 0.01, rounded half away from zero.
 *
 * The rounding is only for reading. `showVolume(3104, 'metric')` is `3.1 L`; `showVolume(3104, 'imperial')` is `0.82 US gal`.
 */
export function showVolume(millilitres: number, style: LengthStyle): string {
  const whole = style === 'metric' ? MILLILITRES_PER_LITRE * NANOLITRES_PER_MILLILITRE : NANOLITRES_PER_US_GALLON;
  const count = Number(roundRatio(ratio(BigInt(millilitres) * NANOLITRES_PER_MILLILITRE * 100n, whole)));
  const written = sayDecimal(shortDecimal(count, 2));
  return style === 'metric' ? `${written} L` : say`${written} US gal`;
}
