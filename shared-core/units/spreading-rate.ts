import { assert, fault, good, type Outcome } from '../base/index.ts';
import { shortDecimal } from './decimal.ts';
import { type LengthStyle, UNITS_PER_FOOT, UNITS_PER_MILLIMETRE } from './length.ts';
import { quoteTyped } from './quote-typed.ts';
import { decimalRatio, ratio, type Ratio, roundRatio } from './ratio.ts';
import { millilitresOf, NANOLITRES_PER_IMPERIAL_GALLON, NANOLITRES_PER_US_GALLON } from './volume.ts';
import { say, sayDecimal } from '../words/index.ts';

/** What a paint covers in one coat: so many square millimetres with so many millilitres, whole numbers in lowest terms. */
export interface SpreadingRate {
  readonly squareMillimetres: number;
  readonly millilitres: number;
}

const SQUARE_METRE = ratio(1_000_000n);
const SQUARE_FOOT = ratio(BigInt(UNITS_PER_FOOT) ** 2n, BigInt(UNITS_PER_MILLIMETRE) ** 2n);
const LITRE = ratio(1000n);
const US_GALLON = millilitresOf(NANOLITRES_PER_US_GALLON);
const IMPERIAL_GALLON = millilitresOf(NANOLITRES_PER_IMPERIAL_GALLON);

const AREAS: readonly (readonly [Ratio, RegExp])[] = [
  [SQUARE_METRE, /^(?:m2|m²|qm|sqm|sq\.? ?m|square met(?:re|er)s?)$/],
  [SQUARE_FOOT, /^(?:ft2|ft²|sqft|sq\.? ?ft\.?|square f(?:oo|ee)t)$/],
];
const VOLUMES: readonly (readonly [Ratio, RegExp])[] = [
  [LITRE, /^(?:l|ltr|lit(?:re|er)s?)$/],
  [US_GALLON, /^(?:(?:us|u\.s\.) ?)?(?:gal\.?|gallons?)$/],
  [IMPERIAL_GALLON, /^(?:imp\.?|imperial|uk) ?(?:gal\.?|gallons?)$/],
];

/** From a textured coating laid on thickly to a film of one micrometre; what is beyond is a slip of the unit. */
const LEAST_SQUARE_METRES_PER_TEN_LITRES = 1n;
const MOST_SQUARE_METRES_PER_LITRE = 1000n;
const LONGEST_TEXT = 40;

/**
 * The spreading rate that somebody wrote, as tins have it.
 *
 * Reads a number, with either decimal mark and up to three decimals, of square metres or square feet to a litre, a US or
 * an imperial gallon: `12 m2/L`, `12,5 m²/l`, `400 sq ft/gal`, `400 ft2 per US gal`, `350 sq ft / imp gal`. A gallon that
 * is not said to be imperial is a US one. Fails, with a message that quotes the text and says what would be accepted, on
 * anything else and on less than 0.1 or more than 1000 m²/L.
 *
 * Source: a foot is 0.3048 m (NIST SP 811, memory), a US gallon 231 in³ = 3.785411784 L, an imperial one 4.54609 L.
 * `readSpreadingRate('12 m2/L')` is 12000 mm² with 1 mL.
 */
export function readSpreadingRate(text: string): Outcome<SpreadingRate> {
  const trimmed = text.trim();
  const accepted = say`write square metres a litre or square feet a gallon, for example 12 m2/L, 400 sq ft/US gal or 480 sq ft/imp gal`;
  if (trimmed === '') return fault('', say`There is no spreading rate here; ${accepted}`);
  const quoted = quoteTyped(trimmed);
  if (/\d\s*(?:[-–—]|to|bis)\s*\d/iu.test(trimmed)) return fault('', say`${quoted} is a range; write one figure, the lower one to be safe: ${accepted}`);
  const shape = trimmed.length > LONGEST_TEXT ? null : /^(\d{1,6}(?:[.,]\d{1,3})?)\s*(\p{L}.*?)\s*(?:\/|\sper\s)\s*(.+)$/iu.exec(trimmed);
  if (shape === null) return fault('', say`${quoted} is not a spreading rate; ${accepted}`);
  const [, digits = '', areaWord = '', volumeWord = ''] = shape;
  const area = unitIn(AREAS, areaWord);
  if (area === undefined) return fault('', say`In ${quoted}, ${quoteTyped(areaWord)} is not an area; ${accepted}`);
  const volume = unitIn(VOLUMES, volumeWord);
  if (volume === undefined) return fault('', say`In ${quoted}, ${quoteTyped(volumeWord)} is not a volume; ${accepted}`);
  const count = decimalRatio(digits);
  const rate = spreads(ratio(count.numerator * area.numerator * volume.denominator, count.denominator * area.denominator * volume.numerator));
  return rate === null ? fault('', say`${quoted} is out of reach; a paint covers from ${sayDecimal('0.1')} to 1000 m²/L. Check the unit`) : good(rate);
}

