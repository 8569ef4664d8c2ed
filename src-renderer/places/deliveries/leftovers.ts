import type { House } from '../../../shared-core/house/index.ts';
import { asCut, isRollGoods, type LeftOfRun } from '../../../shared-core/ordering/index.ts';
import { surelyLong } from '../../../shared-core/plan/index.ts';
import { type Length, type Measure, printLength } from '../../../shared-core/units/index.ts';

/** A leftover as it is sent to be recorded. */
export interface NewLeftover {
  readonly covering: string;
  readonly run?: string;
  readonly length: string;
  readonly count: number;
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
    const sure = surelyLong(length, house.lengths);
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

