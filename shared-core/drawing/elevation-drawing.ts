import type { Border, HungBand, Lining, Mural, Room, Wallcovering } from '../house/index.ts';
import { matchOf } from '../house/index.ts';
import type { BorderLayout, StretchLayout } from '../setting-out/index.ts';
import { type LengthStyle, showLength } from '../units/index.ts';
import { borderRings, borderShapes, type BorderToDraw, pencilShapes } from './elevation-border.ts';
import { hasKill, type Hanging, killSide, killWords, markShapes } from './elevation-marks.ts';
import { sliverShapes } from './elevation-slivers.ts';
import { ringShapes, rollShapes, type RollsOfPieces, stripShapes, type StripsToDraw } from './elevation-strips.ts';
import { dimensionsBelow, dimensionShapes, edgeShapes, type Ends, openingShapes, wallShapes } from './elevation-walls.ts';
import { boundsOf } from './geometry.ts';
import { roomShapes } from './room-shapes.ts';
import type { Bounds, Drawing, Shape, Subject } from './shapes.ts';
import { areaBetween, below, bottomOfBand, ceilingAt, floorAt, freeParts, level, positionOf, spansAlong, type StretchPart, topOfBand, type WallSpan, within } from './spans.ts';
import { textWidth } from './text-size.ts';
import { mismatchNoted, placeNamed, signed, stripsCounted, wallsNamed } from './words.ts';
import { say } from '../words/index.ts';

/** What of a room an elevation shows. */
export type DrawnRoom = Pick<Room, 'name' | 'rails' | 'furniture'>;

export interface OtherBand {
  readonly band: Pick<HungBand, 'id' | 'walls' | 'from' | 'to'>;
  readonly coveringName: string;
}

/** One stretch of a band, with what the drawing says of it. */
export interface ElevationFacts {
  readonly room: DrawnRoom;
  readonly band: HungBand;
  readonly covering: Wallcovering | Lining | Mural;
  /** As it is called on the order. */
  readonly coveringName: string;
  readonly stretch: StretchLayout;
  /** Borders that hang on the same walls. */
  readonly borders?: readonly BorderToDraw[];
  /** Other bands of the room, drawn plain with what they are called. */
  readonly others?: readonly OtherBand[];
  /** Where the pieces are cut from; not drawn where it is not known. */
  readonly rolls?: RollsOfPieces;
}

export interface BorderElevationFacts {
  readonly room: DrawnRoom;
  readonly band: HungBand;
  readonly covering: Border | Lining;
  readonly coveringName: string;
  readonly stretch: BorderLayout;
  /** Bands of strips on the same walls, drawn plain with what they are called. */
  readonly others?: readonly OtherBand[];
}

const THUMB_MARGIN: Bounds = { left: 1, top: 0.5, right: 1, bottom: 1.5 };

export interface ElevationOptions {
  /** The pattern at true scale and phase; drawn unless it is false. */
  readonly hasPattern?: boolean;
  /** The coverings with a picture of one repeat, which is then hung in place of our motif. */
  readonly pictures?: ReadonlySet<string>;
  /** What of the stretch is drawn, all of it unless a part is named; what stands over its ends is drawn cut there. */
  readonly part?: StretchPart;
  /** A small picture among others, without words and dimensions. */
  readonly isThumb?: boolean;
}

/**
 * Draws a stretch of strips as the room's walls unrolled, from kill point to kill point.
 *
 * Shapes: lengths in units along the stretch's own axis, heights upwards as negative y, from the room's level datum.
 * Walls stand side by side with their floor lines, raked ceilings, corners and openings; strips with seams, pieces
 * over and under openings, a ring with the strip's number 1.5 m above the floor, the picture or motif where each
 * piece's phase puts it; start line, direction, slivers and kill point; dimensions. Everything but dimensions belongs to a subject.
 * Example: walls of 12' 4", 10' 2", 12' 4", 10' 2" hung with strips of 20 1/2 in from the left of A give 27 rings, 26
 * seams, the start line at the left end and the lozenge of the kill point, 7 3/8 in over, at the right end.
 */
