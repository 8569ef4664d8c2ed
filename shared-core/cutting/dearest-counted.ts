import type { Question } from './dearest.ts';
import type { LaneNodes, Nodes } from './nodes.ts';
import type { Work } from './work.ts';

/** For each beginning that may be kept. */
const MOST_COMPARISONS = 200;

/**
 * The dearest roll of a lane of all those that hold no more of the counted kinds than is wanted, if it counts for more
 * than `known`; an empty one if there is none, and null where it was given up.
 *
 * Rule: beginnings of rolls are laid from the start on, place after place. Of two that reach the same place, one is
 * dropped where the other is worth as much and holds no more of any counted kind; a count is forgotten where so little
 * of the roll is left that it can no longer come to matter. A beginning is dropped too where it would not come to more
 * than `known` even if the rest, from `after`, were cut heedless of demand.
 *
 * Example: a roll for three pieces, kinds worth 5, 4 and 3 of equal length, one wanted of each: heedless of demand the
 * dearest is 15; with the first counted 5 + 4 + 4; with the first two 5 + 4 + 3.
 */
export function dearestCounted(
  nodes: Nodes,
  { count, first, lastOf }: LaneNodes,
  after: Float64Array,
  { duals, wanted, patience }: Question,
  active: readonly Int32Array[],
  counted: readonly number[],
  known: number,
  work: Work,
): readonly number[] | null {
  const { phases, jumpOf, longestJump } = nodes;
  const width = counted.length;
  const counter = new Int32Array(jumpOf.length).fill(-1);
  counted.forEach((rank, index) => (counter[rank] = index));
  const fits = counted.map((rank) => mostFrom(rank, nodes, { count, first, lastOf }));

  /** Beginning 0 is the empty one; each other is an earlier one and one more cut. */
  const worth = [0];
  const cut = [-1];
  const before = [-1];
  /** How many of the counted kinds each holds, one after the other. */
  const held = Array<number>(width).fill(0);
  const at: number[][] = Array.from({ length: count + longestJump + 1 }, () => []);
  at[0]!.push(0);
  const holding = new Int32Array(width);
  let most = known;
  let best = 0;
  let comparisons = 0;

  /** What a beginning holds at a node, as far as it still matters, with one more of the rank. */
  const hold = (beginning: number, node: number, rank: number): void => {
    for (let each = 0; each < width; each += 1) {
      const now = held[beginning * width + each]! + Number(rank >= 0 && counter[rank] === each);
      holding[each] = now + fits[each]![node]! <= wanted[counted[each]!]! ? 0 : now;
    }
  };
  /** Whether a beginning that holds `holding` may stay among those of its place; drops those that it makes needless. */
  const isNeeded = (others: number[], sum: number): boolean => {
    let kept = 0;
    comparisons += others.length;
    for (let index = 0; index < others.length; index += 1) {
      const other = others[index]!;
      const base = other * width;
      let isNoMore = worth[other]! >= sum;
      let isNoLess = worth[other]! <= sum;
      for (let each = 0; each < width && (isNoMore || isNoLess); each += 1) {
        const difference = held[base + each]! - holding[each]!;
        if (difference > 0) isNoMore = false;
        if (difference < 0) isNoLess = false;
      }
      // None was dropped before this: one that beats the new beginning would have dropped it already.
      if (isNoMore) return false;
      if (!isNoLess) others[kept++] = other;
    }
    others.length = kept;
    return true;
  };

  let isGivenUp = false;
  for (let node = 0; node < count && !isGivenUp; node += 1) {
    const ranks = active[(first + node) % phases]!;
    for (const beginning of at[node]!) {
      const sum = worth[beginning]!;
      if (sum + after[node]! <= most) continue;
      for (let index = 0; index < ranks.length; index += 1) {
        const rank = ranks[index]!;
        const there = node + jumpOf[rank]!;
        const total = sum + duals[rank]!;
        if (node > lastOf[rank]! || total + after[there]! <= most) continue;
        const counting = counter[rank]!;
        if (counting >= 0 && held[beginning * width + counting]! >= wanted[rank]!) continue;
        hold(beginning, there, rank);
        if (!isNeeded(at[there]!, total)) continue;
        at[there]!.push(worth.length);
        if (total > most) {
          most = total;
          best = worth.length;
        }
        worth.push(total);
        cut.push(rank);
        before.push(beginning);
        for (let each = 0; each < width; each += 1) held.push(holding[each]!);
      }
      if (sum + after[node + 1]! <= most) continue;
      hold(beginning, node + 1, -1);
      if (!isNeeded(at[node + 1]!, sum)) continue;
      at[node + 1]!.push(beginning);
      for (let each = 0; each < width; each += 1) held[beginning * width + each] = holding[each]!;
    }
    at[node] = [];
    isGivenUp = worth.length > patience || comparisons > MOST_COMPARISONS * patience || work.isOver();
  }
  work.spend(2 * comparisons * (width + 2) + 30 * worth.length + (10 + 4 * width) * at.length);
  if (isGivenUp) return null;
  const order: number[] = [];
  for (let index = best; index > 0; index = before[index]!) order.push(cut[index]!);
  return order.reverse();
}

/** By place: how many pieces of one kind alone can be cut from there on. */
function mostFrom(rank: number, { phases, phaseOf, jumpOf }: Nodes, { count, first, lastOf }: Pick<LaneNodes, 'count' | 'first' | 'lastOf'>): Int32Array {
  const most = new Int32Array(count + jumpOf.reduce((longest, jump) => Math.max(longest, jump), 0) + 1);
  for (let node = count - 1; node >= 0; node -= 1) {
    const isInPhase = (first + node) % phases === phaseOf[rank]!;
    most[node] = isInPhase && node <= lastOf[rank]! ? 1 + most[node + jumpOf[rank]!]! : most[node + 1]!;
  }
  return most;
}
