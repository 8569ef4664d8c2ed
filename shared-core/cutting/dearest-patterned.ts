import { type Dearest, FINEST_SCALE, type FindDearest, type Question } from './dearest.ts';
import { dearestCounted } from './dearest-counted.ts';
import { type LaneNodes, type Nodes, placeNodes } from './nodes.ts';
import { contentsOf, countsOf, type Roll, type Tape, within } from './tape.ts';
import type { Work } from './work.ts';

/**
 * The dearest rolls of a pattern.
 *
 * Rule: the most from a place on is the most of letting it pass and of cutting there any kind in phase that still fits,
 * with the most from the place after it. Worked from the end of the roll back to its start that gives the dearest roll
 * of a lane; worked forward too, the dearest through every kind. That may take a kind more often than it is wanted.
 * Such rolls are trimmed; where that leaves none that counts for enough, and there is patience for it, the kinds in
 * excess are counted along the way, one after the other as they turn up (see `dearestCounted`).
 *
 * Example: a roll of 1000, repeat 100, at a repeat; kinds of 450 worth 5 and of 300 worth 3, both at phase 0: the
 * dearest are 450 + 450 (10, ends at 950) and, with a piece of 300, 300 + 300 + 300 (9); 450 + 300 come to 8 only.
 */
export function dearestPatterned(tape: Tape, work: Work): FindDearest {
  const nodes = placeNodes(tape);
  const tables = newTables(nodes, tape.kinds.length);
  const lanes = nodes.lanes.map((lane) => laneTable(nodes, lane, tables, work));
  let firstLane = 0;

  const anyNumber = new Int32Array(tape.kinds.length).fill(1);
  return {
    scales: [FINEST_SCALE],
    mostOverAll(duals) {
      const active = activeRanks(nodes, duals, anyNumber);
      return lanes.reduce((most, lane) => Math.max(most, lane.workBack(duals, active)), 0);
    },
    rest(duals) {
      const active = activeRanks(nodes, duals, anyNumber);
      const rests = lanes.map((lane) => lane.rest(duals, active));
      return (lane, end) => rests[lane]![Math.min(nodes.lanes[lane]!.placeAt(end), nodes.lanes[lane]!.count)]!;
    },
    within(question): Dearest {
      const { duals, wanted, above, enough, patience } = question;
      const active = activeRanks(nodes, duals, wanted);
      const offers = gatherOffers(question);
      const open: { readonly lane: number; readonly worth: number }[] = [];
      for (let turn = 0; turn < lanes.length && (enough === 1 || offers.count() < enough); turn += 1) {
        const lane = (firstLane + turn) % lanes.length;
        const worth = lanes[lane]!.workBack(duals, active);
        const order = lanes[lane]!.dearest();
        if (offers.take(lane, order) < worth) open.push({ lane, worth });
        if (worth > above && enough > 1) lanes[lane]!.throughEach(duals, active, above, (through) => offers.take(lane, through));
        if (enough > 1 && offers.count() >= enough) firstLane = (lane + 1) % lanes.length;
      }
      if (offers.count() > 0) return { rolls: offers.best(), most: null };

      open.sort((one, other) => other.worth - one.worth);
      for (const { lane, worth } of open) {
        if (worth <= offers.most()) break;
        if (patience === 0) return { rolls: [], most: null };
        lanes[lane]!.workBack(duals, active);
        const isSearched = lanes[lane]!.search(question, active, offers.most(), (order) => offers.take(lane, order));
        if (offers.count() > 0 || !isSearched) return { rolls: offers.best(), most: null };
      }
      return { rolls: [], most: offers.most() };
    },
  };
}

interface Offers {
  readonly count: () => number;
  /** The most that a roll is known to count for. */
  readonly most: () => number;
  /** Takes a roll, trimmed to what is wanted; returns what it counts for then. */
  readonly take: (lane: number, order: readonly number[]) => number;
  readonly best: () => readonly Roll[];
}

function gatherOffers({ duals, wanted, above, surely, enough }: Question): Offers {
  const found = new Map<string, { readonly roll: Roll; readonly worth: number }>();
  let most = surely;
  return {
    count: () => found.size,
    most: () => most,
    take(lane, order) {
      const held = within(order, wanted);
      const worth = held.reduce((sum, rank) => sum + duals[rank]!, 0);
      most = Math.max(most, worth);
      const key = contentsOf(held);
      if (worth > above && !found.has(key)) found.set(key, { roll: { lane, order: held }, worth });
      return worth;
    },
    best: () => [...found.values()].sort((one, other) => other.worth - one.worth).slice(0, enough).map(({ roll }) => roll),
  };
}

/** By phase, the kinds that count for something and are wanted. */
function activeRanks({ ranksAt }: Nodes, duals: ArrayLike<number>, wanted: ArrayLike<number>): readonly Int32Array[] {
  return ranksAt.map((ranks) => ranks.filter((rank) => duals[rank]! > 0 && wanted[rank]! > 0));
}

