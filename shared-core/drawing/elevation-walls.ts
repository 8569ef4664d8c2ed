import { OPENING_WORDS } from '../house/index.ts';
import { type LengthStyle } from '../units/index.ts';
import { revealSaid, revealShapes } from './room-shapes.ts';
import { above, areaBetween, ceilingAt, floorAt, placesOf, type WallSpan } from './spans.ts';
import type { DrawnPoint, Fill, Shape, Subject } from './shapes.ts';
import { heightSaid, openingSaid, sized } from './words.ts';
import { say } from '../words/index.ts';

const HANDLE_RADIUS = 10_000;

/** Heights of text below the floor line: the arrow along the skirting, the walls' names, their dimensions. */
export const BELOW_FLOOR = { arrow: 0.7, names: 1.8, openings: 4, dimensions: 4, dimensionsUnderOpenings: 5.8 } as const;

/** How far below the floor line the walls' own dimensions stand: under those of openings, where there are any. */
export function dimensionsBelow(spans: readonly WallSpan[]): number {
  return spans.some(({ wall }) => wall.openings.length > 0) ? BELOW_FLOOR.dimensionsUnderOpenings : BELOW_FLOOR.dimensions;
}
/** Heights of text left of the drawing: the band's dimensions, the wall's. */
const BESIDE = { band: 1.6, wall: 3.6 } as const;

/** The bare walls, without their edges. */
export function wallShapes(spans: readonly WallSpan[], style: LengthStyle): readonly Shape[] {
  return spans.map((span) => ({
    kind: 'polygon',
    points: areaBetween(span, ceilingAt, floorAt),
    pen: 'none',
    fill: 'wall',
    subject: wallSubject(span, style),
  }));
}

function wallSubject({ wall, from, to }: WallSpan, style: LengthStyle): Subject {
  const [long, height] = [sized(wall.length, style), heightSaid(wall.height, style)];
  const says = to - from < wall.length ? say`Wall ${wall.id}, ${long} long, ${sized(to - from, style)} of it here, ${height}.` : say`Wall ${wall.id}, ${long} long, ${height}.`;
  return { kind: 'wall', id: `${wall.id} ${from}`, says };
}

/** Whether nothing goes on there, on the next wall or in another drawing. */
export interface Ends {
  readonly left: boolean;
  readonly right: boolean;
}

/** The edges of the walls: floor and ceiling cut, corners visible, ends that are no corners cut away. */
export function edgeShapes(spans: readonly WallSpan[], ends: Ends): readonly Shape[] {
  const edges = spans.flatMap((span): Shape[] => {
    const [topLeft, topRight, bottomRight, bottomLeft] = areaBetween(span, ceilingAt, floorAt) as [DrawnPoint, DrawnPoint, DrawnPoint, DrawnPoint];
    return [
      { kind: 'line', from: topLeft, to: topRight, pen: 'cut' },
      { kind: 'line', from: bottomLeft, to: bottomRight, pen: 'cut' },
    ];
  });
  const corners = spans.slice(1).flatMap((span, index) => cornerShapes(spans[index]!, span));
  return [...edges, ...corners, ...endShapes(spans, ends)];
}

function cornerShapes(before: WallSpan, after: WallSpan): readonly Shape[] {
  const kind = before.wall.cornerRight;
  const says =
    kind === 'straight'
      ? say`Walls ${before.wall.id} and ${after.wall.id} run straight on.`
      : kind === 'inside'
        ? say`Inside corner of walls ${before.wall.id} and ${after.wall.id}.`
        : say`Outside corner of walls ${before.wall.id} and ${after.wall.id}.`;
  const subject: Subject = { kind: 'corner', id: `${before.wall.id} ${after.wall.id}`, says };
  const x = (before.to + after.from) / 2;
  const top = Math.max(ceilingAt(before, before.to), ceilingAt(after, after.from));
  const bottom = Math.min(floorAt(before, before.to), floorAt(after, after.from));
  const line: Shape = { kind: 'line', from: { x, y: -top }, to: { x, y: -bottom }, pen: kind === 'straight' ? 'thin' : 'visible', subject };
  if (kind !== 'outside') return [line];
  return [line, { kind: 'text', at: { x, y: -top, down: -1 }, anchor: 'middle', height: 'mark', text: say`outside corner`, pen: 'thin', mayMove: -2, subject }];
}

