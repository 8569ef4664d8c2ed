import type { Effort } from '../cutting/index.ts';
import { type House, moneyIn, type Mural, type Wallcovering } from '../house/index.ts';
import { ceilDivide, floorDivide, lengthOf, type Money, moneyOf } from '../units/index.ts';
import type { CutRoll, PlacedPiece } from './cut-roll.ts';
import { type DifferenceLine, findDifference, findReturns, type ReturnLine } from './difference.ts';
import type { Watch } from './known-cuts.ts';
import { keepLedger, type Ledger, type RunStock } from './ledger.ts';
import type { CutList, OrderLine } from './order-line.ts';
import { choosePacks, type SaleUnit } from './packs.ts';
import { type RollGoods, rollOf } from './pool.ts';
import { asSold, type RunQuestion } from './runs.ts';
import { shareRuns, withRoomForHung } from './share-runs.ts';
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
  /** Rolls that rooms of a line take when they are cut together: of a room in parts, those that hang from its run. */
  countRooms(line: OrderLine, rooms: readonly string[]): number;
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
  const counter = countMurals();
  return orderByRuns(house, covering, [], { counter, asked: counter });
}

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
  const isKnown = ledger.runs.some(({ run }) => run !== null);
  const spareOf = (needed: number) => spareRolls(spareRule(house, covering), needed);
  const assignment = isKnown ? shareRuns(question, ledger, counter, spareOf, watch) : { runs: units.map((unit) => (unit.run === null ? null : runs.findIndex(({ run }) => run === unit.run))), isProven: true };
  const withRoom = withRoomForHung(question);

  const hangingFrom = (index: number | null) => units.filter((_, unit) => assignment.runs[unit] === index);
  const unknown = runs.findIndex(({ run }) => run === null);
  const fromNone = hangingFrom(null);
  // Where no run is known yet, what hangs from none waits for the one that is ordered.
  const groups = [
    ...runs.flatMap((stock, index) => (stock.run === null ? [] : [{ stock, isUnhung: false, members: hangingFrom(index) }])),
    { stock: runs[unknown] ?? null, isUnhung: false, members: isKnown ? hangingFrom(unknown) : fromNone },
    { stock: null, isUnhung: true, members: isKnown ? fromNone : [] },
  ];
  const orders = groups.filter(({ members }) => members.length > 0).map((group) => {
    const { stock, members } = group;
    const taken = counter.take(members);
    const limit = !isKnown || stock === null || stock.run === null ? undefined : asSold(stock.offered, sold);
    const hadMore = stock === null ? 0 : withRoom[runs.indexOf(stock)]!.inHand - stock.inHand;
    const line = orderLine(house, covering, { ...group, taken, sold, ledger, limit, hadMore });
    return { line, members, cutList: { covering: covering.id, run: line.run, rolls: taken.cutRolls() } };
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
    countRooms: (line, rooms) => {
      const members = orders.find((one) => one.line === line)?.members.filter((unit) => unit.rooms.some((room) => rooms.includes(room))) ?? [];
      return members.length === 0 ? 0 : asked.take(members.map((unit) => ({ ...unit, hangings: unit.hangings.filter(({ room }) => rooms.includes(room)) }))).rolls;
    },
  };
}

/** The runs that there are, and those that a room was set to and of which there are none. */
function withChosenRuns(runs: readonly RunStock[], units: readonly Unit[]): readonly RunStock[] {
  const chosen = [...new Set(units.flatMap(({ run }) => run ?? []))].filter((run) => !runs.some((known) => known.run === run));
  return [...runs, ...chosen.map((run) => ({ run, inHand: 0, onOrder: 0, offered: 0 }))];
}

interface ToOrder {
  readonly stock: RunStock | null;
  readonly isUnhung: boolean;
  readonly members: readonly Unit[];
  readonly taken: Taken;
  readonly sold: readonly SaleUnit[];
  readonly ledger: Ledger;
  /** The most that can be bought of the run; none where that is not known. */
  readonly limit: number | undefined;
  /** Rolls that what hangs already was counted to take, and took not. */
  readonly hadMore: number;
}

