import { ceilDivide, floorDivide, type Tape } from './tape.ts';

/** Whole prices, by rank, and the bound that they give: no roll counts for more than `most`, and all wanted pieces count for `total`. */
export interface Pricing {
  readonly duals: readonly number[];
  readonly total: number;
  readonly most: number;
  readonly isWithinDemand: boolean;
  readonly bound: number;
}

export function priced(duals: readonly number[], counts: ArrayLike<number>, most: number, isWithinDemand: boolean): Pricing {
  let total = 0;
  duals.forEach((dual, rank) => (total += dual * counts[rank]!));
  return { duals, total, most, isWithinDemand, bound: most === 0 ? 0 : ceilDivide(total, most) };
}

/** The one that proves more; of equals the first. */
export function better(one: Pricing | null, other: Pricing | null): Pricing | null {
  return boundOf(other) > boundOf(one) ? other : one;
}

export function boundOf(pricing: Pricing | null): number {
  return pricing?.bound ?? 0;
}

/** As fine as may be while the prices of all pieces together stay exact. */
export function exactScale(finest: number, counts: ArrayLike<number>): number {
  let pieces = 0;
  for (let rank = 0; rank < counts.length; rank += 1) pieces += counts[rank]!;
  let scale = finest;
  while (scale * pieces > Number.MAX_SAFE_INTEGER / 4 && scale > 1) scale /= 2;
  return scale;
}

/**
 * The bound by how many pieces fit into a roll: of those at least so long, the best such length.
 *
 * Rule: in a free match of which the shortest piece has the length l, a roll gives at most floor(roll / l). Where a
 * pattern is matched, a roll gives fewer and this proves nothing.
 *
 * Example: rolls of 10, 7 pieces of 4 and one of 6: two of 4 or longer from a roll, at least 4 rolls.
 */
export function priceByCount({ repeat, kinds, lanes }: Tape): Pricing {
  const counts = kinds.map(({ count }) => count);
  const none = priced(kinds.map(() => 0), counts, 0, false);
  if (repeat > 0) return none;
  return kinds.reduce((best, { length }) => {
    const duals = kinds.map((kind) => (kind.length >= length ? 1 : 0));
    return better(best, priced(duals, counts, floorDivide(lanes[0]!.capacity, length), false))!;
  }, none);
}
