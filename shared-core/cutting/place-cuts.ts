import type { Cut, CuttingProblem, RollCuts } from './problem.ts';
import { gapBefore, type Packing, type Tape } from './tape.ts';

/**
 * Hands out the problem's piece types to the rolls, and lays each roll's cuts along its tape.
 *
 * Rule: a kind stands for one or more piece types; they are handed out in the problem's order. A roll of a kind of
 * several types splits into rolls of the types that it really holds. Cuts are laid with their own lengths, so a cut
 * may end, never begin, earlier than its kind's longest would.
 *
 * Example: three rolls of two pieces of a kind that is type 0 twice and type 1 four times: one roll of 0 + 0, two of 1 + 1.
 */
export function placeCuts({ pieces, rollStart }: CuttingProblem, tape: Tape, packings: readonly Packing[]): readonly RollCuts[] {
  const left = pieces.map(({ count }) => count);
  const typeAt = tape.kinds.map(() => 0);
  /** The first type of a rank of which something is left. */
  const nextType = (rank: number): number => {
    const { types } = tape.kinds[rank]!;
    while (left[types[typeAt[rank]!]!] === 0) typeAt[rank]! += 1;
    return types[typeAt[rank]!]!;
  };
  return packings.flatMap(({ times, roll: { lane, order } }) => {
    const { origin } = tape.lanes[lane]!;
    const rolls: RollCuts[] = [];
    for (let wanted = times; wanted > 0; ) {
      const cuts: Cut[] = [];
      const held = new Map<number, number>();
      let end = 0;
      for (const rank of order) {
        const piece = nextType(rank);
        left[piece]! -= 1;
        held.set(piece, (held.get(piece) ?? 0) + 1);
        const { phase, length } = pieces[piece]!;
        const from = end + gapBefore(phase, origin, end, tape.repeat);
        cuts.push({ piece, from });
        end = from + length;
      }
      const again = [...held].reduce((least, [piece, copies]) => Math.min(least, (left[piece]! - (left[piece]! % copies)) / copies), wanted - 1);
      for (const [piece, copies] of held) left[piece]! -= again * copies;
      const first = rollStart === 'anywhere' ? cuts[0]!.from : 0;
      rolls.push({ times: 1 + again, cuts: cuts.map(({ piece, from }) => ({ piece, from: from - first })) });
      wanted -= 1 + again;
    }
    return rolls;
  });
}
