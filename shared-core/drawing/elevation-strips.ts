import type { HungBand, Lining, Mural, Wallcovering } from '../house/index.ts';
import type { StretchLayout, Strip } from '../setting-out/index.ts';
import { type LengthStyle, showLength, UNITS_PER_MILLIMETRE } from '../units/index.ts';
import { type Motif, motifOf, motifOnPiece } from './motif.ts';
import { pictureOnPiece, tileLeft, tileOf } from './picture.ts';
import { above, areaBetween, bottomOfBand, type Edge, floorAt, freeParts, level, partOfSpan, topOfBand, type WallSpan } from './spans.ts';
import type { DrawnPoint, Shape, Subject } from './shapes.ts';
import { placeNamed, signed } from './words.ts';
import { say, sayList } from '../words/index.ts';

/** Where the strips' numbers stand: 1.5 m above the floor. */
const EYE_HEIGHT = 1500 * UNITS_PER_MILLIMETRE;

export interface StripsToDraw {
  readonly layout: StretchLayout;
  readonly band: Pick<HungBand, 'from' | 'to'>;
  readonly covering: Wallcovering | Lining | Mural;
  readonly spans: readonly WallSpan[];
  readonly style: LengthStyle;
  readonly hasPattern: boolean;
  /** Whether the covering has a picture of one repeat, hung in place of our motif. */
  readonly hasPicture: boolean;
}

/** What hangs on the walls: the strips' areas, the picture or the motif, the seams. */
export function stripShapes(strips: StripsToDraw): readonly Shape[] {
  const drawn = strips.layout.strips.map((strip) => ({ strip, subject: stripSubject(strip, strips.style), areas: areasOf(strip, strips) }));
  return [
    ...drawn.flatMap(({ areas, subject }) => areas.map(({ points }): Shape => ({ kind: 'polygon', points, pen: 'none', fill: 'pattern', subject }))),
    ...patternShapes(drawn, strips),
    ...drawn.flatMap(({ areas, subject }) => areas.filter(({ piece }) => piece.part !== 'full').map(({ points }): Shape => ({ kind: 'polygon', points, pen: 'thin', fill: 'none', subject }))),
    ...seamShapes(strips),
  ];
}

/** Where each piece is cut from, by its label. */
export type RollsOfPieces = ReadonlyMap<string, { readonly number: number; readonly isOffcut: boolean }>;

/** The roll's number on each strip's foot, and a corner off what comes from an offcut. */
export function rollShapes(strips: StripsToDraw, rolls: RollsOfPieces): readonly Shape[] {
  return strips.layout.strips.flatMap((strip): readonly Shape[] => {
    const subject = stripSubject(strip, strips.style);
    const areas = areasOf(strip, strips).flatMap((area) => {
      const roll = rolls.get(area.piece.label);
      return roll ? [{ ...area, roll }] : [];
    });
    const lowest = areas.toSorted((one, other) => one.piece.bottom - other.piece.bottom || sizeOf(other) - sizeOf(one))[0];
    return [
      ...areas.filter(({ roll, piece }, index) => roll.isOffcut && areas.findLastIndex((other) => other.piece === piece) === index).map(({ points }): Shape => {
        const [left, corner] = [points[0]!, points[1]!];
        const slope = corner.x === left.x ? 0 : (left.y - corner.y) / (corner.x - left.x);
        return { kind: 'polygon', points: [corner, { ...corner, right: -0.8, down: 0.8 * slope }, { ...corner, down: 0.8 }], pen: 'thin', fill: 'wall', subject };
      }),
      ...(lowest ? [{ kind: 'tab' as const, at: footOf(lowest), strip: strip.number, roll: lowest.roll.number, subject }] : []),
    ];
  });
}

/** The middle of a piece's foot, clear of openings that stand on it. */
function footOf({ span, bottom }: PieceArea): DrawnPoint {
  const just = bottom(span, (span.from + span.to) / 2) + 1;
  const free = freeParts(span, just)[0] ?? span;
  const x = (free.from + free.to) / 2;
  return { x, y: -bottom(span, x) };
}

