import { bad, type Fault, fault, good, type Outcome } from '../base/index.ts';
import { firstFaults, MOST_FAULTS } from '../house/index.ts';
import { columnOf, type ColumnWords, isCalendarDay, quoteTyped, readHeading, readSeparated, type TableLine, wordsIn } from '../units/index.ts';
import { say } from '../words/index.ts';

/** What a row of a pasted table says of a package: the rolls on its label, and how many of those are damaged or not in it. */
export interface PackageRow {
  readonly patternNumber: string;
  readonly run: string;
  readonly rolls: number;
  readonly damaged: number;
  readonly short: number;
  /** The day on which it came, such as 2026-03-02. */
  readonly received?: string;
}

const COLUMNS = ['patternNumber', 'run', 'rolls', 'damaged', 'short', 'received'] as const;
type Column = (typeof COLUMNS)[number];

const WORDS: ColumnWords<Column> = {
  patternNumber: wordsIn(say`pattern number, pattern, pattern no, number, no`),
  run: wordsIn(say`run number, run, run no, batch, batch number, batch no, lot, lot number, lot no, dye lot, dyelot`),
  rolls: wordsIn(say`rolls, quantity, qty, count`),
  damaged: wordsIn(say`damaged, defective`),
  short: wordsIn(say`short, missing`),
  received: wordsIn(say`date, received, date received`),
};
const NAMES = COLUMNS.map((column) => WORDS[column][0]).join(', ');
/** The columns that every row has. */
const NEEDED: readonly Column[] = ['patternNumber', 'run', 'rolls'];

const MOST_ROWS = 500;
const LONGEST_TABLE = 200_000;
const LONGEST_NUMBER = 60;
const MOST_ROLLS_OF_A_ROW = 100_000;
const COUNT = say`it takes a whole number from 0 to ${MOST_ROLLS_OF_A_ROW}, such as 8`;
const DAY = say`it takes year, month and day, such as 2026-03-02`;
const TABLE = say`it takes one row for each package, with the columns ${NAMES}`;

/**
 * The packages of a table that was copied from a spreadsheet or a file and pasted.
 *
 * Cells are kept apart by tabs, semicolons or commas, with quotes as RFC 4180 has them; `readSeparated` chooses. A first
 * row of the columns' names or the trade's other words for them (batch, lot, dye lot; quantity, qty, count; missing) says
 * the order of the columns; without one it is pattern number, run number, rolls, damaged, short, date. The last three may
 * be left out or empty: 0, 0 and no date. Rows in which nothing stands are skipped.
 *
 * All rows or none: fails with a sentence for each cell that is wrong, naming line, column, value and what is accepted,
 * whose path counts the packages from 0; on an unknown heading, since what stands under it would be lost; on more than
 * 500 rows. Counts are whole, without marks between thousands; days are written year first, since 3/2/2026 is
 * 3 February to one and 2 March to another. A run number is text and keeps its zeros.
 *
 * `K-2041,0042,8` is 8 rolls of pattern number K-2041, run 0042, none damaged, none short.
 */
export function readPackageTable(text: string): Outcome<readonly PackageRow[]> {
  if (text.length > LONGEST_TABLE) return fault('', say`This table has ${text.length} characters; at most ${LONGEST_TABLE} are taken at once`);
  const lines = readSeparated(text);
  if (!lines.ok) return lines;
  const [first] = lines.value;
  if (!first) return fault('', say`There is no table here; ${TABLE}`);
  const heading = isHeading(first) ? readHeading(first, WORDS, NEEDED) : good(COLUMNS);
  if (!heading.ok) return heading;
  const packages = isHeading(first) ? lines.value.slice(1) : lines.value;
  if (packages.length === 0) return fault('', say`There is no package under the heading; ${TABLE}`);
  if (packages.length > MOST_ROWS) return fault('', say`This table has ${packages.length} packages; at most ${MOST_ROWS} are taken at once`);

  const faults: Fault[] = [];
  const rows: PackageRow[] = [];
  for (const [index, line] of packages.entries()) {
    rows.push(readRow(line, heading.value, (column, message) => faults.push({ path: `rows[${index}]${column && `.${column}`}`, message })));
    if (faults.length > MOST_FAULTS) break;
  }
  return faults.length > 0 ? bad(firstFaults(faults)) : good(rows);
}

