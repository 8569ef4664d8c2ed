import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import {
  inches,
  lengthOf,
  MAX_LENGTH,
  millimetres,
  parseLength,
  UNITS_PER_FOOT,
  UNITS_PER_INCH,
  UNITS_PER_METRE,
  UNITS_PER_MILLIMETRE,
  ZERO_LENGTH,
} from '../../shared-core/units/index.ts';

describe('lengths', () => {
  // NIST SP 811, from memory: inch 25.4 mm, foot 0.3048 m, yard 0.9144 m, all exact.
  it('agree with the exact definitions of inch, foot and yard', () => {
    expect(UNITS_PER_INCH * 10).toBe(254 * UNITS_PER_MILLIMETRE);
    expect(UNITS_PER_FOOT * 10_000).toBe(3048 * UNITS_PER_METRE);
    expect(inches(1)).toBe(millimetres(25.4));
    expect(parseLength('1 ft')).toEqual(parseLength('0.3048 m'));
    expect(parseLength('1 yd')).toEqual(parseLength('0.9144 m'));
    expect(parseLength('1 yd')).toEqual({ ok: true, value: 3 * 12 * 8128 });
  });

  it('have 0.1 mm and 1/64 in exactly', () => {
    expect(UNITS_PER_MILLIMETRE / 10).toBe(32);
    expect(UNITS_PER_INCH / 64).toBe(127);
  });

  it('are made of the decimal as written, rounded half away from zero', () => {
    expect(lengthOf(8128)).toBe(inches(1));
    expect(millimetres(2.7)).toBe(864);
    expect(inches(0.5)).toBe(4064);
    expect(inches(0.1)).toBe(813);
    // 1/128 in is 63.5 units.
    expect(inches(1 / 128)).toBe(64);
    expect(inches(-1 / 128)).toBe(-64);
    expect(millimetres(1e-9)).toBe(0);
    expect(MAX_LENGTH).toBe(320_000_000);
  });

  it('are safe integers and never minus zero', () => {
    expect(ZERO_LENGTH).toBe(0);
    expect(lengthOf(-0)).toBe(0);
    expect(millimetres(-1e-9)).toBe(0);
    for (const units of [0.5, 2 ** 53, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => lengthOf(units)).toThrow(BrokenAssumption);
    }
    expect(() => millimetres(Number.NaN)).toThrow(BrokenAssumption);
    expect(() => inches(1e300)).toThrow(BrokenAssumption);
  });
});
