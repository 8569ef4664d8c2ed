import type { CuttingProblem, Effort } from '../cutting/index.ts';
import type { House, Mural, Wallcovering } from '../house/index.ts';
import { ceilDivide, type Length, lengthOf, type Money, moneyOf, parseMoney } from '../units/index.ts';
import { choosePacks, MOST_ROLLS, type Pack, type SaleUnit } from './packs.ts';
import type { CutRoll, PlacedPiece } from './cut-roll.ts';
import type { Watch } from './known-cuts.ts';
import { type Cutting, cutPieces, type RollGoods, rollOf } from './pool.ts';
import { assignRuns, findRuns, type RunStock } from './runs.ts';

/** One line of the bulk order: a pattern number and a run number. */
export interface OrderLine {
  readonly covering: string;
  readonly patternNumber: string | null;
  /** Null while nothing is known of the pattern's runs, or for rooms that no known run can hang. */
  readonly run: string | null;
  readonly rooms: readonly string[];
  readonly rollsNeeded: number;
  readonly lowerBound: number;
  readonly isProvenMinimum: boolean;
  /** What the same rooms take when each is cut on its own. */
  readonly rollsByRoom: number;
  readonly spare: number;
  readonly inHand: number;
  readonly toBuy: number;
  readonly packs: readonly Pack[];
  readonly price: Money | null;
  /** Of goods by the length: what is cut, and what is bought of it in whole sale units; null of others. */
  readonly running: { readonly needed: Length; readonly toBuy: Length; readonly units: number } | null;
  /** Rolls that rooms need and no known run has. */
  readonly shortfall: number;
  /** Spare rolls that the run's offer does not stretch to. */
  readonly spareLacking: number;
  readonly problems: readonly CuttingProblem[];
}

export interface CutList {
  readonly covering: string;
  readonly run: string | null;
  readonly rolls: readonly CutRoll[];
}

export interface CoveringOrder {
  readonly lines: readonly OrderLine[];
  readonly cutLists: readonly CutList[];
  /** What there is of each run, of its offer what can be bought in sale units. */
  readonly runs: readonly RunStock[];
  /** Pieces that no roll can give. */
  readonly impossible: readonly PlacedPiece[];
}

/** What rooms take of a covering when their pieces are cut together. */
interface Taken {
  readonly rolls: number;
  readonly lowerBound: number;
  readonly isProven: boolean;
  readonly problems: readonly CuttingProblem[];
  cutRolls(): readonly CutRoll[];
}

/**
 * The order of one covering over all its rooms: pooled where the house's rule says so, by run where runs are known.
 *
 * Shapes: counts of rolls as delivered, money in minor units. To buy is what is needed and spare less what is in hand
 * of the run, rounded up to sale units at the least price within what the run offers.
 * Example: 9 rolls needed, 1 spare, none in hand, doubles at 84.00 or singles at 45.00: 5 doubles, 420.00.
 */
export function orderCovering(house: House, covering: RollGoods, pieces: readonly PlacedPiece[], effort: Effort, watch?: Watch): CoveringOrder {
  const rooms = [...new Set(pieces.map(({ room }) => room))];
  const of = (ids: readonly string[]) => pieces.filter(({ room }) => ids.includes(room));
  const aloneByRoom = new Map(rooms.map((room) => [room, cutPieces(covering, of([room]), effort, watch)]));
  const alone = (ids: readonly string[]) => ids.map((room) => aloneByRoom.get(room)!);
  const take = (ids: readonly string[]): Taken => {
    const apart = alone(ids);
    const pooled = house.rules.pooling === 'house' ? cutPieces(covering, of(ids), effort, watch) : null;
    // Rooms cut together need never take more than apart; where no better way was found in time, they are cut apart.
    const cuttings = pooled && pooled.plan.rollCount <= rollsOf(apart) ? [pooled] : apart;
    const rolls = rollsOf(cuttings);
    const lowerBound = pooled ? pooled.plan.lowerBound : apart.reduce((sum, { plan }) => sum + plan.lowerBound, 0);
    return {
      rolls,
      lowerBound,
      isProven: rolls === lowerBound,
      problems: cuttings.map(({ problem }) => problem),
      cutRolls: () => cuttings.flatMap((cutting) => cutting.rolls()).map((roll, index) => ({ ...roll, number: index + 1 })),
    };
  };
  return {
    ...orderByRuns(house, covering, { rooms, take, rollsAlone: (ids) => rollsOf(alone(ids)), spare: spareOf(house, covering) }, watch),
    impossible: [...aloneByRoom.values()].flatMap(({ impossible }) => impossible),
  };
}

