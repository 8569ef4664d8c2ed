import type { Border, HungBand, Rules } from '../house/index.ts';
import { ceilDivide, floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, cornersWithin, layAxis, onWall, unroll } from './axis.ts';
import { type ChosenLayout, chosenLayout, type WallPlace } from './chosen-layout.ts';
import { type Grid, placeGrid } from './grid.ts';
import { bandOn, edgeOver, swallows, topOf } from './heights.ts';
import type { Piece } from './cut-strips.ts';
import { type Mismatch, missBy } from './mismatch.ts';
import type { Stretch, StretchWall } from './stretch.ts';
import { say } from '../words/index.ts';

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
  /** What they are measured from: up from the floor line, or down from a ceiling that the border follows. */
  readonly from: 'floor' | 'ceiling';
  readonly distance: Length;
  /** Where they stand on the wall, from its left end; none where nothing hangs. */
  readonly at: readonly Length[];
}

/** How much of a wall shows at most between a level border and the ceiling over it. */
export interface Taper {
  readonly wall: string;
  readonly most: Length;
}

export interface BorderLayout {
  readonly axis: Axis;
  readonly grid: Grid;
  readonly start: WallPlace;
  /** Null in an open stretch, and where the ends come to the sides of an opening and never meet. */
  readonly kill: WallPlace | null;
  readonly mismatch: Mismatch | null;
  readonly lengths: readonly BorderLength[];
  readonly marks: readonly PencilMarks[];
  /** Of a border hung level at the ceiling: where its upper edge runs, above the room's level datum. */
  readonly levelTop: Length | null;
  readonly tapers: readonly Taper[];
}

/**
 * Sets out a border on one stretch: a length for each wall from inside corner to inside corner, with its phases.
 *
 * Shapes: lengths in units. Outside corners are wrapped; wraps add nothing to the pattern's run. A length is the wall
 * and the house's border allowance at each end. What a spool surely gives is its length, less a repeat where spools
 * may begin anywhere and less the phase where they begin at the repeat; a longer length is joined, each joint lapped by
 * two allowances for the match. Where an opening holds the border's whole height it stops at the opening's sides; a
 * closed run that nobody began elsewhere begins there, so that its ends never meet.
 * At the ceiling a border follows it, or runs level from its lowest place, with what then shows over it as a taper.
 * Pencil marks stand half the border's width under its top edge, about 2 ft apart, so that it hides them.
 * Source: common practice, no source. Example: walls of 12' 4" and 10' 2" take lengths of 12' 6" and 10' 4"; with
 * a repeat of 20 1/2 in they begin 19 1/2 in and 3 1/2 in into the pattern.
 */
export function setOutBorder(stretch: Stretch, band: HungBand, covering: Border, rules: Rules): BorderLayout {
  const axis = layAxis(stretch, () => 0);
  const layout = chosenLayout(band);
  const isChosen = layout !== undefined && stretch.walls.some(({ id }) => id === layout.start.wall);
  const grid = placeGrid(axis, lengthOf(0), isChosen ? layout : startAtFrame(stretch, band));
  const gaps = gapsIn(axis, grid, band);
  const endsMeet = axis.isClosed && !gaps.some(([from, to]) => from === grid.from || to === grid.to);
  const repeat = covering.repeat.length;
  const allowance = rules.borderAllowance.length;
  const levelTop = band.level && band.to === 'ceiling' ? lowestCeiling(stretch) : null;
  const phaseAt = (position: number): Length => lengthOf(repeat === 0 ? 0 : modulo(band.position.length + position - grid.origin, repeat));
  // A spool that begins at its repeat gives a piece only from the piece's own phase on.
  const surelyGiven = (position: number) => covering.rollLength.length - (covering.rollStart === 'anywhere' ? repeat : phaseAt(position));

  const counts = new Map<string, number>();
  const lengths = runsOf(axis, grid, gaps).map(([from, to], number): BorderLength => {
    const { wall } = onWall(axis, from);
    const count = (counts.get(wall) ?? 0) + 1;
    counts.set(wall, count);
    const name = `${wall}${count}`;
    const spans = joinedSpans(from - allowance, to + allowance, surelyGiven, { lap: 2 * allowance, least: 3 * allowance + rules.sliver.length });
    const top = levelTop ?? lengthOf(Math.max(...unroll(axis, from, to).map((part) => edgeOver(topOf(band, part.wall), part.wall.length, part.from - part.shift, part.to - part.shift).highest)));
    return {
      number,
      from,
      to,
      pieces: spans.map((span, index) => ({
        label: spans.length === 1 ? name : say`${name} joint ${index + 1}`,
        strip: number,
        part: spans.length === 1 ? 'length' : 'joined',
        length: lengthOf(span.to - span.from),
        phase: phaseAt(span.from),
        top,
        bottom: lengthOf(top - covering.width.length),
        upperEdge: top,
      })),
      needsTwo: to - from > rules.onePersonLength.length,
    };
  });
  return {
    axis,
    grid,
    start: onWall(axis, grid.struck),
    kill: endsMeet ? onWall(axis, grid.from) : null,
    mismatch: endsMeet ? { ...missBy(grid.to - grid.from, repeat), vertical: lengthOf(0) } : null,
    lengths,
    marks: stretch.walls.flatMap((wall) => pencilMarks(wall, placesOfMarks(axis, lengths, wall, rules.markSpacing.length), band, covering, levelTop)),
    levelTop,
    tapers: levelTop === null ? [] : stretch.walls.flatMap((wall) => taperOn(wall, levelTop)),
  };
}

