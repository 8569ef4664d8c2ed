import { assert } from '../base/index.ts';
import { ceilDivide, floorDivide, type Money, moneyOf } from '../units/index.ts';

/** What a paint or a material is sold in: so much of it, in whole steps of its unit. */
export interface Pack {
  readonly amount: number;
  /** Null where no price is known. */
  readonly price: Money | null;
}

export interface PackPurchase {
  /** How many of each pack, in the order of the packs. */
  readonly counts: readonly number[];
  readonly amount: number;
  /** Null where a pack has no known price. */
  readonly price: Money | null;
}

/** Places of the table in which mixtures are tried, each of the largest measure that all packs are whole multiples of. */
const MOST_PLACES = 2_500_000;

/**
 * Chooses packs for at least so much at the least price, exactly; of what costs the same what leaves least
 * over, then the fewest packs.
 *
 * Shapes: amounts are whole and above 0, the need whole from 0. Where a pack has no price, the least left over decides,
 * then the fewest packs. Of a large need the pack that costs least for what it holds is taken first, as often as the best
 * mixture surely has it; only the rest is tried. Where packs have next to no common measure and the rest is above
 * 2,500,000 steps, more of that pack is taken beforehand, which may miss the least price by a little.
 * Example: 3100 ml from tins of 2500 ml at 31.00 and 5000 ml at 54.00 are one of 5000 ml, 54.00; 6000 ml are one of each,
 * 85.00.
 */
export function choosePacks(need: number, packs: readonly Pack[]): PackPurchase {
  assert(Number.isSafeInteger(need) && need >= 0, `${need} is a whole number from 0`);
  assert(packs.length > 0 && packs.every(({ amount }) => Number.isSafeInteger(amount) && amount > 0), 'packs of 1 or more');
  const isPriced = packs.every(({ price }) => price !== null);
  const measure = packs.map(({ amount }) => amount).reduce(commonMeasure);
  const sizes = packs.map(({ amount }) => floorDivide(amount, measure));
  const prices = packs.map(({ price }) => (isPriced ? price! : 0));
  const wanted = ceilDivide(need, measure);

  const best = bestValue(sizes, prices);
  const before = takenBefore(wanted, sizes, best);
  const counts = cheapestMixture(wanted - before * sizes[best]!, sizes, prices);
  counts[best]! += before;
  const bought = counts.reduce((sum, count, pack) => sum + count * packs[pack]!.amount, 0);
  return { counts, amount: bought, price: isPriced ? moneyOf(counts.reduce((sum, count, pack) => sum + count * prices[pack]!, 0)) : null };
}

function commonMeasure(one: number, other: number): number {
  let [measure, rest] = [one, other];
  while (rest !== 0) [measure, rest] = [rest, measure % rest];
  return measure;
}

/** The pack that costs least for what it holds; of several the largest, without prices the largest of all. */
function bestValue(sizes: readonly number[], prices: readonly number[]): number {
  return sizes.reduce((best, size, pack) => {
    const difference = BigInt(prices[pack]!) * BigInt(sizes[best]!) - BigInt(prices[best]!) * BigInt(size);
    return difference < 0n || (difference === 0n && size > sizes[best]!) ? pack : best;
  }, 0);
}

/**
 * How many of the best pack are taken without trying.
 *
 * Of as many other packs as the best one holds measures, some hold together a whole multiple of it, and best packs in their
 * place cost no more and are no more. So some best mixture has fewer others than that, and the rest of it are best packs.
 */
function takenBefore(wanted: number, sizes: readonly number[], best: number): number {
  const size = sizes[best]!;
  const largestOther = Math.max(0, ...sizes.filter((_, pack) => pack !== best));
  const largest = Math.max(size, largestOther);
  const tried = Math.min((size - 1) * largestOther, MOST_PLACES - largest);
  return Math.max(0, floorDivide(wanted - tried, size));
}

/**
 * Of every number of measures the cheapest mixture that holds exactly so many, one after the other; of those that hold
 * enough the best.
 *
 * More than the largest pack too many never is the best: a pack could be left out.
 */
function cheapestMixture(wanted: number, sizes: readonly number[], prices: readonly number[]): number[] {
  const counts = sizes.map(() => 0);
  if (wanted <= 0) return counts;
  const reach = wanted + Math.max(...sizes);
  const cost = new Float64Array(reach).fill(Infinity);
  const packsOf = new Int32Array(reach);
  const last = new Uint8Array(reach);
  cost[0] = 0;
  for (let total = 1; total < reach; total += 1) {
    for (let pack = 0; pack < sizes.length; pack += 1) {
      const before = total - sizes[pack]!;
      if (before < 0) continue;
      const costs = cost[before]! + prices[pack]!;
      if (costs < cost[total]! || (costs === cost[total]! && costs < Infinity && packsOf[before]! + 1 < packsOf[total]!)) {
        cost[total] = costs;
        packsOf[total] = packsOf[before]! + 1;
        last[total] = pack;
      }
    }
  }
  let chosen = wanted;
  for (let total = wanted; total < reach; total += 1) if (cost[total]! < cost[chosen]!) chosen = total;
  for (let left = chosen; left > 0; left -= sizes[last[left]!]!) counts[last[left]!]! += 1;
  return counts;
}