/** The strips' numbers, painted last; one for each strip. */
export function ringShapes(strips: StripsToDraw): readonly Shape[] {
  return strips.layout.strips.flatMap((strip): Shape[] => {
    const at = ringPlace(strip, strips);
    return at ? [{ kind: 'ring', at, number: strip.number, subject: stripSubject(strip, strips.style) }] : [];
  });
}

interface PieceArea {
  readonly piece: Strip['pieces'][number];
  readonly span: WallSpan;
  readonly top: Edge;
  readonly bottom: Edge;
  readonly points: readonly DrawnPoint[];
}

/** What a strip covers on each wall; a strip cut above and below an opening has an area for each of the two. */
function areasOf(strip: Strip, { band, spans }: StripsToDraw): readonly PieceArea[] {
  const [top, bottom] = [topOfBand(band), bottomOfBand(band)];
  return spans.flatMap((whole) => {
    const span = partOfSpan(whole, strip.from, strip.to);
    if (!span) return [];
    return strip.pieces.filter(({ part }) => part !== 'side' && part !== 'patch').map((piece): PieceArea => {
      const upper = piece.part === 'full' || piece.part === 'above' ? top : level(piece.top);
      const lower = piece.part === 'full' || piece.part === 'below' ? bottom : level(piece.bottom);
      return { piece, span, top: upper, bottom: lower, points: areaBetween(span, upper, lower) };
    });
  });
}

interface DrawnStrip {
  readonly strip: Strip;
  readonly areas: readonly PieceArea[];
}

function patternShapes(drawn: readonly DrawnStrip[], strips: StripsToDraw): readonly Shape[] {
  if (!strips.hasPattern) return [];
  const { covering, layout } = strips;
  const tile = strips.hasPicture ? tileOf(covering) : null;
  if (tile && covering.kind === 'wallcovering') {
    return drawn.flatMap(({ strip, areas }) =>
      strip.pieces
        .map((piece) => ({ piece, points: areas.filter((area) => area.piece === piece).map((area) => area.points) }))
        .filter(({ points }) => points.length > 0)
        .map(({ piece, points }) => pictureOnPiece(tile, covering, tileLeft(tile, covering, layout, strip), piece, points)),
    );
  }
  const motif = motifOf(covering);
  return motif && covering.kind === 'wallcovering' ? [motifShape(motif, drawn, covering, layout)] : [];
}

function motifShape(motif: Motif, drawn: readonly DrawnStrip[], covering: Wallcovering, layout: StretchLayout): Shape {
  const lines = drawn.flatMap(({ strip, areas }) =>
    areas.flatMap(({ piece, points }) => motifOnPiece(motif, tileLeft({ width: motif.width, height: motif.repeat }, covering, layout, strip), piece, points)),
  );
  return { kind: 'strokes', lines, pen: 'motif', spacing: Math.min(motif.repeat, motif.width) };
}

function seamShapes({ layout, band, spans, style }: StripsToDraw): readonly Shape[] {
  const [top, bottom] = [topOfBand(band), bottomOfBand(band)];
  return layout.strips.slice(1).flatMap((strip, index): Shape[] => {
    const before = layout.strips[index]!;
    const span = spans.find(({ from, to }) => from < strip.from && strip.from < to);
    if (!span) return [];
    const [x, place] = [strip.from, { wall: span.wall.id, at: strip.from - span.shift }];
    const subject: Subject = {
      kind: 'seam',
      id: `${strip.number}`,
      says: say`Seam of strips ${signed(before.number)} and ${signed(strip.number)}, ${placeNamed(place as typeof layout.start, style)}.`,
    };
    return gapsIn(span, x, { top, bottom }).map(({ upper, lower }) => ({ kind: 'line', from: { x, y: -upper }, to: { x, y: -lower }, pen: 'thin', subject }));
  });
}

