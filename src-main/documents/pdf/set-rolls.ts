import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { spell } from './fonts.ts';
import { HEADING, INK, set, SMALL, SOFT, TEXT_SIZE, tickBox } from './set-text.ts';
import type { Block, RollOnPaper } from './sheet.ts';
import { svgOf, svgPath, svgText } from './svg.ts';

const NUMBER_WIDTH = 34;
const TICK_WIDTH = 20;
const GAP = 8;
const TAPE_HEIGHT = 15;
/** Of a figure on a tape, against its height. */
const FIGURE_WIDTH = 0.66;

/** Cuts that are kept on one page, and letters of where one goes: so many of such take less than a page. */
const MOST_CUTS = 12;
const MOST_LETTERS = 90;

/** Rolls as somebody cuts them, each with its tape to scale and its cuts in order; no roll of a dozen cuts or fewer runs over to the next page. */
export function setRolls({ heading, note, rolls, heads }: Extract<Block, { kind: 'rolls' }>, width: number): Content {
  const inner = width - NUMBER_WIDTH - GAP;
  const widths = [TICK_WIDTH, 52, '*', 66, 66, 72] as const;
  const cell = (text: string, isFigure = false, isSoft = false): TableCell => ({ ...set(text), alignment: isFigure ? 'right' : 'left', ...(isSoft ? { color: SOFT, fontSize: SMALL } : {}) });
  const table = (body: TableCell[][]): Content => ({
    layout: { hLineWidth: () => 0, vLineWidth: () => 0, paddingLeft: (column) => (column === 0 ? 0 : 4), paddingRight: () => 4, paddingTop: () => 1.2, paddingBottom: () => 1.2 },
    table: { widths: [...widths], body },
  });
  const isLow = rolls.every(({ cuts }) => cuts.every(({ goesTo }) => goesTo.length <= MOST_LETTERS));
  const rows = rolls.flatMap((roll) => partsOf(roll)).map(({ roll, cuts, isFirst, isLast }): TableCell[] => [
    isFirst ? { ...set(String(roll.number)), bold: true, fontSize: HEADING, alignment: 'right' } : { ...set(`(${roll.number})`), alignment: 'right', color: SOFT },
    {
      stack: [
        ...(isFirst ? [{ svg: tapeOf(roll, inner), width: inner, height: TAPE_HEIGHT }] : []),
        table([
          ...cuts.map((cut): TableCell[] => [cut.isOther ? '' : (tickBox() as TableCell), { ...set(cut.label), bold: !cut.isOther, ...(cut.isOther ? { color: SOFT } : {}) }, cell(cut.goesTo, false, cut.isOther), cell(cut.length, true, cut.isOther), cell(cut.at, true, cut.isOther), cell(cut.top, true, cut.isOther)]),
          ...(isLast ? [[{ ...set(roll.left), colSpan: widths.length, color: SOFT, fontSize: SMALL, margin: [TICK_WIDTH + GAP, 0, 0, 0] } as TableCell, '', '', '', '', '']] : []),
        ]),
      ],
    },
  ]);
  const head: TableCell[] = [{ ...set(heads.roll), fontSize: SMALL, color: SOFT, alignment: 'right' }, table([['', ...[heads.piece, heads.goesTo, heads.length, heads.at, heads.top].map((text, index): TableCell => ({ ...set(text), fontSize: SMALL, color: SOFT, alignment: index >= 2 ? 'right' : 'left' }))]]) as TableCell];
  return {
    margin: [0, 0, 0, 10],
    table: {
      headerRows: 2,
      keepWithHeaderRows: isLow ? 1 : 0,
      dontBreakRows: isLow,
      widths: [NUMBER_WIDTH, inner],
      body: [[{ stack: [{ ...set(heading), fontSize: TEXT_SIZE + 1.5, bold: true, margin: [0, 6, 0, 0] }, { ...set(note), fontSize: SMALL, margin: [0, 2, 0, 2] }], colSpan: 2 }, {}], head, ...rows],
    },
    layout: { hLineWidth: (line, { table: { body } }) => (line < 2 ? 0 : line === 2 || line === body.length ? 1 : 0.5), vLineWidth: () => 0, hLineColor: (line) => (line === 2 ? INK : SOFT), paddingLeft: () => 0, paddingRight: (column) => (column === 0 ? GAP : 0), paddingTop: () => 4, paddingBottom: () => 4 },
  };
}

/** A roll in parts that are each surely lower than a page. */
function partsOf(roll: RollOnPaper): readonly { readonly roll: RollOnPaper; readonly cuts: RollOnPaper['cuts']; readonly isFirst: boolean; readonly isLast: boolean }[] {
  const count = Math.max(1, Math.ceil(roll.cuts.length / MOST_CUTS));
  return Array.from({ length: count }, (_, part) => ({ roll, cuts: roll.cuts.slice(part * MOST_CUTS, (part + 1) * MOST_CUTS), isFirst: part === 0, isLast: part === count - 1 }));
}

/** The roll as a tape from its start to its end: what is cut, what of it goes to other rooms grey, what is left dashed. */
function tapeOf({ cuts, rollLength }: RollOnPaper, width: number): string {
  const at = (length: number) => Math.round((length / rollLength) * (width - 1) * 100) / 100 + 0.5;
  const [top, bottom] = [0.5, TAPE_HEIGHT - 3.5];
  const size = bottom - top - 3;
  const pieces = cuts.flatMap(({ tapeLabel, from, to, isOther, isOffcut }) => {
    const [left, right] = [at(from), at(to)];
    const notch = isOffcut ? Math.min(5, right - left) : 0;
    const outline = svgPath(`M${left + notch} ${top}L${right} ${top}L${right} ${bottom}L${left} ${bottom}L${left} ${top + notch}Z`, { fill: isOther ? '#e4e4e4' : '#ffffff', stroke: INK, width: 0.8 });
    const fits = tapeLabel.length * size * FIGURE_WIDTH < right - left - 2;
    return fits ? [outline, svgText(spell(tapeLabel), { x: (left + right) / 2, y: bottom - 2.6, size, anchor: 'middle' })] : [outline];
  });
  const end = at(Math.max(0, ...cuts.map(({ to }) => to)));
  const middle = (top + bottom) / 2;
  return svgOf(width, TAPE_HEIGHT, [svgPath(`M${at(0)} ${top}L${at(rollLength)} ${top}L${at(rollLength)} ${bottom}L${at(0)} ${bottom}Z`, { stroke: INK, width: 0.5 }), svgPath(`M${end} ${middle}L${at(rollLength)} ${middle}`, { stroke: INK, width: 0.5, dash: '2 2' }), ...pieces]);
}
