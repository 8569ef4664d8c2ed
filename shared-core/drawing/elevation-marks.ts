import type { Mismatch, StretchLayout } from '../setting-out/index.ts';
import { type LengthStyle, UNITS_PER_METRE } from '../units/index.ts';
import { BELOW_FLOOR } from './elevation-walls.ts';
import { between } from './geometry.ts';
import { ceilingAt, type Edge, floorAt, type StretchPart, type WallSpan, within } from './spans.ts';
import type { Shape, Subject } from './shapes.ts';
import { hangFromStart, mismatchNoted, mismatchSaid, placeNamed } from './words.ts';
import { say } from '../words/index.ts';

/** What the signs of a stretch need to know, whether strips or lengths hang on it. */
export interface Hanging {
  readonly grid: Pick<StretchLayout['grid'], 'from' | 'to' | 'direction' | 'origin' | 'lappedEnd'>;
  readonly start: StretchLayout['start'];
  readonly kill: StretchLayout['kill'];
  readonly mismatch: Mismatch | null;
  readonly hasPattern: boolean;
  /** What of the wall the covering covers. */
  readonly top: Edge;
  readonly bottom: Edge;
  /** Where on the axis the first line is struck. */
  readonly startsAt: number;
  /** The strip or length that hangs first. */
  readonly first: StretchPart | undefined;
  /** What of the axis is drawn. */
  readonly part: StretchPart;
  readonly isBorder: boolean;
}

/** How far up the band the lozenge stands: under the numbers at eye height, clear of those over a door. */
const LOZENGE_AT = 0.38;

/** At which end of the elevation the last joint is drawn: the end that the hanging comes to last. */
export function killSide({ grid }: Pick<Hanging, 'grid'>): 'left' | 'right' {
  return grid.direction === 'left' ? 'left' : 'right';
}

/** Whether the first line is struck on what is drawn; where two drawings meet in it, on that which has what hangs first. */
function hasStart({ startsAt, first, part }: Hanging): boolean {
  return part.from <= startsAt && startsAt <= part.to && (first === undefined || within([first], part).length > 0);
}

/** Whether the last joint stands on what is drawn. */
export function hasKill(hanging: Hanging): boolean {
  const { kill, mismatch, part, grid } = hanging;
  return kill !== null && mismatch !== null && (killSide(hanging) === 'left' ? part.from <= grid.from : part.to >= grid.to);
}

/** The start line, the arrow of direction and the kill point. */
export function markShapes(spans: readonly WallSpan[], hanging: Hanging, style: LengthStyle): readonly Shape[] {
  return [...startShapes(spans, hanging, style), ...directionShapes(spans, hanging), ...killShapes(spans, hanging, style)];
}

function spanAt(spans: readonly WallSpan[], x: number): WallSpan | null {
  return spans.find(({ from, to }) => from <= x && x <= to) ?? spans.find(({ from }) => from >= x) ?? spans.at(-1) ?? null;
}

function startShapes(spans: readonly WallSpan[], hanging: Hanging, style: LengthStyle): readonly Shape[] {
  const { startsAt: x, start, isBorder } = hanging;
  const span = spanAt(spans, x);
  if (!span || !hasStart(hanging)) return [];
  const [first, last] = [spans[0]!.from, spans.at(-1)!.to];
  const [ceiling, floor] = [-ceilingAt(span, x), -floorAt(span, x)];
  const subject: Subject = {
    kind: 'start',
    id: 'start',
    says: isBorder ? say`Start: the first length begins ${placeNamed(start, style)}.` : say`Start: strike the first line ${placeNamed(start, style)}; strip 0 hangs on it.`,
  };
  const anchor = x - first < (last - first) / 20 ? 'start' : last - x < (last - first) / 20 ? 'end' : 'middle';
  return [
    { kind: 'line', from: { x, y: ceiling, down: -0.5 }, to: { x, y: floor, down: -1.1 }, pen: 'struck', subject },
    { kind: 'sign', sign: 'bob', at: { x, y: floor, down: -1.1 }, turn: 0, pen: 'struck', subject },
    { kind: 'text', at: { x, y: ceiling, down: -1.1, right: anchor === 'start' ? -0.2 : anchor === 'end' ? 0.2 : 0 }, anchor, height: 'mark', text: say`start`, pen: 'struck', mayMove: -2, isNeeded: true, subject },
  ];
}