export function drawElevation(facts: ElevationFacts, style: LengthStyle, options: ElevationOptions = {}): Drawing {
  const { room, band, covering, coveringName, borders = [], others = [], rolls } = facts;
  const { grid, axis } = facts.stretch;
  const part = options.part ?? grid;
  const spans = spansAlong(axis, part.from, part.to);
  const stretch: StretchLayout = { ...facts.stretch, strips: within(facts.stretch.strips, part) };
  const hasPattern = options.hasPattern ?? true;
  const hasPicture = (id: string) => options.pictures?.has(id) ?? false;
  const strips: StripsToDraw = { layout: stretch, band, covering, spans, style, hasPattern, hasPicture: hasPicture(covering.id) };
  const hanging: Hanging = {
    ...stretch,
    hasPattern: covering.kind === 'wallcovering' && matchOf(covering) !== 'free',
    top: topOfBand(band),
    bottom: bottomOfBand(band),
    startsAt: Math.min(grid.to, Math.max(grid.from, grid.struck)),
    first: facts.stretch.strips.find(({ number }) => number === 0),
    part,
    isBorder: false,
  };
  const shapes: readonly Shape[] = [
    ...wallShapes(spans, style),
    ...others.flatMap((other) => otherShapes(spans, other)),
    ...stripShapes(strips),
    ...bandEdgeShapes(spans, band),
    ...borders.flatMap((border) => borderShapes(border, spans, style, { hasPattern, hasPicture: hasPicture(border.covering.id) })),
    ...openingShapes(spans, style),
    ...roomShapes(spans, room, style),
    ...edgeShapes(spans, endsOf(hanging, axis.isClosed)),
    ...(options.isThumb ? [] : [...dimensionShapes(spans, hanging, otherSide(killSide(hanging)), style), ...sliverShapes(spans, stretch, hanging, style)]),
    ...levelLineShapes(spans, band, style),
    ...ringShapes(strips),
    ...(rolls ? rollShapes(strips, rolls) : []),
    ...markShapes(spans, hanging, style),
  ];
  const drawing = elevation(shapes, spans, hanging, style, describeStrips(room, coveringName, stretch, spans, hanging, style));
  return options.isThumb ? { ...drawing, margin: THUMB_MARGIN, scaleBar: null } : drawing;
}

/**
 * Draws a stretch of a border in the same manner: its lengths with their ends and joints, numbered from 1.
 *
 * Example: a border round four walls gives four lengths; one on walls of 12' 4" from spools of 15 ft that may begin
 * anywhere in a repeat of 20 1/2 in is in one piece, as 12' 6" is less than 13' 3 1/2".
 */
export function drawBorder(facts: BorderElevationFacts, style: LengthStyle, options: ElevationOptions = {}): Drawing {
  const { room, band, covering, coveringName, stretch, others = [] } = facts;
  const { grid, axis } = stretch;
  const part = options.part ?? grid;
  const spans = spansAlong(axis, part.from, part.to);
  const top = stretch.levelTop === null ? topOfBand(band) : level(stretch.levelTop);
  const hanging: Hanging = {
    ...stretch,
    hasPattern: covering.kind === 'border' && covering.repeat.length > 0,
    top,
    bottom: covering.kind === 'border' ? below(top, covering.width.length) : bottomOfBand(band),
    startsAt: positionOf(spansAlong(axis, grid.from, grid.to), stretch.start) ?? grid.from,
    first: stretch.lengths.find(({ number }) => number === 0),
    part,
    isBorder: true,
  };
  const border: BorderToDraw = { layout: stretch, band, covering, coveringName };
  const shapes: readonly Shape[] = [
    ...wallShapes(spans, style),
    ...others.flatMap((other) => otherShapes(spans, other)),
    ...borderShapes(border, spans, style, { hasPattern: options.hasPattern ?? true, hasPicture: options.pictures?.has(covering.id) ?? false }),
    ...openingShapes(spans, style),
    ...roomShapes(spans, room, style),
    ...pencilShapes(spans, stretch.marks, style),
    ...edgeShapes(spans, endsOf(hanging, axis.isClosed)),
    ...dimensionShapes(spans, hanging, otherSide(killSide(hanging)), style),
    ...borderRings(border, spans, style),
    ...markShapes(spans, hanging, style),
  ];
  const walls = [...new Set(spans.map(({ wall }) => wall.id))];
  const count = within(stretch.lengths, part).length;
  const description = say`${room.name}, ${wallsNamed(walls)} unrolled: ${coveringName} in ${count === 1 ? say`${count} length` : say`${count} lengths`}, begun ${placeNamed(stretch.start, style)}. ${killWords(hanging, style)}`;
  return elevation(shapes, spans, hanging, style, description);
}

