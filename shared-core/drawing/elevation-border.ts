import type { Border, HungBand, Lining } from '../house/index.ts';
import type { BorderLayout, BorderLength, PencilMarks } from '../setting-out/index.ts';
import { type LengthStyle, lengthOf, showLength } from '../units/index.ts';
import { motifAlong, motifOfBorder } from './motif.ts';
import { pictureAlong, tileOf } from './picture.ts';
import { areaBetween, below, ceilingAt, type Edge, floorAt, level, placesOf, spansAlong, topOfBand, type WallSpan } from './spans.ts';
import type { Shape, Subject } from './shapes.ts';
import { wallsNamed } from './words.ts';
import { say, sayList } from '../words/index.ts';

export interface BorderToDraw {
  readonly layout: BorderLayout;
  readonly band: Pick<HungBand, 'id' | 'to'>;
  /** Lining that hangs across is drawn alike, each length at its own height. */
  readonly covering: Border | Lining;
  /** As it is called on the order. */
  readonly coveringName: string;
}

/** A border's lengths on an elevation's walls: their areas, picture or motif, ends and joints. */
export function borderShapes(border: BorderToDraw, spans: readonly WallSpan[], style: LengthStyle, parts: { readonly hasPattern: boolean; readonly hasPicture: boolean }): readonly Shape[] {
  const { covering } = border;
  const tile = parts.hasPattern && parts.hasPicture ? tileOf(covering) : null;
  const motif = parts.hasPattern && !tile ? motifOfBorder(covering) : null;
  return border.layout.lengths.flatMap((length): Shape[] => {
    const subject = lengthSubject(border, length, style);
    const areas = areasAlong(border, spans, length);
    const ends = [length.from, length.to].flatMap((position) => crossing(border, spans, length, position).map((ends): Shape => ({ kind: 'line', ...ends, pen: 'thin', subject })));
    return [
      ...areas.map(({ points }): Shape => ({ kind: 'polygon', points, pen: 'none', fill: 'pattern', subject })),
      ...(tile && covering.kind === 'border' ? areas.map(({ points, offset }) => pictureAlong(tile, covering, firstRepeat(length) + offset, points)) : []),
      ...(motif
        ? areas.map(({ points, place, offset }): Shape => ({ kind: 'strokes', lines: motifAlong(motif, firstRepeat(length) + offset, points), pen: 'motif', spacing: Math.min(motif.width, motif.repeat, place.to - place.from) }))
        : []),
      ...areas.flatMap(({ points }): Shape[] => [
        { kind: 'line', from: points[0]!, to: points[1]!, pen: 'thin' },
        { kind: 'line', from: points[3]!, to: points[2]!, pen: 'thin' },
      ]),
      ...ends,
      ...jointsOf(length).flatMap((position) =>
        crossing(border, spans, length, position).map((ends): Shape => ({
          kind: 'line',
          ...ends,
          pen: 'hidden',
          subject: { kind: 'joint', id: `${border.band.id} ${position}`, says: say`Joint in length ${length.number + 1} of ${border.coveringName}, pattern matched: one spool does not surely give its whole length.` },
        })),
      ),
    ];
  });
}

/** The lengths' numbers, from 1, and which of them take two people. */
export function borderRings(border: BorderToDraw, spans: readonly WallSpan[], style: LengthStyle): readonly Shape[] {
  return border.layout.lengths.flatMap((length): readonly Shape[] => {
    const widest = areasAlong(border, spans, length).toSorted((one, other) => other.place.to - other.place.from - (one.place.to - one.place.from))[0];
    if (!widest) return [];
    const [at, subject] = [middleOf(widest.points), lengthSubject(border, length, style)];
    const isLining = border.covering.kind === 'lining';
    return [
      { kind: 'ring', at, number: length.number + 1, isFixed: isLining, subject },
      ...(length.needsTwo && !isLining ? [{ kind: 'text' as const, at: { ...at, right: 1.3, down: 1.6 }, anchor: 'start' as const, height: 'mark' as const, text: say`two people`, pen: 'thin' as const, subject }] : []),
    ];
  });
}

/** How long a pencil mark is drawn. */
const PENCIL_TICK = 0.35;

