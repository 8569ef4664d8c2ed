import type { FilledRoll, KnownOrders } from './cut-order.ts';
import { type Allowance, partAnew } from './exchange-pieces.ts';
import type { HungPieces } from './hanging-order.ts';

/** Rolls that are emptied as far as others take their pieces, and for each the rolls that are tried. */
const MOST_EMPTIED = 24;
const MOST_TAKERS = 24;

/**
 * Exchanges pieces between the rolls with the longest rests so that the longest offcut grows, then the second, where no
 * neighbours are lost by it.
 *
 * An offcut is kept for one strip that is spoilt or for a later repair, and only one long enough for a whole strip serves;
 * so one long offcut is worth more than any number of short ones, and lengths are not traded against each other.
 * Example: rolls of 10 m of which 4 m and 2 m are left, the second with a strip of 1.5 m that has no neighbour: 5.5 m of
 * the other and 0.5 m are left.
 */
export function gatherOffcuts(hung: HungPieces, filled: readonly FilledRoll[], known: KnownOrders, allowance: Allowance, stop: () => boolean): readonly FilledRoll[] {
  const rolls = filled.toSorted((one, other) => other.rest - one.rest);
  for (let emptied = 0; emptied < Math.min(MOST_EMPTIED, rolls.length); emptied += 1) {
    for (let taker = emptied + 1; taker < Math.min(emptied + 1 + MOST_TAKERS, rolls.length); taker += 1) {
      if (allowance.steps <= 0 || stop()) return rolls;
      const found = partAnew(hung, [rolls[emptied]!, rolls[taker]!], known, allowance);
      if (found) [rolls[emptied], rolls[taker]] = found.toSorted((one, other) => other.rest - one.rest) as [FilledRoll, FilledRoll];
    }
  }
  return rolls;
}
