import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import { MAX_MONEY, minorDigits, moneyOf, parseMoney, printMoney, scaleMoney, showMoney, splitMoney } from '../../shared-core/units/index.ts';

function messageOf(text: string, currency: string): string {
  const outcome = parseMoney(text, currency);
  return outcome.ok ? `accepted as ${outcome.value}` : (outcome.faults[0]?.message ?? '');
}

describe('money', () => {
  it('knows how many decimals a currency has', () => {
    expect(['USD', 'EUR', 'GBP', 'CHF'].map(minorDigits)).toEqual([2, 2, 2, 2]);
    expect(['JPY', 'KRW', 'ISK'].map(minorDigits)).toEqual([0, 0, 0]);
    expect(['KWD', 'BHD', 'OMR', 'TND', 'JOD', 'IQD', 'LYD'].map(minorDigits)).toEqual([3, 3, 3, 3, 3, 3, 3]);
  });

  it.each([
    ['84.00', 'USD', 8400],
    ['84', 'USD', 8400],
    ['84.5', 'USD', 8450],
    ['84,50', 'USD', 8450],
    [' 0084,50 ', 'EUR', 8450],
    ['.5', 'USD', 50],
    ['0', 'USD', 0],
    ['8400', 'JPY', 8400],
    ['1,234', 'KWD', 1234],
    ['10000000000.00', 'USD', MAX_MONEY],
  ])('%s %s', (text, currency, minorUnits) => {
    expect(parseMoney(text, currency)).toEqual({ ok: true, value: minorUnits });
  });

  it.each([
    ['', 'USD', 'There is no amount here; write for example 84.00'],
    ['84.005', 'USD', '‘84.005’ has too many decimals; USD has up to 2 decimals, and there are no marks between thousands'],
    ['1,234', 'USD', '‘1,234’ has too many decimals'],
    ['84.0', 'JPY', '‘84.0’ has too many decimals; JPY has no decimals'],
    ['-84', 'USD', '‘-84’ is below zero; write for example 84.00'],
    ['−84', 'JPY', '‘−84’ is below zero; write for example 84'],
    ['1,234.50', 'USD', '‘1,234.50’ has marks between thousands; write the digits without them, and write for example 84.00'],
    ['1 234', 'USD', '‘1 234’ has marks between thousands'],
    ['1.234,50', 'EUR', '‘1.234,50’ has marks between thousands'],
    ['$84', 'USD', '‘$84’ is not an amount; write for example 84.00, without a currency sign'],
    ['84.', 'USD', '‘84.’ is not an amount'],
    ['.', 'USD', '‘.’ is not an amount'],
    ['8e3', 'USD', '‘8e3’ is not an amount'],
    ['10000000000.01', 'USD', '‘10000000000.01’ is too much; the most accepted is 10000000000.00'],
    ['9'.repeat(41), 'USD', `‘${'9'.repeat(30)}…’ is too long`],
  ])('%s %s is refused', (text, currency, problem) => {
    expect(messageOf(text, currency)).toContain(problem);
  });

  it('prints plain decimals', () => {
    expect(moneyOf(8400)).toBe(8400);
    expect(printMoney(moneyOf(8400), 'USD')).toBe('84.00');
    expect(printMoney(moneyOf(8400), 'JPY')).toBe('8400');
    expect(printMoney(moneyOf(5), 'KWD')).toBe('0.005');
    expect(printMoney(moneyOf(-5), 'USD')).toBe('-0.05');
    expect(showMoney(moneyOf(8400), 'USD')).toBe('84.00 USD');
    expect(() => moneyOf(0.5)).toThrow(BrokenAssumption);
  });

  it('reads back what it prints, and never throws', () => {
    const currency = fc.constantFrom('USD', 'JPY', 'KWD');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: MAX_MONEY }), currency, (amount, code) => {
        expect(parseMoney(printMoney(moneyOf(amount), code), code)).toEqual({ ok: true, value: amount });
      }),
    );
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789.,- ') })), currency, (text, code) => {
        const outcome = parseMoney(text, code);
        if (outcome.ok) expect(outcome.value).toBeGreaterThanOrEqual(0);
        else expect(outcome.faults).toHaveLength(1);
      }),
      { numRuns: 5000 },
    );
  });
});

describe('a part or a multiple of an amount', () => {
  it('of 420.00 at 7.25 % is 30.45', () => {
    expect(scaleMoney(moneyOf(42000), 7250, 100000)).toBe(3045);
  });

  it('is rounded once, a half away from zero', () => {
    expect([[1, 1, 2], [-1, 1, 2], [3, 1, 2], [1, 1, 3], [2, 1, 3], [-2, 1, 3], [0, 5, 7]].map(([money, times, by]) => scaleMoney(moneyOf(money!), times!, by!))).toEqual([1, -1, 2, 0, 1, -1, 0]);
  });

  it('is exact where the product is beyond the safe integers', () => {
    // 1e12 × 99,999 is about 1e17, above 2^53.
    expect(scaleMoney(MAX_MONEY, 99_999, 100_000)).toBe(999_990_000_000);
    expect(scaleMoney(moneyOf(999_999_999_999), 99_999, 100_000)).toBe(999_989_999_999);
  });

  it('is within half a unit of the exact value, and never on the wrong side of 0', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000_000, max: 1_000_000_000_000 }), fc.integer({ min: 0, max: 200_000 }), fc.integer({ min: 1, max: 200_000 }), (money, numerator, denominator) => {
        fc.pre(Math.abs(money) * numerator / denominator < Number.MAX_SAFE_INTEGER);
        const off = 2n * (BigInt(money) * BigInt(numerator) - BigInt(scaleMoney(moneyOf(money), numerator, denominator)) * BigInt(denominator));
        expect(off <= BigInt(denominator) && -off <= BigInt(denominator)).toBe(true);
        if (off === BigInt(denominator)) expect(money).toBeLessThan(0);
        if (-off === BigInt(denominator)) expect(money).toBeGreaterThan(0);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('an amount in parts', () => {
  it('is shared by weight, what is over by the smallest unit', () => {
    expect(splitMoney(moneyOf(1000), [1, 1, 1])).toEqual([334, 333, 333]);
    expect(splitMoney(moneyOf(42000), [9, 5])).toEqual([27000, 15000]);
    expect(splitMoney(moneyOf(1001), [0, 1, 2])).toEqual([0, 334, 667]);
    expect(splitMoney(MAX_MONEY, [100_000, 1])).toEqual([999_990_000_100, 9_999_900]);
    expect(() => splitMoney(moneyOf(1), [0, 0])).toThrow('something weighs');
  });
});
