import type { Draw } from './dive.ts';
import type { Packing, Roll, Tape } from './tape.ts';
import type { Work } from './work.ts';

/** So many rolls at a time are few enough kinds to be cut anew. */
const ROLLS_A_GROUP = 30;
/** Of more rolls than this, groups would come to nothing worth the while. */
const MOST_ROLLS = 3_000;
/** After so many groups in turn that came to nothing it is enough. */
const MOST_IN_VAIN = 14;

/**
 * Fewer rolls of a plan of very many kinds, by cutting the pieces of some rolls anew, group after group.
 *
 * `cut` gives a plan for the pieces of a group. A group that comes out with fewer rolls takes the place of its rolls;
 * groups are drawn again and again until several in turn gained nothing, or the work is over. A plan of thousands of
 * rolls stays as it is.
 *
 * Rule: what a plan wastes is spread over its rolls, so some thirty of them waste about a whole one where all of them
 * together waste several (own reasoning).
 *
 * Example: 4 rolls of 10 that hold 6, 6, 4 and 4, cut anew together: 6 + 4 and 6 + 4.
 */
export function planInGroups(tape: Tape, packings: readonly Packing[], work: Work, draw: Draw, cut: (group: Tape) => readonly Packing[]): readonly Packing[] {
  if (packings.reduce((sum, { times }) => sum + times, 0) > MOST_ROLLS) return packings;
  let rolls = packings.flatMap(({ times, roll }) => Array<Roll>(times).fill(roll));
  for (let inVain = 0; inVain < MOST_IN_VAIN && !work.isOver(); ) {
    const drawn = shuffled(rolls, draw);
    const group = drawn.slice(0, ROLLS_A_GROUP);
    const anew = cutAnew(tape, group, cut);
    if (anew.length < group.length) {
      rolls = [...anew, ...drawn.slice(ROLLS_A_GROUP)];
      inVain = 0;
    } else {
      inVain += 1;
    }
  }
  return rolls.map((roll) => ({ times: 1, roll }));
}

/** The rolls that the same pieces take when they are cut by themselves. */
function cutAnew(tape: Tape, rolls: readonly Roll[], cut: (group: Tape) => readonly Packing[]): readonly Roll[] {
  const counts = tape.kinds.map(() => 0);
  for (const { order } of rolls) for (const rank of order) counts[rank]! += 1;
  const kinds = tape.kinds.filter(({ rank }) => counts[rank]! > 0);
  const phases = new Set(kinds.map(({ phase }) => phase));
  const lanes = tape.lanes.length === 1 ? [0] : tape.lanes.flatMap(({ origin }, lane) => (phases.has(origin) ? [lane] : []));
  const group: Tape = { ...tape, kinds: kinds.map((kind, rank) => ({ ...kind, count: counts[kind.rank]!, rank })), lanes: lanes.map((lane) => tape.lanes[lane]!) };
  return cut(group).flatMap(({ times, roll }) => Array<Roll>(times).fill({ lane: lanes[roll.lane]!, order: roll.order.map((rank) => kinds[rank]!.rank) }));
}

function shuffled<Value>(values: readonly Value[], draw: Draw): readonly Value[] {
  const order = [...values];
  for (let index = order.length - 1; index > 0; index -= 1) {
    const other = draw(index + 1);
    [order[index], order[other]] = [order[other]!, order[index]!];
  }
  return order;
}
