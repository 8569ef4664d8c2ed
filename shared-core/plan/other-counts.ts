import { type Effort, leastWhenLooking } from '../cutting/index.ts';
import type { House, Wallcovering } from '../house/index.ts';
import { asCut, isInSequence, isRollGoods, knownCuts, longestPiece, type OrderLine, rollOf, type RollGoods, type Watch } from '../ordering/index.ts';
import { floorDivide, type Length, lengthOf, type Measure, printLength } from '../units/index.ts';
import { planHouse } from './plan-house.ts';

/** So many rolls, and whether it is sure that fewer would not do. */
export interface OtherCount {
  readonly rolls: number;
  readonly isProven: boolean;
}

/** What an order line would take of other rolls or cut otherwise; null where the question does not arise. */
export interface OtherCounts {
  /** No fewer rolls will surely do, even where each roll's start is looked at before it is cut. */
  readonly leastWhenLooking: number | null;
  readonly ifAtRepeat: OtherCount | null;
  readonly atLowerTolerance: (OtherCount & { readonly width: Length; readonly rollLength: Length; readonly isEveryPieceGiven: boolean }) | null;
}

/**
 * Counts the rolls of an order line again: for who looks at each roll before cutting it, for rolls that begin at their
 * repeat, and for the smallest that may be sold.
 *
 * All are to be shown beside the order, which holds for rolls of the marked size that begin anywhere. The first two keep
 * the strips as they are set out; the last sets the line's rooms out again, since a narrower roll moves every seam.
 * Null where rolls begin at their repeat already, have none, or are cut in their own sequence; and for the last where
 * the goods are no wallcovering in rolls.
 * Example: 16 strips of 2.40 m from rolls of 10.05 m with a repeat of 0.625 m: 6 rolls, 4 where they begin at a repeat.
 */
export function countOtherwise(house: House, line: OrderLine, effort: Effort = 'usual', watch?: Watch): OtherCounts {
  const covering = house.coverings.map(asCut).find(({ id }) => id === line.covering);
  if (!covering || !isRollGoods(covering)) return { leastWhenLooking: null, ifAtRepeat: null, atLowerTolerance: null };
  return {
    leastWhenLooking: isAnywhere(covering) ? line.problems.reduce((sum, problem) => sum + leastWhenLooking(problem, watch && (() => watch.isStopped())), 0) : null,
    ifAtRepeat: countAtRepeat(covering, line, effort, watch),
    atLowerTolerance: covering.kind === 'wallcovering' && !line.running ? countAtLowerTolerance(house, covering, line, effort, watch) : null,
  };
}

function isAnywhere(covering: RollGoods): boolean {
  const { repeat, rollStart } = rollOf(covering);
  return repeat > 0 && rollStart === 'anywhere' && !isInSequence(covering);
}

function countAtRepeat(covering: RollGoods, line: OrderLine, effort: Effort, watch?: Watch): OtherCount | null {
  if (!isAnywhere(covering)) return null;
  // A piece that no roll surely gives is in neither count.
  const safe = longestPiece(covering);
  const plans = line.problems.map((problem) => knownCuts({ ...problem, rollStart: 'at-repeat', pieces: problem.pieces.filter(({ length }) => length <= safe) }, effort, watch));
  const rolls = plans.reduce((sum, { rollCount }) => sum + rollCount, 0);
  // What is cut so that it fits wherever the roll begins fits one that begins at its repeat.
  return rolls <= line.rollsNeeded ? { rolls, isProven: plans.every(({ isProven }) => isProven) } : { rolls: line.rollsNeeded, isProven: false };
}

function countAtLowerTolerance(house: House, covering: RollGoods & Wallcovering, line: OrderLine, effort: Effort, watch?: Watch): OtherCounts['atLowerTolerance'] {
  const smallest = atLowerTolerance(covering);
  const rooms = house.rooms.filter(({ id }) => line.rooms.includes(id));
  const coverings = house.coverings.map((one) => (one.id === covering.id ? smallest : one));
  const [again] = planHouse({ ...house, rooms, coverings, stock: [], offers: [], deliveries: [] }, effort, watch).order.filter((one) => one.covering === covering.id);
  if (!again) return null;
  const isEveryPieceGiven = again.problems.every(({ pieces }) => pieces.every(({ length, phase }) => length <= longestPiece(smallest, phase)));
  return { rolls: again.rollsNeeded, isProven: again.isProvenMinimum, width: smallest.width.length, rollLength: smallest.rollLength.length, isEveryPieceGiven };
}

const THOUSANDTHS_LEFT = 985;

/**
 * A covering in rolls as narrow and as short as may still be sold under the marked size: 1.5 % less of both.
 *
 * Source: EN 233, finished wallpapers, tolerances of width and length; read in an extract. Rounded down to a whole unit.
 * Example: of 530 mm by 10.05 m, 522.05 mm by 9.89925 m.
 */
export function atLowerTolerance<Goods extends Pick<RollGoods & Wallcovering, 'width' | 'rollLength'>>(covering: Goods): Goods {
  return { ...covering, width: lessened(covering.width), rollLength: lessened(covering.rollLength) };
}

function lessened({ length }: Measure): Measure {
  const left = lengthOf(floorDivide(length * THOUSANDTHS_LEFT, 1_000));
  return { length: left, typed: printLength(left, 'metric') };
}