/** What openings leave of the wall at a position, from the top down. */
function gapsIn(span: WallSpan, x: number, band: { readonly top: Edge; readonly bottom: Edge }): readonly { readonly upper: number; readonly lower: number }[] {
  const [highest, lowest] = [band.top(span, x), band.bottom(span, x)];
  return span.wall.openings
    .filter(({ from, to }) => span.shift + from < x && x < span.shift + to)
    .reduce<readonly { readonly upper: number; readonly lower: number }[]>(
      (gaps, opening) => {
        const [head, sill] = [above(opening.head)(span, x), above(opening.sill)(span, x)];
        return gaps
          .flatMap(({ upper, lower }) => [
            { upper, lower: Math.max(head, lower) },
            { upper: Math.min(sill, upper), lower },
          ])
          .filter(({ upper, lower }) => upper > lower);
      },
      [{ upper: highest, lower: lowest }],
    );
}

/** The middle of what is seen of a strip at eye height; where that is an opening, the middle of its highest piece. */
function ringPlace(strip: Strip, strips: StripsToDraw): DrawnPoint | null {
  const areas = areasOf(strip, strips);
  const largest = areas.toSorted((one, other) => sizeOf(other) - sizeOf(one))[0];
  if (!largest) {
    const x = Math.max(strip.from, strips.spans[0]?.from ?? strip.from);
    const span = strips.spans.find(({ from, to }) => from <= x && x <= to);
    return span ? { x, y: -ringHeight(span, x, { top: topOfBand(strips.band), bottom: bottomOfBand(strips.band) }) } : null;
  }
  const { span } = largest;
  const middle = (span.from + span.to) / 2;
  const height = ringHeight(span, middle, largest);
  const free = freeParts(span, height)[0];
  return { x: free ? (free.from + free.to) / 2 : middle, y: -height };
}

const sizeOf = ({ span, points }: PieceArea) => (span.to - span.from) * (points[3]!.y - points[0]!.y + points[2]!.y - points[1]!.y);

function ringHeight(span: WallSpan, x: number, area: { readonly top: Edge; readonly bottom: Edge }): number {
  const [top, bottom, eye] = [area.top(span, x), area.bottom(span, x), floorAt(span, x) + EYE_HEIGHT];
  return bottom < eye && eye < top ? eye : (top + bottom) / 2;
}

/** A strip's own words: where it hangs, what is cut for it and why it is cut so. */
export function stripSubject(strip: Strip, style: LengthStyle): Subject {
  const show = (length: (typeof strip)['cutWidth']) => showLength(length, style);
  const walls = [...new Set(strip.parts.map(({ wall }) => wall))];
  const where = walls.length > 1 ? say`round the corner of walls ${sayList(walls)}` : say`on wall ${walls[0]!}`;
  const pieces = strip.pieces.map(({ label, length }) => say`${label} of ${show(length)}`);
  const [number, width, cut] = [signed(strip.number), show(strip.cutWidth), pieces.length === 0 ? say`nothing to cut` : sayList(pieces)];
  const isLapped = strip.cutWidth > strip.to - strip.from;
  const sentences = [
    isLapped ? say`Strip ${number} ${where}, cut ${width} wide: ${cut}.` : say`Strip ${number} ${where}, ${width} wide: ${cut}.`,
    ...(isLapped ? [say`It is cut wider to lap in the corner at the kill point.`] : []),
    ...(strip.pieces.some(({ part }) => part === 'above' || part === 'below' || part === 'between') ? [say`The opening holds its whole width.`] : []),
    ...(strip.pieces.some(({ part }) => part === 'side' || part === 'patch') ? [say`It stands beside a covered reveal.`] : []),
    ...(strip.pieces.some(({ isTurned }) => isTurned) ? [say`It hangs upside down.`] : []),
  ];
  return { kind: 'strip', id: `${strip.number}`, says: sentences.join(' ') };
}
