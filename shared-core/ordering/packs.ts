import { assert } from '../base/index.ts';
import { type Money, moneyOf } from '../units/index.ts';

export interface SaleUnit {
  readonly rolls: number;
  /** Null where no price is known. */
  readonly price: Money | null;
  /** How many of it at least, where any is taken: 6 of a price from 6 on, else 1. */
  readonly atLeast: number;
}

/** So many of one sale unit. */
export interface Pack {
  /** Its place among the sale units, which tells units with as many rolls apart. */
  readonly unit: number;
  readonly rolls: number;
  readonly count: number;
}

export interface Purchase {
  /** The most rolls first. Of units with as many rolls at most one: what is bought of the dearer could be bought of the other. */
  readonly packs: readonly Pack[];
  readonly rolls: number;
  /** Null where a pack has no known price. */
  readonly price: Money | null;
  /** Rolls wanted that cannot be bought within the limit. */
  readonly lacking: number;
}

/** More than any house takes. */
export const MOST_ROLLS = 200_000;

/**
 * Chooses sale units for at least so many rolls at the least price, exactly; of what costs the same the fewest rolls too
 * many, then the fewest packs.
 *
 * Shapes: rolls are counts, prices minor units of the house's currency. Of each unit none is taken or at least `atLeast`.
 * Where a unit's price is unknown, the fewest rolls too many decide, then the fewest packs. `limit` is the most that can
 * be had; where no mixture of units reaches the need within it, the most that can be had is bought and `lacking` says the
 * rest.
 * Example: 10 rolls from doubles at 84.00 and singles at 45.00 are 5 doubles, 420.00; 9 rolls are 4 doubles and 1 single,
 * 381.00. With singles at 40.00 from 6 on, 9 rolls are 9 such singles, 360.00.
 */
export function choosePacks(need: number, units: readonly SaleUnit[], limit = MOST_ROLLS): Purchase {
  assert(Number.isSafeInteger(need) && need >= 0 && need <= MOST_ROLLS, 'a need of 0 to 200,000 rolls');
  assert(units.every(({ rolls, atLeast }) => isCount(rolls) && isCount(atLeast)), 'sale units of 1 roll or more, taken once or more');
  if (need === 0) return { packs: [], rolls: 0, price: moneyOf(0), lacking: 0 };
  const isPriced = units.every(({ price }) => price !== null);
  // Of a mixture with more rolls too many, a pack or a unit's whole least quantity could be left out.
  const reach = Math.min(limit, MOST_ROLLS, need + Math.max(0, ...units.map(leastRolls)));
  const mixtures = cheapestMixtures(units, reach);

  let chosen = -1;
  for (let total = need; total <= reach; total += 1) {
    if (mixtures.cost[total]! < (chosen < 0 ? Infinity : mixtures.cost[chosen]!)) chosen = total;
  }
  for (let total = reach; chosen < 0; total -= 1) if (mixtures.cost[total]! < Infinity) chosen = total;

  return {
    packs: mixtures.packsOf(chosen).toSorted((one, other) => other.rolls - one.rolls),
    rolls: chosen,
    price: isPriced ? moneyOf(mixtures.cost[chosen]!) : null,
    lacking: Math.max(0, need - chosen),
  };
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 1;
}

function leastRolls({ rolls, atLeast }: SaleUnit): number {
  return rolls * atLeast;
}

interface Mixtures {
  /** The least cost of exactly so many rolls; without prices 0; infinite where no mixture has so many. */
  readonly cost: Float64Array;
  /** A mixture of that cost with the fewest packs. */
  packsOf(total: number): readonly Pack[];
}

/** The best mixture that has the unit is one that has it already and one pack more, not the least quantity at once. */
const ANOTHER = 1;
/** The best mixture of this unit and those before it has this one. */
const HAS = 2;

/**
 * The best mixtures of every number of rolls up to `reach`, one unit after the other.
 *
 * The best that have a unit come from the best of those before it by its least quantity, or from the best that have it
 * by one pack more. Two bits for each unit and number of rolls say which, and so give the packs back.
 */
function cheapestMixtures(units: readonly SaleUnit[], reach: number): Mixtures {
  const isPriced = units.every(({ price }) => price !== null);
  const cost = new Float64Array(reach + 1).fill(Infinity);
  const packs = new Int32Array(reach + 1);
  cost[0] = 0;
  const hasCost = new Float64Array(reach + 1);
  const hasPacks = new Int32Array(reach + 1);
  const steps = units.map((unit) => {
    const { rolls, atLeast } = unit;
    const least = leastRolls(unit);
    const price = isPriced ? unit.price! : 0;
    const how = new Uint8Array(least > reach ? 0 : reach + 1);
    for (let total = least; total <= reach; total += 1) {
      const before = total - least;
      hasCost[total] = cost[before]! + atLeast * price;
      hasPacks[total] = packs[before]! + atLeast;
      const fewer = total - rolls;
      if (fewer < least) continue;
      const another = hasCost[fewer]! + price;
      if (another < hasCost[total]! || (another === hasCost[total]! && hasPacks[fewer]! + 1 < hasPacks[total]!)) {
        hasCost[total] = another;
        hasPacks[total] = hasPacks[fewer]! + 1;
        how[total] = ANOTHER;
      }
    }
    for (let total = least; total <= reach; total += 1) {
      if (hasCost[total]! < cost[total]! || (hasCost[total]! === cost[total]! && hasPacks[total]! < packs[total]!)) {
        cost[total] = hasCost[total]!;
        packs[total] = hasPacks[total]!;
        how[total]! |= HAS;
      }
    }
    return how;
  });

  const packsOf = (total: number): readonly Pack[] => {
    const found: Pack[] = [];
    let left = total;
    for (let unit = units.length - 1; unit >= 0; unit -= 1) {
      const how = steps[unit]!;
      if (((how[left] ?? 0) & HAS) === 0) continue;
      const { rolls, atLeast } = units[unit]!;
      let count = atLeast;
      for (; (how[left]! & ANOTHER) !== 0; left -= rolls) count += 1;
      left -= atLeast * rolls;
      found.push({ unit, rolls, count });
    }
    return found;
  };
  return { cost, packsOf };
}