function endShapes(spans: readonly WallSpan[], ends: Ends): readonly Shape[] {
  const [first, last] = [spans[0], spans.at(-1)];
  if (!first || !last) return [];
  const end = (span: WallSpan, x: number, isWhole: boolean, isEnd: boolean): Shape => ({
    kind: 'line',
    from: { x, y: -ceilingAt(span, x) },
    to: { x, y: -floorAt(span, x) },
    pen: isWhole ? (isEnd ? 'cut' : 'visible') : 'hidden',
  });
  return [end(first, first.from, first.from === first.shift, ends.left), end(last, last.to, last.to === last.shift + last.wall.length, ends.right)];
}

/** What interrupts the walls, over everything that hangs on them. */
export function openingShapes(spans: readonly WallSpan[], style: LengthStyle): readonly Shape[] {
  const walls = new Map(spans.map(({ wall }) => [wall.id, wall]));
  return [...walls.values()].flatMap((wall) =>
    wall.openings.flatMap((opening) =>
      placesOf(spans, wall.id, opening.from, opening.to).flatMap((place, index) => {
        // As the plan names it, wherever it stands; what the kill point parts is seen twice.
        const subject: Subject = { kind: 'opening', id: `${wall.id} ${opening.id}${index > 0 ? ` ${index}` : ''}`, says: [openingSaid(opening, wall.id, style), ...revealSaid(opening, style)].join(' ') };
        return openingDrawn(place, opening, subject);
      }),
    ),
  );
}

type SpanOpening = WallSpan['wall']['openings'][number];

function openingDrawn(place: WallSpan, opening: SpanOpening, subject: Subject): readonly Shape[] {
  const [top, bottom] = [above(opening.head), above(opening.sill)];
  const area = areaBetween(place, top, bottom);
  const middle = (place.from + place.to) / 2;
  const centre = { x: middle, y: -(top(place, middle) + bottom(place, middle)) / 2 };
  const fill: Fill = opening.kind === 'furniture' ? 'wall' : 'opening';
  return [
    { kind: 'polygon', points: area, pen: opening.kind === 'furniture' ? 'hidden' : 'visible', fill, subject },
    ...openingFigure(place, opening, area),
    ...revealShapes(area, opening),
    { kind: 'text', at: centre, anchor: 'middle', height: 'mark', text: OPENING_WORDS[opening.kind], pen: 'thin', within: place.to - place.from, subject },
  ];
}

/** Few strokes that tell one kind of opening from another; the word in it says the rest. */
function openingFigure(place: WallSpan, opening: SpanOpening, area: readonly DrawnPoint[]): readonly Shape[] {
  const [topLeft, topRight, bottomRight, bottomLeft] = area as [DrawnPoint, DrawnPoint, DrawnPoint, DrawnPoint];
  const width = place.to - place.from;
  const inset = Math.min(16_000, width / 8);
  const inner = (foot: number): Shape => ({
    kind: 'polyline',
    points: [
      { x: bottomLeft.x + inset, y: bottomLeft.y - foot },
      { x: topLeft.x + inset, y: topLeft.y + inset },
      { x: topRight.x - inset, y: topRight.y + inset },
      { x: bottomRight.x - inset, y: bottomRight.y - foot },
      ...(foot > 0 ? [{ x: bottomLeft.x + inset, y: bottomLeft.y - foot }] : []),
    ],
    pen: 'thin',
  });
  switch (opening.kind) {
    case 'door':
      return [
        inner(0),
        { kind: 'circle', centre: { x: topRight.x - 3 * inset, y: bottomRight.y - (bottomRight.y - topRight.y) * 0.36 }, radius: HANDLE_RADIUS, pen: 'thin', fill: 'none' },
      ];
    case 'window':
      return [inner(inset), { kind: 'line', from: { x: (topLeft.x + topRight.x) / 2, y: (topLeft.y + topRight.y) / 2 + inset }, to: { x: (bottomLeft.x + bottomRight.x) / 2, y: (bottomLeft.y + bottomRight.y) / 2 - inset }, pen: 'thin' }];
    case 'fireplace':
      return [inner(0)];
    case 'archway':
      return [
        { kind: 'line', from: topLeft, to: bottomRight, pen: 'centre' },
        { kind: 'line', from: bottomLeft, to: topRight, pen: 'centre' },
      ];
    default:
      return [{ kind: 'line', from: bottomLeft, to: topRight, pen: 'hidden' }];
  }
}

