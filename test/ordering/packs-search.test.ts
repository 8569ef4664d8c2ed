import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choosePacks, MOST_ROLLS, type Purchase, type SaleUnit } from '../../shared-core/ordering/packs.ts';
import { moneyOf } from '../../shared-core/units/index.ts';

const MOST_NEED = 12;
const LARGEST = 6;
/** More than any purchase of the needs and units below can do with. */
const FAR = 48;

interface Mixture {
  readonly rolls: number;
  readonly packs: number;
  readonly cost: number;
}

/** Every mixture of sale units up to so many rolls. */
function mixtures(units: readonly SaleUnit[], most: number): readonly Mixture[] {
  return units.reduce<readonly Mixture[]>(
    (found, { rolls, price, atLeast }) =>
      found.flatMap((one) => {
        const mixed = [one];
        for (let count = atLeast; one.rolls + count * rolls <= most; count += 1) mixed.push({ rolls: one.rolls + count * rolls, packs: one.packs + count, cost: one.cost + count * (price ?? 0) });
        return mixed;
      }),
    [{ rolls: 0, packs: 0, cost: 0 }],
  );
}

const byFewest = (one: Mixture, other: Mixture) => one.rolls - other.rolls || one.packs - other.packs;
const byCost = (one: Mixture, other: Mixture) => one.cost - other.cost || byFewest(one, other);
const byMost = (one: Mixture, other: Mixture) => other.rolls - one.rolls || one.cost - other.cost || one.packs - other.packs;

/** What a purchase says of itself holds, and of all mixtures it is the best. */
function expectBest(need: number, units: readonly SaleUnit[], limit: number): void {
  const bought = choosePacks(need, units, limit);
  expectSound(bought, need, units, limit);
  const isPriced = units.every(({ price }) => price !== null);
  const had = mixtures(isPriced ? units : units.map((unit) => ({ ...unit, price: null })), Math.min(limit, FAR));
  const enough = had.filter(({ rolls }) => rolls >= need);
  const [best] = enough.length > 0 ? enough.toSorted(isPriced ? byCost : byFewest) : had.toSorted(byMost);
  expect({ rolls: bought.rolls, packs: count(bought), cost: bought.price ?? 0 }).toEqual(best);
}

function count({ packs }: Purchase): number {
  return packs.reduce((sum, pack) => sum + pack.count, 0);
}

function expectSound({ packs, rolls, price, lacking }: Purchase, need: number, units: readonly SaleUnit[], limit: number): void {
  for (const pack of packs) {
    expect(pack.rolls).toBe(units[pack.unit]!.rolls);
    expect(pack.count).toBeGreaterThanOrEqual(units[pack.unit]!.atLeast);
  }
  // The most rolls first, and never two units with as many.
  for (const [index, pack] of packs.slice(1).entries()) expect(pack.rolls).toBeLessThan(packs[index]!.rolls);
  expect(rolls).toBe(packs.reduce((sum, pack) => sum + pack.rolls * pack.count, 0));
  expect(rolls).toBeLessThanOrEqual(limit);
  expect(lacking).toBe(Math.max(0, need - rolls));
  const isPriced = need === 0 || units.every((unit) => unit.price !== null);
  expect(price).toBe(isPriced ? packs.reduce((sum, pack) => sum + units[pack.unit]!.price! * pack.count, 0) : null);
}

const need = fc.integer({ min: 0, max: MOST_NEED });
const limit = fc.oneof(fc.integer({ min: 0, max: MOST_NEED + 2 * LARGEST }), fc.constant(MOST_ROLLS));
const size = fc.record({ rolls: fc.integer({ min: 1, max: LARGEST }), atLeast: fc.oneof(fc.constant(1), fc.integer({ min: 1, max: 5 })) });
const sizes = fc.array(size, { minLength: 1, maxLength: 3 });
const price = fc.oneof(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 0, max: 4 })).map(moneyOf);

