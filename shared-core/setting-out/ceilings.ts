import { present } from '../base/index.ts';
import { type Ceiling, type Lining, type Room, type Rules, type Wallcovering, laidWidthOf, matchOf } from '../house/index.ts';
import type { Outline } from '../survey/index.ts';
import { ceilDivide, floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { dropOf, patternOf, type Piece } from './cut-strips.ts';
import { say } from '../words/index.ts';

/** A point of the ceiling: along the wall that the strips follow, and away from it into the room. */
interface CeilingPoint {
  readonly along: number;
  readonly away: number;
}

export interface CeilingStrip {
  /** 0 at the wall, counted away from it. */
  readonly number: number;
  /** Away from the wall. */
  readonly from: Length;
  readonly to: Length;
  /** Where its pieces begin and end along the wall, from the room's place furthest left as one faces that wall. */
  readonly spans: readonly { readonly from: Length; readonly to: Length }[];
  readonly pieces: readonly Piece[];
  /** Whether it takes a second pair of hands. */
  readonly needsTwo: boolean;
}

export interface CeilingLayout {
  /** The wall that the strips run along. */
  readonly along: string;
  readonly reason: 'chosen' | 'window' | 'longest';
  readonly strips: readonly CeilingStrip[];
  readonly slivers: number;
  /** Where on the plan the strips are counted from, and one step along the wall; only a drawing reads it. */
  readonly frame: { readonly x: number; readonly y: number; readonly stepX: number; readonly stepY: number };
}

/**
 * The wall that a ceiling's strips run along: as chosen, else that of the largest window, else the longest.
 *
 * Source: common practice, no source: strips run with the light of the main window, so that seams cast no shadow.
 */
export function wallAlong(room: Room): { readonly wall: string; readonly reason: CeilingLayout['reason'] } | null {
  const [first] = room.walls;
  if (!first) return null;
  if (room.ceiling?.along !== undefined) return { wall: room.ceiling.along, reason: 'chosen' };
  const glassOf = (wall: Room['walls'][number]) => Math.max(0, ...wall.openings.filter(({ kind }) => kind === 'window').map(({ width, height }) => width.length * height.length));
  const largest = room.walls.reduce((best, wall) => (glassOf(wall) > glassOf(best) ? wall : best), first);
  if (glassOf(largest) > 0) return { wall: largest.id, reason: 'window' };
  return { wall: room.walls.reduce((best, wall) => (wall.length.length > best.length.length ? wall : best), first).id, reason: 'longest' };
}

/**
 * Sets out the strips of a ceiling over the room's real outline, along one wall and away from it.
 *
 * Shapes: lengths in units along that wall and away from it; a strip that the outline parts has a piece for each part.
 * A piece is as long as the outline is over the strip's whole width, and a trim at both ends. Its pattern is counted
 * from the room's place furthest left as one faces the wall; drops count from the wall. Null where the walls do not go
 * all the way round.
 * Source: common practice, no source. Example: a ceiling of 4.00 m by 4.00 m from strips of 53 cm takes eight of 4.10 m.
 */
export function setOutCeiling(room: Room, outline: Outline, ceiling: Ceiling, covering: Wallcovering | Lining, rules: Rules): CeilingLayout | null {
  const chosen = wallAlong(room);
  if (!outline.isClosed || !chosen) return null;
  const { corners, frame } = seenFrom(room, outline, chosen.wall);
  const width = covering.kind === 'lining' ? covering.width.length : laidWidthOf(covering);
  const pattern = covering.kind === 'lining' || matchOf(covering) === 'free' ? { repeat: 0, drop: { numerator: 0, denominator: 1 } } : patternOf(covering);
  const deep = Math.max(...corners.map(({ away }) => away));
  const trim = rules.trim.length;
  const strips = Array.from({ length: ceilDivide(deep, width) }, (_, number): CeilingStrip => {
    const [from, to] = [number * width, Math.min(deep, (number + 1) * width)];
    const spans = spansWithin(corners, from, to);
    return {
      number,
      from: lengthOf(from),
      to: lengthOf(to),
      spans: spans.map((span) => ({ from: lengthOf(span.from), to: lengthOf(span.to) })),
      pieces: spans.map((span, index) => ({
        label: spans.length === 1 ? say`ceiling ${number + 1}` : say`ceiling ${number + 1} part ${index + 1}`,
        strip: number,
        part: 'full',
        length: lengthOf(span.to - span.from + 2 * trim),
        phase: lengthOf(pattern.repeat === 0 ? 0 : modulo(ceiling.position.length + span.from - trim + dropOf(pattern.repeat, pattern.drop, number), pattern.repeat)),
        top: lengthOf(span.to),
        bottom: lengthOf(span.from),
        upperEdge: lengthOf(span.to + trim),
      })),
      needsTwo: spans.some((span) => span.to - span.from > rules.onePersonLength.length),
    };
  });
  const last = strips.at(-1);
  return { along: chosen.wall, reason: chosen.reason, frame, strips, slivers: last && strips.length > 1 && last.to - last.from < rules.sliver.length ? 1 : 0 };
}

/** The outline's corners as one sees them who faces a wall from inside; whole units, rounded once for slanting walls. */
function seenFrom({ walls }: Room, { points }: Outline, wall: string): { readonly corners: readonly CeilingPoint[]; readonly frame: CeilingLayout['frame'] } {
  const index = walls.findIndex(({ id }) => id === wall);
  const [from, to] = [present(points[index], 'the wall begins'), present(points[index + 1], 'the wall ends')];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [stepX, stepY] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const turned = points.slice(0, -1).map(({ x, y }) => ({ along: Math.round(x * stepX + y * stepY), away: Math.round(y * stepX - x * stepY) }));
  const [left, near] = [Math.min(...turned.map(({ along }) => along)), Math.min(...turned.map(({ away }) => away))];
  return {
    corners: turned.map(({ along, away }) => ({ along: along - left, away: away - near })),
    frame: { x: left * stepX - near * stepY, y: left * stepY + near * stepX, stepX, stepY },
  };
}

/** What the outline covers along the wall over a strip's whole width, parts that meet taken together. */
function spansWithin(corners: readonly CeilingPoint[], from: number, to: number): readonly { readonly from: number; readonly to: number }[] {
  const levels = [...new Set([from, ...corners.map(({ away }) => away).filter((away) => away > from && away < to), to])].sort((one, other) => one - other);
  const spans = levels.slice(1).flatMap((end, index) => spansOfSlab(corners, levels[index]!, end));
  return spans
    .toSorted((one, other) => one.from - other.from)
    .reduce<{ readonly from: number; readonly to: number }[]>((joined, span) => {
      const last = joined.at(-1);
      if (last && span.from <= last.to) joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
      else joined.push(span);
      return joined;
    }, []);
}

/** Between two levels with no corner between them the outline is a row of four-sided pieces. */
function spansOfSlab(corners: readonly CeilingPoint[], from: number, to: number): readonly { readonly from: number; readonly to: number }[] {
  const sides = corners
    .map((corner, index) => [corner, corners[(index + 1) % corners.length]!] as const)
    .filter(([one, other]) => Math.min(one.away, other.away) <= from && Math.max(one.away, other.away) >= to)
    .map(([one, other]) => {
      const at = (away: number, divide: typeof floorDivide) => one.along + divide((other.along - one.along) * (away - one.away) * Math.sign(other.away - one.away), Math.abs(other.away - one.away));
      return { least: Math.min(at(from, floorDivide), at(to, floorDivide)), most: Math.max(at(from, ceilDivide), at(to, ceilDivide)) };
    })
    .toSorted((one, other) => one.least + one.most - (other.least + other.most));
  return sides.flatMap((side, index) => (index % 2 === 0 && sides[index + 1] ? [{ from: side.least, to: sides[index + 1]!.most }] : []));
}
