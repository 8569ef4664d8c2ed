import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readScan, type Scan } from '../../shared-core/ordering/index.ts';
import { isCalendarDay } from '../../shared-core/units/index.ts';
import { readElements, readPrintedElements } from '../../shared-core/ordering/element-string.ts';
import { checkDigitOf, quoteTyped } from '../../shared-core/units/index.ts';

const GS = '\u001d';
const NOTHING = { gtin: null, run: null, rolls: null };

function scanned(text: string): Omit<Scan, 'text'> {
  const outcome = readScan(text);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('\n'));
  const { text: kept, ...said } = outcome.value;
  expect(kept).toBe(text.trim());
  return said;
}

function messageOf(text: string): string {
  const outcome = readScan(text);
  expect(outcome.ok, text).toBe(false);
  if (outcome.ok) return '';
  expect(outcome.faults).toHaveLength(1);
  return outcome.faults[0]!.message;
}

describe('a GTIN alone', () => {
  test.each([
    ['6291041500213', '6291041500213'],
    ['  6291041500213\r\n', '6291041500213'],
    ['6 291041 500213', '6291041500213'],
    ['6-291041-50021-3', '6291041500213'],
    ['6141 4100\u00a00012', '614141000012'],
    ['96385074', '96385074'],
    ['10614141000019', '10614141000019'],
    [']E06291041500213', '6291041500213'],
    [']E496385074', '96385074'],
    [']I110614141000019', '10614141000019'],
    // Though it could be a production date, (11)260301. 3 × (1 + 2 + 0 + 0) + (1 + 6 + 3) = 19 lacks 1.
    ['11260301', '11260301'],
  ])('%s', (text, gtin) => {
    expect(scanned(text)).toEqual({ ...NOTHING, gtin });
  });

  test('with a wrong digit is refused', () => {
    expect(messageOf('6 291041 500214')).toContain('the last digit should be 3: a digit was read or typed wrongly');
    expect(messageOf(']E0629104150021')).toContain('should be 4');
    expect(messageOf(']E0(01)06291041500213')).toContain('is not of digits alone');
  });
});

