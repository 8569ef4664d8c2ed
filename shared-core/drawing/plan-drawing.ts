import { endsOf, OPENING_WORDS, type Room } from '../house/index.ts';
import type { Outline } from '../survey/index.ts';
import { type LengthStyle, lengthOf, millimetres, showLength } from '../units/index.ts';
import { boundsOf, pointAlong } from './geometry.ts';
import { type HangingOnPlan, hangingOnPlan } from './plan-marks.ts';
import { faceOf, type WallFace } from './plan-walls.ts';
import { openingOnPlan } from './plan-openings.ts';
import type { Drawing, DrawnPoint, Shape, Subject } from './shapes.ts';
import { heightSaid, sized } from './words.ts';
import { say, sayList } from '../words/index.ts';

/** More than this is a warning of the survey, and so drawn as one. */
const GAP_WORTH_A_LOOK = millimetres(25);
const GAP_TO_DRAW = millimetres(1);

export interface RoomPlanOptions {
  /** `full` has dimensions; `marks` only walls and what is struck on them; `thumb`, a room's own little plan, neither. */
  readonly detail?: 'full' | 'marks' | 'thumb';
  /** Of each stretch that is shown. */
  readonly hangings?: readonly HangingOnPlan[];
}

/**
 * Draws a room as seen from above, its walls cut, to scale.
 *
 * Shapes: units, y down the sheet as the outline gives it; the first wall runs to the right along the top. Walls are
 * cut lines on their inner face, openings gaps in them; where the walls do not meet, a dashed line with the distance.
 * Example: walls of 4 m and 3 m give four walls round 1 280 000 by 960 000 units and four dimensions.
 */
export function drawRoomPlan(room: Room, outline: Outline, style: LengthStyle, options: RoomPlanOptions = {}): Drawing {
  const { detail = 'full', hangings = [] } = options;
  const isThumb = detail === 'thumb';
  const bounds = boundsOf(outline.points.length > 0 ? outline.points : [{ x: 0, y: 0 }]);
  const span = Math.max(bounds.right - bounds.left, bounds.bottom - bounds.top);
  const depth = Math.max(lengthOf(32_000), span / (isThumb ? 22 : 60));
  const faces = room.walls.map((wall, index) => faceOf(wall, outline.points[index]!, outline.points[index + 1]!, depth));
  const shapes: readonly Shape[] = [
    ...floorShape(outline),
    ...faces.flatMap((face) => wallShapes(face, style)),
    ...faces.flatMap((face) => face.wall.openings.flatMap((opening) => openingOnPlan(face, opening, style, isThumb))),
    ...gapShapes(outline, style, isThumb),
    ...(isThumb ? [] : [...faces.flatMap((face, index) => labelShapes(face, room, style, detail === 'full' ? (standsBack(faces, index) ? 2.6 : -2.6) : null)), ...hangings.flatMap((hanging) => hangingOnPlan(faces, hanging, style))]),
  ];
  const around = { full: 4.4, marks: 2.8, thumb: 0.5 }[detail];
  return {
    shapes,
    bounds: boundsOf([{ x: bounds.left, y: bounds.top }, { x: bounds.right, y: bounds.bottom }, ...faces.flatMap(({ outer }) => (isThumb ? outer : []))]),
    margin: { left: around, top: around, right: around, bottom: isThumb ? around : around + 2 },
    scaleBar: isThumb ? null : style,
    description: describePlan(room, outline, style),
  };
}

function floorShape(outline: Outline): readonly Shape[] {
  return outline.isClosed ? [{ kind: 'polygon', points: outline.points, pen: 'none', fill: 'paper' }] : [];
}

function wallSubject({ wall }: WallFace, style: LengthStyle): Subject {
  return { kind: 'wall', id: wall.id, says: say`Wall ${wall.id}, ${showLength(wall.length.length, style)} long, ${heightSaid(endsOf(wall.height), style)}.` };
}

/** A wall's inner face as thick lines between its openings. */
function wallShapes(face: WallFace, style: LengthStyle): readonly Shape[] {
  const subject = wallSubject(face, style);
  const openings = face.wall.openings.filter(({ kind }) => kind !== 'furniture').toSorted((one, other) => one.from.length - other.from.length);
  const edges = [0, ...openings.flatMap(({ from, width }) => [from.length, from.length + width.length]), face.wall.length.length];
  const lines: Shape[] = [];
  for (let index = 0; index < edges.length; index += 2) {
    const [from, to] = [edges[index]!, edges[index + 1]!];
    if (from < to) lines.push({ kind: 'line', from: face.at(from), to: face.at(to), pen: 'cut', subject });
  }
  return lines;
}

