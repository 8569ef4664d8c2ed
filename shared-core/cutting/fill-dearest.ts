import type { FindDearest } from './dearest.ts';
import { cutRolls } from './cut-rolls.ts';
import type { Packing, Tape } from './tape.ts';
import type { Work } from './work.ts';

const DEAREST = 2 ** 20;

/**
 * Fills roll after roll with what counts for most, where there are too many kinds to reckon with rolls in parts.
 *
 * Rule: a piece counts for its length, and the longer ones for a little more than that, by the power 1 + `favour`, so
 * that they are not left to the end. Each roll is cut as often as its pieces are wanted. Null where the work is over first.
 *
 * Example: rolls of 10, free match, a piece each of 6, 5, 4, 3 and 2, the long ones favoured: 6 + 4, then 5 + 3 + 2.
 */
export function fillDearest(tape: Tape, find: FindDearest, work: Work, favour: number): readonly Packing[] | null {
  const longest = tape.kinds[0]?.length ?? 1;
  const duals = tape.kinds.map(({ length }) => Math.max(1, Math.floor(DEAREST * (length / longest) ** (1 + favour))));
  const cutting = cutRolls(tape);
  while (cutting.isAnyWanted()) {
    const [dearest] = find.within({ duals, wanted: cutting.wanted, above: 0, surely: 0, enough: 1, patience: 0 }).rolls;
    if (!dearest || work.isOver()) return null;
    cutting.cut(dearest, Infinity);
  }
  return cutting.packings;
}
