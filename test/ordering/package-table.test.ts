import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PackageRow, readPackageTable } from '../../shared-core/ordering/index.ts';
import { readSeparated } from '../../shared-core/units/index.ts';

const NONE = { damaged: 0, short: 0 };
const FERN = { patternNumber: 'K-2041', run: '2214', rolls: 8, ...NONE };

function rowsOf(text: string): readonly PackageRow[] {
  const outcome = readPackageTable(text);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('\n'));
  return outcome.value;
}

function faultsOf(text: string): readonly string[] {
  const outcome = readPackageTable(text);
  expect(outcome.ok, text).toBe(false);
  return outcome.ok ? [] : outcome.faults.map(({ path, message }) => (path ? `${path}: ${message}` : message));
}

describe('a table', () => {
  test('copied from a spreadsheet, with its heading', () => {
    const text = 'Pattern number\tRun number\tRolls\tDamaged\tShort\tDate\r\nK-2041\t0042\t8\t1\t0\t2026-03-02\r\nK-2099\t0042\t12\t\t2\t\r\n';
    expect(rowsOf(text)).toEqual([
      { patternNumber: 'K-2041', run: '0042', rolls: 8, damaged: 1, short: 0, received: '2026-03-02' },
      { patternNumber: 'K-2099', run: '0042', rolls: 12, damaged: 0, short: 2 },
    ]);
  });

  test.each([
    ['tabs', 'K-2041\t2214\t8'],
    ['commas', 'K-2041,2214,8'],
    ['semicolons', 'K-2041;2214;8'],
    ['quotes', '"K-2041","2214","8"'],
    ['spaces beside', ' K-2041 ;  2214;8 '],
    ['empty cells behind', 'K-2041,2214,8,,,,,'],
    ['a byte order mark', '\ufeffK-2041,2214,8'],
    ['a byte order mark before a quote', '\ufeff"K-2041",2214,8'],
    ['empty lines', '\n\r\n ; ;\r;;;\nK-2041;2214;8\n\n\n'],
    ['old line ends', 'pattern;run;rolls\rK-2041;2214;8\r'],
  ])('with %s', (_, text) => {
    expect(rowsOf(text)).toEqual([FERN]);
  });

  test('whose cells hold what keeps others apart', () => {
    expect(rowsOf('"K;2041";"22,14";8\n"12"" fern";"A""";9')).toEqual([{ ...FERN, patternNumber: 'K;2041', run: '22,14' }, { ...FERN, patternNumber: '12" fern', run: 'A"', rolls: 9 }]);
    // The first row alone says what keeps the cells apart.
    expect(rowsOf('pattern,run,rolls\n2;4;1;x;y,2214,8')).toEqual([{ ...FERN, patternNumber: '2;4;1;x;y' }]);
    expect(rowsOf('"2;4;1;x",2214,8')).toEqual([{ ...FERN, patternNumber: '2;4;1;x' }]);
    expect(rowsOf('"K-2041";"2214";"8"\nK,,,,;2214;8')).toEqual([FERN, { ...FERN, patternNumber: 'K,,,,' }]);
    expect(rowsOf('\t\t\nK;2041,2214,8')).toEqual([{ ...FERN, patternNumber: 'K;2041' }]);
    expect(rowsOf('K,1;22,14;8')).toEqual([{ ...FERN, patternNumber: 'K,1', run: '22,14' }]);
    // A quote within a cell is one of inches.
    expect(rowsOf('fern 21"\t2214\t8')).toEqual([{ ...FERN, patternNumber: 'fern 21"' }]);
  });

  test.each(['Pattern number', 'PATTERN', 'Pattern no.', 'pattern_no', 'Number', 'No.'])('names the pattern number ‘%s’', (word) => {
    expect(rowsOf(`Rolls,${word},Run\n8,K-2041,2214`)).toEqual([FERN]);
  });

  test.each(['Run number', 'run', 'Run no.', 'Batch', 'batch number', 'Lot', 'Lot No', 'Dye lot', 'dye-lot', 'Dyelot'])('names the run ‘%s’', (word) => {
    expect(rowsOf(`${word};rolls;pattern\n2214;8;K-2041`)).toEqual([FERN]);
  });

  test.each(['Rolls', 'Quantity', 'Qty.', 'count'])('names the rolls ‘%s’', (word) => {
    expect(rowsOf(`run\tpattern\t${word}\n2214\tK-2041\t8`)).toEqual([FERN]);
  });

  test.each(['Date', 'Received', 'date received:'])('names the day ‘%s’, and what lacks ‘missing’', (word) => {
    expect(rowsOf(`${word}\tmissing\tdamaged\tlot\tpattern\tqty\n2024-02-29\t3\t2\t2214\tK-2041\t8`)).toEqual([{ ...FERN, damaged: 2, short: 3, received: '2024-02-29' }]);
  });

  test('may begin with a pattern number that is a word of headings', () => {
    expect(rowsOf('number,lot,8\nK-2041,2214,8')).toEqual([{ ...FERN, patternNumber: 'number', run: 'lot' }, FERN]);
  });

  test('may have columns of no name where nothing stands in them', () => {
    expect(rowsOf('pattern,,run,rolls\nK-2041,,2214,8')).toEqual([FERN]);
    expect(faultsOf('pattern,,run,rolls\nK-2041,x,2214,8')).toEqual(['rows[0]: Line 2, column 2: ‘x’ belongs to no column; the columns are pattern number, one without a name, run number, rolls']);
  });

  test('has 500 packages at most', () => {
    expect(rowsOf('pattern,run,rolls\n' + 'K-2041,2214,8\n'.repeat(500))).toHaveLength(500);
    expect(faultsOf('K-2041,2214,8\n'.repeat(501))).toEqual(['This table has 501 packages; at most 500 are taken at once']);
    expect(faultsOf('K-2041,2214,8\n'.repeat(15_000))).toEqual(['This table has 210000 characters; at most 200000 are taken at once']);
  });
});