/** The pencil marks of a border, a short tick each, spread evenly over the wall. */
export function pencilShapes(spans: readonly WallSpan[], marks: readonly PencilMarks[], style: LengthStyle): readonly Shape[] {
  return marks.flatMap(({ wall, from, distance, at }) =>
    spans
      .filter((span) => span.wall.id === wall)
      .flatMap((span) => {
        const away = showLength(distance, style);
        const says = from === 'floor' ? say`Pencil marks on wall ${wall}: ${at.length}, ${away} up from the floor, light, hidden once the border hangs.` : say`Pencil marks on wall ${wall}: ${at.length}, ${away} down from the ceiling, light, hidden once the border hangs.`;
        const subject: Subject = { kind: 'mark', id: `${wall} ${span.from}`, says };
        return at
          .map((place) => span.shift + place)
          .filter((x) => x >= span.from && x <= span.to)
          .map((x): Shape => {
            const y = from === 'floor' ? -(floorAt(span, x) + distance) : distance - ceilingAt(span, x);
            return { kind: 'line', from: { x, y, down: -PENCIL_TICK }, to: { x, y, down: PENCIL_TICK }, pen: 'visible', subject };
          });
      }),
  );
}

/** What a border covers of the elevation's walls, and how far each place there stands from its own axis. */
function areasAlong(border: BorderToDraw, spans: readonly WallSpan[], length: BorderLength) {
  const { top, bottom } = edgesOf(border, length);
  return spansAlong(border.layout.axis, length.from, length.to).flatMap((own) =>
    placesOf(spans, own.wall.id, own.from - own.shift, own.to - own.shift).map((place) => ({
      place,
      offset: place.shift - own.shift,
      points: areaBetween(place, top, bottom),
    })),
  );
}

function edgesOf({ band, covering, layout }: BorderToDraw, { pieces }: BorderLength): { readonly top: Edge; readonly bottom: Edge } {
  if (covering.kind === 'lining' && pieces[0]) return { top: level(pieces[0].top), bottom: level(pieces[0].bottom) };
  const top = layout.levelTop === null ? topOfBand(band) : level(layout.levelTop);
  return { top, bottom: below(top, covering.width.length) };
}

function crossing(border: BorderToDraw, spans: readonly WallSpan[], length: BorderLength, position: number) {
  const { axis } = border.layout;
  const own = spansAlong(axis, position - 1, position + 1)[0];
  if (!own) return [];
  const { top, bottom } = edgesOf(border, length);
  return spans
    .filter(({ wall, from, to, shift }) => wall.id === own.wall.id && shift + position - own.shift >= from && shift + position - own.shift <= to)
    .map((span) => {
      const x = span.shift + position - own.shift;
      return { from: { x, y: -top(span, x) }, to: { x, y: -bottom(span, x) } };
    });
}

/** The allowance that a length was given at each end, and each joint twice, read back from what is cut for it. */
function allowanceOf({ pieces, from, to }: BorderLength): number {
  return (pieces.reduce((sum, { length }) => sum + length, 0) - (to - from)) / (2 * pieces.length);
}

/** Where a length's pieces meet: the middle of each lap. */
function jointsOf(length: BorderLength): readonly number[] {
  const allowance = allowanceOf(length);
  let at = length.from - allowance;
  return length.pieces.slice(0, -1).map((piece) => {
    at += piece.length - 2 * allowance;
    return at + allowance;
  });
}

/** A position of the border's axis at which a repeat begins, by the phase of the length's first piece. */
function firstRepeat(length: BorderLength): number {
  return length.from - allowanceOf(length) - (length.pieces[0]?.phase ?? 0);
}

function middleOf(points: readonly { readonly x: number; readonly y: number }[]) {
  return {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
}

function lengthSubject({ coveringName, layout, band }: BorderToDraw, length: BorderLength, style: LengthStyle): Subject {
  const walls = [...new Set(spansAlong(layout.axis, length.from, length.to).map(({ wall }) => wall.id))];
  const run = showLength(lengthOf(length.to - length.from), style);
  const pieces = length.pieces.map(({ label, length: cut }) => say`${label} of ${showLength(cut, style)}`);
  const cut = length.pieces.length > 1 ? say`joined from ${length.pieces.length} pieces, ${sayList(pieces)}` : say`cut as ${sayList(pieces)}`;
  return {
    kind: 'border-length',
    id: `${band.id} ${length.number}`,
    says: [say`Length ${length.number + 1} of ${coveringName} on ${wallsNamed(walls)}: ${run} of wall, ${cut}.`, ...(length.needsTwo ? [say`Two people.`] : [])].join(' '),
  };
}
