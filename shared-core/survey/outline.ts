import type { Room } from '../house/index.ts';
import { areaOf, type Area, type Length, lengthOf, millimetres, ZERO_LENGTH } from '../units/index.ts';
import { readTurn } from './turn.ts';

/** A point of the plan in units, x to the right and y down the sheet. */
export interface Point {
  readonly x: Length;
  readonly y: Length;
}

export interface Outline {
  /** Left end of each wall in order, and the right end of the last. */
  readonly points: readonly Point[];
  /** From where the last wall ends to where the first began. */
  readonly closingError: Length;
  /** Whether the walls go all the way round, however well they meet. */
  readonly isClosed: boolean;
  readonly perimeter: Length;
  readonly floorArea: Area;
}

/** Real rooms are out of square: more than 1 in (25 mm) is worth a look, never a refusal. */
export const CLOSING_ERROR_WORTH_A_LOOK = millimetres(25);

/**
 * Draws a room's outline on the floor from the lengths and turns of its walls, clockwise.
 *
 * The first wall runs to the right along the top of the sheet. Points are rounded to the unit (1/320 mm), which only
 * a drawing reads; no strip or cut is decided by them.
 * Example: walls of 4 m, 3 m, 4 m, 3 m with inside corners close exactly round 12 square metres.
 */
export function drawOutline(room: Pick<Room, 'walls'>): Outline {
  const points: Point[] = [{ x: ZERO_LENGTH, y: ZERO_LENGTH }];
  let heading = 0;
  let perimeter = 0;
  let [x, y] = [0, 0];
  for (const wall of room.walls) {
    const [stepX, stepY] = direction(heading);
    x += wall.length.length * stepX;
    y += wall.length.length * stepY;
    perimeter += wall.length.length;
    points.push({ x: lengthOf(Math.round(x)), y: lengthOf(Math.round(y)) });
    heading = (heading + 18_000 - readTurn(wall.turn).interiorAngle + 36_000) % 36_000;
  }
  const closingError = lengthOf(Math.round(Math.hypot(x, y)));
  return {
    points,
    closingError,
    isClosed: goesAllRound(room),
    perimeter: lengthOf(perimeter),
    floorArea: enclosedArea(points),
  };
}

/**
 * Whether the walls go once round the room, judged by their turns: the corners of an outline turn by 360 degrees.
 *
 * Three walls of a room with four do not; four walls do even where a length is wrong, which the closing error then
 * shows. Measured angles may be off by 10 degrees in all (common practice, no source).
 */
export function goesAllRound(room: Pick<Room, 'walls'>): boolean {
  const turned = room.walls.reduce((sum, wall) => sum + 18_000 - readTurn(wall.turn).interiorAngle, 0);
  return room.walls.length >= 3 && Math.abs(turned - 36_000) <= 1_000;
}

/** Quarter turns are exact; only other angles go through the sine. */
function direction(heading: number): readonly [number, number] {
  if (heading === 0) return [1, 0];
  if (heading === 9_000) return [0, 1];
  if (heading === 18_000) return [-1, 0];
  if (heading === 27_000) return [0, -1];
  const radians = (heading * Math.PI) / 18_000;
  return [Math.cos(radians), Math.sin(radians)];
}

function enclosedArea(points: readonly Point[]): Area {
  let doubled = 0;
  points.forEach(({ x, y }, index) => {
    const next = points[(index + 1) % points.length]!;
    doubled += x * next.y - next.x * y;
  });
  return areaOf(Math.round(Math.abs(doubled) / 2));
}
