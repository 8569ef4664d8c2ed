import type { Wall } from '../house/index.ts';
import { pointAlong } from './geometry.ts';
import type { DrawnPoint, Spot } from './shapes.ts';

/** A wall as the plan draws it: its inner face and the side away from the room. */
export interface WallFace {
  readonly wall: Wall;
  readonly from: DrawnPoint;
  readonly to: DrawnPoint;
  /** How the wall stands: degrees clockwise from one that runs to the right. */
  readonly turn: number;
  /** A nominal thickness in units, only for drawing. */
  readonly depth: number;
  readonly outer: readonly DrawnPoint[];
  /** A point so far along the wall and so far outwards, both in units. */
  readonly at: (along: number, outwards?: number) => DrawnPoint;
  /** A point moved into the room by heights of text. */
  readonly inward: (point: DrawnPoint, heights: number) => Spot;
}

/**
 * A wall between two points of the outline; the room lies to the right of somebody who walks along it.
 *
 * Example: a wall from (0, 0) to (1000, 0) has its outside at negative y and the room below it.
 */
export function faceOf(wall: Wall, from: DrawnPoint, to: DrawnPoint, depth: number): WallFace {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [stepX, stepY] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const at = (along: number, outwards = 0): DrawnPoint => {
    const { x, y } = pointAlong(from, to, along / length);
    return { x: x + outwards * stepY, y: y - outwards * stepX };
  };
  return {
    wall,
    from,
    to,
    turn: (Math.atan2(stepY, stepX) * 180) / Math.PI,
    depth,
    outer: [at(0, depth), at(length, depth)],
    at,
    inward: (point, heights) => ({ ...point, right: -stepY * heights, down: stepX * heights }),
  };
}
