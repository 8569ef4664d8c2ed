import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findByGtin } from '../../shared-core/ordering/index.ts';
import { checkDigitOf, checkGtin, sameGtin } from '../../shared-core/units/index.ts';
import { exampleHouse } from '../builders.ts';

const LENGTHS = [8, 12, 13, 14];

const digitsOf = (length: number) => fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((digits) => digits.join(''));
const gtin = fc.constantFrom(...LENGTHS).chain((length) => digitsOf(length - 1)).map((digits) => digits + checkDigitOf(digits));

function messageOf(code: string): string {
  const outcome = checkGtin(code);
  expect(outcome.ok, code).toBe(false);
  return outcome.ok ? '' : outcome.faults.map(({ path, message }) => path + message).join('\n');
}

describe('the check digit', () => {
  // Read in GS1's own examples.
  test.each([['629104150021', 3], ['730001100001', 7], ['890400021003', 7]])('that follows %s is %i', (digits, due) => {
    expect(checkDigitOf(digits)).toBe(due);
    expect(checkGtin(`${digits}${due}`)).toEqual({ ok: true, value: `${digits}${due}` });
  });

  test('finds any single wrong digit, and says which digit would check', () => {
    fc.assert(
      fc.property(gtin, fc.nat(), fc.integer({ min: 1, max: 9 }), (right, place, by) => {
        expect(checkGtin(right)).toEqual({ ok: true, value: right });
        const at = place % right.length;
        const wrong = right.slice(0, at) + ((Number(right[at]) + by) % 10) + right.slice(at + 1);
        const due = /should be (\d):/.exec(messageOf(wrong))?.[1];
        expect(checkGtin(wrong.slice(0, -1) + due).ok).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test('finds two neighbours that changed places, but for those five apart', () => {
    fc.assert(
      fc.property(gtin, fc.nat(), (right, place) => {
        const at = place % (right.length - 1);
        const swapped = right.slice(0, at) + right[at + 1] + right[at] + right.slice(at + 2);
        const apart = Math.abs(Number(right[at]) - Number(right[at + 1]));
        expect(checkGtin(swapped).ok).toBe(apart === 0 || apart === 5);
      }),
      { numRuns: 500 },
    );
  });

  test('that is wrong is said with the code, the right digit and what is accepted', () => {
    expect(messageOf('6291041500214')).toBe('‘6291041500214’ does not check; the last digit should be 3: a digit was read or typed wrongly; it takes a GTIN of 8, 12, 13 or 14 digits, the last of which checks the others');
  });
});

test('a GTIN of each length is taken: 8, 12, 13 and 14 digits', () => {
  // Of the first by hand: 3 × (9 + 3 + 5 + 7) + (6 + 8 + 0) = 86 lacks 4; of the last 3 × (1 + 6 + 4 + 4 + 0 + 0 + 1) + (0 + 1 + 1 + 1 + 0 + 0) = 51 lacks 9.
  for (const code of ['96385074', '614141000012', '0614141000012', '10614141000019']) expect(checkGtin(code)).toEqual({ ok: true, value: code });
});

test.each([
  ['', '‘’ is not of digits alone'],
  ['62910415O0213', '‘62910415O0213’ is not of digits alone'],
  ['6291041 500213', '‘6291041 500213’ is not of digits alone'],
  ['٦291041500213', 'is not of digits alone'],
  ['6', '‘6’ has 1 digit;'],
  ['62910415002', '‘62910415002’ has 11 digits;'],
  ['106141412345678908', '‘106141412345678908’ has 18 digits;'],
])('‘%s’ is refused', (code, said) => {
  expect(messageOf(code)).toContain(said);
  expect(messageOf(code)).toContain('; it takes a GTIN of 8, 12, 13 or 14 digits');
});

test('zeros in front tell no two GTINs apart, anything else does', () => {
  expect(sameGtin('614141000012', '0614141000012')).toBe(true);
  expect(sameGtin('00614141000012', '614141000012')).toBe(true);
  expect(sameGtin('96385074', '00000096385074')).toBe(true);
  // A carton of the same goods has a number of its own.
  expect(sameGtin('10614141000019', '614141000012')).toBe(false);
  fc.assert(fc.property(gtin, gtin, (one, other) => {
    expect(sameGtin(one, one.padStart(14, '0'))).toBe(true);
    expect(sameGtin(one, other)).toBe(BigInt(one) === BigInt(other));
  }));
});

describe('the sale unit of a GTIN', () => {
  const coverings = [
    { id: 'fern', soldIn: [{ rolls: 2, gtin: '614141000012' }, { rolls: 12, gtin: '10614141000019' }, { rolls: 12, gtin: '10614141000019' }, { rolls: 1 }] },
    { id: 'ivy', soldIn: [{ rolls: 1, gtin: '6291041500213' }] },
    { id: 'chalk', soldIn: [{ litres: 5 }] },
    { id: 'moss' },
  ];

  test('is found whatever zeros stand in front', () => {
    expect(findByGtin({ coverings }, '00614141000012')).toEqual({ covering: 'fern', rolls: 2 });
    expect(findByGtin({ coverings }, '06291041500213')).toEqual({ covering: 'ivy', rolls: 1 });
  });

  test('is one where the same pack is sold at two prices', () => {
    expect(findByGtin({ coverings }, '10614141000019')).toEqual({ covering: 'fern', rolls: 12 });
  });

  test('is none where nobody gave it, and none where it stands for two things', () => {
    expect(findByGtin({ coverings }, '7300011000017')).toBeNull();
    expect(findByGtin({ coverings: [...coverings, { id: 'twin', soldIn: [{ rolls: 1, gtin: '06291041500213' }] }] }, '6291041500213')).toBeNull();
    expect(findByGtin({ coverings: [{ id: 'fern', soldIn: [{ rolls: 1, gtin: '6291041500213' }, { rolls: 2, gtin: '6291041500213' }] }] }, '6291041500213')).toBeNull();
  });

  test('is looked for in a house as it is', () => {
    expect(findByGtin(exampleHouse(), '6291041500213')).toBeNull();
  });
});
