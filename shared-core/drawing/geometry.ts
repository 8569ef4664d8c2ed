import type { Bounds, DrawnPoint } from './shapes.ts';

/** The part of the way from one number to another. */
export function between(from: number, to: number, part: number): number {
  return from + (to - from) * part;
}

export function boundsOf(points: readonly DrawnPoint[]): Bounds {
  return points.reduce<Bounds>(
    ({ left, top, right, bottom }, { x, y }) => ({
      left: Math.min(left, x),
      top: Math.min(top, y),
      right: Math.max(right, x),
      bottom: Math.max(bottom, y),
    }),
    { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity },
  );
}

/**
 * What of a row of lines lies inside a convex polygon, whose corners go clockwise as drawn.
 *
 * Example: a line from (-10, 5) to (20, 5) in a square of 10 from (0, 0) leaves (0, 5) to (10, 5).
 */
export function clipToConvex(line: readonly DrawnPoint[], polygon: readonly DrawnPoint[]): readonly (readonly DrawnPoint[])[] {
  const kept: DrawnPoint[][] = [];
  line.slice(1).forEach((to, index) => {
    const from = line[index]!;
    const inside = clipSegment(from, to, polygon);
    if (!inside) return;
    const [start, end] = inside;
    const before = kept.at(-1);
    const last = before?.at(-1);
    if (before && last && start === from && last === from) before.push(end);
    else kept.push([start, end]);
  });
  return kept;
}

function clipSegment(from: DrawnPoint, to: DrawnPoint, polygon: readonly DrawnPoint[]): readonly [DrawnPoint, DrawnPoint] | null {
  let [first, last] = [0, 1];
  for (const [index, corner] of polygon.entries()) {
    const next = polygon[(index + 1) % polygon.length]!;
    const [start, end] = [sideOf(corner, next, from), sideOf(corner, next, to)];
    if (start < 0 && end < 0) return null;
    if (start < 0) first = Math.max(first, start / (start - end));
    if (end < 0) last = Math.min(last, start / (start - end));
  }
  if (first >= last) return null;
  return [first === 0 ? from : pointAlong(from, to, first), last === 1 ? to : pointAlong(from, to, last)];
}

/** Above zero on the inner side of a clockwise polygon's edge. */
function sideOf(from: DrawnPoint, to: DrawnPoint, point: DrawnPoint): number {
  return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
}

export function pointAlong(from: DrawnPoint, to: DrawnPoint, part: number): DrawnPoint {
  return { x: between(from.x, to.x, part), y: between(from.y, to.y, part) };
}