describe('nothing is taken of a table with a fault', () => {
  const COUNT = 'it takes a whole number from 0 to 100000, such as 8';
  const TEXT = 'it takes a text of 1 to 60 characters in one line';
  const DAY = 'it takes year, month and day, such as 2026-03-02';

  test('and each fault names its line, its column, the value and what is accepted', () => {
    expect(faultsOf('pattern;batch;qty;date\nK-2041;2214;8;2026-03-02\n\nK-2041;;eight;3/2/2026')).toEqual([
      `rows[1].run: Line 4, run number: there is nothing; ${TEXT}`,
      `rows[1].rolls: Line 4, rolls: ‘eight’ is no count; ${COUNT}`,
      `rows[1].received: Line 4, date: ‘3/2/2026’ has the day or the month first, which can be read in two ways; ${DAY}`,
    ]);
  });

  test.each([
    ['2.5', `‘2.5’ has decimals; ${COUNT}`],
    ['"2,5"', `‘2,5’ has decimals; ${COUNT}`],
    ['8.0', `‘8.0’ has decimals; ${COUNT}`],
    ['"1,200"', `‘1,200’ has marks between thousands or decimals; ${COUNT}`],
    ['1.200', `‘1.200’ has marks between thousands or decimals; ${COUNT}`],
    ['1 200', `‘1 200’ has marks between thousands or decimals; ${COUNT}`],
    ['1\u202f200', `‘1\u202f200’ has marks between thousands or decimals; ${COUNT}`],
    ["1'200'000", `‘1'200'000’ has marks between thousands or decimals; ${COUNT}`],
    ['-1', `‘-1’ is below zero; ${COUNT}`],
    ['+1', `‘+1’ is no count; ${COUNT}`],
    ['8 rolls', `‘8 rolls’ is no count; ${COUNT}`],
    ['1e3', `‘1e3’ is no count; ${COUNT}`],
    ['٨', `‘٨’ is no count; ${COUNT}`],
    ['08', `‘08’ begins with a zero; ${COUNT}`],
    ['100001', `‘100001’ is too many; ${COUNT}`],
    ['9'.repeat(400), `‘${'9'.repeat(40)}…’ is too many; ${COUNT}`],
    ['', `there is nothing; ${COUNT}`],
  ])('a count of %s', (cell, said) => {
    expect(faultsOf(`K-2041,2214,${cell}`)).toEqual([`rows[0].rolls: Line 1, rolls: ${said}`]);
  });

  test('a count of thousands at whose mark a comma keeps the cells apart', () => {
    expect(faultsOf('K-2041,2214,8,000')).toEqual([`rows[0].damaged: Line 1, damaged: ‘000’ begins with a zero; ${COUNT}`]);
    expect(faultsOf('K-2041,2214,8,500')).toEqual(['rows[0].damaged: Line 1, damaged: ‘500’ is more than the 8 rolls of the package; it takes at most as many']);
  });

  test.each([
    ['3/2/2026', 'has the day or the month first, which can be read in two ways'],
    ['13.2.26', 'has the day or the month first, which can be read in two ways'],
    ['03-02-2026', 'has the day or the month first, which can be read in two ways'],
    ['2026/03/02', 'is no date that is read'],
    ['2026-3-2', 'is no date that is read'],
    ['2 March 2026', 'is no date that is read'],
    ['46083', 'is no date that is read'],
    ['2026-02-29', 'is no day of the calendar'],
    ['2026-13-01', 'is no day of the calendar'],
    ['2026-00-10', 'is no day of the calendar'],
  ])('a date of %s', (cell, said) => {
    expect(faultsOf(`K-2041,2214,8,0,0,${cell}`)).toEqual([`rows[0].received: Line 1, date: ‘${cell}’ ${said}; ${DAY}`]);
  });

  test('a number that is too long or not in one line', () => {
    expect(faultsOf(`${'K'.repeat(61)},2214,8`)).toEqual([`rows[0].patternNumber: Line 1, pattern number: ‘${'K'.repeat(40)}…’ has 61 characters; ${TEXT}`]);
    expect(rowsOf(`${'K'.repeat(60)},2214,8`)).toEqual([{ ...FERN, patternNumber: 'K'.repeat(60) }]);
    // The line is the one on which the row begins.
    expect(faultsOf('K-2041,2214,8\n"K\r\n2041",2214,8\n,2214,8')).toEqual([
      `rows[1].patternNumber: Line 2, pattern number: ‘K␍␊2041’ has a line end, a tab or another control character in it; ${TEXT}`,
      `rows[2].patternNumber: Line 4, pattern number: there is nothing; ${TEXT}`,
    ]);
  });

  test('more damaged than there are', () => {
    expect(rowsOf('K-2041,2214,8,8')).toEqual([{ ...FERN, damaged: 8 }]);
    expect(faultsOf('K-2041,2214,8,9')).toEqual(['rows[0].damaged: Line 1, damaged: ‘9’ is more than the 8 rolls of the package; it takes at most as many']);
    // What can't be read is not compared.
    expect(faultsOf('K-2041,2214,x,9')).toHaveLength(1);
  });

  test('more damaged and short together than there are', () => {
    expect(rowsOf('K-2041,2214,8,3,5')).toEqual([{ ...FERN, damaged: 3, short: 5 }]);
    expect(faultsOf('K-2041,2214,8,3,6')).toEqual(['rows[0].short: Line 1, short: ‘6’ is with 3 damaged more than the 8 rolls of the package; it takes at most 5']);
    expect(faultsOf('pattern,run,rolls,short\nK-2041,2214,8,500')).toEqual(['rows[0].short: Line 2, short: ‘500’ is with 0 damaged more than the 8 rolls of the package; it takes at most 8']);
  });

  test('cells beyond the last column', () => {
    expect(faultsOf('K-2041,2214,8,0,0,2026-03-02,north')).toEqual(['rows[0]: Line 1, column 7: ‘north’ belongs to no column; the columns are pattern number, run number, rolls, damaged, short, date']);
  });

  test.each([
    ['', ['There is no table here; it takes one row for each package, with the columns pattern number, run number, rolls, damaged, short, date']],
    [' \n,,,\n', ['There is no table here; it takes one row for each package, with the columns pattern number, run number, rolls, damaged, short, date']],
    ['pattern,run,rolls\n', ['There is no package under the heading; it takes one row for each package, with the columns pattern number, run number, rolls, damaged, short, date']],
    ['pattern,lot,rolls,price\nK-2041,2214,8,84', ['Line 1: ‘price’ is no heading that is known; those that are known are pattern number, run number, rolls, damaged, short, date; leave other columns out']],
    ['\npattern,lot,batch,rolls\nK-2041,2214,2214,8', ['Line 2: ‘batch’ is a second column for the run number; it takes one of each']],
    ['pattern,lot\nK-2041,2214', ['Line 1: there is no column for the rolls; known by rolls, quantity, qty, count']],
    ['K-2041,2214,8\nK-2041,"2214,8\nK-2041,2214,8', ['Line 2: the quote before ‘2214,8␊K-2041,2214,8’ is not closed; a cell in quotes ends with a quote']],
    ['K-2041,"22"14,8', ['Line 1: after ‘"22"’ the cell goes on; a quote within a cell in quotes is written twice']],
    ['K-2041, "2214",8', ['Line 1: ‘ "2214"’ has a space before its quote; a quote stands first in its cell']],
    ['"a\nb",2214,8\n"c\nd",2214,"', ['Line 4: the quote before ‘’ is not closed; a cell in quotes ends with a quote']],
  ])('%j', (text, said) => {
    expect(faultsOf(text)).toEqual(said);
  });
});

