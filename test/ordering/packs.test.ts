import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choosePacks, type SaleUnit } from '../../shared-core/ordering/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';

const DOUBLES: readonly SaleUnit[] = [{ rolls: 2, price: moneyOf(84_00) }, { rolls: 1, price: moneyOf(45_00) }];

describe('sale units', () => {
  test.each([
    [10, [{ rolls: 2, count: 5 }], 420_00],
    [9, [{ rolls: 2, count: 4 }, { rolls: 1, count: 1 }], 381_00],
    [1, [{ rolls: 1, count: 1 }], 45_00],
    [0, [], 0],
  ])('%i rolls from doubles at 84.00 and singles at 45.00', (need, packs, price) => {
    expect(choosePacks(need, DOUBLES)).toMatchObject({ packs, price, lacking: 0 });
  });

  test('more rolls than wanted are taken where that costs less', () => {
    expect(choosePacks(3, [{ rolls: 4, price: moneyOf(60_00) }, { rolls: 1, price: moneyOf(25_00) }])).toMatchObject({ packs: [{ rolls: 4, count: 1 }], rolls: 4, price: 60_00 });
  });

  test('without prices the fewest rolls too many decide', () => {
    expect(choosePacks(7, [{ rolls: 5, price: null }, { rolls: 3, price: null }])).toMatchObject({ rolls: 8, price: null });
    expect(choosePacks(5, [{ rolls: 1, price: null }])).toMatchObject({ rolls: 5, packs: [{ rolls: 1, count: 5 }], price: null });
  });

  test('within a limit, what can be had is taken and the rest said', () => {
    expect(choosePacks(7, [{ rolls: 2, price: moneyOf(80_00) }], 7)).toMatchObject({ rolls: 6, lacking: 1 });
    expect(choosePacks(7, [{ rolls: 2, price: moneyOf(80_00) }], 8)).toMatchObject({ rolls: 8, lacking: 0 });
    expect(choosePacks(7, [{ rolls: 2, price: moneyOf(80_00) }], 0)).toMatchObject({ rolls: 0, lacking: 7, price: 0, packs: [] });
  });

  test('are chosen at the least cost, as trying everything does', () => {
    const units = fc.uniqueArray(fc.record({ rolls: fc.integer({ min: 1, max: 6 }), price: fc.integer({ min: 1, max: 90 }).map(moneyOf) }), { minLength: 1, maxLength: 3, selector: ({ rolls }) => rolls });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 14 }), units, fc.integer({ min: 0, max: 24 }), (need, sold, limit) => {
        const bought = choosePacks(need, sold, limit);
        const totals = allTotals(sold, need + 6);
        const enough = totals.filter(({ rolls }) => rolls >= need && rolls <= limit);
        const best = enough.length > 0 ? Math.min(...enough.map(({ cost }) => cost)) : null;
        expect(bought.rolls).toBe(bought.packs.reduce((sum, { rolls, count }) => sum + rolls * count, 0));
        expect(bought.rolls).toBeLessThanOrEqual(limit);
        if (best !== null) expect([bought.price, bought.lacking]).toEqual([best, 0]);
        else expect(bought.rolls).toBe(Math.max(0, ...totals.filter(({ rolls }) => rolls <= limit).map(({ rolls }) => rolls)));
      }),
      { numRuns: 400 },
    );
  });
});

function allTotals(units: readonly SaleUnit[], most: number): readonly { readonly rolls: number; readonly cost: number }[] {
  return units.reduce<readonly { readonly rolls: number; readonly cost: number }[]>(
    (found, { rolls, price }) => found.flatMap((one) => Array.from({ length: Math.floor((most - one.rolls) / rolls) + 1 }, (_, count) => ({ rolls: one.rolls + count * rolls, cost: one.cost + count * price! }))),
    [{ rolls: 0, cost: 0 }],
  );
}
