import type { House } from '../house/index.ts';
import type { OrderLine, TextbookCount } from '../ordering/index.ts';
import { type Length, showLength } from '../units/index.ts';
import type { WorkingLine } from './explain-order.ts';
import type { OtherCounts } from './other-counts.ts';
import { sayUnits } from './say-units.ts';
import { say } from '../words/index.ts';

/**
 * What an order line would take of other rolls, in lines beside its working.
 *
 * Example: of 6 rolls 'From rolls that all begin at a repeat 4 rolls would do, 2 fewer.'
 */
export function explainOtherCounts(house: House, line: OrderLine, { leastWhenLooking, ifAtRepeat, atLowerTolerance }: OtherCounts): readonly WorkingLine[] {
  const units = (count: number) => sayUnits(house, line.covering, count);
  const lines: WorkingLine[] = [];
  if (leastWhenLooking !== null && line.isProvenMinimum) {
    const saved = line.rollsNeeded - leastWhenLooking;
    lines.push({
      text: saved > 0 ? say`Looking at where each roll begins before it is cut might save up to ${saved}; on fewer than ${units(leastWhenLooking)} nobody can rely.` : say`Looking at where each roll begins before it is cut makes no fewer rolls sure.`,
      rule: say`bounded at the worst start that all rolls may share; the order is cut the same wherever they begin`,
    });
  }
  if (ifAtRepeat) {
    const fewer = line.rollsNeeded - ifAtRepeat.rolls;
    lines.push({
      text: fewer > 0 ? say`From rolls that all begin at a repeat ${units(ifAtRepeat.rolls)} would do, ${fewer} fewer.` : say`From rolls that all begin at a repeat it takes ${units(ifAtRepeat.rolls)} too.`,
      rule: say`the same strips cut again; ask where the rolls begin before you count on it`,
    });
  }
  if (atLowerTolerance) {
    const { rolls, isProven, width, rollLength, isEveryPieceGiven } = atLowerTolerance;
    const more = rolls - line.rollsNeeded;
    const show = (length: Length) => showLength(length, house.lengths);
    const most = isProven ? units(rolls) : say`at most ${units(rolls)}`;
    const told = more > 0 ? say`${most}, ${more} more` : more < 0 ? say`${most}, ${-more} fewer, since the narrower strips fall better` : say`${most} too`;
    lines.push({
      text: say`From the smallest rolls that may be sold as this size, ${show(width)} by ${show(rollLength)}, it takes ${told}.${isEveryPieceGiven ? '' : say` A piece is too long for such a roll.`}`,
      rule: say`EN 233: width and length may be 1.5 % less than marked; set out and cut again for such rolls`,
    });
  }
  return lines;
}

/**
 * The chance that a textbook's count falls short, in whole hundredths, in words where there is nothing to doubt.
 *
 * Example: 0.76 is 'short in 76 of 100', 0 'never short', 1 'short', 0.001 'short in under 1 of 100'.
 */
export function sayShort({ rolls, chanceShort }: TextbookCount): string {
  if (rolls === null) return say`no count`;
  if (chanceShort === 0) return say`never short`;
  if (chanceShort === 1) return say`short`;
  if (chanceShort < 0.01) return say`short in under 1 of 100`;
  if (chanceShort > 0.99) return say`short in over 99 of 100`;
  return say`short in ${Math.round(chanceShort * 100)} of 100`;
}