test('a row of cells in quotes is taken apart, with the line on which it begins', () => {
  expect(readSeparated('K-2041;"22;14";8')).toEqual({ ok: true, value: [{ number: 1, cells: ['K-2041', '22;14', '8'] }] });
  expect(readSeparated('a,b\r\n\r\n"c\nd",""\re,f\n')).toEqual({ ok: true, value: [{ number: 1, cells: ['a', 'b'] }, { number: 3, cells: ['c\nd', ''] }, { number: 5, cells: ['e', 'f'] }] });
});

const numberText = fc
  .oneof(fc.string({ minLength: 1, maxLength: 20 }), fc.array(fc.constantFrom('"', ',', ';', ' ', 'K', '0', 'é', '-', '🙂'), { minLength: 1, maxLength: 12 }).map((all) => all.join('')))
  .map((text) => text.trim())
  .filter((text) => text !== '');
const day = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10));
const row: fc.Arbitrary<PackageRow> = fc
  .record({ patternNumber: numberText, run: numberText, rolls: fc.nat(100_000), damaged: fc.nat(100_000), short: fc.nat(100_000), received: day }, { requiredKeys: ['patternNumber', 'run', 'rolls', 'damaged', 'short'] })
  .map((all) => ({ ...all, damaged: Math.min(all.damaged, all.rolls), short: Math.min(all.short, all.rolls - Math.min(all.damaged, all.rolls)) }));
