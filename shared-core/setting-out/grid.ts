import { present } from '../base/index.ts';
import { floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, onAxis } from './axis.ts';
import type { ChosenLayout, WallPlace } from './chosen-layout.ts';

/** How the strips of a stretch are placed: a grid of seams, and the part of the axis that is hung. */
export interface Grid {
  /** Where strip 0's left edge stands. */
  readonly origin: number;
  /** Where the first line is struck: at strip 0's left edge, middle or right edge. */
  readonly struck: number;
  /** The part of the axis that the strips cover; its ends are the kill point or the ends of an open stretch. */
  readonly from: number;
  readonly to: number;
  /** Which end is lapped over the other one in an inside corner, and so cut one wrap wider. */
  readonly lappedEnd: 'left' | 'right' | null;
  /** How much wider: the wrap of that corner. */
  readonly lap: number;
  readonly direction: ChosenLayout['direction'];
}

/** The first inside corner, where a line is struck unless the user says otherwise; an open stretch begins at its left end. */
export function firstStart(axis: Axis): WallPlace {
  if (!axis.isClosed) return { wall: present(axis.walls[0], 'a wall').wall.id, at: lengthOf(0) };
  const afterCorner = axis.walls.find((_, index) => axis.walls.at(index - 1)!.wall.cornerRight === 'inside');
  return { wall: (afterCorner ?? present(axis.walls[0], 'a wall')).wall.id, at: lengthOf(0) };
}

/**
 * Places the grid of seams by the layout chosen, or from the first inside corner to the right.
 *
 * Shapes: positions on the expanded axis, in units; `to - from` is what is hung, and strip 0 is hung beside the line struck.
 * A kill point named 'start' is the seam where the last strip meets strip 0: its left edge when hanging to the right,
 * its right edge when hanging to the left. Where the ends meet in an inside corner the wrap there is not passed.
 */
export function placeGrid(axis: Axis, laidWidth: Length, layout: ChosenLayout | undefined): Grid {
  const isHere = layout !== undefined && axis.walls.some(({ wall }) => wall.id === layout.start.wall);
  const direction = isHere ? layout.direction : 'right';
  const start = isHere ? layout.start : firstStart(axis);
  const edge = (isHere ? layout.edge : undefined) ?? (!axis.isClosed && isAtRightEnd(axis, start) ? 'right' : 'left');
  const struck = onAxis(axis, start);
  const origin = struck - edgeShift(edge, laidWidth);
  if (!axis.isClosed) return { origin, struck, from: 0, to: axis.length, lappedEnd: null, lap: 0, direction };

  const kill = isHere && layout.kill !== 'start' ? onAxis(axis, layout.kill) : null;
  const met = kill ?? (direction === 'left' ? origin + laidWidth : origin);
  const corner = insideCornerAt(axis, met);
  const lap = corner ? corner.to - corner.from : 0;
  const [after, passed] = [corner ? corner.to : met, axis.length - lap];
  const from = kill === null ? (direction === 'left' ? (corner ? corner.from : met) - passed : after) : nearestBefore(after, hungBeside(axis, struck, edge), axis.length);
  return { origin, struck, from, to: from + passed, lappedEnd: corner ? (direction === 'left' ? 'left' : 'right') : null, lap, direction };
}

function isAtRightEnd(axis: Axis, place: WallPlace): boolean {
  const last = present(axis.walls.at(-1), 'a wall').wall;
  return place.wall === last.id && place.at === last.length;
}

/** How far strip 0's left edge stands left of a line struck at one of its edges or its middle. */
export function edgeShift(edge: 'left' | 'centre' | 'right', laidWidth: Length): number {
  if (edge === 'left') return 0;
  return edge === 'right' ? laidWidth : floorDivide(laidWidth, 2);
}

/** A place that strip 0 covers beside the line struck; a line struck in a corner's wrap is hung from the corner's end. */
export function hungBeside(axis: Axis, struck: number, edge: 'left' | 'centre' | 'right'): number {
  if (!axis.isClosed) return struck;
  const corner = insideCornerAt(axis, struck);
  return edge === 'right' ? (corner?.from ?? struck) - 1 : (corner?.to ?? struck);
}

/** The turn of a closed axis in which `position` lies at or before `place`. */
function nearestBefore(position: number, place: number, period: number): number {
  return position + floorDivide(place - position, period) * period;
}

/** The inside corner at which a position stands, wherever in its wrap; null on a wall or at another corner. */
function insideCornerAt(axis: Axis, position: number): { readonly from: number; readonly to: number } | null {
  const u = modulo(position, axis.length);
  const turn = position - u;
  for (const { wall, to, wrap } of axis.walls) {
    if (wall.cornerRight !== 'inside') continue;
    const end = to + wrap;
    if (u >= to && u <= end) return { from: turn + to, to: turn + end };
    if (end === axis.length && u === 0) return { from: turn - wrap, to: turn };
  }
  return null;
}
