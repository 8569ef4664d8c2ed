import type { HungBand } from '../house/index.ts';
import type { AxisPart } from './axis.ts';
import { aboveFloor, bottomOf, type EdgeRange, edgeOver, interrupts, topOf } from './heights.ts';
import type { StretchOpening } from './stretch.ts';
import { say } from '../words/index.ts';

/** What one piece of a strip covers, without trims. */
export interface Cover extends EdgeRange {
  readonly part: 'full' | 'above' | 'between' | 'below' | 'side' | 'patch';
  /** How far it goes on round its upper and its lower edge, into the reveal of the opening there. */
  readonly over: number;
  readonly under: number;
  /** How wide it is where it is not as wide as its strip. */
  readonly width: number | null;
  /** What tells it from others of its strip: the opening, and which side of it. */
  readonly of: string;
}

/**
 * What the pieces of a strip cover: all its height, or what openings that take its whole width leave of it; then the
 * covered reveals that belong to it.
 *
 * Shapes: parts of the axis in, heights above the room's level datum out, in units. Openings side by side, and those on
 * walls that run straight on, count as one. A strip that goes round another corner is never cut.
 * A piece over an opening whose head is covered is longer by the reveal's depth, one under it likewise at a covered sill.
 * At a side, the strip that reaches past the opening's edge turns in where what reaches past is as wide as the reveal is
 * deep, and leaves a gap at a covered head or sill, which takes a patch; else the side takes a piece of its own.
 * Source: common practice, no source. Example: a window 46 in high, 6 in deep, head and sides covered: over a strip of
 * 20 in inside it, 20 in of wall and 6 in of head; a side that the strip reaches by 3 in takes a piece of 46 in.
 */
export function coversOf(parts: readonly AxisPart[], band: HungBand): readonly Cover[] {
  return [...coversOfWall(parts, band), ...parts.flatMap((part) => coversOfReveals(part, band))];
}

function coversOfWall(parts: readonly AxisPart[], band: HungBand): readonly Cover[] {
  const highest = Math.max(...parts.map((part) => rangeOver(part, topOf(band, part.wall)).highest));
  const lowest = Math.min(...parts.map((part) => rangeOver(part, bottomOf(band, part.wall)).lowest));
  const isFlat = parts.slice(0, -1).every(({ wall }) => wall.cornerRight === 'straight');
  const holes = isFlat ? holesAcross(parts) : [];
  const left = holes.reduce<readonly EdgeRange[]>(
    (kept, hole) => kept.flatMap((range) => [{ lowest: Math.max(range.lowest, hole.highest), highest: range.highest }, { lowest: range.lowest, highest: Math.min(range.highest, hole.lowest) }].filter((part) => part.highest > part.lowest)),
    [{ lowest, highest }],
  );
  const none = { over: 0, under: 0, width: null, of: '' };
  if (left.length === 1 && left[0]!.lowest === lowest && left[0]!.highest === highest) return [{ part: 'full', lowest, highest, ...none }];
  return left.map((range, index) => ({
    ...none,
    ...range,
    part: range.highest === highest ? 'above' : range.lowest === lowest ? 'below' : 'between',
    of: left.length > 3 && index > 0 && index < left.length - 1 ? String(index) : '',
    over: Math.max(0, ...holes.filter((hole) => hole.lowest === range.highest).map(({ sill }) => sill)),
    under: Math.max(0, ...holes.filter((hole) => hole.highest === range.lowest).map(({ head }) => head)),
  }));
}

function rangeOver({ wall, from, to, shift }: AxisPart, edge: ReturnType<typeof topOf>): EdgeRange {
  return edgeOver(edge, wall.length, from - shift, to - shift);
}

interface Hole extends EdgeRange {
  /** How deep its covered head and sill go; 0 where they are not covered. */
  readonly head: number;
  readonly sill: number;
}

