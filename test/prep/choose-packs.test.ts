import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePacks, type Pack } from '../../shared-core/prep/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';

const tin = (amount: number, price: number | null = null): Pack => ({ amount, price: price === null ? null : moneyOf(price) });
const DECORATORS = [tin(750, 1600), tin(2500, 3100), tin(5000, 5400)];

interface Bought {
  readonly cost: number;
  readonly volume: number;
  readonly count: number;
}

/** The best of every mixture, tried one by one. */
function bruteForce(need: number, tins: readonly Pack[]): Bought {
  const isPriced = tins.every(({ price }) => price !== null);
  let best: Bought = { cost: Infinity, volume: Infinity, count: Infinity };
  const add = (index: number, bought: Bought): void => {
    if (bought.volume >= need) {
      const better = bought.cost - best.cost || bought.volume - best.volume || bought.count - best.count;
      if (best.cost === Infinity || better < 0) best = bought;
      return;
    }
    for (let next = index; next < tins.length; next += 1) {
      const { amount, price } = tins[next]!;
      add(next, { cost: bought.cost + (isPriced ? price! : 0), volume: bought.volume + amount, count: bought.count + 1 });
    }
  };
  add(0, { cost: 0, volume: 0, count: 0 });
  return best;
}

function boughtOf(need: number, tins: readonly Pack[]): Bought {
  const { counts, amount, price } = choosePacks(need, tins);
  const sum = (of: (tin: Pack) => number) => counts.reduce((total, count, index) => total + count * of(tins[index]!), 0);
  expect(amount).toBe(sum((one) => one.amount));
  const isPriced = tins.every((one) => one.price !== null);
  expect(price).toBe(isPriced ? sum((one) => one.price!) : null);
  return { cost: price ?? 0, volume: amount, count: sum(() => 1) };
}

describe('tins', () => {
  it('cost least', () => {
    expect(choosePacks(3100, DECORATORS)).toEqual({ counts: [1, 1, 0], amount: 3250, price: 4700 });
    expect(choosePacks(3100, DECORATORS.slice(1))).toEqual({ counts: [0, 1], amount: 5000, price: 5400 });
    expect(choosePacks(6000, DECORATORS.slice(1))).toEqual({ counts: [1, 1], amount: 7500, price: 8500 });
    expect(choosePacks(0, DECORATORS)).toEqual({ counts: [0, 0, 0], amount: 0, price: 0 });
    expect(choosePacks(1, [tin(5000, 0)])).toEqual({ counts: [1], amount: 5000, price: 0 });
  });

  it('of what costs the same leave least over, then are fewest', () => {
    expect(choosePacks(4000, [tin(5000, 100), tin(2000, 50)]).counts).toEqual([0, 2]);
    expect(choosePacks(4000, [tin(1000, 25), tin(2000, 50), tin(4000, 100)]).counts).toEqual([0, 0, 1]);
  });

  it('leave least over where not every tin has a price', () => {
    expect(choosePacks(4100, [tin(750), tin(2500, 3100), tin(5000)])).toEqual({ counts: [6, 0, 0], amount: 4500, price: null });
    expect(choosePacks(10_000, [tin(750), tin(2500), tin(5000)])).toEqual({ counts: [0, 0, 2], amount: 10_000, price: null });
  });

  it('are as good as the best of all mixtures', () => {
    const size = fc.oneof(fc.integer({ min: 1, max: 12 }), fc.constantFrom(2, 4, 6, 9));
    const tins = fc.array(fc.record({ size, price: fc.integer({ min: 0, max: 30 }) }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.nat(48), tins, fc.integer({ min: 1, max: 250 }), fc.boolean(), (need, kinds, scale, isPriced) => {
        const sold = kinds.map((kind) => tin(kind.size * scale, isPriced ? kind.price : null));
        const wanted = Math.max(0, need * scale - (need % 3));
        expect(boughtOf(wanted, sold)).toEqual(bruteForce(wanted, sold));
      }),
      { numRuns: 400 },
    );
  });

  it('are exact for large needs, where the best tin is taken beforehand', () => {
    const prices = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }));
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 1500 }), fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })), prices, (need, [one, other], [first, second]) => {
        const sold = [tin(one, first), tin(other, second)];
        let best: Bought | null = null;
        for (let count = 0; count <= Math.ceil(need / one); count += 1) {
          const rest = Math.max(0, Math.ceil((need - count * one) / other));
          const bought = { cost: count * first + rest * second, volume: count * one + rest * other, count: count + rest };
          if (best === null || (bought.cost - best.cost || bought.volume - best.volume || bought.count - best.count) < 0) best = bought;
        }
        expect(boughtOf(need, sold)).toEqual(best);
      }),
    );
  });

  it('of 2000 L, and of a street of houses', () => {
    expect(choosePacks(2_000_000, DECORATORS)).toEqual({ counts: [0, 0, 400], amount: 2_000_000, price: 2_160_000 });
    expect(choosePacks(2_000_001, DECORATORS)).toEqual({ counts: [1, 0, 400], amount: 2_000_750, price: 2_161_600 });
    // Quarts, gallons and pails of five gallons have no common measure.
    const gallons = [tin(946, 1900), tin(3785, 4200), tin(18_927, 18_000)];
    const mixtures: Bought[] = [];
    for (let pails = 0; pails <= 106; pails += 1) {
      for (let gallon = 0; gallon <= 529; gallon += 1) {
        const held = pails * 18_927 + gallon * 3785;
        const quarts = Math.max(0, Math.ceil((2_000_000 - held) / 946));
        mixtures.push({ cost: pails * 18_000 + gallon * 4200 + quarts * 1900, volume: held + quarts * 946, count: pails + gallon + quarts });
      }
    }
    const [best] = mixtures.toSorted((one, other) => one.cost - other.cost || one.volume - other.volume || one.count - other.count);
    expect(boughtOf(2_000_000, gallons)).toEqual(best);
    expect(choosePacks(9_000_000_000, gallons).amount).toBeGreaterThanOrEqual(9_000_000_000);
  });
});
