import { say } from '../../shared-core/words/index.ts';
import { separatedCell } from '../../shared-core/units/index.ts';
import { lineAtFoot, sayAtFoot } from './say-at-foot.ts';

export type TableCell = string | number;

/**
 * A table as text that spreadsheets paste into cells: a tab between cells, a line for each row, its head first.
 *
 * A cell that holds a tab, a line end or a quote stands in quotes, its quotes written twice; one that a spreadsheet
 * would run as a formula gets an apostrophe in front. Example: `=1+1` is written `'=1+1`.
 */
export function tabSeparated(head: readonly string[], rows: readonly (readonly TableCell[])[]): string {
  return [head, ...rows].map((row) => `${row.map((cell) => separatedCell(cell, '\t')).join('\t')}\n`).join('');
}

/** Puts a table on the clipboard, to be pasted into a spreadsheet, and says whether it is there. */
export async function copyTable(head: readonly string[], rows: readonly (readonly TableCell[])[]): Promise<void> {
  lineAtFoot();
  try {
    await navigator.clipboard.writeText(tabSeparated(head, rows));
    sayAtFoot(rows.length === 1 ? say`Copied ${rows.length} row under a head, to paste into a spreadsheet.` : say`Copied ${rows.length} rows under a head, to paste into a spreadsheet.`);
  } catch {
    sayAtFoot(say`Nothing was copied: this browser does not give out its clipboard here.`);
  }
}
