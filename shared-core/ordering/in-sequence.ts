import type { CuttingProblem } from '../cutting/index.ts';
import { type Length, lengthOf, modulo } from '../units/index.ts';
import type { CutRoll, PlacedPiece, RollCut } from './cut-roll.ts';

/** Rolls cut one after the other in hanging order, and what none of them gives. */
export interface SequencePlan {
  readonly rolls: readonly CutRoll[];
  readonly impossible: readonly PlacedPiece[];
}

/**
 * Cuts pieces in hanging order, one after the other and roll after roll, for goods whose shade runs on along the roll.
 *
 * Shapes: positions in units, from the roll's start or, where rolls begin anywhere, from the first cut's top. Each piece
 * follows the one before it at the next place in phase; where the roll ends before it the next roll is begun. In this
 * order no way of cutting takes fewer rolls, as every roll is cut as far as it goes.
 * Example: rolls of 10 m, strips of 2.60 m without a pattern: three to a roll, ten strips from four rolls.
 */
export function cutInSequence({ rollLength, repeat, rollStart }: Omit<CuttingProblem, 'pieces'>, pieces: readonly PlacedPiece[]): SequencePlan {
  const capacity = rollStart === 'anywhere' ? rollLength - repeat : rollLength;
  const rolls: RollCut[][] = [];
  const impossible: PlacedPiece[] = [];
  let [end, endPhase] = [Infinity, 0];
  for (const placed of pieces) {
    const { length, phase } = placed.piece;
    const lead = rollStart === 'anywhere' ? 0 : phase;
    if (lead + length > capacity) {
      impossible.push(placed);
      continue;
    }
    const next = end + (repeat === 0 ? 0 : modulo(phase - endPhase, repeat));
    const isNewRoll = !(next + length <= capacity);
    const from: Length = lengthOf(isNewRoll ? lead : next);
    if (isNewRoll) rolls.push([]);
    rolls.at(-1)!.push({ placed, from });
    end = from + length;
    endPhase = phase + length;
  }
  return { rolls: rolls.map((cuts, index) => ({ number: index + 1, cuts })), impossible };
}
