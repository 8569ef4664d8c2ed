import type { Content, ContentTable, CustomTableLayout, TableCell } from 'pdfmake/interfaces.js';
import { setRolls } from './set-rolls.ts';
import { BOX, HEADING, INK, isSurelyLow, set, shortened, SMALL, SOFT, TEXT_SIZE, tickBox } from './set-text.ts';
import { type Block, type Cell, type Column, type Sheet, TICK_BOX } from './sheet.ts';

const TITLE = 20;
const HAIRLINE = 0.5;
const RULE = 1;
const BAR = 3;
/** A column whose width is not said has that at least. */
const LEAST_WIDTH = 80;

/** A line below, as under a running head. */
export const RULED: CustomTableLayout = { hLineWidth: (line) => (line === 1 ? HAIRLINE : 0), vLineWidth: () => 0, hLineColor: () => SOFT, paddingLeft: () => 0, paddingRight: () => 0, paddingTop: () => 0, paddingBottom: () => 3 };
const BARE: CustomTableLayout = { hLineWidth: () => 0, vLineWidth: () => 0, paddingLeft: () => 0, paddingRight: () => 6, paddingTop: () => 2.5, paddingBottom: () => 2.5 };
const BARRED: CustomTableLayout = { ...BARE, vLineWidth: (line) => (line === 0 ? BAR : 0), paddingLeft: () => 8 };

/** The head of a sheet on its first page. */
export function titled({ title, about }: Sheet): readonly Content[] {
  return [
    { ...set(title), fontSize: about === null ? TITLE : HEADING, bold: true, margin: [0, 0, 0, about === null ? 10 : 0] },
    ...(about === null ? [] : [{ ...set(about), fontSize: TITLE, bold: true, margin: [0, 0, 0, 10] } satisfies Content]),
  ];
}

/** Those that a heading stands over, and not within. */
type LooseBlock = Exclude<Block, { kind: 'heading' | 'table' }>;

/** Blocks as the library takes them; a heading stays with what follows it, and over a table stands on each of its pages. */
export function blocksOf(blocks: readonly Block[], width: number): readonly Content[] {
  const contents: Content[] = [];
  for (const [index, block] of blocks.entries()) {
    if (block.kind === 'heading') {
      const next = blocks[index + 1];
      if (next === undefined || next.kind === 'heading') contents.push(headingOf(block.text));
      continue;
    }
    const before = blocks[index - 1];
    const heading = before?.kind === 'heading' ? before.text : null;
    if (block.kind === 'table') contents.push(tableOf(block, heading));
    else contents.push(...underHeading(heading, block, width));
  }
  return contents;
}

function headingOf(text: string): Content {
  return { ...set(text), fontSize: HEADING, bold: true, margin: [0, 12, 0, 4] };
}

function underHeading(heading: string | null, block: LooseBlock, width: number): readonly Content[] {
  const [first, ...rest] = contentOf(block, width);
  if (first === undefined) return heading === null ? [] : [headingOf(heading)];
  if (heading === null) return [first, ...rest];
  const head = headingOf(heading);
  return isFirstLow(block, width) ? [{ stack: [head, first], unbreakable: true }, ...rest] : [head, first, ...rest];
}

/** Whether the first content that is made of a block is surely lower than half a page. */
function isFirstLow(block: LooseBlock, width: number): boolean {
  switch (block.kind) {
    case 'text':
      return isSurelyLow([block.text], width);
    case 'caution':
      return isSurelyLow([block.text, ...block.notes], width);
    case 'ticks':
      return isTickLow(block.of[0]!, width);
    case 'addresses':
    case 'facts':
    case 'totals':
      return isSurelyLow(block.of.map(({ text }) => text), width / 3);
    case 'drawing':
      return true;
    case 'rolls':
      return false;
  }
}

function isTickLow({ text, notes = [] }: Extract<Block, { kind: 'ticks' }>['of'][number], width: number): boolean {
  return isSurelyLow([text, ...notes], width - BOX);
}

