import type { FindDearest } from './dearest.ts';
import type { Pricing } from './pricing.ts';
import { gapBefore, type Packing, type Roll, type Tape } from './tape.ts';
import type { Work } from './work.ts';

/** What came of trying every way there is: a plan, the certainty that there is none, or null where that takes too long. */
export type Tried = readonly Packing[] | 'there is none' | null;

/** Ways to cut more rolls than this are never all tried. */
const MOST_ROLLS = 300;
/** Looking up what was cut already is about so much work. */
const STEPS_OF_A_CUT = 100;

interface Candidate extends Roll {
  readonly worth: number;
}

/**
 * Tries every way to cut the pieces from so many rolls.
 *
 * Rule: if no roll counts for more than `most` and all pieces count for `total`, so many rolls together may miss
 * rolls x most - total, the slack. One roll after the other is cut: it gives the first kind that is still wanted, and is
 * cut until nothing more fits behind its last piece, since a piece from a later roll might as well be cut there. What it
 * counts for less than `most` comes off the slack, and once that is used up there is no need to go on. Pieces that are
 * left once and could not be cut with the slack left then are not tried again.
 *
 * Example: rolls of 10, free match, 2 pieces of 6, 3 of 4 and one of 5 in 3 rolls; with the lengths as prices the slack
 * is 1. 6 + 4 leaves it, 6 + 4 again, and 5 + 4 uses it up: a plan. With 2 of 6 and 3 of 5 the slack is 3, but a roll
 * of 6 takes nothing else and leaves 4: there is none.
 */
export function tryAll(tape: Tape, find: FindDearest, pricing: Pricing, rolls: number, work: Work): Tried {
  if (rolls > MOST_ROLLS) return null;
  const { duals, most, total } = pricing;
  const rest = find.rest(duals);
  const wanted = Int32Array.from(tape.kinds, ({ count }) => count);
  const packings: Packing[] = [];
  const nameLot = lotNames(wanted);
  const failedWith = new Map<number | string, number>();

  /** True where the rest can be cut, false where it can't be, null where that takes too long. */
  const cutRest = (left: number, slack: number): boolean | null => {
    const first = wanted.findIndex((count) => count > 0);
    if (first < 0) return true;
    if (left === 0) return false;
    const key = nameLot(wanted);
    if ((failedWith.get(key) ?? -1) >= slack) return false;
    const candidates = rollsWith(tape, first, wanted, duals, most - slack, rest, nameLot, work);
    if (candidates === null) return null;
    for (const { lane, order, worth } of candidates) {
      for (const rank of order) wanted[rank]! -= 1;
      packings.push({ times: 1, roll: { lane, order } });
      const isCut = cutRest(left - 1, slack - (most - worth));
      if (isCut !== false) return isCut;
      packings.pop();
      for (const rank of order) wanted[rank]! += 1;
    }
    failedWith.set(key, slack);
    return false;
  };
  const slack = rolls * most - total;
  const isCut = slack < 0 ? false : cutRest(rolls, slack);
  if (isCut === null) return null;
  return isCut ? packings : 'there is none';
}

/** Every roll that gives the kind, counts for at least so much and takes nothing more behind its last piece, the dearest first; null where the work is over. */
function rollsWith(
  tape: Tape,
  first: number,
  wanted: Int32Array,
  duals: readonly number[],
  atLeast: number,
  rest: (lane: number, end: number) => number,
  nameLot: (lot: Int32Array) => number | string,
  work: Work,
): readonly Candidate[] | null {
  const { kinds, lanes, repeat } = tape;
  const found = new Map<number | string, Candidate>();
  const held = new Int32Array(kinds.length);
  const order: number[] = [];
  let endsAt = new Map<number | string, number>();

  const cutOn = (lane: number, end: number, worth: number): void => {
    const { origin, capacity } = lanes[lane]!;
    if (worth + rest(lane, end) < atLeast || work.isOver()) return;
    work.spend(STEPS_OF_A_CUT + kinds.length);
    const key = nameLot(held);
    if ((endsAt.get(key) ?? Infinity) <= end) return;
    endsAt.set(key, end);
    let isFull = true;
    // In a free match every order of the same pieces ends alike, so one is enough.
    for (let rank = repeat === 0 ? (order.at(-1) ?? 0) : 0; rank < kinds.length; rank += 1) {
      const { phase, length } = kinds[rank]!;
      const after = end + gapBefore(phase, origin, end, repeat) + length;
      if (held[rank]! >= wanted[rank]! || after > capacity) continue;
      isFull = false;
      held[rank]! += 1;
      order.push(rank);
      cutOn(lane, after, worth + duals[rank]!);
      order.pop();
      held[rank]! -= 1;
    }
    if (isFull && held[first]! > 0 && worth >= atLeast && !found.has(key)) found.set(key, { lane, order: [...order], worth });
  };
  for (let lane = 0; lane < lanes.length; lane += 1) {
    endsAt = new Map();
    cutOn(lane, 0, 0);
  }
  if (work.isOver()) return null;
  return [...found.values()].sort((one, other) => other.worth - one.worth);
}

/** Names so many pieces of each kind, of at most so many: by one number, or where that would be too large by all of them. */
function lotNames(most: Int32Array): (lot: Int32Array) => number | string {
  const places: number[] = [];
  let lots = 1;
  for (const count of most) {
    places.push(lots);
    lots *= count + 1;
  }
  if (lots > Number.MAX_SAFE_INTEGER) return (lot) => lot.join(' ');
  return (lot) => {
    let name = 0;
    for (let rank = 0; rank < lot.length; rank += 1) name += lot[rank]! * places[rank]!;
    return name;
  };
}
