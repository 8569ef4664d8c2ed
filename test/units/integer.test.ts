import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import { ceilDivide, floorDivide, modulo, roundedDivide } from '../../shared-core/units/index.ts';
import { addRatios, decimalRatio, ratio, roundRatio, writtenRatio } from '../../shared-core/units/ratio.ts';

const safeInteger = fc.maxSafeInteger();
const divisor = fc.oneof(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER }));

describe('whole division', () => {
  it('gives the worked examples', () => {
    expect([floorDivide(7, 2), floorDivide(-7, 2)]).toEqual([3, -4]);
    expect([ceilDivide(7, 2), ceilDivide(-7, 2)]).toEqual([4, -3]);
    expect([modulo(7, 3), modulo(-7, 3)]).toEqual([1, 2]);
    expect([roundedDivide(5, 2), roundedDivide(-5, 2), roundedDivide(4, 3)]).toEqual([3, -3, 1]);
  });

  it('never gives minus zero', () => {
    for (const dividend of [-4, -1, -0, 0]) {
      for (const divide of [floorDivide, ceilDivide, modulo, roundedDivide]) {
        expect(Object.is(divide(dividend, 4), -0)).toBe(false);
      }
    }
  });

  it('agrees with exact arithmetic for every safe integer', () => {
    fc.assert(
      fc.property(safeInteger, divisor, (dividend, by) => {
        const rest = ((BigInt(dividend) % BigInt(by)) + BigInt(by)) % BigInt(by);
        const floor = (BigInt(dividend) - rest) / BigInt(by);
        expect(modulo(dividend, by)).toBe(Number(rest));
        expect(floorDivide(dividend, by)).toBe(Number(floor));
        expect(ceilDivide(dividend, by)).toBe(Number(rest === 0n ? floor : floor + 1n));
        expect(roundedDivide(dividend, by)).toBe(Number(roundRatio(ratio(BigInt(dividend), BigInt(by)))));
      }),
      { numRuns: 5000 },
    );
  });

  it('refuses to work with what is not exact', () => {
    for (const divide of [floorDivide, ceilDivide, modulo, roundedDivide]) {
      expect(() => divide(0.5, 1)).toThrow(BrokenAssumption);
      expect(() => divide(2 ** 53, 1)).toThrow(BrokenAssumption);
      expect(() => divide(1, 0)).toThrow(BrokenAssumption);
      expect(() => divide(1, -2)).toThrow(BrokenAssumption);
    }
  });
});

describe('ratios', () => {
  it('round a half away from zero', () => {
    expect(roundRatio(ratio(5n, 2n))).toBe(3n);
    expect(roundRatio(ratio(-5n, 2n))).toBe(-3n);
    expect(roundRatio(ratio(49n, 100n))).toBe(0n);
  });

  it('take decimals as written', () => {
    expect(decimalRatio('3,76')).toEqual(ratio(376n, 100n));
    expect(decimalRatio('.5')).toEqual(ratio(5n, 10n));
    expect(writtenRatio(2.7)).toEqual(ratio(27n, 10n));
    expect(writtenRatio(-1.5e-7)).toEqual(ratio(-15n, 10n ** 8n));
    expect(writtenRatio(1e21)).toEqual(ratio(10n ** 21n));
    expect(addRatios(ratio(1n, 2n), ratio(1n, 3n))).toEqual(ratio(5n, 6n));
  });
});
