import { assert, present } from '../base/index.ts';
import { floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import type { WallPlace } from './chosen-layout.ts';
import type { Stretch, StretchWall } from './stretch.ts';

/** A wall's place on the expanded axis. */
export interface AxisWall {
  readonly wall: StretchWall;
  readonly from: Length;
  readonly to: Length;
  /** The wrap at its right end; 0 where no corner that takes one is passed. */
  readonly wrap: Length;
}

/**
 * The expanded axis of a stretch: its walls' lengths end to end, with one wrap added at each inside corner
 * passed, and the lap of each outside one that leans.
 *
 * A closed stretch's axis repeats after its period, the corner from the last wall to the first included.
 * Example: two walls of 100 in round an inside corner with a wrap of 1/8 in take 0–100 in and 100 1/8–200 1/8 in.
 */
export interface Axis {
  readonly walls: readonly AxisWall[];
  readonly isClosed: boolean;
  readonly length: Length;
}

export function layAxis(stretch: Stretch, wrapAfter: (wall: StretchWall) => number): Axis {
  let end = 0;
  const walls = stretch.walls.map((wall, index) => {
    const from = lengthOf(end);
    const to = lengthOf(end + wall.length);
    const isPassed = stretch.isClosed || index < stretch.walls.length - 1;
    const wrap = lengthOf(isPassed ? wrapAfter(wall) : 0);
    end = to + wrap;
    return { wall, from, to, wrap };
  });
  return { walls, isClosed: stretch.isClosed, length: lengthOf(end) };
}

/** Where a place on a wall lies on the axis. */
export function onAxis(axis: Axis, place: WallPlace): Length {
  const { from } = present(axis.walls.find(({ wall }) => wall.id === place.wall), `wall ${place.wall} of the stretch`);
  return lengthOf(from + place.at);
}

/**
 * The place on a wall that an axis position stands for; in the wrap of a corner, the wall after it.
 *
 * The right end of a wall and the left end of the next one are the same corner and are given as the latter.
 */
export function onWall(axis: Axis, position: number): WallPlace {
  const u = axis.isClosed ? modulo(position, axis.length) : position;
  for (const { wall, from, to } of axis.walls) {
    if (u < to) return { wall: wall.id, at: lengthOf(Math.max(0, u - from)) };
  }
  const [first, last] = [present(axis.walls[0], 'a first wall'), present(axis.walls.at(-1), 'a last wall')];
  return axis.isClosed ? { wall: first.wall.id, at: lengthOf(0) } : { wall: last.wall.id, at: last.wall.length };
}

/** What lies of a wall inside a part of the axis; `shift` is where the wall's left end stands. */
export interface AxisPart {
  readonly wall: StretchWall;
  readonly from: number;
  readonly to: number;
  readonly shift: number;
}

/** The walls and what is left of them inside a part of the axis, in order; a closed axis is followed round and round. */
export function unroll(axis: Axis, from: number, to: number): readonly AxisPart[] {
  const turns = axis.isClosed ? floorDivide(from, axis.length) - 1 : 0;
  const lastTurn = axis.isClosed ? floorDivide(to, axis.length) + 1 : 0;
  assert(lastTurn - turns <= 6, 'a stretch is followed round once');
  const parts = [];
  for (let turn = turns; turn <= lastTurn; turn += 1) {
    for (const { wall, from: left, to: right } of axis.walls) {
      const shift = left + turn * (axis.isClosed ? axis.length : 0);
      const part = { wall, from: Math.max(from, shift), to: Math.min(to, shift + (right - left)), shift };
      if (part.from < part.to) parts.push(part);
    }
  }
  return parts;
}

export interface AxisCorner {
  /** Where the wall before it ends. */
  readonly from: number;
  /** Where the wall after it begins: one wrap later at an inside corner or a leaning outside one, the same place at another. */
  readonly to: number;
  readonly kind: 'inside' | 'outside';
  /** The wall at whose right end it stands. */
  readonly wall: StretchWall;
}

/** The corners strictly inside a part of the axis; straight joints of two walls are none. */
export function cornersWithin(axis: Axis, from: number, to: number): readonly AxisCorner[] {
  const parts = unroll(axis, from, to);
  return parts.slice(1).flatMap((part, index) => {
    const before = present(parts[index], 'the part before');
    const kind = before.wall.cornerRight;
    return kind === 'straight' ? [] : [{ from: before.to, to: part.from, kind, wall: before.wall }];
  });
}