/**
 * Whether a wall is the shorter one of two that meet in an outside corner: its length is then written in the room, as
 * outside it would cross its neighbour's.
 */
function standsBack(faces: readonly WallFace[], index: number): boolean {
  const [before, face, after] = [faces.at(index - 1)!, faces[index]!, faces[(index + 1) % faces.length]!];
  const isShorter = (other: WallFace) => face.wall.length.length < other.wall.length.length;
  return (turnsOutwards(before, face) && isShorter(before)) || (turnsOutwards(face, after) && isShorter(after));
}

/** Whether two walls meet in an outside corner as drawn: the way along them turns to the left. */
function turnsOutwards(one: WallFace, other: WallFace): boolean {
  return (one.to.x - one.from.x) * (other.to.y - other.from.y) - (one.to.y - one.from.y) * (other.to.x - other.from.x) < 0;
}

function labelShapes(face: WallFace, room: Room, style: LengthStyle, dimensionOffset: number | null): readonly Shape[] {
  const { wall, from, to } = face;
  const middle = pointAlong(from, to, 0.5);
  const isFocal = room.focalWall === wall.id;
  // Beside the wall; where another wall is near, further into the room, or on its other side.
  const heights = dimensionOffset === null ? [-1.6, 1.3] : [1.3, 2.6, -1.3];
  const subject: Subject = isFocal ? { ...wallSubject(face, style), says: `${wallSubject(face, style).says} ${say`It is the wall looked at most.`}` } : wallSubject(face, style);
  return [
    { kind: 'text', at: face.inward(middle, heights[0]!), otherwise: heights.slice(1).map((inwards) => face.inward(middle, inwards)), anchor: 'middle', height: 'label', text: wall.id, pen: 'visible', isNeeded: true, subject },
    ...(isFocal ? [{ kind: 'sign' as const, sign: 'sight' as const, at: face.inward(middle, 3), turn: face.turn, pen: 'visible' as const, subject }] : []),
    ...(dimensionOffset !== null ? [{ kind: 'dimension' as const, from, to, offset: dimensionOffset, text: showLength(wall.length.length, style) }] : []),
  ];
}

function gapShapes({ points, closingError, isClosed }: Outline, style: LengthStyle, isThumb: boolean): readonly Shape[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 3) return [];
  if (!isClosed) return [{ kind: 'line', from: last, to: first, pen: 'hidden', subject: { kind: 'gap', id: 'gap', says: say`The walls do not go all the way round; nothing is known of this side.` } }];
  if (closingError < GAP_TO_DRAW) return [];
  const isWorthALook = closingError > GAP_WORTH_A_LOOK;
  const subject: Subject = {
    kind: 'gap',
    id: 'gap',
    says: [say`The last wall ends ${showLength(closingError, style)} from where the first begins.`, ...(isWorthALook ? [say`Measure again, or leave it if the room is out of square.`] : [])].join(' '),
  };
  const middle: DrawnPoint = pointAlong(last, first, 0.5);
  const line: Shape = { kind: 'line', from: last, to: first, pen: isWorthALook ? 'warn' : 'hidden', subject };
  if (isThumb) return [line];
  return [line, { kind: 'text', at: { ...middle, right: 0.7, down: 1.6 }, anchor: 'start', height: 'dimension', text: say`gap ${sized(closingError, style)}`, pen: isWorthALook ? 'warn' : 'thin', isNeeded: true, subject }];
}

function describePlan(room: Room, outline: Outline, style: LengthStyle): string {
  if (room.walls.length === 0) return say`${room.name} has no walls yet.`;
  const count = room.walls.length;
  const walls = say`${room.name} from above, ${count === 1 ? say`${count} wall` : say`${count} walls`}: ${sayList(room.walls.map(({ id, length }) => `${id} ${showLength(length.length, style)}`))}.`;
  const openings = room.walls.flatMap(({ id, openings }) => openings.map(({ kind, entrance }) => say`${entrance ? say`the entrance` : OPENING_WORDS[kind]} on wall ${id}`));
  const closing = !outline.isClosed
    ? say`The walls do not go all the way round.`
    : outline.closingError < GAP_TO_DRAW
      ? say`The walls meet.`
      : say`The walls miss each other by ${showLength(outline.closingError, style)}.`;
  return [walls, ...(openings.length > 0 ? [say`There is ${sayList(openings)}.`] : []), closing].join(' ');
}