function contentOf(block: LooseBlock, width: number): readonly Content[] {
  switch (block.kind) {
    case 'text':
      return [{ ...set(block.text), margin: [0, 0, 0, 5], ...(block.as === 'soft' ? { color: SOFT, fontSize: SMALL } : block.as === 'strong' ? { bold: true } : {}) }];
    case 'caution':
      return [{ margin: [0, 0, 0, 6], unbreakable: isSurelyLow([block.text, ...block.notes], width), layout: BARRED, table: { widths: ['*'], body: [[{ stack: [{ ...set(block.text), bold: true }, ...block.notes.map((note): Content => ({ ...set(note), fontSize: SMALL, margin: [0, 2, 0, 0] }))] }]] } }];
    case 'addresses':
      return [{ margin: [0, 0, 0, 10], columnGap: 16, columns: block.of.map(({ head, text }) => ({ width: '*', stack: [{ ...set(head), fontSize: SMALL, color: SOFT }, set(text)] })) }];
    case 'facts':
      return [{ margin: [0, 0, 0, 6], layout: { ...BARE, paddingTop: () => 1, paddingBottom: () => 1, paddingRight: () => 12 }, table: { widths: ['auto', '*'], body: block.of.map(({ head, text }): TableCell[] => [{ ...set(head), color: SOFT }, set(text)]) } }];
    case 'ticks':
      return block.of.map((tick): Content => ({ unbreakable: isTickLow(tick, width), layout: BARE, table: { widths: [BOX + 4, '*'], body: [[tickBox(), { stack: [{ ...set(tick.text), fontSize: TEXT_SIZE + 1.5 }, ...(tick.notes ?? []).map((note): Content => ({ ...set(note), fontSize: TEXT_SIZE - 0.5, margin: [0, 1, 0, 0] }))] }]] } }));
    case 'totals':
      return [{ margin: [0, 0, 0, 6], unbreakable: true, layout: { ...BARE, paddingTop: () => 1, paddingBottom: () => 1, paddingLeft: () => 16, paddingRight: () => 0 }, table: { widths: ['*', 'auto'], body: block.of.map(({ head, text, isStrong = false }): TableCell[] => [{ ...set(head), alignment: 'right', bold: isStrong }, { ...set(text), alignment: 'right', bold: isStrong }]) } }];
    case 'drawing':
      return [{ unbreakable: true, margin: [0, 4, 0, 8], stack: [{ columns: [{ ...set(shortened(block.title, 60)), bold: true, noWrap: true, width: '*' }, { ...set(block.scale), width: 'auto', alignment: 'right', fontSize: SMALL + 0.5 }] }, { svg: block.svg, width: Math.min(block.width, width), height: block.height, margin: [0, 2, 0, 0] }] }];
    case 'rolls':
      return [setRolls(block, width)];
  }
}

function tableOf({ heading, columns, rows, rowHeight }: Extract<Block, { kind: 'table' }>, over: string | null): ContentTable {
  const across = (content: object): TableCell[] => [{ ...content, colSpan: columns.length } as TableCell, ...columns.slice(1).map(() => ({}))];
  const headings = [...(over === null ? [] : [across({ ...set(over), fontSize: HEADING, bold: true, margin: [0, 10, 0, 0] })]), ...(heading === undefined ? [] : [across({ ...set(heading), fontSize: TEXT_SIZE + 1, bold: true, margin: [0, 6, 0, 0] })])];
  const headed = headings.length;
  const isLow = rows.every((row) => row.every((cell, index) => isSurelyLow([textOf(cell)], columns[index]!.width ?? LEAST_WIDTH)));
  const head = columns.map((column): TableCell => ({ ...set(column.head), fontSize: SMALL, color: SOFT, alignment: alignmentOf(column) }));
  return {
    margin: [0, 0, 0, 10],
    table: {
      headerRows: headed + 1,
      keepWithHeaderRows: isLow ? 1 : 0,
      dontBreakRows: isLow,
      widths: columns.map(({ isWide, width }) => width ?? (isWide ? '*' : 'auto')),
      ...(rowHeight === undefined ? {} : { heights: (row: number) => (row <= headed ? 'auto' : rowHeight) as never }),
      body: [...headings, head, ...rows.map((row) => row.map((cell, index) => cellOf(cell, columns[index]!)))],
    },
    layout: {
      hLineWidth: (line, { table: { body } }) => (line <= headed ? 0 : line === headed + 1 || line === body.length ? RULE : HAIRLINE),
      vLineWidth: () => 0,
      hLineColor: (line) => (line === headed + 1 ? INK : SOFT),
      paddingLeft: (column) => (column === 0 ? 0 : 5),
      paddingRight: (column) => (column === columns.length - 1 ? 0 : 5),
      paddingTop: () => 2.5,
      paddingBottom: () => 2.5,
    },
  };
}

function textOf(cell: Cell): string {
  if (typeof cell === 'string') return cell;
  return typeof cell === 'object' && 'text' in cell ? cell.text : '';
}

function alignmentOf({ as }: Column): 'left' | 'right' | 'center' {
  return as === 'figure' ? 'right' : as === 'tick' ? 'center' : 'left';
}

function cellOf(cell: Cell, column: Column): TableCell {
  if (cell === TICK_BOX) return { ...(tickBox() as object), alignment: 'center' } as TableCell;
  if (typeof cell === 'object' && 'svg' in cell) return { ...cell };
  const { text, isStrong = false, isSmall = false } = typeof cell === 'string' ? { text: cell } : cell;
  return { ...set(text), alignment: alignmentOf(column), bold: isStrong, ...(isSmall ? { fontSize: SMALL } : {}) };
}