/** The walls' names and lengths below them, and the heights beside the end that the kill point leaves free. */
export function dimensionShapes(spans: readonly WallSpan[], band: BandEdges, side: 'left' | 'right', style: LengthStyle): readonly Shape[] {
  const [first, last] = [spans[0], spans.at(-1)];
  if (!first || !last) return [];
  const y = -Math.min(...spans.flatMap((span) => [floorAt(span, span.from), floorAt(span, span.to)]));
  const below = spans.flatMap((span): Shape[] => [
    { kind: 'text', at: { x: (span.from + span.to) / 2, y, down: BELOW_FLOOR.names }, anchor: 'middle', height: 'label', text: span.wall.id, pen: 'visible', subject: wallSubject(span, style) },
    ...openingDimensions(span, y, style),
    { kind: 'dimension', from: { x: span.from, y }, to: { x: span.to, y }, offset: dimensionsBelow(spans), text: sized(span.to - span.from, style) },
  ]);
  const [span, x] = side === 'left' ? [first, first.from] : [last, last.to];
  const upright = (low: number, high: number, offset: number): Shape[] =>
    high <= low
      ? []
      : [
          {
            kind: 'dimension',
            from: { x, y: side === 'left' ? -high : -low },
            to: { x, y: side === 'left' ? -low : -high },
            offset,
            text: sized(high - low, style),
          },
        ];
  const [floor, ceiling, bottom, top] = [floorAt(span, x), ceilingAt(span, x), band.bottom(span, x), band.top(span, x)];
  const isWhole = bottom === floor && top === ceiling;
  return [...below, ...(isWhole ? [] : [...upright(floor, bottom, BESIDE.band), ...upright(bottom, top, BESIDE.band)]), ...upright(floor, ceiling, isWhole ? BESIDE.band : BESIDE.wall)];
}

/** Where a wall's openings begin and end, in a chain along its foot, and how high they are, inside each. */
export function openingDimensions(span: WallSpan, y: number, style: LengthStyle, offset: number = BELOW_FLOOR.openings): readonly Shape[] {
  const places = span.wall.openings.flatMap((opening) => placesOf([span], span.wall.id, opening.from, opening.to).map((place) => ({ opening, place })));
  const edges = [...new Set([span.from, ...places.flatMap(({ place }) => [place.from, place.to]), span.to])].sort((one, other) => one - other);
  const chain = places.length === 0 ? [] : edges.slice(1).map((to, index): Shape => ({ kind: 'dimension', from: { x: edges[index]!, y }, to: { x: to, y }, offset, text: sized(to - edges[index]!, style) }));
  const heights = places.flatMap(({ opening, place }): readonly Shape[] => {
    const x = place.from;
    const [floor, sill, head] = [floorAt(place, x), above(opening.sill)(place, x), above(opening.head)(place, x)];
    const upright = (low: number, high: number): Shape => ({ kind: 'dimension', from: { x, y: -low }, to: { x, y: -high }, offset: 1.5, text: sized(high - low, style), isTight: true });
    return [...(sill > floor ? [upright(floor, sill)] : []), upright(sill, head)];
  });
  return [...chain, ...heights];
}

export interface BandEdges {
  readonly top: (span: WallSpan, position: number) => number;
  readonly bottom: (span: WallSpan, position: number) => number;
}
