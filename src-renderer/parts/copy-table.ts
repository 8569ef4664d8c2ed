import { separatedCell } from '../../shared-core/units/index.ts';

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
  const region = liveRegion();
  try {
    await navigator.clipboard.writeText(tabSeparated(head, rows));
    say(region, `Copied ${rows.length} ${rows.length === 1 ? 'row' : 'rows'} under a head, to paste into a spreadsheet.`);
  } catch {
    say(region, 'Nothing was copied: this browser does not give out its clipboard here.');
  }
}

const SHOWN_MILLISECONDS = 4_000;
let hiding: ReturnType<typeof setTimeout> | undefined;

/** The one line at the window's foot that says what was copied; it is there before it says anything, so that it is read out. */
function liveRegion(): HTMLElement {
  const there = document.querySelector<HTMLElement>('.copied');
  if (there) return there;
  const region = document.createElement('p');
  region.className = 'copied small';
  region.setAttribute('role', 'status');
  document.body.append(region);
  return region;
}

function say(region: HTMLElement, words: string): void {
  clearTimeout(hiding);
  region.textContent = words;
  hiding = setTimeout(() => (region.textContent = ''), SHOWN_MILLISECONDS);
}