function startAtFrame({ walls, isClosed }: Stretch, band: HungBand): ChosenLayout | undefined {
  if (!isClosed) return undefined;
  const frames = walls.flatMap((wall) => wall.openings.filter((opening) => swallows(opening, band, wall)).map(({ to, isEntrance }) => ({ wall: wall.id, at: to, isEntrance })));
  const frame = frames.find(({ isEntrance }) => isEntrance) ?? frames[0];
  return frame && { start: { wall: frame.wall, at: frame.at }, edge: 'left', direction: 'right', kill: 'start' };
}

const ceilingOf = (wall: StretchWall) => ({ left: wall.base.left + wall.height.left, right: wall.base.right + wall.height.right });

function lowestCeiling({ walls }: Stretch): Length {
  return lengthOf(Math.min(...walls.flatMap((wall) => Object.values(ceilingOf(wall)))));
}

function taperOn(wall: StretchWall, levelTop: Length): readonly Taper[] {
  const { left, right } = ceilingOf(wall);
  const most = lengthOf(Math.max(left, right) - levelTop);
  return most > 0 ? [{ wall: wall.id, most }] : [];
}

function pencilMarks(wall: StretchWall, at: readonly Length[], band: HungBand, { width }: Border, levelTop: Length | null): readonly PencilMarks[] {
  if (at.length === 0) return [];
  const under = floorDivide(width.length, 2);
  if (levelTop !== null) return [{ wall: wall.id, from: 'floor', distance: lengthOf(levelTop - under - Math.min(wall.base.left, wall.base.right)), at }];
  const { top } = bandOn(band, wall);
  return top >= Math.min(wall.height.left, wall.height.right) ? [{ wall: wall.id, from: 'ceiling', distance: lengthOf(under), at }] : [{ wall: wall.id, from: 'floor', distance: lengthOf(top - under), at }];
}

/** Evenly over what hangs on a wall, both ends of each part of it included, no further apart than the rule says. */
function placesOfMarks(axis: Axis, lengths: readonly BorderLength[], wall: StretchWall, spacing: number): readonly Length[] {
  const parts = lengths.flatMap(({ from, to }) => unroll(axis, from, to)).filter((part) => part.wall === wall);
  return parts
    .toSorted((one, other) => one.from - one.shift - (other.from - other.shift))
    .flatMap(({ from, to, shift }) => {
      const spaces = ceilDivide(to - from, spacing);
      return Array.from({ length: spaces + 1 }, (_, index) => lengthOf(from - shift + floorDivide((to - from) * index, spaces)));
    });
}

/** What openings that hold the border's whole height take of the run. */
function gapsIn(axis: Axis, grid: Grid, band: HungBand): readonly (readonly [number, number])[] {
  return unroll(axis, grid.from, grid.to).flatMap((part) =>
    part.wall.openings
      .filter((opening) => swallows(opening, band, part.wall))
      .map((opening) => [Math.max(part.from, part.shift + opening.from), Math.min(part.to, part.shift + opening.to)] as const)
      .filter(([from, to]) => from < to),
  );
}

/** Where the border hangs: what is between the gaps, cut at the inside corners. */
function runsOf(axis: Axis, grid: Grid, gaps: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const cuts = cornersWithin(axis, grid.from, grid.to).filter(({ kind }) => kind === 'inside').map(({ from }) => from);
  const edges = [...new Set([grid.from, ...cuts, ...gaps.flat(), grid.to])].sort((one, other) => one - other);
  return edges
    .slice(1)
    .map((to, index) => [edges[index]!, to] as const)
    .filter(([from, to]) => !gaps.some(([left, right]) => left <= from && to <= right));
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
