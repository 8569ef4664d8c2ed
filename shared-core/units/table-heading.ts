import { bad, good, type Outcome } from '../base/index.ts';
import { quoteTyped } from './quote-typed.ts';
import type { TableLine } from './separated-values.ts';
import { say } from '../words/index.ts';

/** Each column's name in messages, then the other words under which it is known, without full stops: in every language the English ones too. */
export type ColumnWords<Column extends string> = Readonly<Record<Column, readonly [string, ...string[]]>>;

/**
 * The words of a column as they are said, kept apart by commas.
 *
 * `wordsIn('rolls, quantity')` is rolls and quantity.
 */
export function wordsIn(said: string): readonly [string, ...string[]] {
  const [name = '', ...others] = said.split(', ');
  return [name, ...others];
}

/**
 * The column that a heading names, whatever its capitals, full stops and dashes; undefined where it names none.
 *
 * `columnOf('Dye-Lot', { run: ['run number', 'dye lot'] })` is `run`.
 */
export function columnOf<Column extends string>(cell: string, words: ColumnWords<Column>): Column | undefined {
  const word = cell.toLowerCase().replaceAll(/[\s._:#-]+/g, ' ').trim();
  return columnsOf(words).find((column) => words[column].some((known) => known.toLowerCase() === word));
}

/**
 * The columns of a row of headings, in their order; undefined for one of no name.
 *
 * Fails with a sentence for each heading that is unknown, since what stands under it would be lost, or that names a
 * column again, and for each column that is needed and not there.
 *
 * `Batch` and `Qty` before the words of packages are the run number and the rolls; the pattern number is not there.
 */
export function readHeading<Column extends string>({ number, cells }: TableLine, words: ColumnWords<Column>, needed: readonly Column[]): Outcome<readonly (Column | undefined)[]> {
  const names = columnsOf(words).map((column) => words[column][0]).join(', ');
  const columns = cells.map((cell) => columnOf(cell, words));
  const faults = cells.flatMap((cell, index) => {
    const column = columns[index];
    if (cell === '') return [];
    if (column === undefined) return [say`${quoteTyped(cell)} is no heading that is known; those that are known are ${names}; leave other columns out`];
    return columns.indexOf(column) < index ? [say`${quoteTyped(cell)} is a second column for the ${words[column][0]}; it takes one of each`] : [];
  });
  const missing = needed.filter((column) => !columns.includes(column)).map((column) => say`there is no column for the ${words[column][0]}; known by ${words[column].join(', ')}`);
  const said = [...faults, ...missing].map((message) => ({ path: '', message: say`Line ${number}: ${message}` }));
  return said.length > 0 ? bad(said) : good(columns);
}

function columnsOf<Column extends string>(words: ColumnWords<Column>): readonly Column[] {
  return Object.keys(words) as Column[];
}
