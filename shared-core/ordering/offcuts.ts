import type { House } from '../house/index.ts';
import { type Length, lengthOf } from '../units/index.ts';
import type { CutRoll } from './cut-roll.ts';
import type { Ledger } from './ledger.ts';
import type { CutList, OrderLine } from './order-line.ts';
import { asCut, isRollGoods, rollOf } from './pool.ts';

/** What hanging leaves of a run: whole rolls, and lengths that are surely that long. */
export interface LeftOfRun {
  readonly covering: string;
  readonly run: string | null;
  readonly wholeRolls: number;
  /** The longest first. */
  readonly lengths: readonly { readonly length: Length; readonly count: number }[];
}

/**
 * What of a roll its cuts surely leave in one length behind the last of them.
 *
 * A roll that may begin anywhere takes up to a repeat before its first cut. Example: of a roll of 33 ft with a repeat of
 * 21 in, three strips of 8' 4" every 8' 9" leave 5' 5" at the least: 396 - 21 - (2 × 105 + 100) = 65 in.
 */
export function leftOfRoll(roll: Pick<CutRoll, 'cuts'>, { rollLength, repeat, rollStart }: { readonly rollLength: number; readonly repeat: number; readonly rollStart: 'anywhere' | 'at-repeat' }): Length {
  const end = Math.max(0, ...roll.cuts.map(({ from, placed }) => from + placed.piece.length));
  return lengthOf(rollLength - (rollStart === 'anywhere' ? repeat : 0) - end);
}

/**
 * What is left of each run when all is hung: rolls that were not begun, and offcuts from the house's least length up.
 *
 * Shapes: a cut list for each line, in the same order. What there is of a run that nothing hangs from stays whole. Example: 10 rolls of a run in hand of which 9 are cut, each
 * leaving 65 in: one whole roll and 9 lengths of 5' 5".
 */
export function findLeft(house: House, lines: readonly OrderLine[], cuts: readonly CutList[], ledgers: readonly Pick<Ledger, 'covering' | 'runs'>[]): readonly LeftOfRun[] {
  const unused = ledgers.flatMap(({ covering, runs }) =>
    runs.filter(({ run, inHand, onOrder }) => inHand + onOrder > 0 && !lines.some((line) => line.covering === covering && line.run === run)).map(({ run, inHand, onOrder }) => ({ covering, run, wholeRolls: inHand + onOrder, lengths: [] })),
  );
  const used = lines.flatMap((line, index): readonly LeftOfRun[] => {
    const found = house.coverings.find(({ id }) => id === line.covering);
    const covering = found && asCut(found);
    const wholeRolls = Math.max(0, line.inHand + line.onOrder + line.toBuy - line.rollsNeeded);
    if (!covering || !isRollGoods(covering)) return wholeRolls > 0 ? [{ covering: line.covering, run: line.run, wholeRolls, lengths: [] }] : [];
    const rolls = cuts[index]?.rolls ?? [];
    const counts = new Map<Length, number>();
    for (const roll of rolls) {
      const left = leftOfRoll(roll, rollOf(covering));
      if (left >= house.rules.keptFrom.length) counts.set(left, (counts.get(left) ?? 0) + 1);
    }
    const lengths = [...counts].toSorted(([one], [other]) => other - one).map(([length, count]) => ({ length, count }));
    // Goods by the length leave no rolls: the supplier cuts what was ordered.
    const isByLength = line.running !== null;
    return isByLength || (wholeRolls === 0 && lengths.length === 0) ? [] : [{ covering: line.covering, run: line.run, wholeRolls, lengths }];
  });
  return [...used, ...unused];
}
