import type { HungBand, Rules } from '../house/index.ts';
import { ceilDivide, floorDivide, type Length } from '../units/index.ts';
import { type Axis, cornersWithin, unroll } from './axis.ts';
import type { Grid } from './grid.ts';
import { interrupts } from './heights.ts';
import type { StretchWall } from './stretch.ts';

/** A part of the axis, both ends included, in which a seam is a defect. */
interface Zone {
  readonly from: number;
  readonly to: number;
  readonly isAtOutsideCorner: boolean;
}

export interface SliverCount {
  readonly slivers: number;
  /** Those of them at outside corners, nearer than a sliver or than what must at least go round. */
  readonly outsideSeams: number;
}

/**
 * Counts the slivers of a layout: seams nearer to a corner or an opening's edge than the rule allows.
 *
 * A seam exactly in an inside corner or on an opening's edge leaves no narrow part and is none; at an outside corner
 * it is one, because the strip must go round. One seam near one corner counts once, measured on the expanded axis.
 * Source: common practice, no source. Example: strips of 20 in from the left of a wall 61 in long: the third seam
 * leaves 1 in in the corner, one sliver.
 */
export function countSlivers(axis: Axis, grid: Grid, laidWidth: Length, band: HungBand, rules: Rules): SliverCount {
  return sliverCounter(axis, grid, laidWidth, band, rules)(grid.origin);
}

/** The same for any place of strip 0 between the same ends. */
export function sliverCounter(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, laidWidth: Length, band: HungBand, rules: Rules): (origin: number) => SliverCount {
  const zones = zonesOf(axis, ends, band, rules)
    .map((zone) => ({ ...zone, from: Math.max(zone.from, ends.from + 1), to: Math.min(zone.to, ends.to - 1) }))
    .filter(({ from, to }) => from <= to);
  return (origin) => {
    let [slivers, outsideSeams] = [0, 0];
    for (const zone of zones) {
      const seams = floorDivide(zone.to - origin, laidWidth) - ceilDivide(zone.from - origin, laidWidth) + 1;
      slivers += seams;
      if (zone.isAtOutsideCorner) outsideSeams += seams;
    }
    return { slivers, outsideSeams };
  };
}

function zonesOf(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, band: HungBand, rules: Rules): readonly Zone[] {
  const sliver = rules.sliver.length;
  const round = Math.max(sliver, rules.minOutsideWrap.length);
  const beside = (from: number, to: number): Zone => ({ from: from + 1, to: to - 1, isAtOutsideCorner: false });
  const corners = cornersWithin(axis, ends.from, ends.to).flatMap(({ kind, from, to }): readonly Zone[] =>
    kind === 'inside' ? [beside(from - sliver, from), beside(to, to + sliver)] : [{ from: from - round + 1, to: to + round - 1, isAtOutsideCorner: true }],
  );
  const openings = edgesOfOpenings(axis, ends, band).flatMap((edge) => [beside(edge - sliver, edge), beside(edge, edge + sliver)]);
  return [beside(ends.from, ends.from + sliver), beside(ends.to - sliver, ends.to), ...corners, ...openings];
}

/** Where openings begin and end between corners; two that go on from one another at the same heights are one. */
function edgesOfOpenings(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, band: HungBand): readonly number[] {
  const edges = unroll(axis, ends.from, ends.to).flatMap((part) => {
    const before = cornerBefore(axis, part.wall);
    return part.wall.openings
      .filter((opening) => interrupts(opening, band, part.wall))
      .flatMap(({ from, to, sill, head }) => [{ at: from, side: 'left', sill, head }, { at: to, side: 'right', sill, head }])
      .filter(({ at }) => (at > 0 || before === 'straight') && (at < part.wall.length || part.wall.cornerRight === 'straight'))
      .map((edge) => ({ ...edge, at: part.shift + edge.at }))
      .filter(({ at }) => at >= part.from && at <= part.to && at > ends.from && at < ends.to);
  });
  const real = edges.filter((edge) => !edges.some((other) => other.at === edge.at && other.side !== edge.side && other.sill === edge.sill && other.head === edge.head));
  return [...new Set(real.map(({ at }) => at))];
}

function cornerBefore({ walls, isClosed }: Axis, wall: StretchWall): string | undefined {
  const index = walls.findIndex((one) => one.wall === wall);
  return index > 0 || isClosed ? walls.at(index - 1)?.wall.cornerRight : undefined;
}
