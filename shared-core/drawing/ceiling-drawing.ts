import type { Room } from '../house/index.ts';
import type { CeilingLayout, CeilingStrip } from '../setting-out/index.ts';
import type { Outline } from '../survey/index.ts';
import { type LengthStyle, lengthOf, showLength } from '../units/index.ts';
import { boundsOf, pointAlong } from './geometry.ts';
import { faceOf } from './plan-walls.ts';
import { openingOnPlan } from './plan-openings.ts';
import type { Drawing, DrawnPoint, Shape, Subject } from './shapes.ts';
import { stripsCounted } from './words.ts';
import { say, sayList } from '../words/index.ts';

export interface CeilingFacts {
  readonly room: Room;
  readonly outline: Outline;
  readonly layout: CeilingLayout;
  /** As it is called on the order. */
  readonly coveringName: string;
  /** The rolls of its pieces by their labels, where they are known. */
  readonly rolls?: ReadonlyMap<string, { readonly number: number; readonly isOffcut: boolean }>;
}

/**
 * Draws a ceiling as it lies over the plan of its room, its strips numbered from the wall they run along.
 *
 * Shapes: units, y down the sheet as the outline gives it. The line that is struck for the first strip, the order of
 * hanging, seams, a ring with each strip's number, walls with their openings; a dimension of the first strip's width.
 * Example: a room of 4 m by 4 m from strips of 53 cm gives eight rings and seven seams.
 */
export function drawCeiling({ room, outline, layout, coveringName, rolls }: CeilingFacts, style: LengthStyle): Drawing {
  const bounds = boundsOf(outline.points);
  const span = Math.max(bounds.right - bounds.left, bounds.bottom - bounds.top);
  const faces = room.walls.map((wall, index) => faceOf(wall, outline.points[index]!, outline.points[index + 1]!, Math.max(32_000, span / 60)));
  const corners = outline.points.slice(0, -1).map((point) => seen(point, layout));
  const drawn = layout.strips.map((strip) => ({ strip, subject: stripSubject(strip, coveringName, rolls, style) }));
  const shapes: readonly Shape[] = [
    ...drawn.map(({ strip, subject }): Shape => ({ kind: 'polygon', points: within(corners, strip.from, strip.to).map((point) => sheet(point, layout)), pen: 'none', fill: 'pattern', subject })),
    ...layout.strips.slice(1).flatMap((strip) => across(corners, strip.from).map(([from, to]): Shape => ({ kind: 'line', from: sheet({ along: from, away: strip.from }, layout), to: sheet({ along: to, away: strip.from }, layout), pen: 'thin' }))),
    ...faces.flatMap((face): readonly Shape[] => [{ kind: 'line', from: face.from, to: face.to, pen: 'cut' }, ...face.wall.openings.filter(({ kind }) => kind !== 'furniture').flatMap((opening) => openingOnPlan(face, opening, style, false))]),
    ...faces.map((face): Shape => ({ kind: 'text', at: face.inward(pointAlong(face.from, face.to, 0.5), -1.6), anchor: 'middle', height: 'label', text: face.wall.id, pen: 'visible', isNeeded: true })),
    ...struckShapes(corners, layout, style),
    ...drawn.flatMap(({ strip, subject }): readonly Shape[] => {
      const widest = strip.spans.toSorted((one, other) => other.to - other.from - (one.to - one.from))[0];
      return widest ? [{ kind: 'ring', at: sheet({ along: (widest.from + widest.to) / 2, away: (strip.from + strip.to) / 2 }, layout), number: strip.number + 1, subject }] : [];
    }),
  ];
  return { shapes, bounds, margin: { left: 4.4, top: 4.4, right: 4.4, bottom: 5 }, scaleBar: style, description: describe(room, layout, coveringName) };
}

interface Seen {
  readonly along: number;
  readonly away: number;
}

function seen({ x, y }: DrawnPoint, { frame }: CeilingLayout): Seen {
  const [dx, dy] = [x - frame.x, y - frame.y];
  return { along: dx * frame.stepX + dy * frame.stepY, away: dy * frame.stepX - dx * frame.stepY };
}

