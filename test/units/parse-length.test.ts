import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  inches,
  lengthOf,
  type LengthStyle,
  MAX_LENGTH,
  MAX_LENGTH_TEXT,
  millimetres,
  parseLength,
  parseMeasure,
} from '../../shared-core/units/index.ts';
import { shareOf } from '../share-of.ts';

const TWELVE_FOUR_AND_A_HALF = 1_207_008;

function messageOf(text: string, bare?: LengthStyle): string {
  const outcome = parseMeasure(text, bare);
  expect(outcome.ok, text).toBe(false);
  if (outcome.ok) return '';
  expect(outcome.faults).toHaveLength(1);
  expect(outcome.faults[0]?.path).toBe('');
  return outcome.faults[0]?.message ?? '';
}

describe('spellings', () => {
  it.each([
    ...[
      `12' 4 1/2"`,
      `12'4-1/2"`,
      `12'4 1/2"`,
      `12'-4 1/2"`,
      `12' - 4½"`,
      `12 ft 4 1/2 in`,
      `12ft4.5in`,
      `12 ft. 4 1/2 in.`,
      `12 ft, 4 1/2 in`,
      `12', 4 1/2"`,
      `12 feet 4 1/2 inches`,
      `12 FOOT 4 1/2 Inch`,
      `12′ 4 1⁄2″`,
      `12’ 4½”`,
      `12‘ 4 ½“`,
      `12' 4 1/2''`,
      `12’4½’’`,
      `12\u00a0ft\u20094\u00a01/2\u202fin`,
      `  12' 4 1 / 2"\t`,
      `12' 4.5"`,
      `12' 4,5"`,
      `148.5 in`,
      `148,5 in`,
      `148.5"`,
      `148 1/2"`,
      `148-1/2-inch`,
      `4 yd 4 1/2 in`,
      `4 yards 0 ft 4 1/2"`,
      `3 yd 3' 4 1/2"`,
      `0012' 04 16/32"`,
      `11' 16 1/2"`,
    ].map((text) => [text, TWELVE_FOUR_AND_A_HALF] as const),
    [`7/8"`, 7112],
    ['⅞ in', 7112],
    ['.5 in', 4064],
    [`1/2 ft`, 6 * 8128],
    ['12ft', 144 * 8128],
    ['12-foot', 144 * 8128],
    [`2' 14"`, 38 * 8128],
    [`8' 1/2"`, 96 * 8128 + 4064],
    ['5 yd', 180 * 8128],
    ['1 yard', 36 * 8128],
    ['⅓ in', 2709],
    ['⅔ in', 5419],
    ['3.76 m', 3760 * 320],
    ['3,76 m', 3760 * 320],
    ['376 cm', 3760 * 320],
    ['3 m 76 cm', 3760 * 320],
    ['3 m 760 mm', 3760 * 320],
    ['3m 75cm 10mm', 3760 * 320],
    ['3760 mm', 3760 * 320],
    ['3760 millimetres', 3760 * 320],
    ['376 centimeters', 3760 * 320],
    ['3.76 metres', 3760 * 320],
    ['3.76 Meters', 3760 * 320],
    ['10 mm', 3200],
    ['1,234 m', 1234 * 320],
    ['0.003125 mm', 1],
    ['-3.76 m', -3760 * 320],
    ['−3.76 m', -3760 * 320],
    [`- 12' 4 1/2"`, -TWELVE_FOUR_AND_A_HALF],
    ['-0 in', 0],
    ['0 mm', 0],
    ['1000 m', MAX_LENGTH],
    ['-1000 m', -MAX_LENGTH],
  ] as const)('%s', (text, units) => {
    expect(parseMeasure(text)).toEqual({ ok: true, value: { length: units, typed: text.trim() } });
    expect(parseLength(text)).toEqual({ ok: true, value: units });
  });

  it('round once, half away from zero', () => {
    // 1/640 mm is half a unit; 1/128 in is 63.5 units.
    expect(parseLength('0.0015625 mm')).toEqual({ ok: true, value: 1 });
    expect(parseLength('-0.0015625 mm')).toEqual({ ok: true, value: -1 });
    expect(parseLength('0.0015624999 mm')).toEqual({ ok: true, value: 0 });
    expect(parseLength('1/128 in')).toEqual({ ok: true, value: 64 });
    // Rounded part by part this would be 97536 + 2709.
    expect(parseLength(`1' 1/3"`)).toEqual({ ok: true, value: 97536 + 2709 });
  });
});

