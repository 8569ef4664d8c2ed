import { bad, capital, type Fault, fault, good, type Outcome } from '../base/index.ts';
import { ID_PATTERN } from '../house/index.ts';
import { type ColumnWords, type LengthStyle, parseMeasure, quoteTyped, readHeading, readSeparated, type Separator, separatorOf, type TableLine } from '../units/index.ts';
import { DEGREES, type Ends, endsText, readEndsTyped, readTurnTyped, splitEnds, TURN_HELP } from './typed-walls.ts';
import { say } from '../words/index.ts';

/** One thing wrong with a row, as a sentence that begins with the column; without one it is the row's as a whole. */
export interface CellTrouble<Column extends string> {
  readonly column: Column | null;
  readonly words: string;
}

/** A row of a table as it was understood. */
export interface ReadRow<Column extends string> {
  /** The line of the text on which it begins, from 1. */
  readonly line: number;
  /** Each cell as it would be taken; as it was typed where it is wrong. */
  readonly cells: Readonly<Partial<Record<Column, string>>>;
  readonly troubles: readonly CellTrouble<Column>[];
}

export interface TableKind<Column extends string> {
  readonly words: ColumnWords<Column>;
  readonly needed: readonly Column[];
  readonly mostRows: number;
  readonly longestText: number;
  /** What the table takes, as the rest of a sentence. */
  readonly takes: string;
  /** The columns where the first line is no row of headings; null where it is one. */
  columnsWithout(lines: readonly TableLine[], separator: Separator): Outcome<readonly Column[]> | null;
}

/** What stands over a column: which it is, and the unit in which its bare numbers are. */
interface Head<Column extends string> {
  readonly column: Column | undefined;
  readonly unit: string;
}

const UNIT_OF_HEADING = /^(.*?)\s*[([]\s*(\p{L}+|°)\s*[)\]]$/u;
const LONGEST_HEADING = 100;
const DEGREES_ALONE = new RegExp(`^${DEGREES}$`, 'i');

/** The rows of a table that was pasted or read from a file, each with its cells by their columns; all that is wrong with its headings otherwise. */
export function readRows<Column extends string>(text: string, kind: TableKind<Column>): Outcome<readonly RowCells<Column>[]> {
  if (text.length > kind.longestText) return fault('', say`This table has ${text.length} characters; at most ${kind.longestText} are taken at once`);
  const lines = readSeparated(text);
  if (!lines.ok) return lines;
  const [first] = lines.value;
  if (!first) return fault('', say`There is no table here; ${kind.takes}`);
  const without = kind.columnsWithout(lines.value, separatorOf(text));
  // A table without headings has the columns that it reaches.
  const widest = lines.value.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const heads = without === null ? readHeads(first, kind) : without.ok ? good(without.value.slice(0, widest).map((column): Head<Column> => ({ column, unit: '' }))) : without;
  if (!heads.ok) return heads;
  const rows = without === null ? lines.value.slice(1) : lines.value;
  if (rows.length === 0) return fault('', say`There is no row under the headings; ${kind.takes}`);
  if (rows.length > kind.mostRows) return fault('', say`This table has ${rows.length} rows; at most ${kind.mostRows} are taken at once`);
  return good(rows.map((line) => new RowCells(line, heads.value, kind.words)));
}

function readHeads<Column extends string>({ number, cells }: TableLine, { words, needed }: TableKind<Column>): Outcome<readonly Head<Column>[]> {
  const split = cells.map((cell) => {
    const [, name = cell, unit = ''] = (cell.length > LONGEST_HEADING ? null : UNIT_OF_HEADING.exec(cell)) ?? [];
    // A corner's unit is degrees in any case.
    if (DEGREES_ALONE.test(unit)) return { name, unit: '' };
    return unit !== '' && parseMeasure(`1 ${unit}`).ok ? { name, unit } : { name: cell, unit: '' };
  });
  const columns = readHeading({ number, cells: split.map(({ name }) => name) }, words, needed);
  return columns.ok ? good(columns.value.map((column, index) => ({ column, unit: split[index]!.unit }))) : columns;
}

/** One row on its way to being facts: what stands in its cells, what was understood of them, and what is wrong. */
export class RowCells<Column extends string> {
  readonly line: number;
  readonly #words: ColumnWords<Column>;
  readonly #heads = new Map<Column, Head<Column>>();
  readonly #cells: Partial<Record<Column, string>> = {};
  readonly #troubles: CellTrouble<Column>[] = [];