describe('the best of all mixtures is bought, as trying everything finds it', () => {
  test('with prices the cheapest, then the fewest rolls too many, then the fewest packs', () => {
    fc.assert(
      fc.property(need, fc.array(fc.record({ size, price }), { minLength: 1, maxLength: 3 }), limit, (wanted, units, most) => {
        expectBest(wanted, units.map((unit) => ({ ...unit.size, price: unit.price })), most);
      }),
      { numRuns: 500 },
    );
  });

  test('with one size at two prices, the better from so many on', () => {
    const offer = fc.record({ rolls: fc.integer({ min: 1, max: 4 }), dear: fc.integer({ min: 30, max: 60 }), saved: fc.integer({ min: 0, max: 25 }), atLeast: fc.integer({ min: 2, max: 8 }) });
    fc.assert(
      fc.property(need, offer, fc.record({ size, price }), limit, (wanted, { rolls, dear, saved, atLeast }, other, most) => {
        expectBest(wanted, [{ rolls, price: moneyOf(dear), atLeast: 1 }, { ...other.size, price: other.price }, { rolls, price: moneyOf(dear - saved), atLeast }], most);
      }),
      { numRuns: 500 },
    );
  });

  test('without prices the one with the fewest rolls too many, then the fewest packs', () => {
    fc.assert(
      fc.property(need, sizes, limit, (wanted, all, most) => {
        expectBest(wanted, all.map((one) => ({ ...one, price: null })), most);
      }),
      { numRuns: 500 },
    );
  });

  test('where one price is lacking the others decide nothing', () => {
    fc.assert(
      fc.property(need, sizes, limit, fc.nat(2), price, (wanted, all, most, unpriced, paid) => {
        expectBest(wanted, all.map((one, index) => ({ ...one, price: index === unpriced % all.length ? null : moneyOf(paid * one.rolls) })), most);
      }),
      { numRuns: 500 },
    );
  });
});

test('the price of another unit decides nothing', () => {
  expect(choosePacks(2, [{ rolls: 2, price: moneyOf(84_00), atLeast: 1 }, { rolls: 1, price: null, atLeast: 1 }])).toEqual({ packs: [{ unit: 0, rolls: 2, count: 1 }], rolls: 2, price: null, lacking: 0 });
});

test('a pack that costs nothing is still a pack', () => {
  expect(choosePacks(2, [{ rolls: 1, price: moneyOf(0), atLeast: 1 }])).toEqual({ packs: [{ unit: 0, rolls: 1, count: 2 }], rolls: 2, price: 0, lacking: 0 });
});

test('of units that are alike the first is bought', () => {
  const alike = { rolls: 2, price: moneyOf(84_00), atLeast: 1 };
  expect(choosePacks(6, [alike, alike]).packs).toEqual([{ unit: 0, rolls: 2, count: 3 }]);
});

test('a least quantity that is beyond everything is never bought', () => {
  const units = [{ rolls: 1000, price: moneyOf(0), atLeast: Number.MAX_SAFE_INTEGER }, { rolls: 2, price: moneyOf(84_00), atLeast: 1 }];
  expect(choosePacks(3, units)).toEqual({ packs: [{ unit: 1, rolls: 2, count: 2 }], rolls: 4, price: 168_00, lacking: 0 });
});

describe('the largest need that there can be', () => {
  test('is met', () => {
    expect(choosePacks(200_000, [{ rolls: 1000, price: moneyOf(1), atLeast: 1 }])).toEqual({ packs: [{ unit: 0, rolls: 1000, count: 200 }], rolls: 200_000, price: 200, lacking: 0 });
  });

  test('is met from twenty units, each with a least quantity', () => {
    // Packs of 11 to 30 rolls at 5 a roll and something for the pack, but those of 25 at 4: 200,000 = 8000 × 25.
    const units = Array.from({ length: 20 }, (_, index) => ({ rolls: 11 + index, price: moneyOf((11 + index) * (index === 14 ? 4 : 5) + (index === 14 ? 0 : 1)), atLeast: 1 + index }));
    expect(choosePacks(200_000, units)).toEqual({ packs: [{ unit: 14, rolls: 25, count: 8000 }], rolls: 200_000, price: 800_000, lacking: 0 });
  });
});

test('what is said of a need and of units is a whole number within reach', () => {
  const single = { rolls: 1, price: null, atLeast: 1 };
  expect(() => choosePacks(-1, [single])).toThrow(/a need of 0 to 200,000 rolls/);
  expect(() => choosePacks(1.5, [single])).toThrow(/a need of 0 to 200,000 rolls/);
  expect(() => choosePacks(1, [{ ...single, rolls: 0 }])).toThrow(/sale units of 1 roll or more/);
  expect(() => choosePacks(1, [{ ...single, atLeast: 0 }])).toThrow(/taken once or more/);
  expect(() => choosePacks(1, [{ ...single, atLeast: 1.5 }])).toThrow(/taken once or more/);
});
