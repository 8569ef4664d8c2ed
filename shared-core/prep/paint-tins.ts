import { assert } from '../base/index.ts';
import { ceilDivide, floorDivide, type Money, moneyOf } from '../units/index.ts';

export interface Tin {
  readonly millilitres: number;
  /** Null where no price is known. */
  readonly price: Money | null;
}

export interface TinPurchase {
  /** How many of each tin, in the order of the tins. */
  readonly counts: readonly number[];
  readonly millilitres: number;
  /** Null where a tin has no known price. */
  readonly price: Money | null;
}

/** Places of the table in which mixtures are tried, each of the largest measure that all tins are whole multiples of. */
const MOST_PLACES = 2_500_000;

/**
 * Chooses tins for at least so many millilitres at the least price, exactly; of what costs the same what leaves least
 * over, then the fewest tins.
 *
 * Where a tin has no price, the least left over decides, then the fewest tins. Of a large need the tin that costs least a
 * litre is taken first, as often as the best mixture surely has it; only the rest is tried. Where tins have next to no
 * common measure and the rest is above 2500 L, more of that tin is taken beforehand, which may miss the least price by a
 * little.
 * Example: 3.1 L from 2.5 L at 31.00 and 5 L at 54.00 are one of 5 L, 54.00; 6 L are one of each, 85.00.
 */
export function chooseTins(need: number, tins: readonly Tin[]): TinPurchase {
  assert(Number.isSafeInteger(need) && need >= 0, `${need} mL is a whole number from 0`);
  assert(tins.length > 0 && tins.every(({ millilitres }) => Number.isSafeInteger(millilitres) && millilitres > 0), 'tins of 1 mL or more');
  const isPriced = tins.every(({ price }) => price !== null);
  const measure = tins.map(({ millilitres }) => millilitres).reduce(commonMeasure);
  const sizes = tins.map(({ millilitres }) => floorDivide(millilitres, measure));
  const prices = tins.map(({ price }) => (isPriced ? price! : 0));
  const wanted = ceilDivide(need, measure);

  const best = bestValue(sizes, prices);
  const before = takenBefore(wanted, sizes, best);
  const counts = cheapestMixture(wanted - before * sizes[best]!, sizes, prices);
  counts[best]! += before;
  const bought = counts.reduce((sum, count, tin) => sum + count * tins[tin]!.millilitres, 0);
  return { counts, millilitres: bought, price: isPriced ? moneyOf(counts.reduce((sum, count, tin) => sum + count * prices[tin]!, 0)) : null };
}

function commonMeasure(one: number, other: number): number {
  let [measure, rest] = [one, other];
  while (rest !== 0) [measure, rest] = [rest, measure % rest];
  return measure;
}

/** The tin that costs least for what it holds; of several the largest, without prices the largest of all. */
function bestValue(sizes: readonly number[], prices: readonly number[]): number {
  return sizes.reduce((best, size, tin) => {
    const difference = BigInt(prices[tin]!) * BigInt(sizes[best]!) - BigInt(prices[best]!) * BigInt(size);
    return difference < 0n || (difference === 0n && size > sizes[best]!) ? tin : best;
  }, 0);
}

/**
 * How many of the best tin are taken without trying.
 *
 * Of as many other tins as the best one holds measures, some hold together a whole multiple of it, and best tins in their
 * place cost no more and are no more. So some best mixture has fewer others than that, and the rest of it are best tins.
 */
function takenBefore(wanted: number, sizes: readonly number[], best: number): number {
  const size = sizes[best]!;
  const largestOther = Math.max(0, ...sizes.filter((_, tin) => tin !== best));
  const largest = Math.max(size, largestOther);
  const tried = Math.min((size - 1) * largestOther, MOST_PLACES - largest);
  return Math.max(0, floorDivide(wanted - tried, size));
}

/**
 * Of every number of measures the cheapest mixture that holds exactly so many, one after the other; of those that hold
 * enough the best.
 *
 * More than the largest tin too many never is the best: a tin could be left out.
 */
function cheapestMixture(wanted: number, sizes: readonly number[], prices: readonly number[]): number[] {
  const counts = sizes.map(() => 0);
  if (wanted <= 0) return counts;
  const reach = wanted + Math.max(...sizes);
  const cost = new Float64Array(reach).fill(Infinity);
  const tinsOf = new Int32Array(reach);
  const last = new Uint8Array(reach);
  cost[0] = 0;
  for (let total = 1; total < reach; total += 1) {
    for (let tin = 0; tin < sizes.length; tin += 1) {
      const before = total - sizes[tin]!;
      if (before < 0) continue;
      const costs = cost[before]! + prices[tin]!;
      if (costs < cost[total]! || (costs === cost[total]! && costs < Infinity && tinsOf[before]! + 1 < tinsOf[total]!)) {
        cost[total] = costs;
        tinsOf[total] = tinsOf[before]! + 1;
        last[total] = tin;
      }
    }
  }
  let chosen = wanted;
  for (let total = wanted; total < reach; total += 1) if (cost[total]! < cost[chosen]!) chosen = total;
  for (let left = chosen; left > 0; left -= sizes[last[left]!]!) counts[last[left]!]! += 1;
  return counts;
}