describe('element strings', () => {
  const WHOLE = { gtin: '06291041500213', run: '2214', rolls: 8 };

  test.each([
    '(01)06291041500213(10)2214(37)8',
    ' (01) 06291041500213 (10) 2214 (37) 8\n',
    ']C1(01)06291041500213(10)2214(37)8',
    `0106291041500213102214${GS}378`,
    `]C10106291041500213102214${GS}378`,
    `]d20106291041500213102214${GS}378`,
    `]Q30106291041500213102214${GS}378`,
    `]e00106291041500213102214${GS}378`,
    `${GS}0106291041500213102214${GS}378`,
    // The GTIN has a fixed length, so it needs no separator; one that stands there, or at the end, says nothing.
    `0106291041500213${GS}102214${GS}378${GS}`,
    // In any order.
    `]C1102214${GS}378${GS}0106291041500213`,
    `378${GS}102214${GS}0106291041500213`,
    // With everything else that is read.
    `]C1001061414123456789080106291041500213112603021326030215260302162603021726030020012177${GS}240F-9${GS}241our-9${GS}102214${GS}3000000008`,
  ])('%j', (text) => {
    expect(scanned(text)).toEqual(WHOLE);
  });

  test.each<[string, Partial<Scan>]>([
    ['0106291041500213', { gtin: '06291041500213' }],
    // What is in the package, and how many.
    ['(02)06291041500213(37)8', { gtin: '06291041500213', rolls: 8 }],
    ['00106141412345678908', {}],
    [']C1102214', { run: '2214' }],
    // A run keeps its zeros, its letters and its marks.
    ['(10)0042', { run: '0042' }],
    [']C110L/42-b(1)', { run: 'L/42-b(1)' }],
    ['(10)12345678901234567890', { run: '12345678901234567890' }],
    ['(30)24', { rolls: 24 }],
    ['(37)00000024', { rolls: 24 }],
    // A reader that leaves the separator out gives a run that goes on to the end.
    ['0106291041500213102214378', { gtin: '06291041500213', run: '2214378' }],
  ])('%s', (text, said) => {
    expect(scanned(text)).toEqual({ ...NOTHING, ...said });
  });

  test.each([
    ['(01)06291041500214', '(01): ‘06291041500214’ does not check; the last digit should be 3'],
    ['(02)06291041500214(37)8', '(02): ‘06291041500214’ does not check; the last digit should be 3'],
    ['0106291041500214102214', 'the last digit should be 3'],
    ['(00)106141412345678907', 'the last digit should be 8'],
    ['(01)6291041500213', '(01) takes 14 digits, and ‘6291041500213’ has 13'],
    [']C1016291041500213', '(01) takes 14 digits, and ‘6291041500213’ has 13'],
    [`]C1016291041500213${GS}102214`, '(01) takes 14 digits, and ‘6291041500213’ has 13'],
    ['(01)0629104150021X', '(01) takes 14 digits, and ‘0629104150021X’ has other characters'],
    ['(10)', '(10) takes 1 to 20 letters, digits and marks without spaces, and ‘’ has 0'],
    [']C110', '(10) takes 1 to 20'],
    ['(10)123456789012345678901', 'has 21'],
    ['(21)123456789012345678901', '(21) takes 1 to 20'],
    ['(240)1234567890123456789012345678901', '(240) takes 1 to 30'],
    ['(10)22 14', '(10) takes 1 to 20 letters, digits and marks without spaces, and ‘22 14’ has other characters'],
    ['(10)22ä14', 'has other characters'],
    ['(37)123456789', '(37) takes 1 to 8 digits, and ‘123456789’ has 9'],
    ['(37)eight', '(37) takes 1 to 8 digits, and ‘eight’ has other characters'],
    ['(37)0', '‘0’ counts nothing'],
    ['(11)261301', '(11): ‘261301’ is no date'],
    ['(13)260431', '(13): ‘260431’ is no date'],
    ['(15)260229', '‘260229’ is no date'],
    ['(16)260000', '‘260000’ is no date'],
    ['(17)260332', '‘260332’ is no date'],
    ['(17)2603', '(17) takes 6 digits, and ‘2603’ has 4'],
    ['(241)1234567890123456789012345678901', '(241) takes 1 to 30'],
    ['(20)1', '(20) takes 2 digits, and ‘1’ has 1'],
    ['(3102)000123', '‘3102’ is no identifier that is read here; those that are read are 00, 01, 02, 10, 11, 13, 15, 16, 17, 20, 21, 30, 37, 240, 241'],
    [']C13102000123', '‘31’ is no identifier that is read here'],
    [`]C1102214${GS}${GS}378`, '‘␝3’ is no identifier'],
    ['(10)2214(10)2214', '(10) comes twice'],
    ['(01)06291041500213(02)06291041500213(37)8', '(01) and (02) stand together'],
    ['(30)8(37)8', '(30) and (37) stand together'],
    ['(10)22)14', 'In ‘(10)22)14’, ‘)14’ is not understood; brackets are taken around identifiers alone'],
    ['(10)22(a)14', '‘(a)14’ is not understood'],
    ['(1)2214', '‘(1)2214’ is not understood'],
    ['(', '‘(’ is not understood'],
    [']C1', 'no identifier is followed by a value'],
    [GS, 'no identifier is followed by a value'],
    [']C0102214', '‘]C0’ is another kind of bar code than those that are read, which are ]C1, ]d2, ]Q3, ]e0, ]E0, ]E4, ]I1'],
    [']', '‘]’ is another kind of bar code'],
  ])('%j is refused', (text, said) => {
    expect(messageOf(text)).toContain(said);
  });
});

describe('what was typed by hand', () => {
  // '1042', '210042' and '3042' begin like a run, a serial number and a count.
  test.each(['2214', '1042', '210042', '3042', '0042', '0106', '010629104150021', 'K-2041', 'run 2214', '62910415002', 'https://example.org/01/06291041500213', '6291041500213 6291041500213'])('%s is refused, with what is taken', (text) => {
    expect(messageOf(text)).toBe(`${quoteTyped(text)} is no code of a package; it takes a GTIN of 8, 12, 13 or 14 digits or a GS1 code such as (01)06291041500213(10)2214(37)8, and no pattern number or run number`);
  });

  test.each(['', '  ', '\r\n'])('%j is nothing', (text) => {
    expect(messageOf(text)).toMatch(/^There is no code here; it takes a GTIN/);
  });

  test('is refused where it is longer than any code', () => {
    expect(messageOf(`(10)${'1'.repeat(297)}`)).toContain('is more than 300 characters');
    expect(messageOf(`(10)${'1'.repeat(296)}`)).toContain('has 296');
  });
});