/** From the start, or from that end of what is drawn that is hung first. */
function directionShapes(spans: readonly WallSpan[], { startsAt, grid }: Hanging): readonly Shape[] {
  const [first, last] = [spans[0]?.from ?? 0, spans.at(-1)?.to ?? 0];
  const x = Math.min(last, Math.max(first, startsAt));
  const span = spanAt(spans, x);
  if (!span) return [];
  const y = -Math.min(...spans.flatMap((each) => [floorAt(each, each.from), floorAt(each, each.to)]));
  const says = grid.direction === 'both' ? say`Hang both ways from the start until the two ends meet.` : hangFromStart(grid.direction);
  const subject: Subject = { kind: 'direction', id: 'direction', says };
  const arrow = (end: number): Shape[] =>
    Math.abs(end - x) < UNITS_PER_METRE / 20
      ? []
      : [{ kind: 'line', from: { x, y, down: BELOW_FLOOR.arrow }, to: { x: end, y, down: BELOW_FLOOR.arrow }, pen: 'struck', hasArrow: true, subject }];
  return [
    ...(grid.direction === 'left' ? [] : arrow(Math.min(last, x + UNITS_PER_METRE))),
    ...(grid.direction === 'right' ? [] : arrow(Math.max(first, x - UNITS_PER_METRE))),
  ];
}

function killShapes(spans: readonly WallSpan[], hanging: Hanging, style: LengthStyle): readonly Shape[] {
  const { kill, mismatch, hasPattern, grid } = hanging;
  const side = killSide(hanging);
  const span = side === 'left' ? spans[0] : spans.at(-1);
  if (!kill || !mismatch || !span || !hasKill(hanging)) return [];
  const x = side === 'left' ? grid.from : grid.to;
  const place = kill.at === 0 && grid.lappedEnd ? say`in the inside corner ${placeNamed(kill, style)}` : placeNamed(kill, style);
  const across = mismatchSaid(mismatch, hasPattern, style);
  const says = [
    hanging.isBorder ? say`Kill point ${place}, where the last length meets the first: ${across}.` : say`Kill point ${place}, where the last strip meets the first: ${across}.`,
    ...(grid.lappedEnd && !hanging.isBorder ? [say`The last strip laps the first in that corner.`] : []),
  ];
  const subject: Subject = {
    kind: 'kill',
    id: 'kill',
    says: says.join(' '),
  };
  const y = -between(hanging.bottom(span, x), hanging.top(span, x), hanging.isBorder ? 0.5 : LOZENGE_AT);
  const notes = mismatchNoted(mismatch, hasPattern, style);
  return [
    { kind: 'sign', sign: 'lozenge', at: { x, y }, turn: 0, pen: 'cut', subject },
    ...notes.map((text, index): Shape => ({
      kind: 'text',
      at: { x, y, right: side === 'left' ? -1.1 : 1.1, down: (index - (notes.length - 1) / 2) * 1.2 },
      anchor: side === 'left' ? 'end' : 'start',
      height: 'mark',
      text,
      pen: 'cut',
      isNeeded: true,
      subject,
    })),
  ];
}

export const killWords = (hanging: Hanging, style: LengthStyle): string =>
  hanging.kill && hanging.mismatch ? say`At the kill point, ${placeNamed(hanging.kill, style)}, ${mismatchSaid(hanging.mismatch, hanging.hasPattern, style)}.` : say`The stretch is open, so no pattern has to meet.`;
