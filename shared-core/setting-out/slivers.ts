import type { Band, Rules } from '../house/index.ts';
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
export function countSlivers(axis: Axis, grid: Grid, laidWidth: Length, band: Band, rules: Rules): number {
  const sliver = rules.sliver.length;
  const roundCorner = Math.max(sliver, rules.minOutsideWrap.length);
  const isSeam = (from: number, to: number, includesEnds: boolean): number => {
    const least = Math.max(from, grid.from) + (includesEnds ? 0 : 1);
    const most = Math.min(to, grid.to) - (includesEnds ? 0 : 1);
    if (least > most) return 0;
    const first = ceilDivide(least - grid.origin, laidWidth);
    const last = floorDivide(most - grid.origin, laidWidth);
    return Math.max(0, last - first + 1);
  };

  let count = isSeam(grid.from, grid.from + sliver, false) + isSeam(grid.to - sliver, grid.to, false);
  for (const corner of cornersWithin(axis, grid.from, grid.to)) {
    count +=
      corner.kind === 'outside'
        ? isSeam(corner.from - roundCorner + 1, corner.to + roundCorner - 1, true)
        : isSeam(corner.from - sliver, corner.from, false) + isSeam(corner.to, corner.to + sliver, false);
  }
  for (const part of unroll(axis, grid.from, grid.to)) {
    for (const opening of part.wall.openings.filter((one) => interrupts(one, band, part.wall))) {
      for (const edge of [opening.from, opening.to]) {
        const position = part.shift + edge;
        if (position <= part.from || position >= part.to || edge === 0 || edge === part.wall.length) continue;
        count += isSeam(position - sliver, position, false) + isSeam(position, position + sliver, false);
      }
    }
  }
  return count;
}
