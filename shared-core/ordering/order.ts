import type { Effort } from '../cutting/index.ts';
import type { House, Mural, Wallcovering } from '../house/index.ts';
import { ceilDivide, lengthOf, type Money, moneyOf, parseMoney } from '../units/index.ts';
import type { CutRoll, PlacedPiece } from './cut-roll.ts';
import { type DifferenceLine, findDifference, findReturns, type ReturnLine } from './difference.ts';
import type { Watch } from './known-cuts.ts';
import { keepLedger, type Ledger, type RunStock } from './ledger.ts';
import type { CutList, OrderLine } from './order-line.ts';
import { choosePacks, type SaleUnit } from './packs.ts';
import { type RollGoods, rollOf } from './pool.ts';
import { asSold, assignRuns, type RunQuestion } from './runs.ts';
import { spareRolls, spareRule } from './spare.ts';
import { countCuts, countMurals, type Counter, type Taken } from './take.ts';
import { type RoomPieces, type Unit, unitsOf } from './units.ts';
import { findWaysOut, type WayOut } from './ways-out.ts';

export interface CoveringOrder {
  readonly lines: readonly OrderLine[];
  readonly cutLists: readonly CutList[];
  readonly ledger: Ledger;
  /** What there is of each run, of its offer what can be bought in sale units. */
  readonly runs: readonly RunStock[];
  /** Whether no other assignment of rooms to runs is better. */
  readonly isBestAssignment: boolean;
  /** What could be done about rooms that no run can hang, the cheapest first. */
  readonly waysOut: readonly WayOut[];
  readonly difference: readonly DifferenceLine[];
  readonly returns: readonly ReturnLine[];
  /** Pieces that no roll can give. */
  readonly impossible: readonly PlacedPiece[];
  /** Rolls that rooms take of a run when they are cut together: of a room in parts, those that hang from it. */
  countRooms(run: string | null, rooms: readonly string[]): number;
}

/**
 * The order of one covering over all its rooms: pooled where the house's rule says so, by run where runs are known.
 *
 * Shapes: counts of rolls as delivered, money in minor units. To buy is what is needed and spare less what is in hand
 * or on order of the run, rounded up to sale units at the least price within what the run offers.
 * Example: 9 rolls needed, 1 spare, none in hand, doubles at 84.00 or singles at 45.00: 5 doubles, 420.00.
 */
export function orderCovering(house: House, covering: RollGoods, hangings: readonly RoomPieces[], effort: Effort, watch?: Watch): CoveringOrder {
  const counter = countCuts(house, covering, hangings, effort, watch);
  return orderByRuns(house, covering, hangings, { counter, asked: effort === 'instant' ? counter : countCuts(house, covering, hangings, 'brief', watch) }, watch);
}

/**
 * The order of a mural: one for each place it hangs, and no spare unless its own facts say so.
 *
 * Example: a mural on one wall of each of two rooms is two to buy.
 */
export function orderMural(house: House, mural: Mural, hangings: readonly RoomPieces[]): CoveringOrder {
  const counter = countMurals();
  return orderByRuns(house, mural, hangings, { counter, asked: counter });
}

/**
 * What was ordered and has come of a covering that hangs nowhere: all of it can go back.
 *
 * Example: 10 rolls ordered for a room that is painted after all.
 */
export function orderOfNone(house: House, covering: RollGoods | Mural): CoveringOrder {
  return orderByRuns(house, covering, [], { counter: NOTHING, asked: NOTHING });
}

const NOTHING: Counter = {
  isAdditive: true,
  take: () => ({ rolls: 0, lowerBound: 0, isProven: true, rollsByRoom: 0, problems: [], impossible: [], cutRolls: () => [] }),
  bounds: () => [],
};

/** Counts what is ordered, and what is only asked for on the way to an assignment: very many selections of rooms. */
interface Counters {
  readonly counter: Counter;
  readonly asked: Counter;
}

function orderByRuns(house: House, covering: RollGoods | Mural, hangings: readonly RoomPieces[], { counter, asked }: Counters, watch?: Watch): CoveringOrder {
  const ledger = keepLedger(house, covering.id);
  const sold = saleUnits(covering, house);
  const units = unitsOf(house, covering.id, hangings);
  const runs = withChosenRuns(ledger.runs, units);
  const question: RunQuestion = { units, runs, counter: asked, sold };
  const isKnown = runs.some(({ run }) => run !== null);
  const assignment = isKnown ? assignRuns(question, watch) : { runs: units.map(() => null), isProven: true };

  // What hangs from a run that is on its way and what no run can hang both wait for a run that is not known yet.
  const unknown = runs.find(({ run }) => run === null) ?? null;
  const lineOf = (run: RunStock | null, members: readonly Unit[]) => {
    const taken = counter.take(members);
    const unhung = isKnown && run === unknown ? units.filter((_, unit) => assignment.runs[unit] === null) : [];
    return { line: orderLine(house, covering, run, members, taken, sold, { rolls: unhung.length === 0 ? 0 : counter.take(unhung).rolls, rooms: roomsOf(unhung) }), cutList: { covering: covering.id, run: run?.run ?? null, rolls: taken.cutRolls() } };
  };
  const inRun = (wanted: RunStock | null) => units.filter((_, unit) => {
    const index = assignment.runs[unit] ?? null;
    return wanted === null || wanted === unknown ? index === null || runs[index] === unknown : index !== null && runs[index] === wanted;
  });
  const orders = [...runs.filter(({ run }) => run !== null), unknown].flatMap((run) => {
    const members = inRun(run);
    return members.length === 0 ? [] : [lineOf(run, members)];
  });
  const lines = orders.map(({ line }) => line);
  const isShort = lines.some(({ shortfall }) => shortfall > 0);
  const waysOut = isShort && !watch?.isStopped() ? findWaysOut(question, assignment.runs, watch) : [];
  return {
    lines,
    cutLists: orders.map(({ cutList }) => cutList),
    ledger,
    runs: runs.map((run) => ({ ...run, offered: asSold(run.offered, sold) })),
    isBestAssignment: assignment.isProven,
    waysOut,
    difference: findDifference(ledger, lines, waysOut),
    returns: findReturns(ledger, lines, covering.patternNumber ?? null, sold),
    impossible: counter.take(units).impossible,
    countRooms: (run, rooms) => {
      const members = inRun(runs.find((one) => one.run === run) ?? null).filter((unit) => unit.rooms.some((room) => rooms.includes(room)));
      return members.length === 0 ? 0 : asked.take(members.map((unit) => ({ ...unit, hangings: unit.hangings.filter(({ room }) => rooms.includes(room)) }))).rolls;
    },
  };
}

