import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { choosePacks, type Purchase, type SaleUnit } from '../../shared-core/ordering/index.ts';
import { ceilDivide, floorDivide, type Money, moneyOf, parseMoney } from '../../shared-core/units/index.ts';

interface Case {
  readonly title: string;
  /** The arithmetic by which the expected purchase was found, without the program. */
  readonly working: readonly string[];
  readonly need: number;
  readonly limit?: number;
  readonly units: readonly { readonly rolls: number; readonly price?: string; readonly atLeast?: number }[];
  /** What somebody buys who takes the largest packs first. */
  readonly largestFirst: { readonly rolls: number; readonly price?: string };
  readonly expected: Omit<Purchase, 'price'> & { readonly price?: string };
}

const CASES = JSON.parse(readFileSync(new URL('./cases/packs.json', import.meta.url), 'utf8')) as readonly Case[];

function moneyIn(price: string | undefined): Money | null {
  if (price === undefined) return null;
  const read = parseMoney(price, 'USD');
  if (!read.ok) throw new Error(`${price} is no price`);
  return read.value;
}

/** As many of the largest as fit, then of the next; what is lacking at the end is made up from the smallest. */
function buyLargestFirst(need: number, units: readonly SaleUnit[], limit = Infinity): { readonly rolls: number; readonly price: number } {
  let rolls = 0;
  let price = 0;
  let ofTheLast = 0;
  const take = (unit: SaleUnit, count: number) => {
    rolls += count * unit.rolls;
    price += count * (unit.price ?? 0);
    ofTheLast = count;
  };
  const sorted = units.toSorted((one, other) => other.rolls - one.rolls);
  for (const unit of sorted) {
    const count = floorDivide(Math.min(need, limit) - rolls, unit.rolls);
    take(unit, count < unit.atLeast ? 0 : count);
  }
  const smallest = sorted.at(-1)!;
  const lacking = ceilDivide(need - rolls, smallest.rolls);
  const more = ofTheLast > 0 ? lacking : Math.max(lacking, smallest.atLeast);
  if (lacking > 0 && rolls + more * smallest.rolls <= limit) take(smallest, more);
  return { rolls, price };
}

describe('worked by hand', () => {
  test.each(CASES)('$title', ({ need, limit, units, largestFirst, expected }) => {
    const sold = units.map(({ rolls, price, atLeast = 1 }) => ({ rolls, price: moneyIn(price), atLeast }));
    expect(choosePacks(need, sold, limit)).toEqual({ ...expected, price: moneyIn(expected.price) });
    expect(buyLargestFirst(need, sold, limit)).toEqual({ rolls: largestFirst.rolls, price: moneyIn(largestFirst.price) ?? 0 });
  });

  test('in most of them largest first is wrong', () => {
    const differ = CASES.filter(({ largestFirst, expected }) => largestFirst.rolls !== expected.rolls || largestFirst.price !== expected.price);
    expect(differ.length).toBe(10);
  });
});

describe('sale units', () => {
  const DOUBLES: readonly SaleUnit[] = [{ rolls: 2, price: moneyOf(84_00), atLeast: 1 }, { rolls: 1, price: moneyOf(45_00), atLeast: 1 }];
  const FROM_SIX: SaleUnit = { rolls: 1, price: moneyOf(40_00), atLeast: 6 };

  test.each([
    [10, [{ unit: 0, rolls: 2, count: 5 }], 420_00],
    [9, [{ unit: 0, rolls: 2, count: 4 }, { unit: 1, rolls: 1, count: 1 }], 381_00],
    [1, [{ unit: 1, rolls: 1, count: 1 }], 45_00],
    [0, [], 0],
  ])('%i rolls from doubles at 84.00 and singles at 45.00', (need, packs, price) => {
    expect(choosePacks(need, DOUBLES)).toEqual({ packs, rolls: need, price, lacking: 0 });
  });

  test('9 rolls from these and singles at 40.00 from 6 on', () => {
    expect(choosePacks(9, [...DOUBLES, FROM_SIX])).toEqual({ packs: [{ unit: 2, rolls: 1, count: 9 }], rolls: 9, price: 360_00, lacking: 0 });
    // 5 would be 213.00, 6 of the others 240.00.
    expect(choosePacks(5, [...DOUBLES, FROM_SIX])).toMatchObject({ rolls: 5, price: 213_00 });
  });

  test('are listed from the most rolls on, whatever their order', () => {
    expect(choosePacks(9, DOUBLES.toReversed()).packs).toEqual([{ unit: 1, rolls: 2, count: 4 }, { unit: 0, rolls: 1, count: 1 }]);
  });

  test('within a limit, what can be had is taken and the rest said', () => {
    const doubles: readonly SaleUnit[] = [{ rolls: 2, price: moneyOf(80_00), atLeast: 1 }];
    expect(choosePacks(7, doubles, 7)).toMatchObject({ rolls: 6, lacking: 1 });
    expect(choosePacks(7, doubles, 8)).toMatchObject({ rolls: 8, lacking: 0 });
    expect(choosePacks(7, doubles, 0)).toMatchObject({ rolls: 0, lacking: 7, price: 0, packs: [] });
  });

  test('that are none give nothing', () => {
    expect(choosePacks(7, [])).toMatchObject({ packs: [], rolls: 0, lacking: 7 });
  });
});