function sheet({ along, away }: Seen, { frame }: CeilingLayout): DrawnPoint {
  return { x: frame.x + along * frame.stepX - away * frame.stepY, y: frame.y + along * frame.stepY + away * frame.stepX };
}

/** The part of an outline between two distances from the wall; parts of it may hang together by a line. */
function within(corners: readonly Seen[], from: number, to: number): readonly Seen[] {
  return cutOff(cutOff(corners, (point) => point.away - from), (point) => to - point.away);
}

function cutOff(corners: readonly Seen[], inside: (point: Seen) => number): readonly Seen[] {
  return corners.flatMap((corner, index) => {
    const next = corners[(index + 1) % corners.length]!;
    const [here, there] = [inside(corner), inside(next)];
    const crossing = here >= 0 !== there >= 0 ? [{ along: corner.along + ((next.along - corner.along) * here) / (here - there), away: corner.away + ((next.away - corner.away) * here) / (here - there) }] : [];
    return here >= 0 ? [corner, ...crossing] : crossing;
  });
}

/** Where the outline is at a distance from the wall, in pairs of where it begins and ends. */
function across(corners: readonly Seen[], away: number): readonly (readonly [number, number])[] {
  const crossings = corners
    .flatMap((corner, index) => {
      const next = corners[(index + 1) % corners.length]!;
      return corner.away < away === next.away < away ? [] : [corner.along + ((next.along - corner.along) * (away - corner.away)) / (next.away - corner.away)];
    })
    .sort((one, other) => one - other);
  return crossings.flatMap((from, index) => (index % 2 === 0 && crossings[index + 1] !== undefined ? [[from, crossings[index + 1]!] as const] : []));
}

/** The line struck along the first strip's far edge, its distance from the wall, and the way the strips go on from it. */
function struckShapes(corners: readonly Seen[], layout: CeilingLayout, style: LengthStyle): readonly Shape[] {
  const [first] = layout.strips;
  const last = layout.strips.at(-1);
  const [span] = first && first.to < (last?.to ?? 0) ? across(corners, first.to) : (first?.spans.map(({ from, to }) => [from, to] as const) ?? []);
  if (!first || !last || !span) return [];
  const [from, to] = span;
  const subject: Subject = { kind: 'start', id: 'start', says: say`Start: strike the first line ${showLength(first.to, style)} from wall ${layout.along} and along it; the first strip hangs between them.` };
  const direction: Subject = { kind: 'direction', id: 'direction', says: say`Hang the strips in order away from wall ${layout.along}.` };
  const aside = to - (to - from) * 0.1;
  return [
    { kind: 'line', from: sheet({ along: from, away: first.to }, layout), to: sheet({ along: to, away: first.to }, layout), pen: 'struck', subject },
    { kind: 'dimension', from: sheet({ along: to, away: 0 }, layout), to: sheet({ along: to, away: first.to }, layout), offset: -1.4, text: showLength(first.to, style) },
    { kind: 'line', from: sheet({ along: aside, away: first.to / 2 }, layout), to: sheet({ along: aside, away: Math.min(last.to, first.to * 2.5) }, layout), pen: 'struck', hasArrow: true, subject: direction },
  ];
}

function stripSubject(strip: CeilingStrip, coveringName: string, rolls: CeilingFacts['rolls'], style: LengthStyle): Subject {
  const pieces = strip.pieces.map(({ label, length }) => {
    const roll = rolls?.get(label);
    return roll ? say`${showLength(length, style)} from roll ${roll.number}` : showLength(length, style);
  });
  const says = [say`Ceiling strip ${strip.number + 1} of ${coveringName}, ${showLength(lengthOf(strip.to - strip.from), style)} wide: ${sayList(pieces)}.`, ...(strip.needsTwo ? [say`Two people, from a platform.`] : [])];
  return { kind: 'strip', id: String(strip.number), says: says.join(' ') };
}

const WHY = { chosen: say`as chosen`, window: say`the wall with the main window`, longest: say`the longest wall` } as const;

function describe(room: Room, { strips, along, reason }: CeilingLayout, coveringName: string): string {
  return say`The ceiling of ${room.name} from above: ${coveringName} in ${stripsCounted(strips.length)} along wall ${along}, ${WHY[reason]}, hung in order away from it.`;
}
