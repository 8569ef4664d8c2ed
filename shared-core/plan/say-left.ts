import type { House } from '../house/index.ts';
import type { LeftOfRun } from '../ordering/index.ts';
import { floorDivide, type Length, lengthOf, type LengthStyle, showLength, UNITS_PER_INCH, UNITS_PER_MILLIMETRE } from '../units/index.ts';
import { say } from '../words/index.ts';
import { sayUnits } from './say-units.ts';

/** What is left of a run, whole rolls first, then the longest: '1 roll not begun', '4 of 5\' 5"'. */
export function sayLeft(house: House, { covering, wholeRolls, lengths }: LeftOfRun): readonly string[] {
  const whole = wholeRolls > 0 ? [say`${sayUnits(house, covering, wholeRolls)} not begun`] : [];
  return [...whole, ...lengths.map(({ length, count }) => say`${count} of ${showLength(surelyLong(length, house.lengths), house.lengths)}`)];
}

/** What a tape shows of a length that is surely there: never more than there is. */
export function surelyLong(length: Length, style: LengthStyle): Length {
  const step = style === 'imperial' ? floorDivide(UNITS_PER_INCH, 16) : UNITS_PER_MILLIMETRE;
  return lengthOf(floorDivide(length, step) * step);
}
