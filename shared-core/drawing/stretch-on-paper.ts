import type { Axis } from '../setting-out/index.ts';
import type { LengthStyle } from '../units/index.ts';
import { say } from '../words/index.ts';
import { layOut } from './lay-out.ts';
import type { View } from './marks.ts';
import { type PaperBox, paperScales, scaleOnPaper, sizeOnPaper, UNITS_PER_POINT, viewOnPaper } from './paper-scale.ts';
import type { Drawing } from './shapes.ts';
import { spansAlong, type StretchPart } from './spans.ts';
import { sized, wallsNamed } from './words.ts';

/** A drawing with the view that has its scale. */
export interface DrawingOnPaper {
  readonly drawing: Drawing;
  readonly view: View;
  readonly scale: string;
}

export interface StretchToPart {
  readonly axis: Axis;
  readonly grid: StretchPart;
}

/** To within a part of a width that no drawing shows. */
const HALVINGS = 16;
/** So many of all numbers, at least, are to be shown. */
const MOST_NUMBERED = 0.9;

/**
 * A stretch in as few parts as have that width, alike as far as its corners let them; a wall that alone is wider is cut.
 *
 * Shapes: positions and widths in units on the stretch's axis; each part begins where the one before it ends.
 * Example: walls of 4 m, 3 m, 4 m, 3 m in parts of at most 8 m are two of 7 m; in parts of at most 3 m they are six, as
 * each wall of 4 m is cut in two of 2 m.
 */
export function partStretch({ axis, grid }: StretchToPart, most: number): readonly StretchPart[] {
  const pieces = spansAlong(axis, grid.from, grid.to).flatMap(({ from, to }): readonly StretchPart[] => {
    const count = Math.max(1, Math.ceil((to - from) / most));
    const cut = (index: number) => from + Math.round(((to - from) * index) / count);
    return Array.from({ length: count }, (_, index) => ({ from: cut(index), to: cut(index + 1) }));
  });
  const fewest = rowsOf(pieces, most).length;
  let [tooNarrow, enough] = [0, most];
  for (let step = 0; step < HALVINGS; step += 1) {
    const width = (tooNarrow + enough) / 2;
    if (rowsOf(pieces, width).length > fewest) tooNarrow = width;
    else enough = width;
  }
  const rows = rowsOf(pieces, enough);
  return rows.map((row, index) => ({ from: index === 0 ? grid.from : row[0]!.from, to: rows[index + 1]?.[0]!.from ?? grid.to }));
}

function rowsOf(pieces: readonly StretchPart[], most: number): readonly (readonly StretchPart[])[] {
  const rows: StretchPart[][] = [];
  for (const piece of pieces) {
    const row = rows.at(-1);
    if (row && piece.to - row[0]!.from <= most) row.push(piece);
    else rows.push([piece]);
  }
  return rows;
}

/**
 * A stretch unrolled on paper in rows of a few walls each, all to the largest scale at which they take no more than a
 * height, its strips have their numbers and no wall is cut; else to the smallest at which they have them.
 *
 * Shapes: box, `most` and the heights of text and of what stands over each row in points. `where` names the walls.
 * Example: on A4 walls of 4 m, 3 m, 4 m and 3 m, 2.4 m high, take two rows at 1 : 50.
 */
export function stretchOnPaper(
  draw: (part: StretchPart) => Drawing,
  stretch: StretchToPart,
  style: LengthStyle,
  { box, most, textHeight, over }: { readonly box: PaperBox; readonly most: number; readonly textHeight: number; readonly over: number },
): readonly (DrawingOnPaper & { readonly where: string })[] {
  const whole = draw(stretch.grid);
  const beside = (whole.margin.left + whole.margin.right) * textHeight;
  const ways = paperScales(style)
    .map((scale) => ({ ...scale, height: sizeOnPaper(whole, scale.times, textHeight).height + over }))
    .filter(({ height }) => height <= box.height)
    .map((scale) => ({
      ...scale,
      parts: partStretch(stretch, (box.width - beside) * UNITS_PER_POINT * scale.times),
      isReadable: isNumbered(whole, scale.times, textHeight),
    }));
  const readable = ways.filter(({ isReadable }) => isReadable);
  const way = readable.find(({ height, parts }) => parts.length * height <= most && !cutsWalls(stretch, parts)) ?? readable.at(-1) ?? ways[0];
  if (!way) return [{ drawing: whole, ...scaleOnPaper(whole, style, { width: box.width, height: box.height - over }, textHeight), where: wallsOf(stretch, stretch.grid, style) }];
  return way.parts.map((part) => {
    const drawing = draw(part);
    return { drawing, view: viewOnPaper(drawing, way.times, textHeight), scale: way.said, where: wallsOf(stretch, part, style) };
  });
}

/** Whether the rings have room, but for a few where slivers stand side by side. */
function isNumbered(drawing: Drawing, times: number, textHeight: number): boolean {
  const count = drawing.shapes.filter(({ kind }) => kind === 'ring').length;
  return layOut(drawing, viewOnPaper(drawing, times, textHeight)).filter(({ kind }) => kind === 'ring').length >= count * MOST_NUMBERED;
}

function cutsWalls({ axis, grid }: StretchToPart, parts: readonly StretchPart[]): boolean {
  const starts = new Set(spansAlong(axis, grid.from, grid.to).map(({ from }) => from));
  return parts.slice(1).some(({ from }) => !starts.has(from));
}

/** `walls A and B`, `wall A from 6 m to 12 m`. */
function wallsOf({ axis }: StretchToPart, part: StretchPart, style: LengthStyle): string {
  const spans = spansAlong(axis, part.from, part.to);
  const [only] = spans;
  if (only && spans.length === 1 && only.to - only.from < only.wall.length) return say`wall ${only.wall.id} from ${sized(only.from - only.shift, style)} to ${sized(only.to - only.shift, style)}`;
  return wallsNamed([...new Set(spans.map(({ wall }) => wall.id))]);
}
