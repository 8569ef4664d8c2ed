import type { Border, HungBand, Rules } from '../house/index.ts';
import { ceilDivide, floorDivide, inches, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, cornersWithin, layAxis, onWall, unroll } from './axis.ts';
import { chosenLayout, type WallPlace } from './chosen-layout.ts';
import { type Grid, placeGrid } from './grid.ts';
import { edgeOver, swallows, topOf } from './heights.ts';
import type { Piece } from './cut-strips.ts';
import type { Mismatch } from './strips.ts';
import type { Stretch } from './stretch.ts';

/** One length of border, from inside corner to inside corner or to the side of an opening. */
export interface BorderLength {
  readonly number: number;
  /** On the axis of the border, which adds no wraps. */
  readonly from: number;
  readonly to: number;
  readonly pieces: readonly Piece[];
  /** Whether it takes a second pair of hands. */
  readonly needsTwo: boolean;
}

/** Light pencil marks on a wall, hidden under the border once it hangs. */
export interface PencilMarks {
  readonly wall: string;
  /** Above the wall's floor line. */
  readonly height: Length;
  readonly count: number;
}

export interface BorderLayout {
  readonly axis: Axis;
  readonly grid: Grid;
  readonly start: WallPlace;
  readonly kill: WallPlace | null;
  readonly mismatch: Mismatch | null;
  readonly lengths: readonly BorderLength[];
  /** None where the border follows the ceiling. */
  readonly marks: readonly PencilMarks[];
}

/** More than this is hung by two people. Source: common practice, no source. */
const LONGEST_FOR_ONE = inches(144);
/** Marks stand about this far apart. Source: common practice, no source. */
const MARK_SPACING = inches(24);

/**
 * Sets out a border on one stretch: a length for each wall from inside corner to inside corner, with its phases.
 *
 * Shapes: lengths in units. Outside corners are wrapped; wraps add nothing to the pattern's run. A length is the wall
 * and the house's border allowance at each end. What a spool surely gives is its length, less a repeat where spools
 * may begin anywhere and less the phase where they begin at the repeat; a longer length is joined, each joint lapped by
 * two allowances for the match.
 * Below the ceiling, pencil marks stand half the border's width under its top edge, about 2 ft apart, so that it hides
 * them. Source: common practice, no source. Example: walls of 12' 4" and 10' 2" take lengths of 12' 6" and 10' 4"; with
 * a repeat of 20 1/2 in they begin 19 1/2 in and 3 1/2 in into the pattern.
 */
export function setOutBorder(stretch: Stretch, band: HungBand, covering: Border, rules: Rules): BorderLayout {
  const axis = layAxis(stretch, () => 0);
  const grid = placeGrid(axis, lengthOf(0), chosenLayout(band));
  const repeat = covering.repeat.length;
  const allowance = rules.borderAllowance.length;
  const phaseAt = (position: number): Length =>
    lengthOf(repeat === 0 ? 0 : modulo(band.position.length + position - grid.origin, repeat));
  // A spool that begins at its repeat gives a piece only from the piece's own phase on.
  const surelyGiven = (position: number) => covering.rollLength.length - (covering.rollStart === 'anywhere' ? repeat : phaseAt(position));

  const counts = new Map<string, number>();
  const lengths = runsOf(axis, grid, band).map(([from, to], number): BorderLength => {
    const { wall } = onWall(axis, from);
    const count = (counts.get(wall) ?? 0) + 1;
    counts.set(wall, count);
    const spans = joinedSpans(from - allowance, to + allowance, surelyGiven, { lap: 2 * allowance, least: 3 * allowance + rules.sliver.length });
    const top = lengthOf(Math.max(...unroll(axis, from, to).map((part) => edgeOver(topOf(band, part.wall), part.wall.length, part.from - part.shift, part.to - part.shift).highest)));
    return {
      number,
      from,
      to,
      pieces: spans.map((span, index) => ({
        label: spans.length === 1 ? `${wall}${count}` : `${wall}${count} joint ${index + 1}`,
        strip: number,
        part: spans.length === 1 ? 'length' : 'joined',
        length: lengthOf(span.to - span.from),
        phase: phaseAt(span.from),
        top,
        bottom: lengthOf(top - covering.width.length),
      })),
      needsTwo: to - from > LONGEST_FOR_ONE,
    };
  });
  return {
    axis,
    grid,
    start: onWall(axis, grid.struck),
    kill: axis.isClosed ? onWall(axis, grid.from) : null,
    mismatch: axis.isClosed ? mismatchOf(grid.to - grid.from, repeat) : null,
    lengths,
    marks: pencilMarks(stretch, band, covering),
  };
}

function pencilMarks(stretch: Stretch, band: HungBand, covering: Border): readonly PencilMarks[] {
  const { to } = band;
  if (to === 'ceiling') return [];
  return stretch.walls
    .filter(({ height }) => to.length < Math.min(height.left, height.right))
    .map((wall) => ({ wall: wall.id, height: lengthOf(to.length - floorDivide(covering.width.length, 2)), count: ceilDivide(wall.length, MARK_SPACING) + 1 }));
}

/** Where the border hangs: what is between openings that swallow it, cut at the inside corners. */
function runsOf(axis: Axis, grid: Grid, band: HungBand): readonly (readonly [number, number])[] {
  const cuts = cornersWithin(axis, grid.from, grid.to).filter(({ kind }) => kind === 'inside').map(({ from }) => from);
  const gaps = unroll(axis, grid.from, grid.to).flatMap((part) =>
    part.wall.openings
      .filter((opening) => swallows(opening, band, part.wall))
      .map((opening) => [Math.max(part.from, part.shift + opening.from), Math.min(part.to, part.shift + opening.to)] as const)
      .filter(([from, to]) => from < to),
  );
  const edges = [grid.from, ...cuts, ...gaps.flat(), grid.to].sort((one, other) => one - other);
  const runs: (readonly [number, number])[] = [];
  edges.slice(1).forEach((to, index) => {
    const from = edges[index]!;
    if (from === to || gaps.some(([left, right]) => left <= from && to <= right)) return;
    const before = runs.at(-1);
    const continues = before && before[1] === from && !cuts.includes(from) && !gaps.flat().includes(from);
    if (continues) runs[runs.length - 1] = [before[0], to];
    else runs.push([from, to]);
  });
  return runs;
}

interface Joint {
  readonly lap: number;
  /** The shortest piece worth a joint: its allowance, its lap and more of the wall than a sliver. */
  readonly least: number;
}

/** Spans no longer than a spool surely gives, each lapping the one before it; no joint leaves a sliver at the end. */
function joinedSpans(from: number, to: number, surelyGiven: (from: number) => number, joint: Joint): readonly { readonly from: number; readonly to: number }[] {
  const spans = [];
  let start = from;
  for (let longest = surelyGiven(start); to - start > longest && longest > joint.lap + joint.least; longest = surelyGiven(start)) {
    const end = Math.min(start + longest, Math.max(to - joint.least + joint.lap, start + joint.least));
    spans.push({ from: start, to: end });
    start = end - joint.lap;
  }
  return [...spans, { from: start, to }];
}

function mismatchOf(run: number, repeat: number): Mismatch {
  if (repeat === 0) return { amount: lengthOf(0), side: 'none', vertical: lengthOf(0) };
  const over = modulo(run, repeat);
  const amount = lengthOf(Math.min(over, repeat - over));
  return { amount, side: amount === 0 ? 'none' : over <= repeat - over ? 'over' : 'short', vertical: lengthOf(0) };
}