describe('without a unit', () => {
  it.each([
    ['96', 'imperial', `96"`, 96 * 8128],
    ['4 1/2', 'imperial', `4 1/2"`, 36576],
    ['4-1/2', 'imperial', `4-1/2"`, 36576],
    ['4½', 'imperial', `4½"`, 36576],
    ['7/8', 'imperial', `7/8"`, 7112],
    ['148.5', 'imperial', `148.5"`, TWELVE_FOUR_AND_A_HALF],
    [' 148,5 ', 'imperial', `148,5"`, TWELVE_FOUR_AND_A_HALF],
    ['12 4 1/2', 'imperial', `12' 4 1/2"`, TWELVE_FOUR_AND_A_HALF],
    ['12 4-1/2', 'imperial', `12' 4-1/2"`, TWELVE_FOUR_AND_A_HALF],
    ['12  4½', 'imperial', `12'  4½"`, TWELVE_FOUR_AND_A_HALF],
    ['8 4', 'imperial', `8' 4"`, 100 * 8128],
    ['8 1/2', 'imperial', `8 1/2"`, 69088],
    ['8 0 1/2', 'imperial', `8' 0 1/2"`, 96 * 8128 + 4064],
    [`12' 4 1/2`, 'imperial', `12' 4 1/2"`, TWELVE_FOUR_AND_A_HALF],
    ['12 ft 4.5', 'imperial', `12 ft 4.5"`, TWELVE_FOUR_AND_A_HALF],
    ['-12 4 1/2', 'imperial', `-12' 4 1/2"`, -TWELVE_FOUR_AND_A_HALF],
    ['0', 'imperial', `0"`, 0],
    ['3.76', 'metric', '3.76 m', 3760 * 320],
    ['3,76', 'metric', '3,76 m', 3760 * 320],
    ['-3,76', 'metric', '-3,76 m', -3760 * 320],
    ['4', 'metric', '4 m', 4000 * 320],
    // A written unit stands, whatever the house's style.
    ['376 cm', 'imperial', '376 cm', 3760 * 320],
    ['7/8 in', 'metric', '7/8 in', 7112],
  ] as const)('%s, %s', (text, bare, typed, units) => {
    expect(parseMeasure(text, bare)).toEqual({ ok: true, value: { length: units, typed } });
    expect(parseMeasure(typed)).toEqual({ ok: true, value: { length: units, typed } });
  });
});

