import { heightsOf, type HungBand } from '../house/index.ts';
import { ceilDivide, floorDivide, lengthOf } from '../units/index.ts';
import type { Ends, StretchOpening, StretchWall } from './stretch.ts';

/** Highest and lowest of an edge over a part of a wall, above the room's level datum, rounded outwards to the unit. */
export interface EdgeRange {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * The height of a straight edge over part of its wall.
 *
 * Example: an edge from 8 ft at the left to 10 ft at the right of a wall 10 ft long reaches 9 ft over its first half.
 */
export function edgeOver(ends: Ends, wallLength: number, from: number, to: number): EdgeRange {
  const rise = ends.right - ends.left;
  const [start, end] = rise >= 0 ? [from, to] : [to, from];
  return {
    lowest: ends.left + floorDivide(rise * start, wallLength),
    highest: ends.left + ceilDivide(rise * end, wallLength),
  };
}

function sum(one: Ends, other: Ends | number): Ends {
  const { left, right } = typeof other === 'number' ? { left: other, right: other } : other;
  return { left: one.left + left, right: one.right + right } as Ends;
}

/** Where a band's upper edge lies at both ends of a wall, above the room's level datum. */
export function topOf(band: Pick<HungBand, 'to'>, wall: StretchWall): Ends {
  return sum(wall.base, band.to === 'ceiling' ? wall.height : band.to.length);
}

/** Where a band's lower edge lies at both ends of a wall. */
export function bottomOf(band: Pick<HungBand, 'from'>, wall: StretchWall): Ends {
  return sum(wall.base, band.from === 'floor' ? 0 : band.from.length);
}

/** A height above the wall's floor line at both its ends, above the room's level datum. */
export function aboveFloor(wall: StretchWall, height: number): Ends {
  return sum(wall.base, height);
}

/** Whether an opening takes anything from a band on its wall. */
export function interrupts(opening: StretchOpening, band: Pick<HungBand, 'from' | 'to'>, wall: StretchWall): boolean {
  const { bottom, top } = bandOn(band, wall);
  return opening.sill < top && opening.head > bottom;
}

/** Whether an opening leaves nothing of a band over its width. */
export function swallows(opening: StretchOpening, band: Pick<HungBand, 'from' | 'to'>, wall: StretchWall): boolean {
  const { bottom, top } = bandOn(band, wall);
  return opening.sill <= bottom && opening.head >= top;
}

/** A band's edges above a wall's floor line, where the wall is highest. */
export function bandOn(band: Pick<HungBand, 'from' | 'to'>, { height }: StretchWall): ReturnType<typeof heightsOf> {
  return heightsOf(band, lengthOf(Math.max(height.left, height.right)));
}
