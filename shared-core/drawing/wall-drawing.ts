import type { StretchWall } from '../setting-out/index.ts';
import type { Guide, WallSpot } from '../survey/index.ts';
import type { LengthStyle } from '../units/index.ts';
import type { DrawnRoom } from './elevation-drawing.ts';
import { edgeShapes, openingDimensions, openingShapes } from './elevation-walls.ts';
import { boundsOf } from './geometry.ts';
import { roomShapes } from './room-shapes.ts';
import type { Drawing, DrawnPoint, Shape } from './shapes.ts';
import { above, areaBetween, ceilingAt, floorAt, placesOf, type WallSpan } from './spans.ts';
import { heightSaid, openingSaid, sized } from './words.ts';
import { say } from '../words/index.ts';

/** Heights of text from the wall to its dimensions. */
const BELOW = { openings: 1.7, wall: 3.5 } as const;
const BESIDE = 1.6;
/** Half a handle, in heights of text. */
const HANDLE = 0.3;

export interface WallDrawingOptions {
  /** Where the opening that is looked at can be taken hold of. */
  readonly handles?: readonly WallSpot[];
  /** What a moved edge has caught on. */
  readonly guides?: readonly Guide[];
  /** An opening that can't stand where it is. */
  readonly refused?: string | null;
}

/**
 * Draws one bare wall as seen from inside the room: its openings with their dimensions, rails and furniture.
 *
 * Shapes: units from the wall's left end, heights above the room's level datum as negative y. Of what can be pointed at
 * openings come first; the bare wall stands for nothing.
 * Example: a wall of 10' 2" with a window 3' from its left end, 4' wide, has a chain of 3', 4', 3' 2" along its foot.
 */
export function drawWall(room: DrawnRoom, wall: StretchWall, style: LengthStyle, { handles = [], guides = [], refused = null }: WallDrawingOptions = {}): Drawing {
  const span: WallSpan = { wall, from: 0, to: wall.length, shift: 0 };
  const area = areaBetween(span, ceilingAt, floorAt);
  const foot = Math.max(-wall.base.left, -wall.base.right);
  const shapes: readonly Shape[] = [
    { kind: 'polygon', points: area, pen: 'none', fill: 'wall' },
    ...openingShapes([span], style),
    ...roomShapes([span], room, style),
    ...edgeShapes([span], { left: true, right: true }),
    ...openingDimensions(span, foot, style, BELOW.openings),
    { kind: 'dimension', from: { x: 0, y: foot }, to: { x: wall.length, y: foot }, offset: wall.openings.length > 0 ? BELOW.wall : BELOW.openings, text: sized(wall.length, style) },
    ...heightShapes(span, style),
    ...refusedShapes(span, refused),
    ...guides.map((guide) => guideShape(span, guide)),
    ...handles.map((handle) => handleShape(span, handle)),
  ];
  const openings = wall.openings.toSorted((one, other) => one.from - other.from).map((opening) => openingSaid(opening, wall.id, style));
  return {
    shapes,
    bounds: boundsOf(area),
    margin: { left: 4, top: 0.8, right: wall.height.left === wall.height.right ? 1.2 : 4, bottom: BELOW.wall + 3.6 },
    scaleBar: style,
    description: [say`${room.name}, wall ${wall.id} from inside the room, ${sized(wall.length, style)} long, ${heightSaid(wall.height, style)}.`, ...(openings.length > 0 ? openings : [say`It has no openings.`])].join(' '),
  };
}

/** The wall's height beside its left end, and beside its right one where the ceiling or the floor slopes. */
function heightShapes(span: WallSpan, style: LengthStyle): readonly Shape[] {
  const { wall, from, to } = span;
  const at = (x: number, height: number): DrawnPoint => ({ x, y: -height });
  const left: Shape = { kind: 'dimension', from: at(from, ceilingAt(span, from)), to: at(from, floorAt(span, from)), offset: BESIDE, text: sized(wall.height.left, style) };
  if (wall.height.left === wall.height.right) return [left];
  return [left, { kind: 'dimension', from: at(to, floorAt(span, to)), to: at(to, ceilingAt(span, to)), offset: BESIDE, text: sized(wall.height.right, style) }];
}

function refusedShapes(span: WallSpan, refused: string | null): readonly Shape[] {
  return span.wall.openings
    .filter(({ id }) => id === refused)
    .flatMap(({ from, to, sill, head }) => placesOf([span], span.wall.id, from, to).map((place): Shape => ({ kind: 'polygon', points: areaBetween(place, above(head), above(sill)), pen: 'stop', fill: 'none' })));
}

function guideShape(span: WallSpan, { kind, at }: Guide): Shape {
  const [from, to] = kind === 'along' ? [{ x: at, y: -ceilingAt(span, at) }, { x: at, y: -floorAt(span, at) }] : [span.from, span.to].map((x) => ({ x, y: -(floorAt(span, x) + at) })) as [DrawnPoint, DrawnPoint];
  return { kind: 'line', from, to, pen: 'guide' };
}

function handleShape(span: WallSpan, { along, up }: WallSpot): Shape {
  // Where the edge is, also where a sloping ceiling hides it.
  const [x, y] = [along, -(floorAt(span, along) + up)];
  const corner = (right: number, down: number) => ({ x, y, right: right * HANDLE, down: down * HANDLE });
  return { kind: 'polygon', points: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], pen: 'struck', fill: 'paper' };
}
