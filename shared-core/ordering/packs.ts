import { assert } from '../base/index.ts';
import { type Money, moneyOf } from '../units/index.ts';

export interface SaleUnit {
  readonly rolls: number;
  /** Null where no price is known. */
  readonly price: Money | null;
}

export interface Purchase {
  readonly packs: readonly { readonly rolls: number; readonly count: number }[];
  readonly rolls: number;
  /** Null where a pack has no known price. */
  readonly price: Money | null;
  /** Rolls wanted that cannot be bought within the limit. */
  readonly lacking: number;
}

/** More than any house takes. */
export const MOST_ROLLS = 200_000;

/**
 * Chooses sale units for at least so many rolls at the least price, exactly.
 *
 * Shapes: rolls are counts, prices minor units of the house's currency. Where a unit's price is unknown, the fewest
 * rolls too many decide, then the fewest packs. `limit` is the most that can be had; where no mixture of units reaches
 * the need within it, the most that can be had is bought and `lacking` says the rest.
 * Example: 10 rolls from doubles at 84.00 and singles at 45.00 are 5 doubles, 420.00; 9 rolls are 4 doubles and 1 single,
 * 381.00.
 */
export function choosePacks(need: number, units: readonly SaleUnit[], limit = MOST_ROLLS): Purchase {
  assert(Number.isSafeInteger(need) && need >= 0 && need <= MOST_ROLLS, 'a need of 0 to 200,000 rolls');
  if (need === 0) return { packs: [], rolls: 0, price: moneyOf(0), lacking: 0 };
  const isPriced = units.every(({ price }) => price !== null);
  const largest = Math.max(...units.map(({ rolls }) => rolls));
  const most = Math.min(limit, need + largest);
  // Least cost of exactly t rolls, then fewest packs: one pass, because every pack's rolls are a positive whole number.
  const best: ({ cost: number; packs: number; unit: SaleUnit | null } | null)[] = [{ cost: 0, packs: 0, unit: null }];
  for (let total = 1; total <= most; total += 1) {
    let found: { cost: number; packs: number; unit: SaleUnit } | null = null;
    for (const unit of units) {
      const before = total >= unit.rolls ? best[total - unit.rolls] : null;
      if (!before) continue;
      const candidate = { cost: before.cost + (isPriced ? unit.price! : 0), packs: before.packs + 1, unit };
      if (!found || candidate.cost < found.cost || (candidate.cost === found.cost && candidate.packs < found.packs)) found = candidate;
    }
    best[total] = found;
  }
  let chosen = -1;
  for (let total = need; total <= most; total += 1) {
    const here = best[total];
    if (here && (chosen < 0 || (isPriced && here.cost < best[chosen]!.cost))) chosen = total;
  }
  for (let total = Math.min(need, most + 1) - 1; chosen < 0; total -= 1) if (best[total]) chosen = total;

  const counts = new Map<number, number>();
  for (let left = chosen; left > 0; ) {
    const { rolls } = best[left]!.unit!;
    counts.set(rolls, (counts.get(rolls) ?? 0) + 1);
    left -= rolls;
  }
  return {
    packs: [...counts].sort(([one], [other]) => other - one).map(([rolls, count]) => ({ rolls, count })),
    rolls: chosen,
    price: isPriced ? moneyOf(best[chosen]!.cost) : null,
    lacking: Math.max(0, need - chosen),
  };
}
