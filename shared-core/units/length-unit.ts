import { type LengthStyle, UNITS_PER_FOOT, UNITS_PER_INCH, UNITS_PER_METRE, UNITS_PER_MILLIMETRE } from './length.ts';

/** A unit of length that people write. */
export interface LengthUnit {
  readonly style: LengthStyle;
  readonly units: bigint;
}

export const INCH: LengthUnit = { style: 'imperial', units: BigInt(UNITS_PER_INCH) };
export const FOOT: LengthUnit = { style: 'imperial', units: BigInt(UNITS_PER_FOOT) };
export const METRE: LengthUnit = { style: 'metric', units: BigInt(UNITS_PER_METRE) };
const YARD: LengthUnit = { style: 'imperial', units: BigInt(3 * UNITS_PER_FOOT) };
const MILLIMETRE: LengthUnit = { style: 'metric', units: BigInt(UNITS_PER_MILLIMETRE) };
const CENTIMETRE: LengthUnit = { style: 'metric', units: BigInt(10 * UNITS_PER_MILLIMETRE) };

const SPELLINGS: readonly (readonly [LengthUnit, string])[] = [
  [INCH, 'in ins inch inches'],
  [FOOT, 'ft foot feet'],
  [YARD, 'yd yds yard yards'],
  [MILLIMETRE, 'mm mms millimetre millimetres millimeter millimeters'],
  [CENTIMETRE, 'cm cms centimetre centimetres centimeter centimeters'],
  [METRE, 'm metre metres meter meters'],
];

const UNITS_BY_WORD: ReadonlyMap<string, LengthUnit> = new Map(
  SPELLINGS.flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
);

/**
 * The unit that a word names, in small or capital letters; `undefined` where it names none.
 *
 * `unitNamed('Feet')` is `FOOT`.
 */
export function unitNamed(word: string): LengthUnit | undefined {
  return UNITS_BY_WORD.get(word.toLowerCase());
}