/** The edges of a band where it ends neither at the floor nor at the ceiling. */
function bandEdgeShapes(spans: readonly WallSpan[], band: HungBand): readonly Shape[] {
  const edges = [...(band.to === 'ceiling' ? [] : [topOfBand(band)]), ...(band.from === 'floor' ? [] : [bottomOfBand(band)])];
  return edges.flatMap((edge) => spans.map((span): Shape => ({ kind: 'line', from: { x: span.from, y: -edge(span, span.from) }, to: { x: span.to, y: -edge(span, span.to) }, pen: 'thin' })));
}

function otherShapes(spans: readonly WallSpan[], { band, coveringName }: OtherBand): readonly Shape[] {
  const [top, bottom] = [topOfBand(band), bottomOfBand(band)];
  return spans
    .filter(({ wall }) => band.walls.includes(wall.id))
    .flatMap((span): readonly Shape[] => {
      const subject: Subject = { kind: 'band', id: `${band.id} ${span.from}`, says: say`${coveringName} hangs here too, on wall ${span.wall.id}.` };
      const middle = (span.from + span.to) / 2;
      const height = (top(span, middle) + bottom(span, middle)) / 2;
      const free = freeParts(span, height)[0] ?? span;
      return [
        { kind: 'polygon', points: areaBetween(span, top, bottom), pen: 'thin', fill: 'pattern', subject },
        { kind: 'text', at: { x: (free.from + free.to) / 2, y: -height }, anchor: 'middle', height: 'mark', text: coveringName, pen: 'thin', within: free.to - free.from, subject },
      ];
    });
}

/** The line of a mural that has to be level, such as its horizon. */
function levelLineShapes(spans: readonly WallSpan[], { levelLine }: HungBand, style: LengthStyle): readonly Shape[] {
  const [first, last] = [spans[0], spans.at(-1)];
  if (!levelLine || !first || !last) return [];
  const y = -(floorAt(first, first.from) + levelLine.at.length);
  const subject: Subject = { kind: 'mark', id: 'level line', says: say`The mural's level line, ${showLength(levelLine.at.length, style)} up and ${showLength(levelLine.below.length, style)} below the mural's top. Strike it level before the first panel hangs.` };
  return [
    { kind: 'line', from: { x: first.from, y }, to: { x: last.to, y }, pen: 'centre', subject },
    { kind: 'text', at: { x: last.to, y, right: -0.4, down: -0.8 }, anchor: 'end', height: 'mark', text: say`level line`, pen: 'thin', subject },
  ];
}

/** Where an open stretch ends on what is drawn of it. */
function endsOf({ part, grid }: Hanging, isClosed: boolean): Ends {
  return { left: !isClosed && part.from <= grid.from, right: !isClosed && part.to >= grid.to };
}

function otherSide(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

function elevation(shapes: readonly Shape[], spans: readonly WallSpan[], hanging: Hanging, style: LengthStyle, description: string): Drawing {
  const killed = killSide(hanging);
  const notes = hanging.mismatch && hasKill(hanging) ? mismatchNoted(hanging.mismatch, hanging.hasPattern, style) : [];
  const [noted, dimensioned] = [Math.max(1.2, ...notes.map((note) => textWidth(note) + 1.6)), 4.8];
  const overCeiling = shapes.filter((shape) => shape.kind === 'text' && shape.mayMove !== undefined && shape.subject?.kind !== 'furniture');
  const margin: Bounds = {
    left: killed === 'left' ? noted : dimensioned,
    // Over the ceiling line stand the start's word, outside corners and the widths of slivers, a row each where they meet.
    top: overCeiling.length > 1 ? 4.2 : 2.6,
    right: killed === 'right' ? noted : dimensioned,
    bottom: dimensionsBelow(spans) + 3.4,
  };
  const bounds = boundsOf(spans.flatMap((span) => areaBetween(span, ceilingAt, floorAt)));
  return { shapes, bounds, margin, scaleBar: style, description };
}

function describeStrips({ name }: Pick<Room, 'name'>, coveringName: string, { strips, grid, start }: StretchLayout, spans: readonly WallSpan[], hanging: Hanging, style: LengthStyle): string {
  const walls = [...new Set(spans.map(({ wall }) => wall.id))];
  const [first, last] = [strips[0]?.number ?? 0, strips.at(-1)?.number ?? 0];
  const order = grid.direction === 'both' ? say`both ways` : grid.direction === 'left' ? say`to the left` : say`to the right`;
  return say`${name}, ${wallsNamed(walls)} unrolled: ${coveringName} in ${stripsCounted(strips.length)}, numbered ${signed(first)} to ${signed(last)}, hung ${order} from the line struck ${placeNamed(start, style)}. ${killWords(hanging, style)}`;
}
