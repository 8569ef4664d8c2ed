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
  /** What the seam stands too near to: the two sides of a corner, or one edge. */
  readonly edges: readonly [left: number, right: number];
  readonly isAtOutsideCorner: boolean;
}

/** What is left between a seam and the corner or edge that it stands too near to, on the axis. */
export interface Sliver {
  readonly seam: number;
  readonly from: number;
  readonly to: number;
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

/**
 * Where the slivers of a layout are, from left to right as they are counted.
 *
 * Shapes: positions on the axis, in units. Example: strips of 20 in from the left of a wall 61 in long leave a sliver from
 * 60 in to 61 in, whose seam stands at 60 in.
 */
export function findSlivers(axis: Axis, grid: Grid, laidWidth: Length, band: HungBand, rules: Rules): readonly Sliver[] {
  return zonesWithin(axis, grid, band, rules)
    .flatMap((zone) => seamsIn(zone, grid.origin, laidWidth).map((seam): Sliver => ({ seam, from: Math.min(seam, zone.edges[0]), to: Math.max(seam, zone.edges[1]) })))
    .toSorted((one, other) => one.from - other.from);
}

/** The same count for any place of strip 0 between the same ends. */
export function sliverCounter(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, laidWidth: Length, band: HungBand, rules: Rules): (origin: number) => SliverCount {
  const zones = zonesWithin(axis, ends, band, rules);
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

function seamsIn(zone: Zone, origin: number, laidWidth: Length): readonly number[] {
  const first = ceilDivide(zone.from - origin, laidWidth);
  const last = floorDivide(zone.to - origin, laidWidth);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => origin + (first + index) * laidWidth);
}

/** The zones between the two ends, where alone a seam is. */
function zonesWithin(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, band: HungBand, rules: Rules): readonly Zone[] {
  return zonesOf(axis, ends, band, rules)
    .map((zone) => ({ ...zone, from: Math.max(zone.from, ends.from + 1), to: Math.min(zone.to, ends.to - 1) }))
    .filter(({ from, to }) => from <= to);
}

function zonesOf(axis: Axis, ends: Pick<Grid, 'from' | 'to'>, band: HungBand, rules: Rules): readonly Zone[] {
  const sliver = rules.sliver.length;
  const round = Math.max(sliver, rules.minOutsideWrap.length);
  const leftOf = (edge: number): Zone => ({ from: edge - sliver + 1, to: edge - 1, edges: [edge, edge], isAtOutsideCorner: false });
  const rightOf = (edge: number): Zone => ({ from: edge + 1, to: edge + sliver - 1, edges: [edge, edge], isAtOutsideCorner: false });
  const corners = cornersWithin(axis, ends.from, ends.to).flatMap(({ kind, from, to }): readonly Zone[] =>
    kind === 'inside' ? [leftOf(from), rightOf(to)] : [{ from: from - round + 1, to: to + round - 1, edges: [from, to], isAtOutsideCorner: true }],
  );
  const openings = edgesOfOpenings(axis, ends, band).flatMap((edge) => [leftOf(edge), rightOf(edge)]);
  return [rightOf(ends.from), leftOf(ends.to), ...corners, ...openings];
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
