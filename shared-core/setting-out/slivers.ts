import type { HungBand, Rules } from '../house/index.ts';
import { ceilDivide, floorDivide, type Length } from '../units/index.ts';
import { type Axis, cornersWithin, unroll } from './axis.ts';
import type { Grid } from './grid.ts';
import { interrupts } from './heights.ts';

/**
 * Counts the slivers of a layout: seams nearer to a corner or an opening's edge than the rule allows.
 *
 * A seam exactly in an inside corner or on an opening's edge leaves no narrow part and is none; at an outside corner
 * it is one, because the strip must go round. One seam near one corner counts once, measured on the expanded axis.
 * Source: common practice, no source. Example: strips of 20 in from the left of a wall 61 in long: the third seam
 * leaves 1 in in the corner, one sliver.
 */
export function countSlivers(axis: Axis, grid: Grid, laidWidth: Length, band: HungBand, rules: Rules): number {
  const sliver = rules.sliver.length;
  const beside = (from: number, to: number) => seamsFrom(grid, laidWidth, from + 1, to - 1);

  let count = beside(grid.from, grid.from + sliver) + beside(grid.to - sliver, grid.to);
  for (const corner of cornersWithin(axis, grid.from, grid.to)) {
    if (corner.kind === 'inside') count += beside(corner.from - sliver, corner.from) + beside(corner.to, corner.to + sliver);
  }
  for (const part of unroll(axis, grid.from, grid.to)) {
    for (const opening of part.wall.openings.filter((one) => interrupts(one, band, part.wall))) {
      for (const edge of [opening.from, opening.to]) {
        const position = part.shift + edge;
        if (position <= part.from || position >= part.to || edge === 0 || edge === part.wall.length) continue;
        count += beside(position - sliver, position) + beside(position, position + sliver);
      }
    }
  }
  return count + countOutsideSeams(axis, grid, laidWidth, rules);
}

/** Counts the seams at outside corners, nearer than a sliver or than what must at least go round. */
export function countOutsideSeams(axis: Axis, grid: Grid, laidWidth: Length, rules: Rules): number {
  const round = Math.max(rules.sliver.length, rules.minOutsideWrap.length);
  return cornersWithin(axis, grid.from, grid.to)
    .filter(({ kind }) => kind === 'outside')
    .reduce((sum, { from, to }) => sum + seamsFrom(grid, laidWidth, from - round + 1, to + round - 1), 0);
}

/** How many seams stand from one place to another, both included, within what is hung. */
function seamsFrom(grid: Grid, laidWidth: Length, from: number, to: number): number {
  const least = Math.max(from, grid.from + 1);
  const most = Math.min(to, grid.to - 1);
  if (least > most) return 0;
  return floorDivide(most - grid.origin, laidWidth) - ceilDivide(least - grid.origin, laidWidth) + 1;
}