const HEADS: Readonly<Record<keyof PackageRow, readonly string[]>> = { patternNumber: ['Pattern number', 'number'], run: ['Run', 'Dye lot'], rolls: ['Rolls', 'Qty'], damaged: ['Damaged'], short: ['Short', 'Missing'], received: ['Date', 'Received'] };
const ORDER = ['patternNumber', 'run', 'rolls', 'damaged', 'short', 'received'] as const;

test('a table that is written and read again is the same', () => {
  const layout = fc.record({ separator: fc.constantFrom('\t', ';', ','), lineEnd: fc.constantFrom('\n', '\r\n', '\r'), order: fc.shuffledSubarray([...ORDER], { minLength: 6 }), hasHeading: fc.boolean(), word: fc.nat(1), quotesAll: fc.boolean(), emptyLines: fc.nat(2) });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), layout, (rows, { separator, lineEnd, order, hasHeading, word, quotesAll, emptyLines }) => {
      const columns = hasHeading ? order : ORDER;
      const guarded = (value: string) => value.replace(/;(['"\s]*)(?=[=+\-@])/g, ";'$1").replace(/^(?=['"\s]*[=+\-@])/, "'");
      const cell = (value: string) => (quotesAll || /[",;\t]/.test(value) ? `"${guarded(value).replaceAll('"', '""')}"` : guarded(value));
      const lines = rows.map((one) => columns.map((column) => String(one[column] ?? '')));
      const heading = hasHeading ? [columns.map((column) => HEADS[column][word] ?? HEADS[column][0]!)] : [];
      const text = [...heading, ...lines].map((cells) => cells.map(cell).join(separator)).join(lineEnd.repeat(1 + emptyLines));
      expect(rowsOf(text)).toEqual(rows);
    }),
    { numRuns: 500 },
  );
});

test('whatever is pasted is answered', () => {
  const pieces = fc.array(fc.oneof(fc.constantFrom('"', '""', ',', ';', '\t', '\n', '\r', '\r\n', '\ufeff', 'pattern', 'run', 'rolls', 'K-2041', '2214', '8', ' ', '2026-03-02'), fc.string({ unit: 'binary', maxLength: 4 })), { maxLength: 60 }).map((all) => all.join(''));
  fc.assert(
    fc.property(fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 200 })), (text) => {
      const outcome = readPackageTable(text);
      if (outcome.ok) for (const { rolls, damaged, short } of outcome.value) expect(damaged + short).toBeLessThanOrEqual(rolls);
      else for (const { message } of outcome.faults) expect(message).toMatch(/^(?:Line [0-9]+[,:] |There is no |This table has )[^\p{Cc}]+$/u);
    }),
    { numRuns: 3000 },
  );
});
