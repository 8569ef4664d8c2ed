import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addAmounts, amountsOf, amountsOfOrder, bySupplier, spareRolls, spareRule, taxOf } from '../../shared-core/ordering/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import { exampleHouse } from '../builders.ts';
import { FERN, fernHouse, strips } from './fern-house.ts';

describe('net, tax and gross', () => {
  test('of 420.00 at 7.25 % is 30.45 more; of 120.00 that holds 20 % are 100.00 and 20.00', () => {
    expect(amountsOf(moneyOf(420_00), { rate: '7.25', included: false })).toEqual({ net: 420_00, tax: 30_45, gross: 450_45 });
    expect(amountsOf(moneyOf(120_00), { rate: '20', included: true })).toEqual({ net: 100_00, tax: 20_00, gross: 120_00 });
  });

  test('round once, a half away from zero, and read a rate with a comma and up to three decimals', () => {
    // 0.10 at 5 % is half a cent; 1.00 at 0.125 % an eighth of one; 800.00 at it is 1.00.
    expect(amountsOf(moneyOf(10), { rate: '5', included: false })).toMatchObject({ tax: 1 });
    expect(amountsOf(moneyOf(1_00), { rate: '0,125', included: false })).toMatchObject({ tax: 0 });
    expect(amountsOf(moneyOf(800_00), { rate: '0.125', included: false })).toMatchObject({ tax: 1_00 });
  });

  test('of a placed order are those of its lines, and of more orders those of all', () => {
    const order = { tax: { rate: '10', included: false }, lines: [{ price: '100.00' }, { price: '50.00' }] } as unknown as Parameters<typeof amountsOfOrder>[1];
    expect(amountsOfOrder({ currency: 'USD' }, order)).toEqual({ net: 150_00, tax: 15_00, gross: 165_00 });
    expect(amountsOfOrder({ currency: 'USD' }, { lines: [...order.lines, {}] } as typeof order)).toEqual({ net: null, tax: null, gross: null });
    expect(addAmounts([amountsOf(moneyOf(150_00), { rate: '10', included: false }), amountsOf(moneyOf(40_00), null)])).toEqual({ net: 190_00, tax: 15_00, gross: 205_00 });
    expect(addAmounts([amountsOf(null, null), amountsOf(moneyOf(1), null)]).gross).toBeNull();
  });

  test('without a tax are the same; of an unknown sum unknown', () => {
    expect(amountsOf(moneyOf(5), null)).toEqual({ net: 5, tax: 0, gross: 5 });
    expect(amountsOf(null, { rate: '20', included: true })).toEqual({ net: null, tax: null, gross: null });
  });

  test('add up, and a gross that holds what was added has the same net to the smallest unit', () => {
    const rate = fc.integer({ min: 0, max: 100_000 }).map((thousandths) => (thousandths / 1000).toFixed(3));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000_000_000 }), rate, fc.boolean(), (sum, percent, included) => {
        const { net, tax, gross } = amountsOf(moneyOf(sum), { rate: percent, included });
        expect(net! + tax!).toBe(gross);
        expect(included ? gross : net).toBe(sum);
        if (!included) expect(amountsOf(gross, { rate: percent, included: true }).net! - net!).toBe(0);
        // The exact tax is within half a unit of what is said.
        const [over, under] = [BigInt(net!) * BigInt(Math.round(Number(percent) * 1000)), BigInt(tax!) * 100_000n];
        if (!included) expect(over - under <= 50_000n && under - over <= 50_000n).toBe(true);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('the lines of a supplier', () => {
  const two = (facts: object = {}) =>
    fernHouse({
      coverings: ['10.00', '5.00'].map((price, index) => ({ ...FERN, id: ['fern', 'moss'][index], supplier: 'north', soldIn: [{ rolls: 1, price }] })),
      rooms: [strips('bed', 30), strips('hall', 30, { bands: [{ id: 'main', covering: 'moss', walls: ['A'] }] })],
      tax: { rate: '10' },
      ...facts,
    });

  test('of two coverings at 100.00 and 50.00 under a tax of 10 % are 150.00, 15.00 and 165.00', () => {
    const house = two();
    expect(bySupplier(house, planHouse(house).order)).toMatchObject([{ supplier: 'north', rate: { rate: '10', included: false }, net: 150_00, tax: 15_00, gross: 165_00, lines: [{ covering: 'fern' }, { covering: 'moss' }] }]);
  });

  test('of coverings that name none stand together', () => {
    const house = fernHouse({ rooms: [strips('bed', 3)] });
    expect(bySupplier(house, planHouse(house).order)).toMatchObject([{ supplier: null, rate: null, net: null }]);
  });

  test("are taxed by the supplier's own rate, else by the house's, else not", () => {
    const house = two({ suppliers: [{ id: 'north', tax: { rate: '20', included: true } }, { id: 'south' }] });
    expect([taxOf(house, 'north'), taxOf(house, 'south'), taxOf(house, null), taxOf(fernHouse({}), 'north')]).toEqual([{ rate: '20', included: true }, { rate: '10', included: false }, { rate: '10', included: false }, null]);
  });
});

describe('spare rolls', () => {
  test('of 10 % of 23 rolls are 3; of 0 rolls by percentage none', () => {
    expect(spareRolls('10%', 23)).toBe(3);
    expect(spareRolls('10%', 0)).toBe(0);
    expect(spareRolls(2, 0)).toBe(2);
  });

  test.each([['5 %', 20, 1], ['5 %', 21, 2], ['12.5%', 8, 1], ['12,5 %', 9, 2], ['0%', 500, 0], ['100%', 7, 7], ['0.1%', 1, 1]])('by %s of %i are %i', (rule, needed, expected) => {
    expect(spareRolls(rule, needed)).toBe(expected);
  });

  test('by percentage are the fewest whole rolls that are so much', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 5000 }), (tenths, needed) => {
        const spare = spareRolls(`${(tenths / 10).toFixed(1)} %`, needed);
        expect(spare * 1000).toBeGreaterThanOrEqual(needed * tenths);
        expect((spare - 1) * 1000).toBeLessThan(needed * tenths || 1);
      }),
    );
  });

  test("follow the covering's rule before the house's; a mural has its own alone, paint and goods by the length none", () => {
    const house = exampleHouse();
    const rule = (id: string, facts: object = {}) => spareRule(house, { ...house.coverings.find((one) => one.id === id)!, ...facts } as never);
    expect([rule('ivy'), rule('ivy', { spareRolls: '10%' }), rule('ivy', { spareRolls: 0 })]).toEqual([1, '10%', 0]);
    expect([rule('lake'), rule('lake', { spareRolls: 2 }), rule('chalk')]).toEqual([0, 2, 0]);
    expect(rule('fern', { soldBy: { length: {}, pieceLength: {} } })).toBe(0);
  });
});