describe('sums', () => {
  it.each<readonly [text: string, bare: LengthStyle | undefined, length: number, typed: string]>([
    [`12' 4" - 3 1/2"`, undefined, inches(289) / 2, `12' 4" - 3 1/2"`],
    [`12' 4 - 3 1/2`, 'imperial', inches(289) / 2, `12' 4" - 3 1/2"`],
    ['148 - 3.5', 'imperial', inches(289) / 2, '148" - 3.5"'],
    ['12 4 - 3 1/2 + 1', 'imperial', inches(291) / 2, `12' 4" - 3 1/2" + 1"`],
    [`12' minus 4"`, 'imperial', inches(140), `12' minus 4"`],
    [`12' plus 4"`, 'imperial', inches(148), `12' plus 4"`],
    ['3.76 + 12 cm', 'metric', millimetres(3_880), '3.76 m + 12 cm'],
    ['3.76+.12', 'metric', millimetres(3_880), '3.76 m+.12 m'],
    ['3 x 53 cm', 'metric', millimetres(1_590), '3 x 53 cm'],
    ['2×1.2 − 5 cm', 'metric', millimetres(2_350), '2×1.2 m − 5 cm'],
    ['10 cm - 1 m', undefined, millimetres(-900), '10 cm - 1 m'],
  ])('%s (%s)', (text, bare, length, typed) => {
    expect(parseMeasure(text, bare)).toEqual({ ok: true, value: { length, typed } });
    expect(parseMeasure(typed)).toEqual({ ok: true, value: { length, typed } });
  });

  it.each<readonly [text: string, bare: LengthStyle, one: string, other: string]>([
    [`12' - 4"`, 'imperial', `12' 4"`, `12' minus 4"`],
    ['3 m - 20 cm', 'metric', '3 m 20 cm', '3 m minus 20 cm'],
    ['3 - 20 cm', 'metric', '3 m 20 cm', '3 m minus 20 cm'],
    [`12' 4 - 1/2`, 'imperial', `12' 4 1/2`, `12' 4" minus 1/2"`],
    [`1" + 12' - 4"`, 'imperial', `12' 4"`, `12' minus 4"`],
  ])('a hyphen that might join or take away is not guessed at where it is typed: %s', (text, bare, one, other) => {
    expect(messageOf(text, bare)).toContain('can be read in two ways');
    expect(messageOf(text, bare)).toContain(`; write ${one} for one length, or ${other} to take away`);
    expect([parseMeasure(one, bare).ok, parseMeasure(other).ok]).toEqual([true, true]);
  });

  it('say the same without the house’s style as with it, whatever the terms', () => {
    const term = fc.constantFrom('3', '3.5', '12 4', `12'`, `12' 4"`, '3 1/2', '1/2', '3 m', '20 cm', '2.5 m', '3 x 20', '½', '4 in', '4 ft');
    const operator = fc.constantFrom(' - ', ' + ', ' minus ', '+', '-', ' – ');
    let read = 0;
    fc.assert(
      fc.property(term, fc.array(fc.tuple(operator, term), { minLength: 1, maxLength: 3 }), fc.constantFrom<LengthStyle>('imperial', 'metric'), (first, rest, bare) => {
        const outcome = parseMeasure(first + rest.flat().join(''), bare);
        if (!outcome.ok) return;
        read += 1;
        expect(parseMeasure(outcome.value.typed)).toEqual(outcome);
      }),
      { numRuns: 3_000 },
    );
    expect(read).toBeGreaterThan(500);
  });
});