function spareOf(house: House, covering: RollGoods): number {
  return 'soldBy' in covering && covering.soldBy ? 0 : (covering.spareRolls ?? house.rules.spareRolls);
}

function rollsOf(cuttings: readonly Pick<Cutting, 'plan'>[]): number {
  return cuttings.reduce((sum, { plan }) => sum + plan.rollCount, 0);
}

/**
 * The order of a mural: one for each place it hangs, and no spare unless its own facts say so.
 *
 * Example: a mural on one wall of each of two rooms is two to buy.
 */
export function orderMural(house: House, mural: Mural, places: ReadonlyMap<string, number>): CoveringOrder {
  const count = (ids: readonly string[]) => ids.reduce((sum, room) => sum + places.get(room)!, 0);
  const take = (ids: readonly string[]): Taken => ({ rolls: count(ids), lowerBound: count(ids), isProven: true, problems: [], cutRolls: () => [] });
  return { ...orderByRuns(house, mural, { rooms: [...places.keys()], take, rollsAlone: count, spare: mural.spareRolls ?? 0 }), impossible: [] };
}

interface Wanted {
  readonly rooms: readonly string[];
  readonly spare: number;
  take(rooms: readonly string[]): Taken;
  rollsAlone(rooms: readonly string[]): number;
}

function orderByRuns(house: House, covering: RollGoods | Mural, { rooms, spare, take, rollsAlone }: Wanted, watch?: Watch): Omit<CoveringOrder, 'impossible'> {
  const runs = buyableRuns(house, covering);
  const assignments = runs.length > 0 ? assignRuns(rooms, runs, (ids) => take(ids).rolls, watch) : [{ run: null, rooms }];
  const orders = assignments.map((assignment) => {
    const taken = take(assignment.rooms);
    const stock = runs.find(({ run }) => run === assignment.run);
    const inHand = stock?.inHand ?? 0;
    const soldBy = covering.kind === 'wallcovering' ? covering.soldBy : undefined;
    const running = soldBy && covering.kind === 'wallcovering' ? runningLength(covering, soldBy, taken.cutRolls(), inHand) : null;
    const purchase = choosePacks(Math.max(0, taken.rolls + spare - inHand), soldBy ? [{ rolls: 1, price: null, atLeast: 1 }] : saleUnits(covering, house), stock?.offered);
    const line: OrderLine = {
      covering: covering.id,
      patternNumber: covering.patternNumber ?? null,
      run: assignment.run,
      rooms: assignment.rooms,
      rollsNeeded: taken.rolls,
      lowerBound: taken.lowerBound,
      isProvenMinimum: taken.isProven,
      rollsByRoom: rollsAlone(assignment.rooms),
      spare,
      inHand,
      toBuy: purchase.rolls,
      packs: running ? [] : purchase.packs,
      price: running ? priceByLength(soldBy?.price, running.units, house) : purchase.price,
      running,
      shortfall: runs.length > 0 && assignment.run === null ? taken.rolls : 0,
      spareLacking: purchase.lacking,
      problems: taken.problems,
    };
    return { line, cutList: { covering: covering.id, run: assignment.run, rolls: taken.cutRolls() } };
  });
  return { lines: orders.map(({ line }) => line), cutLists: orders.map(({ cutList }) => cutList), runs };
}

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

/**
 * The runs of a covering with what of their offers can be bought in its sale units.
 *
 * Example: of seven rolls on offer that are sold in doubles, six.
 */
function buyableRuns(house: House, covering: RollGoods | Mural): readonly RunStock[] {
  const units = saleUnits(covering, house);
  return findRuns(house, covering.id).map((run) => {
    const offered = Math.min(run.offered, MOST_ROLLS);
    return { ...run, offered: choosePacks(offered, units, offered).rolls };
  });
}

function saleUnits(covering: RollGoods | Mural, house: House): readonly SaleUnit[] {
  if (!covering.soldIn || covering.soldIn.length === 0) return [{ rolls: 1, price: null, atLeast: 1 }];
  return covering.soldIn.map(({ rolls, price }) => {
    const parsed = price === undefined ? null : parseMoney(price, house.currency);
    return { rolls, price: parsed?.ok ? parsed.value : null, atLeast: 1 };
  });
}