const digits = (least: number, most = least) => fc.array(fc.integer({ min: 0, max: 9 }), { minLength: least, maxLength: most }).map((all) => all.join(''));
const checked = (length: number) => digits(length - 1).map((all) => all + checkDigitOf(all));
const value = (most: number) => fc.array(fc.constantFrom(...'0123456789ABCxyz-./_%"'), { minLength: 1, maxLength: most }).map((all) => all.join(''));
const day = fc.constantFrom('260302', '240229', '991231', '261200');
const counted = fc.integer({ min: 1, max: 99_999_999 }).map(String);
const elements = fc
  .record({ '00': checked(18), '01': checked(14), '10': value(20), '11': day, '13': day, '15': day, '16': day, '17': day, '20': digits(2), '21': value(20), '37': counted, '240': value(30), '241': value(30) }, { requiredKeys: [] })
  .chain((all) => fc.shuffledSubarray(Object.entries(all), { minLength: Object.keys(all).length }))
  .filter((all) => all.length > 0)
  .map((all) => all.map(([identifier, content]) => ({ identifier, value: content as string })));
const FIXED = ['00', '01', '11', '13', '15', '16', '17', '20'];

test('any elements in any order are read as they were written, printed or sent', () => {
  fc.assert(
    fc.property(elements, fc.constantFrom(']C1', ']d2', ']Q3', ']e0'), (all, prefix) => {
      const sent = all.map(({ identifier, value: content }, index) => identifier + content + (FIXED.includes(identifier) || index === all.length - 1 ? '' : GS)).join('');
      const printed = all.map(({ identifier, value: content }) => `(${identifier})${content}`).join('');
      expect(readElements(sent)).toEqual({ ok: true, value: all });
      expect(readPrintedElements(printed)).toEqual({ ok: true, value: all });
      const said = (wanted: string) => all.find(({ identifier }) => identifier === wanted)?.value ?? null;
      const expected = { gtin: said('01'), run: said('10'), rolls: said('37') === null ? null : Number(said('37')) };
      expect(scanned(prefix + sent)).toEqual(expected);
      expect(scanned(printed)).toEqual(expected);
    }),
    { numRuns: 500 },
  );
});

test('a digit of the GTIN that is read wrongly never passes', () => {
  fc.assert(
    fc.property(checked(14), fc.integer({ min: 0, max: 13 }), fc.integer({ min: 1, max: 9 }), value(20), (gtin, at, by, run) => {
      const wrong = gtin.slice(0, at) + ((Number(gtin[at]) + by) % 10) + gtin.slice(at + 1);
      expect(scanned(`01${gtin}10${run}`)).toEqual({ gtin, run, rolls: null });
      for (const text of [`01${wrong}10${run}`, `(01)${wrong}(10)${run}`, wrong]) expect(messageOf(text)).toContain('a digit was read or typed wrongly');
    }),
    { numRuns: 300 },
  );
});

test('whatever comes is answered, and by one sentence where it is refused', () => {
  const pieces = fc.array(fc.oneof(fc.constantFrom(']C1', ']', '(', ')', '(01)', '01', '10', '37', '240', GS, '06291041500213', ' ', '-', '\n', '🙂'), digits(0, 6)), { maxLength: 12 }).map((all) => all.join(''));
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 400 }), fc.string({ maxLength: 60 }), pieces), (text) => {
      const outcome = readScan(text);
      if (outcome.ok) expect(outcome.value.text).toBe(text.trim());
      else expect(outcome.faults).toEqual([{ path: '', message: expect.stringMatching(/^[^\p{Cc}]{20,500}$/u) }]);
    }),
    { numRuns: 3000 },
  );
});

test('a day is one of the calendar', () => {
  expect([isCalendarDay(2024, 2, 29), isCalendarDay(2000, 2, 29), isCalendarDay(2026, 2, 29), isCalendarDay(1900, 2, 29)]).toEqual([true, true, false, false]);
  expect([isCalendarDay(2026, 4, 30), isCalendarDay(2026, 4, 31), isCalendarDay(2026, 13, 1), isCalendarDay(2026, 0, 1), isCalendarDay(2026, 1, 0)]).toEqual([true, false, false, false, false]);
});

test('what is quoted is short and has its control characters in sight', () => {
  expect(quoteTyped(`10${GS}37`)).toBe('‘10␝37’');
  expect(quoteTyped('~\u007f\u0080\u009f\u00a0')).toBe('‘~␡\ufffd\ufffd\u00a0’');
  expect(quoteTyped('9'.repeat(40))).toBe(`‘${'9'.repeat(40)}’`);
  expect(quoteTyped('9'.repeat(41))).toBe(`‘${'9'.repeat(40)}…’`);
});