interface LaneTable {
  /** The most from the start on, heedless of demand. */
  readonly workBack: (duals: ArrayLike<number>, active: readonly Int32Array[]) => number;
  /** By place: the most from there on; a copy that stays. */
  readonly rest: (duals: ArrayLike<number>, active: readonly Int32Array[]) => Float64Array;
  /** The roll that the last working back found. */
  readonly dearest: () => readonly number[];
  readonly throughEach: (duals: ArrayLike<number>, active: readonly Int32Array[], above: number, take: (order: readonly number[]) => void) => void;
  /** Offers the dearest roll within demand where it counts for more than the most known; false where it was given up. */
  readonly search: (question: Question, active: readonly Int32Array[], known: number, take: (order: readonly number[]) => void) => boolean;
}

/** What is written anew at each working back or forward; one lane after the other uses it. */
interface Tables {
  /** By place: the most from there on, and the kind cut there, -1 for none. */
  readonly after: Float64Array;
  readonly next: Int32Array;
  /** By place: the most up to there, and the kind that ends there. */
  readonly upTo: Float64Array;
  readonly last: Int32Array;
  /** By rank: the dearest roll through it, and at which place it is cut. */
  readonly bestWorth: Float64Array;
  readonly bestAt: Int32Array;
}

function newTables({ lanes, longestJump }: Nodes, kinds: number): Tables {
  const room = lanes.reduce((most, { count }) => Math.max(most, count), 0) + longestJump + 1;
  return { after: new Float64Array(room), next: new Int32Array(room), upTo: new Float64Array(room), last: new Int32Array(room), bestWorth: new Float64Array(kinds), bestAt: new Int32Array(kinds) };
}

function laneTable(nodes: Nodes, lane: LaneNodes, { after, next, upTo, last, bestWorth, bestAt }: Tables, work: Work): LaneTable {
  const { phases, jumpOf } = nodes;
  const { count, first, lastOf } = lane;
  let counted: readonly number[] = [];

  const workBack: LaneTable['workBack'] = (duals, active) => {
    after.fill(0, count);
    let steps = 0;
    for (let node = count - 1; node >= 0; node -= 1) {
      const ranks = active[(first + node) % phases]!;
      steps += ranks.length + 1;
      let most = after[node + 1]!;
      let chosen = -1;
      for (let index = 0; index < ranks.length; index += 1) {
        const rank = ranks[index]!;
        if (node > lastOf[rank]!) continue;
        const worth = duals[rank]! + after[node + jumpOf[rank]!]!;
        if (worth > most) {
          most = worth;
          chosen = rank;
        }
      }
      after[node] = most;
      next[node] = chosen;
    }
    work.spend(steps);
    return after[0]!;
  };
  const readOn = (from: number, into: number[]): number[] => {
    for (let node = from; node < count; ) {
      const rank = next[node]!;
      if (rank >= 0) into.push(rank);
      node += rank < 0 ? 1 : jumpOf[rank]!;
    }
    return into;
  };
  const throughEach: LaneTable['throughEach'] = (duals, active, above, take) => {
    upTo.fill(-1);
    upTo[0] = 0;
    last[0] = -1;
    bestWorth.fill(0);
    let steps = 0;
    for (let node = 0; node < count; node += 1) {
      const before = upTo[node]!;
      if (before < 0) continue;
      if (before > upTo[node + 1]!) {
        upTo[node + 1] = before;
        last[node + 1] = -1;
      }
      const ranks = active[(first + node) % phases]!;
      steps += ranks.length + 1;
      for (let index = 0; index < ranks.length; index += 1) {
        const rank = ranks[index]!;
        if (node > lastOf[rank]!) continue;
        const there = node + jumpOf[rank]!;
        const worth = before + duals[rank]!;
        if (worth > upTo[there]!) {
          upTo[there] = worth;
          last[there] = rank;
        }
        const whole = worth + after[there]!;
        if (whole > bestWorth[rank]!) {
          bestWorth[rank] = whole;
          bestAt[rank] = node;
        }
      }
    }
    work.spend(steps);
    for (let rank = 0; rank < bestWorth.length; rank += 1) {
      if (bestWorth[rank]! <= above) continue;
      const before: number[] = [];
      for (let here = bestAt[rank]!; here > 0; ) {
        const cut = last[here]!;
        if (cut >= 0) before.push(cut);
        here -= cut < 0 ? 1 : jumpOf[cut]!;
      }
      take(readOn(bestAt[rank]! + jumpOf[rank]!, [...before.reverse(), rank]));
    }
  };

  const search: LaneTable['search'] = (question, active, known, take) => {
    const { duals, wanted } = question;
    counted = counted.filter((rank) => wanted[rank]! > 0 && duals[rank]! > 0);
    for (;;) {
      const order = dearestCounted(nodes, lane, after, question, active, counted, known, work);
      if (order === null) return false;
      const excess = [...countsOf(order)].flatMap(([rank, held]) => (held > wanted[rank]! ? [rank] : []));
      if (order.length > 0) take(order);
      if (excess.length === 0) return true;
      counted = [...counted, ...excess];
    }
  };

  const rest: LaneTable['rest'] = (duals, active) => {
    workBack(duals, active);
    return after.slice(0, count + 1);
  };

  return { workBack, rest, dearest: () => readOn(0, []), throughEach, search };
}