  constructor({ number, cells }: TableLine, heads: readonly Head<Column>[], words: ColumnWords<Column>) {
    this.line = number;
    this.#words = words;
    for (const head of heads) if (head.column !== undefined) this.#heads.set(head.column, head);
    cells.forEach((cell, index) => {
      const column = heads[index]?.column;
      if (column !== undefined) this.#cells[column] = cell;
      else if (cell !== '') this.say(null, say`Column ${index + 1}: ${quoteTyped(cell)} stands under no heading.`);
    });
  }

  get isGood(): boolean {
    return this.#troubles.length === 0;
  }

  get read(): ReadRow<Column> {
    return { line: this.line, cells: this.#cells, troubles: this.#troubles };
  }

  /** Whether the table has such a column. */
  has(column: Column): boolean {
    return this.#heads.has(column);
  }

  /** What stands in a cell; empty where nothing does. */
  typed(column: Column): string {
    return this.#cells[column] ?? '';
  }

  /** Reads a cell in which something stands, and says what is wrong with it; null then, and where nothing stands there. */
  take<Value>(column: Column, reader: (cell: string) => Outcome<Value, string>, show: (value: Value) => string = String): Value | null {
    const cell = this.typed(column);
    if (cell === '') return null;
    const whole = withUnit(cell, this.#heads.get(column)!.unit);
    const value = whole.ok ? reader(whole.value) : whole;
    if (value.ok) this.show(column, show(value.value));
    else this.complain(column, value.faults);
    return value.ok ? value.value : null;
  }

  /** Reads a cell that has to be filled. */
  need<Value>(column: Column, reader: (cell: string) => Outcome<Value, string>, takes: string): Value | null {
    if (this.typed(column) === '') this.complain(column, say`there is nothing; it takes ${takes}.`);
    return this.take(column, reader);
  }

  /** How a cell was understood. */
  show(column: Column, understood: string): void {
    this.#cells[column] = understood;
  }

  complain(column: Column, sentence: string): void {
    this.say(column, `${this.nameOf(column)}: ${sentence}`);
  }

  /** What the house's rules have against a fact of this row, whose message lacks its subject. */
  blame(column: Column | undefined, { path, message }: Fault): void {
    const subject = column === undefined ? capital(path.split('.').at(-1)!.replace(/\[\d+\]$/, '')) : this.nameOf(column);
    this.say(column ?? null, `${subject} ${message}${/[.?]$/.test(message) ? '' : '.'}`);
  }

  say(column: Column | null, words: string): void {
    this.#troubles.push({ column, words });
  }

  nameOf(column: Column): string {
    return capital(this.#words[column][0]);
  }
}

/** A number under a heading with a unit has that unit, unless it has one of its own; it is never read in the house's. */
function withUnit(cell: string, unit: string): Outcome<string, string> {
  if (unit === '') return good(cell);
  const ends: string[] = [];
  for (const end of splitEnds(cell)) {
    const whole = parseMeasure(end).ok ? end : `${end} ${unit}`;
    const read = parseMeasure(whole);
    if (!read.ok) return bad(sayLengthFaults(read.faults));
    ends.push(whole);
  }
  return good(endsText(ends));
}

function sayLengthFaults(faults: readonly Fault[]): string {
  return `${faults.map(({ message }) => message).join(' ')}.`;
}

/** How a length is read in a cell: as a length field reads it, kept as typed. */
export function lengthReader(style: LengthStyle): (cell: string) => Outcome<string, string> {
  return (cell) => {
    const read = parseMeasure(cell, style);
    return read.ok ? good(read.value.typed) : bad(sayLengthFaults(read.faults));
  };
}

export function endsReader(style: LengthStyle, what: string): (cell: string) => Outcome<Ends, string> {
  return (cell) => {
    const read = readEndsTyped(cell, style, what);
    return read.ok ? read : bad(`${read.faults}.`);
  };
}

export function readTurnCell(cell: string): Outcome<string, string> {
  const turn = readTurnTyped(cell);
  return turn === null ? bad(say`${quoteTyped(cell)} is no corner. ${TURN_HELP}`) : good(turn);
}

/** A wall's or an opening's short name, space in it as dashes: 'Bay left' is Bay-left. */
export function readNameCell(cell: string): Outcome<string, string> {
  const name = cell.replaceAll(/\s+/g, '-');
  return ID_PATTERN.test(name) ? good(name) : bad(say`${quoteTyped(cell)} is no short name; it takes 1 to 40 letters, digits, dots, dashes and underscores, such as A.`);
}