/** The runs that there are, and those that a room was set to and of which there are none. */
function withChosenRuns(runs: readonly RunStock[], units: readonly Unit[]): readonly RunStock[] {
  const chosen = [...new Set(units.flatMap(({ run }) => run ?? []))].filter((run) => !runs.some((known) => known.run === run));
  return [...runs, ...chosen.map((run) => ({ run, inHand: 0, onOrder: 0, offered: 0 }))];
}

function orderLine(house: House, covering: RollGoods | Mural, stock: RunStock | null, members: readonly Unit[], taken: Taken, sold: readonly SaleUnit[], short: { readonly rolls: number; readonly rooms: readonly string[] }): OrderLine {
  const run = stock?.run ?? null;
  const inHand = stock?.inHand ?? 0;
  const onOrder = stock?.onOrder ?? 0;
  const there = inHand + onOrder;
  const spare = spareRolls(spareRule(house, covering), taken.rolls);
  const soldBy = covering.kind === 'wallcovering' ? covering.soldBy : undefined;
  const running = soldBy && covering.kind === 'wallcovering' ? runningLength(covering, soldBy, taken.cutRolls(), there) : null;
  const limit = run === null ? undefined : asSold(stock?.offered ?? 0, sold);
  const purchase = choosePacks(Math.max(0, taken.rolls + spare - there), soldBy ? ONE_BY_ONE : sold, limit);
  return {
    covering: covering.id,
    patternNumber: covering.patternNumber ?? null,
    run,
    rooms: roomsOf(members),
    rollsNeeded: taken.rolls,
    lowerBound: taken.lowerBound,
    isProvenMinimum: taken.isProven,
    rollsByRoom: taken.rollsByRoom,
    spare,
    inHand,
    onOrder,
    toBuy: purchase.rolls,
    packs: running ? [] : purchase.packs,
    price: running ? priceByLength(soldBy?.price, running.units, house) : purchase.price,
    running,
    unhung: short.rooms,
    shortfall: short.rolls,
    spareLacking: purchase.lacking,
    problems: taken.problems,
  };
}

function roomsOf(units: readonly Unit[]): readonly string[] {
  return [...new Set(units.flatMap(({ rooms }) => rooms))];
}

const ONE_BY_ONE: readonly SaleUnit[] = [{ rolls: 1, price: null, atLeast: 1 }];

type SoldBy = NonNullable<Wallcovering['soldBy']>;

/**
 * The running length that the rolls beyond those in hand take, and the sale units it is bought in.
 *
 * Shapes: units. A piece that may begin anywhere in the pattern takes up to a repeat before its first cut.
 * Example: 1100 in of a vinyl sold by the yard is 31 yd.
 */
function runningLength(covering: RollGoods & Wallcovering, { length, minimum }: SoldBy, rolls: readonly CutRoll[], inHand: number): NonNullable<OrderLine['running']> {
  const { repeat, rollStart } = rollOf(covering);
  const used = rolls.map(({ cuts }) => Math.max(...cuts.map(({ from, placed }) => from + placed.piece.length)) + (rollStart === 'anywhere' ? repeat : 0)).toSorted((one, other) => other - one);
  const needed = used.slice(inHand).reduce((sum, one) => sum + one, 0);
  const units = needed === 0 ? 0 : ceilDivide(Math.max(needed, minimum?.length ?? 0), length.length);
  return { needed: lengthOf(needed), toBuy: lengthOf(units * length.length), units };
}

function priceByLength(price: string | undefined, units: number, house: House): Money | null {
  const parsed = price === undefined ? null : parseMoney(price, house.currency);
  return parsed?.ok ? moneyOf(parsed.value * units) : null;
}

export function saleUnits(covering: RollGoods | Mural, house: Pick<House, 'currency'>): readonly SaleUnit[] {
  if (!covering.soldIn || covering.soldIn.length === 0) return ONE_BY_ONE;
  return covering.soldIn.map(({ rolls, price, atLeast }) => {
    const parsed = price === undefined ? null : parseMoney(price, house.currency);
    return { rolls, price: parsed?.ok ? parsed.value : null, atLeast };
  });
}
