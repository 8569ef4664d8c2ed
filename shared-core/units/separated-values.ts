import { fault, good, type Outcome } from '../base/index.ts';
import { quoteTyped } from './quote-typed.ts';
import { say } from '../words/index.ts';

/** One row of a table in which something stands. */
export interface TableLine {
  /** The line of the text on which it begins, from 1. */
  readonly number: number;
  /** Without the space around them. */
  readonly cells: readonly string[];
}

const SEPARATORS = ['\t', ';', ','] as const;
export type Separator = (typeof SEPARATORS)[number];

/** What a spreadsheet would run, in the wide letters of East Asia too; where apostrophes stand before it already, one more keeps them. */
const FORMULA = /^['"\s]*(?:[=+\-@＝＋－＠]|[\t\r\n])/u;
/** Before a formula what may stand between it and where its cell begins; all of it at once, so that nothing is gone over twice. */
const BEFORE_FORMULA = /['"\s;]+/gu;
const BEGINS_FORMULA = /^[=+\-@＝＋－＠]/u;

/** Far more than any table has that is read here. */
const MOST_CELLS = 100;

interface Cell {
  readonly value: string;
  /** Just behind the cell, where a separator, a line's end or nothing stands. */
  readonly end: number;
}

/**
 * The rows of a table that was written or copied as text, without the empty ones.
 *
 * Cells are kept apart by tabs where the first row has any, else by semicolons or commas, of which it has more; a cell
 * in quotes may hold any of these, line ends, and quotes written twice. A row may have any number of cells. The apostrophe
 * that `separatedCell` puts before a formula is taken off again. Fails, with the line,
 * where a quote is not closed, where something stands beside a cell in quotes and where a row has more than 100 cells.
 * Source: RFC 4180 (from memory); tabs and semicolons are how spreadsheets copy and save, common practice, no source.
 *
 * `K-2041;"22;14";8` is one line of K-2041, 22;14 and 8.
 */
export function readSeparated(text: string): Outcome<readonly TableLine[]> {
  const separator = separatorOf(text);
  const lines: TableLine[] = [];
  let cells: string[] = [];
  let number = 1;
  let lineEnds = 0;
  // A byte order mark is no part of the first cell.
  for (let at = text.startsWith('\ufeff') ? 1 : 0; at <= text.length; ) {
    const cell = readCell(text, at, separator);
    if (!cell.ok) return fault('', say`Line ${number + lineEnds}: ${cell.faults}`);
    const { value, end } = cell.value;
    lineEnds += countLineEnds(text.slice(at, end));
    cells.push(unguarded(value.trim()));
    if (cells.length > MOST_CELLS) return fault('', say`Line ${number} has more than ${MOST_CELLS} cells; check that it is the right table`);
    at = end + 1;
    if (text[end] === separator) continue;
    if (cells.some((one) => one !== '')) lines.push({ number, cells });
    cells = [];
    number += lineEnds + 1;
    lineEnds = 0;
    if (text.startsWith('\r\n', end)) at += 1;
  }
  return good(lines);
}

function readCell(text: string, from: number, separator: Separator): Outcome<Cell, string> {
  const isEnd = (at: number) => at >= text.length || text[at] === separator || text[at] === '\n' || text[at] === '\r';
  if (text[from] !== '"') {
    let end = from;
    while (!isEnd(end)) end += 1;
    const value = text.slice(from, end);
    return value.trimStart().startsWith('"') ? { ok: false, faults: say`${quoteTyped(value)} has a space before its quote; a quote stands first in its cell` } : good({ value, end });
  }
  const close = closingQuote(text, from);
  if (close < 0) return { ok: false, faults: say`the quote before ${quoteTyped(text.slice(from + 1))} is not closed; a cell in quotes ends with a quote` };
  if (isEnd(close + 1)) return good({ value: text.slice(from + 1, close).replaceAll('""', '"'), end: close + 1 });
  return { ok: false, faults: say`after ${quoteTyped(text.slice(from, close + 1))} the cell goes on; a quote within a cell in quotes is written twice` };
}

function closingQuote(text: string, open: number): number {
  for (let at = text.indexOf('"', open + 1); at >= 0; at = text.indexOf('"', at + 2)) {
    if (text[at + 1] !== '"') return at;
  }
  return -1;
}

/**
 * A table as CSV by RFC 4180 (from memory): commas between the cells, CRLF after each row; `readSeparated` reads it again.
 *
 * `writeSeparated([['Run', 'Rolls'], ['22,14', 8]])` is `Run,Rolls` and `"22,14",8`, each with its line end.
 */
export function writeSeparated(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map((cell) => separatedCell(cell, ',')).join(',')}\r\n`).join('');
}

/**
 * A cell of a table that is written as text: in quotes where it holds a quote, a line end or what keeps cells apart, and
 * with an apostrophe in front where a spreadsheet would run it as a formula; within it too, wherever another program
 * might have a cell begin. Source: the habits of spreadsheets, common practice.
 *
 * `separatedCell('=1+1', ',')` is `'=1+1`, and `separatedCell('a;=1', ',')` is `a;'=1`.
 */
export function separatedCell(value: string | number, separator: Separator): string {
  if (typeof value === 'number') return String(value);
  const inner = changeBeforeFormulas(value, (cellStart) => cellStart.replace(/[;\t\r\n]/g, "$&'"));
  const safe = FORMULA.test(inner) ? `'${inner}` : inner;
  return safe.includes(separator) || /["\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

function unguarded(cell: string): string {
  const whole = cell.startsWith("'") && FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell;
  return changeBeforeFormulas(whole, (cellStart) => cellStart.replace(/([;\t\r\n])'/g, '$1'));
}

/** Changes what stands before each formula within a text, from where a cell would begin for a program that keeps cells apart by semicolons, tabs or lines. */
function changeBeforeFormulas(text: string, change: (cellStart: string) => string): string {
  return text.replace(BEFORE_FORMULA, (run, at: number) => {
    if (!BEGINS_FORMULA.test(text.charAt(at + run.length))) return run;
    const start = Math.max(0, run.lastIndexOf(';'));
    return run.slice(0, start) + change(run.slice(start));
  });
}

/**
 * What keeps the cells of the first row apart in which anything stands.
 *
 * `separatorOf('3,76;2,40')` is a semicolon; where there is nothing of the kind it is a comma.
 */
export function separatorOf(text: string): Separator {
  const counts = new Map<string, number>();
  let isCellStart = true;
  let isEmpty = true;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at]!;
    if (character === '"' && isCellStart) {
      const close = closingQuote(text, at);
      if (close < 0) break;
      at = close;
      isEmpty = false;
      continue;
    }
    if (character === '\n' || character === '\r') {
      if (!isEmpty) break;
      counts.clear();
      isCellStart = true;
      continue;
    }
    isCellStart = SEPARATORS.some((separator) => separator === character);
    if (isCellStart) counts.set(character, (counts.get(character) ?? 0) + 1);
    else if (character.trim() !== '') isEmpty = false;
  }
  const [tabs, semicolons, commas] = SEPARATORS.map((separator) => counts.get(separator) ?? 0) as [number, number, number];
  if (tabs > 0) return '\t';
  return semicolons > 0 && semicolons >= commas ? ';' : ',';
}

function countLineEnds(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}
