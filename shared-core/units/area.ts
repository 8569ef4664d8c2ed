import { assert, type Brand } from '../base/index.ts';
import { fixedDecimal } from './decimal.ts';
import { type Length, type LengthStyle, UNITS_PER_FOOT, UNITS_PER_METRE } from './length.ts';
import { ratio, type Ratio, roundRatio } from './ratio.ts';
import { say, sayDecimal } from '../words/index.ts';

/** An area in squares of 1/320 mm by 1/320 mm: a safe integer, so exact up to about 87,900 m². */
export type Area = Brand<number, 'Area'>;

const SQUARE_UNITS_PER_HUNDREDTH_SQUARE_METRE = BigInt(UNITS_PER_METRE / 10) ** 2n;
const SQUARE_UNITS_PER_SQUARE_FOOT = BigInt(UNITS_PER_FOOT) ** 2n;

/**
 * So many square units of 1/320 mm as an area.
 *
 * A number that is not a safe integer is a bug of ours. Negative is allowed, for what is taken off.
 *
 * `areaOf(102_400)` is one square millimetre.
 */
export function areaOf(squareUnits: number): Area {
  assert(Number.isSafeInteger(squareUnits), `${squareUnits} square units is a safe integer, at most about 87,900 m²`);
  return (squareUnits + 0) as Area;
}

export const ZERO_AREA = areaOf(0);

/**
 * The area of a rectangle, exactly.
 *
 * A negative side, or an area above about 87,900 m², is a bug of ours.
 *
 * `rectangleArea(millimetres(4000), millimetres(2500))` is 10 m², 1,024,000,000,000 square units.
 */
export function rectangleArea(width: Length, height: Length): Area {
  assert(width >= 0 && height >= 0, `the sides ${width} and ${height} are not negative`);
  return areaOf(width * height);
}

/**
 * The sum of areas, exactly; of none, zero.
 *
 * A sum above about 87,900 m² is a bug of ours.
 *
 * `addAreas(areaOf(3), areaOf(4))` is 7 square units.
 */
export function addAreas(...areas: readonly Area[]): Area {
  return areas.reduce((sum, area) => areaOf(sum + area), ZERO_AREA);
}

/**
 * An area for reading, rounded half away from zero: metric to 0.01 m², imperial to 0.1 sq ft.
 *
 * The rounding is only for reading: nothing is computed from it. One foot is 0.3048 m exactly (NIST SP 811).
 *
 * `showArea(rectangleArea(millimetres(4113), millimetres(3000)), 'metric')` is `12.34 m²`, and `132.8 sq ft` imperial.
 */
export function showArea(area: Area, style: LengthStyle): string {
  return showSquareUnits(ratio(BigInt(area)), style);
}

/**
 * Square units of any number, as sums and parts of areas are, for reading: rounded as `showArea` rounds.
 *
 * `showSquareUnits(ratio(1n, 2n), 'metric')` is `0.00 m²`.
 */
export function showSquareUnits({ numerator, denominator }: Ratio, style: LengthStyle): string {
  const [over, under, decimals] = style === 'metric' ? ([1n, SQUARE_UNITS_PER_HUNDREDTH_SQUARE_METRE, 2] as const) : ([10n, SQUARE_UNITS_PER_SQUARE_FOOT, 1] as const);
  const count = Number(roundRatio(ratio(numerator * over, denominator * under)));
  const written = (count < 0 ? '-' : '') + sayDecimal(fixedDecimal(Math.abs(count), decimals));
  return style === 'metric' ? `${written} m²` : say`${written} sq ft`;
}
