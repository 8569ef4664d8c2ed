import type { HungBand } from '../house/index.ts';
import type { Axis, StretchWall, WallPlace } from '../setting-out/index.ts';
import { floorDivide } from '../units/index.ts';
import { between } from './geometry.ts';
import type { DrawnPoint } from './shapes.ts';

/** A wall, or what is left of it, on the axis along which an elevation is unrolled. */
export interface WallSpan {
  readonly wall: StretchWall;
  readonly from: number;
  readonly to: number;
  /** Where the wall's left end stands, inside the span or left of it. */
  readonly shift: number;
}

/** From where to where on the axis of a stretch. */
export interface StretchPart {
  readonly from: number;
  readonly to: number;
}

/** What of a row of things stands, wholly or in part, inside a part of the axis. */
export function within<Thing extends StretchPart>(things: readonly Thing[], part: StretchPart): readonly Thing[] {
  return things.filter(({ from, to }) => from < part.to && to > part.from);
}

/**
 * The walls of an elevation from left to right, from kill point to kill point.
 *
 * Shapes: positions on the stretch's own axis, in units; a closed axis goes on round and round. A drawing only reads
 * them: no strip is decided here.
 * Example: walls A to D of a closed stretch whose kill point stands 1 m into A give what is right of it on A, then B,
 * C, D, then the first metre of A.
 */
export function spansAlong(axis: Axis, from: number, to: number): readonly WallSpan[] {
  const firstTurn = axis.isClosed ? floorDivide(from, axis.length) - 1 : 0;
  const lastTurn = axis.isClosed ? floorDivide(to, axis.length) + 1 : 0;
  const spans: WallSpan[] = [];
  for (let turn = firstTurn; turn <= lastTurn; turn += 1) {
    for (const { wall, from: left, to: right } of axis.walls) {
      const shift = left + turn * axis.length;
      const span = { wall, from: Math.max(from, shift), to: Math.min(to, shift + right - left), shift };
      if (span.from < span.to) spans.push(span);
    }
  }
  return spans;
}

/** The part of a span between two positions of the axis; null where it lies elsewhere. */
export function partOfSpan(span: WallSpan, from: number, to: number): WallSpan | null {
  const part = { ...span, from: Math.max(span.from, from), to: Math.min(span.to, to) };
  return part.from < part.to ? part : null;
}

/** Everywhere in an elevation that a part of a wall is seen; a wall parted by the kill point is seen at both ends. */
export function placesOf(spans: readonly WallSpan[], wall: string, from: number, to: number): readonly WallSpan[] {
  return spans.flatMap((span) => {
    if (span.wall.id !== wall) return [];
    const part = partOfSpan(span, span.shift + from, span.shift + to);
    return part ? [part] : [];
  });
}

/** Where a place on a wall stands in an elevation. */
export function positionOf(spans: readonly WallSpan[], place: WallPlace): number | null {
  const span = spans.find(({ wall, from, to, shift }) => wall.id === place.wall && shift + place.at >= from && shift + place.at <= to);
  return span ? span.shift + place.at : null;
}

/** A height above the wall's floor line, at a position of the axis, above the room's level datum. */
export type Edge = (span: WallSpan, position: number) => number;

const partAlong = (span: WallSpan, position: number) => (position - span.shift) / span.wall.length;

export const floorAt: Edge = (span, position) => between(span.wall.base.left, span.wall.base.right, partAlong(span, position));

export const ceilingAt: Edge = (span, position) =>
  floorAt(span, position) + between(span.wall.height.left, span.wall.height.right, partAlong(span, position));

/** An edge that runs along the floor line at a height. */
export function above(height: number): Edge {
  return (span, position) => Math.min(floorAt(span, position) + height, ceilingAt(span, position));
}

/** A level edge, at a height above the room's level datum. */
export function level(height: number): Edge {
  return () => height;
}

export function topOfBand(band: Pick<HungBand, 'to'>): Edge {
  return band.to === 'ceiling' ? ceilingAt : above(band.to.length);
}

export function bottomOfBand(band: Pick<HungBand, 'from'>): Edge {
  return band.from === 'floor' ? floorAt : above(band.from.length);
}

/** An edge that runs at a distance below another one, never below the floor. */
export function below(edge: Edge, distance: number): Edge {
  return (span, position) => Math.max(edge(span, position) - distance, floorAt(span, position));
}

/** The four corners of a part of a wall between two edges, clockwise as drawn from the upper left one. */
export function areaBetween(span: WallSpan, top: Edge, bottom: Edge): readonly DrawnPoint[] {
  const { from, to } = span;
  return [
    { x: from, y: -top(span, from) },
    { x: to, y: -top(span, to) },
    { x: to, y: -bottom(span, to) },
    { x: from, y: -bottom(span, from) },
  ];
}

/** A span without the openings that reach over a height, the widest part first. */
export function freeParts(span: WallSpan, height: number): readonly StretchPart[] {
  let parts = [{ from: span.from, to: span.to }];
  for (const { from, to, head, sill } of span.wall.openings) {
    const [left, right] = [span.shift + from, span.shift + to];
    const middle = (Math.max(left, span.from) + Math.min(right, span.to)) / 2;
    if (height <= above(sill)(span, middle) || height >= above(head)(span, middle)) continue;
    parts = parts.flatMap((part) => [
      { from: part.from, to: Math.min(part.to, left) },
      { from: Math.max(part.from, right), to: part.to },
    ]).filter((part) => part.from < part.to);
  }
  return parts.toSorted((one, other) => other.to - other.from - (one.to - one.from));
}
