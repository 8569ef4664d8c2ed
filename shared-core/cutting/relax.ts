import { coverProgram } from './cover-program.ts';
import type { FindDearest } from './dearest.ts';
import { better, boundOf, exactScale, type Pricing, priced } from './pricing.ts';
import { ceilDivide, contentsOf, countsOf, laneFrom, type Roll, roomFor, type Tape, within } from './tape.ts';
import type { Work } from './work.ts';

/** What rolls may be cut so far; more are added as they turn out to be worth while. */
export interface Pool {
  readonly rolls: readonly Roll[];
  /** Adds a roll unless one with the same pieces is known. */
  add(roll: Roll): void;
}

/** What is to be cut, and how well. */
export interface Aim {
  /** By rank: how many pieces are wanted. */
  readonly wanted: ArrayLike<number>;
  /** Whether no roll may hold more of a kind than is wanted. That raises the bound, and makes dear rolls harder to find. */
  readonly isWithinDemand: boolean;
  /** How many beginnings of rolls may be kept in mind in looking for a dear one that is within demand. */
  readonly patience: number;
  /** A bound that is as good as any. */
  readonly bound: number;
  /** A number of rolls, in parts, that is as good as any. */
  readonly rolls: number;
}

/** Rolls cut in parts. */
export interface Relaxed {
  /** How many, at the optimum of the linear program; more than that where the work ended early. */
  readonly rolls: number;
  readonly used: readonly { readonly roll: Roll; readonly times: number }[];
  /** Whether the optimum was reached, and is known to be it. */
  readonly isOptimal: boolean;
  /** The best of the bounds met on the way; null where none is within reach. */
  readonly pricing: Pricing | null;
}

/** Rounding may leave so much of a gain that is none, as a share of a roll. */
const ROUNDING = 1e-7;
/** At least so many rolls are looked for in a round. */
const FEWEST_A_ROUND = 8;

export function poolOf(first: readonly Roll[]): Pool {
  const rolls: Roll[] = [];
  const keys = new Set<string>();
  const add = (roll: Roll): void => {
    const key = contentsOf(roll.order);
    if (keys.has(key)) return;
    keys.add(key);
    rolls.push(roll);
  };
  first.forEach(add);
  return { rolls, add };
}

/**
 * Cuts in parts of rolls: the linear program over all rolls there are, those that matter found one by one.
 *
 * Rule (column generation): solve over the rolls in the pool; at the prices that come out, look for rolls whose pieces
 * are worth more than one roll; add them, until there is none. Prices rounded down to whole numbers give a bound
 * (Farley): if no roll counts for more than `most` and the wanted pieces count for `total`, then no plan takes fewer
 * than total / most rolls. It holds for any prices, so it is exact whatever the floats do.
 *
 * Example: rolls of 10, free match, 3 pieces of 6 and 2 of 4: at prices of 2/3 and 1/3 of a roll, no roll is worth more
 * than one, and all pieces are worth 8/3: at least 3 rolls.
 */
export function relax(tape: Tape, find: FindDearest, pool: Pool, work: Work, aim: Aim): Relaxed {
  const { wanted, isWithinDemand, patience } = aim;
  const held = isWithinDemand ? wanted : new Float64Array(wanted.length).fill(Infinity);
  const ranks = tape.kinds.map(({ rank }) => rank).filter((rank) => wanted[rank]! > 0);
  const rowOf = new Int32Array(wanted.length).fill(-1);
  ranks.forEach((rank, row) => (rowOf[rank] = row));
  const rolls = ranks.map((rank) => onlyOf(tape, rank, held[rank]!));
  const program = coverProgram(
    ranks.map((rank) => wanted[rank]!),
    rolls.map(({ order }) => order.length),
    work,
  );
  const known = new Set(rolls.map(({ order }) => contentsOf(order)));
  const offer = (roll: Roll): boolean => {
    const order = within(roll.order, held).filter((rank) => rowOf[rank]! >= 0);
    const key = contentsOf(order);
    if (order.length === 0 || known.has(key)) return false;
    known.add(key);
    rolls.push({ lane: roll.lane, order });
    const counts = countsOf(order);
    program.add({ rows: [...counts.keys()].map((rank) => rowOf[rank]!), times: [...counts.values()] });
    return true;
  };
  pool.rolls.forEach(offer);

  const duals = new Float64Array(wanted.length);
  const worthOf = ({ order }: Roll): number => order.reduce((sum, rank) => sum + duals[rank]!, 0);
  let best: Pricing | null = null;
  /** The linear program's optimum is bounded as well as whole rolls can tell. */
  const isTight = (): boolean => boundOf(best) >= Math.min(aim.bound, Math.ceil(program.rolls() - ROUNDING));
  const note = (most: number | null, isOfThoseWithinDemand: boolean): void => {
    if (most !== null) best = better(best, priced([...duals], wanted, most, isOfThoseWithinDemand));
  };
  let isOptimal = false;
  const addBetter = (scale: number): boolean => {
    const surely = program.used().reduce((most, { column }) => Math.max(most, worthOf(rolls[column]!)), 0);
    const enough = Math.max(FEWEST_A_ROUND, ceilDivide(ranks.length, 2));
    const dearest = find.within({ duals, wanted: held, above: Math.ceil(scale * (1 + ROUNDING)), surely, enough, patience });
    let isAdded = false;
    for (const roll of dearest.rolls) {
      if (!offer(roll)) continue;
      pool.add(roll);
      isAdded = true;
    }
    note(dearest.most, isWithinDemand);
    if (dearest.most === null && !isAdded) note(find.mostOverAll(duals), false);
    isOptimal = !isAdded && dearest.most !== null;
    return isAdded && boundOf(best) < aim.bound;
  };
  for (const finest of find.scales) {
    const scale = exactScale(finest, wanted);
    for (let isBetterLookedFor = true; isBetterLookedFor; ) {
      const isSolved = program.minimise();
      ranks.forEach((rank, row) => (duals[rank] = Math.max(0, Math.floor(program.prices[row]! * scale))));
      const isEnough = program.rolls() <= aim.rolls || !isSolved || work.isOver();
      isBetterLookedFor = !isEnough && addBetter(scale);
    }
    if (!isOptimal || isTight()) break;
  }
  if (best === null) note(find.mostOverAll(duals), false);
  return { rolls: program.rolls(), isOptimal, used: program.used().map(({ column, times }) => ({ roll: rolls[column]!, times })), pricing: best };
}

/** A roll of one kind alone, as many pieces as it gives and as are wanted. */
function onlyOf(tape: Tape, rank: number, wanted: number): Roll {
  const kind = tape.kinds[rank]!;
  const lane = laneFrom(tape, kind.phase);
  return { lane, order: Array<number>(Math.min(wanted, roomFor(tape, lane, 0, kind).most)).fill(rank) };
}
