import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFraction, printFraction } from '../../shared-core/units/index.ts';
import { reduced } from '../../shared-core/units/fraction.ts';

describe('fractions', () => {
  it.each([
    ['1/2', 1, 2],
    [' 1 / 3 ', 1, 3],
    ['2/4', 1, 2],
    ['1⁄2', 1, 2],
    ['¾', 3, 4],
    ['63/64', 63, 64],
  ])('%s', (text, numerator, denominator) => {
    expect(parseFraction(text)).toEqual({ ok: true, value: { numerator, denominator } });
  });

  it.each([
    ['', 'There is no fraction here; write for example 1/2 or 1/3'],
    ['half', '‘half’ is not a fraction; write for example 1/2 or 1/3'],
    ['0.5', '‘0.5’ is not a fraction'],
    ['-1/2', '‘-1/2’ is not a fraction'],
    ['1 1/2', '‘1 1/2’ is not a fraction'],
    ['0/2', '‘0/2’ is nothing'],
    ['2/2', '‘2/2’ is not less than one'],
    ['3/2', '‘3/2’ is not less than one'],
    ['1/0', '‘1/0’ has a zero under the line'],
    ['1/65', '‘1/65’ is too fine; the number under the line may be up to 64'],
    ['1'.repeat(60), `‘${'1'.repeat(30)}…’ is not a fraction`],
  ])('%s is refused', (text, problem) => {
    const outcome = parseFraction(text);
    expect(outcome.ok ? 'accepted' : outcome.faults[0]?.message).toContain(problem);
  });

  it('print as they are read', () => {
    expect(printFraction({ numerator: 1, denominator: 2 })).toBe('1/2');
    expect(reduced(32, 64)).toEqual({ numerator: 1, denominator: 2 });
    for (let denominator = 2; denominator <= 64; denominator += 1) {
      for (let numerator = 1; numerator < denominator; numerator += 1) {
        const fraction = reduced(numerator, denominator);
        expect(fraction.numerator * denominator).toBe(fraction.denominator * numerator);
        expect(parseFraction(`${numerator}/${denominator}`)).toEqual({ ok: true, value: fraction });
        expect(parseFraction(printFraction(fraction))).toEqual({ ok: true, value: fraction });
      }
    }
  });

  it('never throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(parseFraction(text)).toHaveProperty('ok');
      }),
    );
  });
});
