import type { House } from '../../../shared-core/house/index.ts';
import { asCut, isRollGoods, type LeftOfRun } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';
import { floorDivide, type Length, lengthOf, type LengthStyle, type Measure, printLength, showLength, UNITS_PER_INCH, UNITS_PER_MILLIMETRE } from '../../../shared-core/units/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** A leftover as it is sent to be recorded. */
export interface NewLeftover {
  readonly covering: string;
  readonly run?: string;
  readonly length: string;
  readonly count: number;
}

/** What is left of a run, whole rolls first, then the longest: '1 roll not begun', '4 of 5\' 5"'. */
export function sayLeft(house: House, { covering, wholeRolls, lengths }: LeftOfRun): readonly string[] {
  const whole = wholeRolls > 0 ? [say`${sayUnits(house, covering, wholeRolls)} not begun`] : [];
  return [...whole, ...lengths.map(({ length, count }) => say`${count} of ${showLength(atLeast(length, house.lengths), house.lengths)}`)];
}

/**
 * What of a run is left and not in the file yet, as leftovers to be recorded: whole rolls as one length of the roll each.
 *
 * Example: one roll of 33 ft and four lengths of 65 in are a leftover of 33 ft and one of 65 in, counted 4.
 */
export function notYetKept(house: House, { covering, run, wholeRolls, lengths }: LeftOfRun): readonly NewLeftover[] {
  const roll = wholeRolls > 0 ? lengthOfWhole(house, covering) : null;
  const whole = roll === null ? [] : [{ length: roll.length, typed: roll.typed, count: wholeRolls }];
  const cut = lengths.map(({ length, count }) => {
    const sure = atLeast(length, house.lengths);
    return { length: sure, typed: printLength(sure, house.lengths), count };
  });
  const isKept = (length: Length) => house.leftovers.some((one) => one.covering === covering && (one.run ?? null) === run && one.length.length === length);
  return [...whole, ...cut].filter(({ length }) => !isKept(length)).map(({ typed, count }) => ({ covering, ...(run === null ? {} : { run }), length: typed, count }));
}

function lengthOfWhole(house: House, id: string): Measure | null {
  const found = house.coverings.find((one) => one.id === id);
  const covering = found && asCut(found);
  if (covering?.kind === 'mural') return covering.panelHeight;
  return covering && isRollGoods(covering) ? covering.rollLength : null;
}

/** What a tape shows of a length that is surely there: never more than there is. */
function atLeast(length: Length, style: LengthStyle): Length {
  const step = style === 'imperial' ? floorDivide(UNITS_PER_INCH, 16) : UNITS_PER_MILLIMETRE;
  return lengthOf(floorDivide(length, step) * step);
}