describe('refused', () => {
  const examples = `write for example 12 in, 12' 4 1/2" or 3.76 m`;

  it('says in full what is wrong where there is no unit', () => {
    expect(messageOf('12')).toBe(`‘12’ has no unit; ${examples}`);
    expect(messageOf(' 12 4 1/2 ')).toBe(`‘12 4 1/2’ has no unit; ${examples}`);
    expect(messageOf('  ')).toBe(`There is no length here; ${examples}`);
    expect(messageOf('')).toBe(messageOf('  '));
  });

  it.each([
    ['bananas', '‘bananas’ is not a unit'],
    ['12 bananas', '‘bananas’ is not a unit of length; the units are in, ft, yd, mm, cm and m'],
    ['12 km', '‘km’ is not a unit'],
    ['20 sq ft', '‘sq’ is not a unit'],
    ['1e3 m', '‘e’ is not a unit'],
    ['12 pulgadas', '‘pulgadas’ is not a unit'],
    ['1.234,5 m', '‘1.234,5’ is not a number'],
    ['1,234,567 mm', '‘1,234,567’ is not a number'],
    ['4.5.6 in', '‘4.5.6’ is not a number'],
    ['12. in', '‘12.’ is not a number'],
    [`12',4"`, '‘,4’ is not a number'],
    ['1/0 in', '‘1/0’ has a zero under the line'],
    ['41/2"', '‘41/2’ is not less than one; write the whole number first, for example 4 1/2'],
    ['2/2 in', '‘2/2’ is not less than one'],
    ['4.5 1/2 in', '‘4.5 1/2’ has decimals and a fraction together'],
    ['1/2/3 in', '‘/’ is not understood'],
    ['+4 in', 'there is no length before ‘+’'],
    ['4 in +', 'there is no length after ‘+’'],
    ['4 in + x', '‘x’'],
    ['600 m + 500 m', 'is more than 1000 m'],
    ['200 x 6 m', 'is more than 1000 m'],
    ['12 m²', '‘²’ is not understood'],
    ['👍 in', '‘👍’ is not understood'],
    ['\ud83d in', '‘\ud83d’ is not understood'],
    ['3 m 2 ft', '‘ft’ does not go with ‘m’; write all of it in feet and inches, or all of it in metric'],
    [`1' 20 cm`, '‘cm’ does not go with ‘\'’'],
    [`4" 2'`, `‘'’ cannot come after ‘"’; write the larger unit first`],
    ['4 in 3 in', '‘in’ cannot come after ‘in’'],
    ['76 cm 3 m', '‘m’ cannot come after ‘cm’'],
    ['12.5 ft 3 in', '‘12.5’ has to be a whole number'],
    ['1 1/2 ft 3 in', '‘1 1/2’ has to be a whole number'],
    ['in 12', '‘in’ has no number before it'],
    [`12'''`, `‘'’ has no number before it`],
    ['12 ft 4', '‘4’ has no unit'],
    ['12 4 in', '‘12’ has no unit'],
    ['3 m 76', '‘76’ has no unit'],
    ['-', '‘-’ has no number after it'],
    ['--4 in', '‘-’ is not understood there'],
    ['12 ft-', '‘-’ has no number after it'],
    ['12 ft -', '‘-’ is not understood there'],
    [`12' -4"`, '‘-’ is not understood there'],
    ['12-4 in', '‘-’ is not understood there'],
    ['4 - 1/2 in', '‘4’ has no unit'],
    ['12ft.5in', '‘.5’ can be read in two ways after ft; put a space there'],
    ['1000.1 m', '‘1000.1 m’ is more than 1000 m'],
    ['-3281 ft', '‘-3281 ft’ is more than 1000 m'],
    [`${'9'.repeat(90)} in`, 'is more than 1000 m'],
  ])('%s', (text, problem) => {
    const message = messageOf(text);
    expect(message).toContain(problem);
    expect(message).toContain(`‘${text.trim()}’`);
    expect(message).not.toContain('!');
  });

  it.each([
    ['3 76', 'metric', '‘3 76’ has no unit; write metres as one number, for example 3.76, or write 3 m 76 cm'],
    ['3 1/2', 'metric', '‘3 1/2’ has no unit; write metres as one number'],
    [`12' 4`, 'metric', '‘4’ has no unit'],
    ['3 m 76', 'imperial', '‘76’ has no unit'],
    ['3 yd 4', 'imperial', '‘4’ has no unit'],
    ['1 2 3', 'imperial', `‘1 2 3’ has no unit; write feet and inches as 12 4 1/2, 12' 4 1/2" or 12 ft 4 1/2 in`],
    ['12.5 4', 'imperial', '‘12.5 4’ has no unit; write feet and inches as'],
    ['12 4.5', 'imperial', '‘12 4.5’ has no unit; write feet and inches as'],
    ['1/2 4', 'imperial', '‘1/2 4’ has no unit; write feet and inches as'],
    ['1.234,5', 'metric', '‘1.234,5’ is not a number'],
    ['1001', 'metric', '‘1001’ is more than 1000 m'],
  ] as const)('%s, %s', (text, bare, problem) => {
    expect(messageOf(text, bare)).toContain(problem);
  });

  it('reads no more than 100 characters', () => {
    const text = `${'0'.repeat(MAX_LENGTH_TEXT - 3)}4 in`;
    expect(text).toHaveLength(101);
    expect(messageOf(text)).toBe(`‘${'0'.repeat(30)}…’ is more than 100 characters; ${examples}`);
    expect(parseLength(text.slice(1))).toEqual({ ok: true, value: 4 * 8128 });
    expect(messageOf('1'.repeat(5_000_000))).toContain('is more than 100 characters');
    // The mark that `typed` gains must still fit.
    expect(messageOf(`${'0'.repeat(99)}4`, 'imperial')).toContain('is more than 100 characters');
  });
});

