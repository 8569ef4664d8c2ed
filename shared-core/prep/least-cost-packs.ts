import { assert } from '../base/index.ts';
import { ceilDivide, floorDivide, type Money, moneyOf } from '../units/index.ts';

/** A pack that holds so many steps of a material. */
export interface PackOffer {
  readonly amount: number;
  /** Null where no price is known. */
  readonly price: Money | null;
}

export interface BoughtPacks {
  /** How many of each offer, in their order. */
  readonly counts: readonly number[];
  /** Null where an offer has no price. */
  readonly price: Money | null;
}

/** How many amounts are looked at one by one. */
const MOST_AMOUNTS = 4_000_000;

/**
 * Packs that hold at least so much at the least price, exactly; of what costs the same the least too much, then the
 * fewest packs.
 *
 * Shapes: amounts are whole and above 0, the need whole from 0. Where an offer has no price, the least too much decides,
 * then the fewest packs. Every amount is looked at in steps of what all offers share. A need of more than 4,000,000 steps
 * is met with the pack that is best by the amount first, down to that.
 * Example: 12 from packs of 5 at 3.00 and of 2 at 1.50 are two of 5 and one of 2, 7.50.
 */
export function leastCostPacks(need: number, offers: readonly PackOffer[]): BoughtPacks {
  assert(Number.isSafeInteger(need) && need >= 0, 'a whole need from 0');
  assert(offers.length > 0 && offers.every(({ amount }) => Number.isSafeInteger(amount) && amount > 0), 'packs of whole amounts above 0');
  const isPriced = offers.every(({ price }) => price !== null);
  const step = offers.reduce((shared, { amount }) => greatestShared(shared, amount), 0);
  const amounts = offers.map(({ amount }) => amount / step);
  const prices = offers.map(({ price }) => price ?? 0);
  const steps = ceilDivide(need, step);
  const best = bestByAmount(amounts, prices, isPriced);
  const ahead = steps <= MOST_AMOUNTS ? 0 : floorDivide(steps - MOST_AMOUNTS, amounts[best]!);
  const rest = fewestFor(steps - ahead * amounts[best]!, amounts, isPriced ? prices : amounts.map(() => 0));
  const counts = rest.map((count, index) => count + (index === best ? ahead : 0));
  return { counts, price: isPriced ? moneyOf(counts.reduce((sum, count, index) => sum + count * prices[index]!, 0)) : null };
}

/** How many of each make at least so many steps: the least price, then the fewest steps, then the fewest packs. */
function fewestFor(need: number, amounts: readonly number[], prices: readonly number[]): readonly number[] {
  const most = need + Math.max(...amounts);
  const cost = new Float64Array(most + 1).fill(Infinity);
  const packs = new Uint32Array(most + 1);
  const last = new Int8Array(most + 1).fill(-1);
  cost[0] = 0;
  for (let total = 1; total <= most; total += 1) {
    amounts.forEach((amount, index) => {
      if (amount > total) return;
      const price = cost[total - amount]! + prices[index]!;
      const count = packs[total - amount]! + 1;
      if (price < cost[total]! || (price === cost[total]! && price < Infinity && count < packs[total]!)) {
        cost[total] = price;
        packs[total] = count;
        last[total] = index;
      }
    });
  }
  let chosen = need;
  for (let total = need; total <= most; total += 1) if (cost[total]! < cost[chosen]!) chosen = total;
  const counts = amounts.map(() => 0);
  for (let left = chosen; left > 0; left -= amounts[last[left]!]!) counts[last[left]!]! += 1;
  return counts;
}

/** The offer that costs least by the amount; without prices the largest. */
function bestByAmount(amounts: readonly number[], prices: readonly number[], isPriced: boolean): number {
  const isBetter = (one: number, other: number) => {
    const [dear, cheap] = isPriced ? [BigInt(prices[other]!) * BigInt(amounts[one]!), BigInt(prices[one]!) * BigInt(amounts[other]!)] : [0n, 0n];
    return cheap < dear || (cheap === dear && amounts[one]! > amounts[other]!);
  };
  return amounts.reduce((best, _, index) => (isBetter(index, best) ? index : best), 0);
}

function greatestShared(one: number, other: number): number {
  return other === 0 ? one : greatestShared(other, one % other);
}