/** Heights at which openings, one or several side by side, take a strip's whole width; the highest first. */
function holesAcross(parts: readonly AxisPart[]): readonly Hole[] {
  const open = parts.flatMap((part) =>
    part.wall.openings
      .filter(({ from, to }) => part.shift + from < part.to && part.shift + to > part.from)
      .map((opening) => ({
        from: part.shift + opening.from,
        to: part.shift + opening.to,
        lowest: rangeOver(part, aboveFloor(part.wall, opening.sill)).highest,
        highest: rangeOver(part, aboveFloor(part.wall, opening.head)).lowest,
        reveal: opening.reveal,
      })),
  );
  const [start, end] = [parts[0]!.from, parts.at(-1)!.to];
  const heights = [...new Set(open.flatMap(({ lowest, highest }) => [lowest, highest]))].sort((one, other) => other - one);
  return heights.slice(1).flatMap((lowest, index) => {
    const highest = heights[index]!;
    const across = open.filter((opening) => opening.lowest <= lowest && opening.highest >= highest).sort((one, other) => one.from - other.from);
    const reached = across.reduce((far, { from, to }) => (from <= far ? Math.max(far, to) : far), start);
    if (reached < end) return [];
    const deepest = (side: 'head' | 'sill', height: 'highest' | 'lowest', at: number) => Math.max(0, ...across.map((opening) => (opening.reveal?.[side] && opening[height] === at ? opening.reveal.depth : 0)));
    return [{ lowest, highest, head: deepest('head', 'highest', highest), sill: deepest('sill', 'lowest', lowest) }];
  });
}

/** The sides of covered reveals for which this part of a strip is the one beside them. */
function coversOfReveals(part: AxisPart, band: HungBand): readonly Cover[] {
  const { wall } = part;
  return wall.openings.flatMap((opening) => {
    const { reveal } = opening;
    if (!reveal || !interrupts(opening, band, wall)) return [];
    const [left, right] = [part.shift + opening.from, part.shift + opening.to];
    const has = {
      left: reveal.left && ((part.from < left && left <= part.to) || (opening.from === 0 && part.from === left)),
      right: reveal.right && ((part.from <= right && right < part.to) || (opening.to === wall.length && part.to === right)),
    };
    const reach = Math.max(0, Math.min(part.to, right) - Math.max(part.from, left));
    const sides = (['left', 'right'] as const).filter((side) => has[side]);
    if (sides.length === 0) return [];
    if (reach >= reveal.depth * sides.length) return patchesOf(part, opening, band, reach);
    return sides.map((side): Cover => ({ part: 'side', ...sideRange(part, opening, side, band), over: 0, under: 0, width: reveal.depth, of: side === 'left' ? say`${opening.id} left` : say`${opening.id} right` }));
  });
}

function sideRange({ wall }: AxisPart, opening: StretchOpening, side: 'left' | 'right', band: HungBand): EdgeRange {
  const at = side === 'left' ? opening.from : opening.to;
  const over = (edge: ReturnType<typeof topOf>) => edgeOver(edge, wall.length, at, at);
  return {
    highest: Math.min(over(aboveFloor(wall, opening.head)).highest, over(topOf(band, wall)).highest),
    lowest: Math.max(over(aboveFloor(wall, opening.sill)).lowest, over(bottomOf(band, wall)).lowest),
  };
}

/** What a strip that turns in leaves bare of a covered head and sill. */
function patchesOf(part: AxisPart, opening: StretchOpening, band: HungBand, reach: number): readonly Cover[] {
  const { reveal, head, sill } = opening;
  const { wall } = part;
  if (!reveal) return [];
  const [headRange, sillRange] = [rangeOver(part, aboveFloor(wall, head)), rangeOver(part, aboveFloor(wall, sill))];
  const isWallOver = headRange.highest < rangeOver(part, topOf(band, wall)).highest;
  const isWallUnder = sillRange.lowest > rangeOver(part, bottomOf(band, wall)).lowest;
  const patch = (of: string, lowest: number, over: number, under: number): Cover => ({ part: 'patch', lowest, highest: lowest, over, under, width: reach, of });
  return [
    ...(reveal.head && isWallOver ? [patch(say`${opening.id} head`, headRange.highest, 0, reveal.depth)] : []),
    ...(reveal.sill && isWallUnder ? [patch(say`${opening.id} sill`, sillRange.lowest, reveal.depth, 0)] : []),
  ];
}