describe('properties', () => {
  const style = fc.constantFrom<LengthStyle | undefined>('imperial', 'metric', undefined);
  const pieces = ['12', '4', '0', '1/2', '½', '3.76', '3,76', "'", '"', ' ', ' ', '-', ',', '.', 'ft', 'in', 'm', 'cm', 'yd', '⁄', 'x'];
  const nearly = fc.array(fc.constantFrom(...pieces), { maxLength: 9 }).map((parts) => parts.join(''));
  const text = fc.oneof(fc.string({ unit: 'binary' }), fc.string(), nearly, nearly);

  it('never throw, and what was typed reads the same without the style', () => {
    let accepted = 0;
    fc.assert(
      fc.property(text, style, (written, bare) => {
        const outcome = parseMeasure(written, bare);
        if (!outcome.ok) {
          expect(outcome.faults[0]?.message).not.toBe('');
          return;
        }
        accepted += 1;
        expect(parseMeasure(outcome.value.typed)).toEqual(outcome);
      }),
      { numRuns: shareOf(20_000, 4_000) },
    );
    expect(accepted).toBeGreaterThan(100);
  });

  it('read every 1/64 in up to 100 m exactly', () => {
    const count = Math.ceil((100_000 / 25.4) * 64);
    for (let sixtyFourths = 0; sixtyFourths <= count; sixtyFourths += 1) {
      const inch = Math.floor(sixtyFourths / 64);
      const outcome = parseLength(`${Math.floor(inch / 12)}' ${inch % 12} ${sixtyFourths % 64}/64"`);
      if (!outcome.ok || outcome.value !== 127 * sixtyFourths) expect.fail(`${sixtyFourths}/64 in`);
    }
    expect(count).toBe(251_969);
  });

  it('read every 0.1 mm up to 100 m exactly', () => {
    for (let tenths = 0; tenths <= 1_000_000; tenths += 1) {
      const outcome = parseLength(`${Math.floor(tenths / 10)}.${tenths % 10} mm`);
      if (!outcome.ok || outcome.value !== 32 * tenths) expect.fail(`${tenths} × 0.1 mm`);
    }
    expect(parseLength('100000.0 mm')).toEqual({ ok: true, value: 32_000_000 });
  });

  it('read feet, inches and a fraction as their sum', () => {
    const sum = fc.record({
      feet: fc.nat(3000),
      inch: fc.nat(30),
      over: fc.nat(63),
      gap: fc.constantFrom(' ', '-'),
      marks: fc.constantFrom(["'", '"'], [' ft', ' in'], ['′', '″'], ['’', '”'], [' feet', ' inches']),
    });
    fc.assert(
      fc.property(sum, ({ feet, inch, over, gap, marks }) => {
        const units = feet * 97_536 + inch * 8128 + over * 127;
        const written = `${feet}${marks[0]} ${inch}${gap}${over}/64${marks[1]}`;
        expect(parseLength(written)).toEqual({ ok: true, value: units });
        expect(parseLength(`-${written}`)).toEqual({ ok: true, value: lengthOf(-units) });
        expect(parseLength(`${feet} ${inch}${gap}${over}/64`, 'imperial')).toEqual({ ok: true, value: units });
      }),
    );
  });

  it('agree with lengths made in code', () => {
    expect(parseLength('2.7 m')).toEqual({ ok: true, value: millimetres(2700) });
    expect(parseLength('0.1 in')).toEqual({ ok: true, value: inches(0.1) });
  });
});
