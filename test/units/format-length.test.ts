import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import {
  inches,
  lengthOf,
  type LengthStyle,
  MAX_LENGTH,
  millimetres,
  parseLength,
  printLength,
  showLength,
} from '../../shared-core/units/index.ts';

const style = fc.constantFrom<LengthStyle>('imperial', 'metric');

describe('printed lengths', () => {
  it.each([
    [inches(148.5), `12' 4 1/2"`],
    [inches(7.375), '7 3/8 in'],
    [inches(0.375), '3/8 in'],
    [inches(0), '0 in'],
    [inches(2), '2 in'],
    [inches(96), `8'`],
    [inches(100), `8' 4"`],
    [inches(96.5), `8' 0 1/2"`],
    [lengthOf(127), '1/64 in'],
    [inches(-100), `-8' 4"`],
    [millimetres(1), '1 mm'],
    [lengthOf(1), '0.003125 mm'],
    [lengthOf(-321), '-1.003125 mm'],
    [millimetres(3760), '3760 mm'],
  ])('%d imperial is %s', (length, printed) => {
    expect(printLength(length, 'imperial')).toBe(printed);
  });

  it.each([
    [millimetres(3760), '3.76 m'],
    [millimetres(1000), '1 m'],
    [millimetres(1000.1), '1.0001 m'],
    [millimetres(100_000), '100 m'],
    [millimetres(999.9), '99.99 cm'],
    [millimetres(530), '53 cm'],
    [millimetres(625), '62.5 cm'],
    [millimetres(100), '10 cm'],
    [millimetres(10), '1 cm'],
    [millimetres(9.9), '9.9 mm'],
    [millimetres(3.2), '3.2 mm'],
    [millimetres(3), '3 mm'],
    [millimetres(0), '0 mm'],
    [millimetres(-530), '-53 cm'],
    [inches(1 / 64), '0.396875 mm'],
    [lengthOf(160), '0.5 mm'],
    [lengthOf(Number.MAX_SAFE_INTEGER), '28147497671065.596875 mm'],
  ])('%d metric is %s', (length, printed) => {
    expect(printLength(length, 'metric')).toBe(printed);
  });

  it('read back as the same length', () => {
    const units = fc.oneof(
      fc.integer({ min: -MAX_LENGTH, max: MAX_LENGTH }),
      fc.integer({ min: -20_000, max: 20_000 }).map((count) => count * 127),
      fc.integer({ min: -20_000, max: 20_000 }).map((count) => count * 32),
    );
    fc.assert(
      fc.property(units, style, (count, shownAs) => {
        expect(parseLength(printLength(lengthOf(count), shownAs))).toEqual({ ok: true, value: lengthOf(count) });
      }),
      { numRuns: 20_000 },
    );
  });

  it('name every 64th up to 10 ft in inches and every 0.1 mm up to 2 m in metric', () => {
    for (let count = 0; count <= 10 * 12 * 64; count += 1) {
      const printed = printLength(lengthOf(count * 127), 'imperial');
      expect(printed).toMatch(/["']$| in$/);
      expect(parseLength(printed)).toEqual({ ok: true, value: count * 127 });
    }
    for (let count = 0; count <= 20_000; count += 1) {
      expect(parseLength(printLength(lengthOf(count * 32), 'metric'))).toEqual({ ok: true, value: count * 32 });
    }
  });
});

describe('shown lengths', () => {
  it('round for reading only', () => {
    expect(showLength(millimetres(3760), 'imperial')).toBe(`12' 4 1/16"`);
    expect(showLength(millimetres(3760), 'imperial', 1)).toBe(`12' 4"`);
    expect(showLength(millimetres(3760), 'imperial', 64)).toBe(`12' 4 1/32"`);
    expect(showLength(inches(7.4), 'metric')).toBe('18.8 cm');
    expect(showLength(millimetres(999.5), 'metric')).toBe('1 m');
    expect(showLength(millimetres(0.4), 'metric')).toBe('0 mm');
    expect(showLength(millimetres(-0.4), 'metric')).toBe('0 mm');
    // 1/32 in is half of 1/16 in.
    expect(showLength(inches(1 / 32), 'imperial')).toBe('1/16 in');
    expect(showLength(inches(-1 / 32), 'imperial')).toBe('-1/16 in');
    expect(showLength(inches(11.99), 'imperial')).toBe(`1'`);
  });

  it('stay within half a step', () => {
    // An inch short of the longest, so that what is rounded up can still be read.
    const length = fc.integer({ min: 8128 - MAX_LENGTH, max: MAX_LENGTH - 8128 });
    fc.assert(
      fc.property(length, style, fc.constantFrom(1, 2, 4, 8, 16, 32, 64), (count, shownAs, finest) => {
        const shown = parseLength(showLength(lengthOf(count), shownAs, finest));
        const off = shown.ok ? Math.abs(shown.value - count) : Number.POSITIVE_INFINITY;
        expect(off * 2).toBeLessThanOrEqual(shownAs === 'metric' ? 320 : 8128 / finest);
      }),
    );
  });

  it('take only powers of two up to 64', () => {
    for (const finest of [0, 3, 10, 128, -16, 0.5]) {
      expect(() => showLength(inches(1), 'imperial', finest)).toThrow(BrokenAssumption);
    }
  });
});