function orderLine(house: House, covering: RollGoods | Mural, { stock, isUnhung, members, taken, sold, ledger, limit, hadMore }: ToOrder): OrderLine {
  const run = stock?.run ?? null;
  const inHand = stock?.inHand ?? 0;
  const onOrder = stock?.onOrder ?? 0;
  const isDone = members.every(({ isHung }) => isHung);
  const spare = spareRolls(spareRule(house, covering), taken.rolls);
  const soldBy = covering.kind === 'wallcovering' ? covering.soldBy : undefined;
  const running = soldBy && covering.kind === 'wallcovering' ? runningLength(covering, soldBy, taken.cutRolls(), { there: inHand + onOrder, ...orderedByLength(ledger, run) }) : null;
  const purchase = choosePacks(isDone ? 0 : Math.max(0, taken.rolls + spare - inHand - onOrder - hadMore), soldBy ? ONE_BY_ONE : sold, limit);
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
    toBuy: running && running.units === 0 ? 0 : purchase.rolls,
    packs: running ? [] : purchase.packs,
    price: running ? priceByLength(soldBy?.price, running.units, house) : purchase.price,
    running,
    shortfall: isUnhung ? taken.rolls : 0,
    spareLacking: purchase.lacking,
    problems: taken.problems,
  };
}

function roomsOf(units: readonly Unit[]): readonly string[] {
  return [...new Set(units.flatMap(({ rooms }) => rooms))];
}

const ONE_BY_ONE: readonly SaleUnit[] = [{ rolls: 1, price: null, atLeast: 1 }];

type SoldBy = NonNullable<Wallcovering['soldBy']>;

/** What orders asked for by the length, and in how many pieces of the supplier's. */
interface Lengths {
  readonly ordered: number;
  readonly pieces: number;
}

/** Of a closed line what came of it. */
function orderedByLength({ lines }: Ledger, run: string | null): Lengths {
  const own = lines.filter((line) => line.run === run && line.line.length !== undefined && line.line.rolls > 0);
  return own.reduce<Lengths>(
    (sum, { line, received, instead, outstanding }) => {
      const pieces = received + instead + outstanding;
      return { ordered: sum.ordered + floorDivide(line.length!.length * Math.min(pieces, line.rolls), line.rolls), pieces: sum.pieces + pieces };
    },
    { ordered: 0, pieces: 0 },
  );
}

/**
 * The running length that all takes, and the sale units that are bought of it beyond what is there.
 *
 * Shapes: units. A piece that may begin anywhere in the pattern takes up to a repeat before its first cut. The supplier's
 * pieces that no order brought are taken whole, for what takes most; of orders counts their length.
 * Example: 1100 in of a vinyl sold by the yard is 31 yd; with 20 yd ordered 11 yd more.
 */
function runningLength(covering: RollGoods & Wallcovering, { length, minimum }: SoldBy, rolls: readonly CutRoll[], { there, ordered, pieces }: Lengths & { readonly there: number }): NonNullable<OrderLine['running']> {
  const { repeat, rollStart } = rollOf(covering);
  const used = rolls.map(({ cuts }) => Math.max(...cuts.map(({ from, placed }) => from + placed.piece.length)) + (rollStart === 'anywhere' ? repeat : 0)).toSorted((one, other) => other - one);
  const sumOf = (lengths: readonly number[]) => lengths.reduce((sum, one) => sum + one, 0);
  const wanted = Math.max(0, sumOf(used.slice(Math.max(0, there - pieces))) - ordered);
  const units = wanted === 0 ? 0 : ceilDivide(Math.max(wanted, minimum?.length ?? 0), length.length);
  return { needed: lengthOf(sumOf(used)), wanted: lengthOf(wanted), toBuy: lengthOf(units * length.length), units };
}

function priceByLength(price: string | undefined, units: number, house: House): Money | null {
  if (units === 0) return moneyOf(0);
  const one = moneyIn(house, price);
  return one === null ? null : moneyOf(one * units);
}

export function saleUnits(covering: RollGoods | Mural, house: Pick<House, 'currency'>): readonly SaleUnit[] {
  if (!covering.soldIn || covering.soldIn.length === 0) return ONE_BY_ONE;
  return covering.soldIn.map(({ rolls, price, atLeast }) => ({ rolls, price: moneyIn(house, price), atLeast }));
}
