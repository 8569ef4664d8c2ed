import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choosePacks, type Purchase, type SaleUnit } from '../../shared-core/ordering/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';

const MOST_NEED = 12;
const LARGEST = 6;

/** Every mixture of sale units up to so many rolls. */
function mixtures(units: readonly SaleUnit[], most: number): readonly { readonly rolls: number; readonly packs: number; readonly cost: number }[] {
  return units.reduce<readonly { readonly rolls: number; readonly packs: number; readonly cost: number }[]>(
    (found, { rolls, price }) =>
      found.flatMap((one) => Array.from({ length: Math.floor((most - one.rolls) / rolls) + 1 }, (_, count) => ({ rolls: one.rolls + count * rolls, packs: one.packs + count, cost: one.cost + count * (price ?? 0) }))),
    [{ rolls: 0, packs: 0, cost: 0 }],
  );
}

const sizes = fc.uniqueArray(fc.integer({ min: 1, max: LARGEST }), { minLength: 1, maxLength: 3 });
const count = ({ packs }: Purchase) => packs.reduce((sum, pack) => sum + pack.count, 0);
const need = fc.integer({ min: 0, max: MOST_NEED });
const limit = fc.integer({ min: 0, max: MOST_NEED + 2 * LARGEST });

/** What is bought where no price decides: enough rolls with the fewest too many, else as many as there are; in the fewest packs. */
function expectFewest(wanted: number, units: readonly SaleUnit[], most: number): void {
  const bought = choosePacks(wanted, units, most);
  const had = mixtures(units, most);
  const enough = had.filter(({ rolls }) => rolls >= wanted).map(({ rolls }) => rolls);
  const rolls = enough.length > 0 ? Math.min(...enough) : Math.max(...had.map((one) => one.rolls));
  expect(bought.rolls).toBe(rolls);
  expect(bought.lacking).toBe(Math.max(0, wanted - rolls));
  expect(count(bought)).toBe(Math.min(...had.filter((one) => one.rolls === rolls).map(({ packs }) => packs)));
}

describe('without prices', () => {
  test('the fewest rolls too many decide, then the fewest packs, as trying everything does', () => {
    fc.assert(
      fc.property(need, sizes, limit, (wanted, all, most) => {
        expectFewest(wanted, all.map((rolls) => ({ rolls, price: null })), most);
      }),
      { numRuns: 500 },
    );
  });

  test('the price of another unit decides nothing', () => {
    expect(choosePacks(2, [{ rolls: 2, price: moneyOf(84_00) }, { rolls: 1, price: null }])).toMatchObject({ packs: [{ rolls: 2, count: 1 }], rolls: 2, price: null });
    fc.assert(
      fc.property(need, sizes, limit, fc.nat(2), fc.integer({ min: 1, max: 90 }), (wanted, all, most, unpriced, price) => {
        expectFewest(wanted, all.map((rolls, index) => ({ rolls, price: index === unpriced % all.length ? null : moneyOf(price * rolls) })), most);
      }),
      { numRuns: 500 },
    );
  });
});

describe('with prices', () => {
  test('of what costs the same the fewest rolls are bought, then the fewest packs', () => {
    fc.assert(
      fc.property(need, sizes, limit, fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 3, maxLength: 3 }), (wanted, all, most, prices) => {
        const units = all.map((rolls, index) => ({ rolls, price: moneyOf(prices[index]!) }));
        const bought = choosePacks(wanted, units, most);
        const enough = mixtures(units, Math.min(most, wanted + LARGEST)).filter(({ rolls }) => rolls >= wanted);
        if (enough.length === 0) return;
        const [best] = enough.toSorted((one, other) => one.cost - other.cost || one.rolls - other.rolls || one.packs - other.packs);
        expect([bought.price, bought.rolls, count(bought)]).toEqual([best!.cost, best!.rolls, best!.packs]);
      }),
      { numRuns: 500 },
    );
  });

  test('a pack that costs nothing is still a pack', () => {
    expect(choosePacks(2, [{ rolls: 1, price: moneyOf(0) }])).toEqual({ packs: [{ rolls: 1, count: 2 }], rolls: 2, price: 0, lacking: 0 });
  });

  test('the largest need that there can be is met', () => {
    expect(choosePacks(200_000, [{ rolls: 1000, price: moneyOf(1) }])).toEqual({ packs: [{ rolls: 1000, count: 200 }], rolls: 200_000, price: 200, lacking: 0 });
  });
});

test('what is said of a need is a whole number within reach', () => {
  expect(() => choosePacks(-1, [{ rolls: 1, price: null }])).toThrow(/a need of 0 to 200,000 rolls/);
  expect(() => choosePacks(1.5, [{ rolls: 1, price: null }])).toThrow(/a need of 0 to 200,000 rolls/);
});