/** A column, or undefined for one of no name. */
type Columns = readonly (Column | undefined)[];

/** A package's row has a count; a heading has a known word and none. */
function isHeading({ cells }: TableLine): boolean {
  return cells.some((cell) => columnOf(cell, WORDS) !== undefined) && !cells.some((cell) => /^[0-9]+$/.test(cell));
}

type Report = (column: Column | '', message: string) => void;

function readRow({ number, cells }: TableLine, columns: Columns, report: Report): PackageRow {
  cells.forEach((cell, index) => {
    if (cell !== '' && columns[index] === undefined) report('', say`Line ${number}, column ${index + 1}: ${quoteTyped(cell)} belongs to no column; the columns are ${columns.map((column) => (column ? WORDS[column][0] : say`one without a name`)).join(', ')}`);
  });
  const read = <Value>(column: Column, reader: (cell: string) => Outcome<Value, string>, otherwise: Value): Value => {
    const cell = cells[columns.indexOf(column)] ?? '';
    if (cell === '' && !NEEDED.includes(column)) return otherwise;
    const value = reader(cell);
    if (value.ok) return value.value;
    report(column, say`Line ${number}, ${WORDS[column][0]}: ${cell === '' ? say`there is nothing` : quoteTyped(cell)}${value.faults}`);
    return otherwise;
  };
  const patternNumber = read('patternNumber', readText, '');
  const run = read('run', readText, '');
  const rolls = read('rolls', readCount, MOST_ROLLS_OF_A_ROW);
  const damaged = read('damaged', readCount, 0);
  const short = read('short', readCount, 0);
  const received = read<string | null>('received', readDay, null);
  if (damaged > rolls) report('damaged', say`Line ${number}, damaged: ‘${damaged}’ is more than the ${rolls} rolls of the package; it takes at most as many`);
  else if (damaged + short > rolls) report('short', say`Line ${number}, short: ‘${short}’ is with ${damaged} damaged more than the ${rolls} rolls of the package; it takes at most ${rolls - damaged}`);
  return { patternNumber, run, rolls, damaged, short, ...(received !== null && { received }) };
}

function readText(cell: string): Outcome<string, string> {
  const accepted = say`it takes a text of 1 to ${LONGEST_NUMBER} characters in one line`;
  if (cell === '') return bad(`; ${accepted}`);
  if (cell.length > LONGEST_NUMBER) return bad(say` has ${cell.length} characters; ${accepted}`);
  return /\p{Cc}/u.test(cell) ? bad(say` has a line end, a tab or another control character in it; ${accepted}`) : good(cell);
}

function readCount(cell: string): Outcome<number, string> {
  // The end of 8,000 at which commas keep the cells apart begins with a zero.
  if (/^0[0-9]+$/.test(cell)) return bad(say` begins with a zero; ${COUNT}`);
  if (/^[0-9]+$/.test(cell)) return Number(cell) > MOST_ROLLS_OF_A_ROW ? bad(say` is too many; ${COUNT}`) : good(Number(cell));
  if (cell === '') return bad(`; ${COUNT}`);
  if (/^[-−][0-9]/.test(cell)) return bad(say` is below zero; ${COUNT}`);
  if (/^[0-9]{1,3}(?:[.,'’ \u00a0\u2009\u202f][0-9]{3})+$/.test(cell)) return bad(say` has marks between thousands or decimals; ${COUNT}`);
  return bad(`${/^[0-9]*[.,][0-9]+$/.test(cell) ? say` has decimals` : say` is no count`}; ${COUNT}`);
}

function readDay(cell: string): Outcome<string, string> {
  const [, year, month, day] = (/^([0-9]{4})-([0-9]{2})-([0-9]{2})$/.exec(cell) ?? []).map(Number);
  if (year !== undefined) return isCalendarDay(year, month!, day!) ? good(cell) : bad(say` is no day of the calendar; ${DAY}`);
  const isTwoWays = /^[0-9]{1,2}[./ -][0-9]{1,2}[./ -](?:[0-9]{2}|[0-9]{4})$/.test(cell);
  return bad(isTwoWays ? say` has the day or the month first, which can be read in two ways; ${DAY}` : say` is no date that is read; ${DAY}`);
}
