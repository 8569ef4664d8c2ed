import { capital } from '../base/index.ts';
import type { Furniture, Rail, Room } from '../house/index.ts';
import { type LengthStyle, showLength, UNITS_PER_MILLIMETRE } from '../units/index.ts';
import { above, areaBetween, floorAt, placesOf, type WallSpan } from './spans.ts';
import type { DrawnPoint, Shape, Subject } from './shapes.ts';
import { say, sayList } from '../words/index.ts';

/** How far inside an opening the line of a covered side is drawn. */
const REVEAL_INSET = 24 * UNITS_PER_MILLIMETRE;

/** Rails along the walls, and the furniture that hides what hangs behind it. */
export function roomShapes(spans: readonly WallSpan[], room: Pick<Room, 'rails' | 'furniture'>, style: LengthStyle): readonly Shape[] {
  return [...room.rails.flatMap((rail) => railShapes(spans, rail, style)), ...room.furniture.flatMap((piece) => furnitureShapes(spans, piece, style))];
}

function railShapes(spans: readonly WallSpan[], rail: Rail, style: LengthStyle): readonly Shape[] {
  const [top, bottom] = [above(rail.at.length + rail.width.length), above(rail.at.length)];
  return spans
    .filter(({ wall }) => rail.walls?.includes(wall.id) ?? true)
    .map((span): Shape => ({
      kind: 'polygon',
      points: areaBetween(span, top, bottom),
      pen: 'visible',
      fill: 'wall',
      subject: { kind: 'rail', id: `${rail.id} ${span.from}`, says: say`${capital(rail.name ?? rail.id)} on wall ${span.wall.id}, ${showLength(rail.at.length, style)} up and ${showLength(rail.width.length, style)} high.` },
    }));
}

function furnitureShapes(spans: readonly WallSpan[], piece: Furniture, style: LengthStyle): readonly Shape[] {
  const name = piece.name ?? piece.id;
  return placesOf(spans, piece.wall, piece.from.length, piece.from.length + piece.width.length).flatMap((place): readonly Shape[] => {
    const subject: Subject = { kind: 'furniture', id: `${piece.id} ${place.from}`, says: say`${capital(name)} before wall ${piece.wall}, ${showLength(piece.height.length, style)} high.` };
    const middle = (place.from + place.to) / 2;
    return [
      { kind: 'polygon', points: areaBetween(place, above(piece.height.length), floorAt), pen: 'hidden', fill: 'none', subject },
      { kind: 'text', at: { x: middle, y: -floorAt(place, middle), down: -0.9 }, anchor: 'middle', height: 'mark', text: name, pen: 'thin', within: place.to - place.from, mayMove: -2, subject },
    ];
  });
}

type SpanOpening = WallSpan['wall']['openings'][number];

/** A dashed line inside each side of an opening whose reveal is covered. */
export function revealShapes(area: readonly DrawnPoint[], { reveal }: SpanOpening): readonly Shape[] {
  if (!reveal) return [];
  const [topLeft, topRight, bottomRight, bottomLeft] = area as [DrawnPoint, DrawnPoint, DrawnPoint, DrawnPoint];
  const inset = Math.min(REVEAL_INSET, (topRight.x - topLeft.x) / 6);
  const [left, right, top, bottom] = [{ x: inset, y: 0 }, { x: -inset, y: 0 }, { x: 0, y: inset }, { x: 0, y: -inset }];
  const line = (from: DrawnPoint, to: DrawnPoint, by: DrawnPoint): Shape => ({ kind: 'line', from: { x: from.x + by.x, y: from.y + by.y }, to: { x: to.x + by.x, y: to.y + by.y }, pen: 'hidden' });
  return [
    ...(reveal.left ? [line(topLeft, bottomLeft, left)] : []),
    ...(reveal.right ? [line(topRight, bottomRight, right)] : []),
    ...(reveal.head ? [line(topLeft, topRight, top)] : []),
    ...(reveal.sill ? [line(bottomLeft, bottomRight, bottom)] : []),
  ];
}

/** `Its left side and head, 6" deep, are covered too.`, or nothing. */
export function revealSaid({ reveal }: SpanOpening, style: LengthStyle): readonly string[] {
  if (!reveal) return [];
  const sides = [reveal.left && say`left side`, reveal.right && say`right side`, reveal.head && say`head`, reveal.sill && say`sill`].filter((side) => side !== false);
  const [named, depth] = [sayList(sides), showLength(reveal.depth, style)];
  return [sides.length === 1 ? say`Its ${named}, ${depth} deep, is covered too.` : say`Its ${named}, ${depth} deep, are covered too.`];
}