/**
 * What a paint spreads to by what is left of it when it has dried: its solids, in percent of the volume as a decimal text,
 * at a film of so many whole micrometres.
 *
 * Fails, in words, where that is less than 0.1 or more than 1000 m²/L. A text that is no percentage is a bug of ours.
 *
 * Source: theoretical spreading rate, m²/L = solids % × 10 / dry film µm (ISO 23811 for the quantity; a table of it was
 * read). `spreadingOfSolids('65', 50)` is 13 m²/L: 13000 mm² with 1 mL.
 */
export function spreadingOfSolids(solids: string, micrometres: number): Outcome<SpreadingRate> {
  assert(Number.isSafeInteger(micrometres) && micrometres > 0, `${micrometres} micrometres is a whole number above zero`);
  const { numerator, denominator } = decimalRatio(solids);
  const squareMillimetresPerMillilitre = 10_000n;
  const rate = spreads(ratio(numerator * squareMillimetresPerMillilitre, denominator * BigInt(micrometres)));
  if (rate !== null) return good(rate);
  return fault('', say`${sayDecimal(solids)} % of solids at a dry film of ${micrometres} µm are out of reach; a paint covers from ${sayDecimal('0.1')} to 1000 m²/L. Check the figures`);
}

/**
 * A spreading rate for reading, rounded half away from zero: metric to 0.01 m²/L, imperial to 1 sq ft a US gallon.
 *
 * `showSpreadingRate({ squareMillimetres: 12000, millilitres: 1 }, 'metric')` is `12 m²/L`, and `489 sq ft/US gal` imperial.
 */
export function showSpreadingRate({ squareMillimetres, millilitres }: SpreadingRate, style: LengthStyle): string {
  const [area, volume, decimals] = style === 'metric' ? ([SQUARE_METRE, LITRE, 2] as const) : ([SQUARE_FOOT, US_GALLON, 0] as const);
  const count = ratio(BigInt(squareMillimetres) * area.denominator * volume.numerator * 10n ** BigInt(decimals), BigInt(millilitres) * area.numerator * volume.denominator);
  const written = sayDecimal(shortDecimal(Number(roundRatio(count)), decimals));
  return style === 'metric' ? `${written} m²/L` : say`${written} sq ft/US gal`;
}

function unitIn(units: readonly (readonly [Ratio, RegExp])[], word: string): Ratio | undefined {
  const plain = word.trim().toLowerCase().replaceAll(/\s+/gu, ' ');
  return units.find(([, spelled]) => spelled.test(plain))?.[0];
}

/** Square millimetres a millilitre in lowest terms; null where they are out of reach. */
function spreads({ numerator, denominator }: Ratio): SpreadingRate | null {
  const squareMillimetresPerMillilitre = 1000n;
  if (10n * numerator < LEAST_SQUARE_METRES_PER_TEN_LITRES * squareMillimetresPerMillilitre * denominator) return null;
  if (numerator > MOST_SQUARE_METRES_PER_LITRE * squareMillimetresPerMillilitre * denominator) return null;
  let [divisor, rest] = [denominator, numerator % denominator];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  return { squareMillimetres: Number(numerator / divisor), millilitres: Number(denominator / divisor) };
}
