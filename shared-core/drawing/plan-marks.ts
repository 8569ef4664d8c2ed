import type { LengthStyle } from '../units/index.ts';
import { UNITS_PER_METRE } from '../units/index.ts';
import type { Grid, Mismatch, WallPlace } from '../setting-out/index.ts';
import type { WallFace } from './plan-walls.ts';
import type { Shape, Subject } from './shapes.ts';
import { hangFromStart, mismatchSaid, placeNamed } from './words.ts';
import { say } from '../words/index.ts';

/** Where a stretch is begun and where its ends meet. */
export interface HangingOnPlan {
  readonly start: WallPlace;
  readonly kill: WallPlace | null;
  readonly direction: Grid['direction'];
  readonly mismatch?: Mismatch | null;
  /** Where strips meet on the walls, a tick each. */
  readonly seams?: readonly WallPlace[];
}

/** Where the start line meets the floor, which way the strips go from there, and where the ends meet. */
export function hangingOnPlan(faces: readonly WallFace[], hanging: HangingOnPlan, style: LengthStyle): readonly Shape[] {
  const index = faces.findIndex(({ wall }) => wall.id === hanging.start.wall);
  const face = faces[index];
  if (!face) return [];
  const { start, kill, direction, mismatch = null } = hanging;
  const subject: Subject = { kind: 'start', id: 'start', says: say`Start: strike the first line ${placeNamed(start, style)}.` };
  const point = face.at(start.at);
  const killFace = kill ? faces.find(({ wall }) => wall.id === kill.wall) : undefined;
  return [
    ...(hanging.seams ?? []).flatMap((seam): readonly Shape[] => {
      const on = faces.find(({ wall }) => wall.id === seam.wall);
      return on ? [{ kind: 'line', from: on.at(seam.at), to: on.inward(on.at(seam.at), 0.4), pen: 'thin' }] : [];
    }),
    ...(direction === 'left' ? [] : [arrow(face, start.at, Math.min(face.wall.length.length, start.at + UNITS_PER_METRE))]),
    ...(direction === 'right' ? [] : [arrowToTheLeft(faces, index, start.at)]),
    { kind: 'line', from: face.inward(point, -1), to: face.inward(point, 1.2), pen: 'struck', subject },
    { kind: 'sign', sign: 'bob', at: face.inward(point, 1.2), turn: face.turn, pen: 'struck', subject },
    ...(kill && killFace
      ? [
          {
            kind: 'sign' as const,
            sign: 'lozenge' as const,
            at: killFace.inward(killFace.at(kill.at), -1.2),
            turn: killFace.turn,
            pen: 'cut' as const,
            subject: {
              kind: 'kill' as const,
              id: 'kill',
              says: mismatch ? say`Kill point ${placeNamed(kill, style)}: ${mismatchSaid(mismatch, true, style)}.` : say`Kill point ${placeNamed(kill, style)}, where the last strip meets the first.`,
            },
          },
        ]
      : []),
  ];
}

/** From the start towards the wall's left end, or on along the wall before it where the start stands there. */
function arrowToTheLeft(faces: readonly WallFace[], index: number, at: number): Shape {
  const face = faces[index]!;
  if (at > UNITS_PER_METRE / 10) return arrow(face, at, Math.max(0, at - UNITS_PER_METRE));
  const before = faces.at(index - 1)!;
  const end = before.wall.length.length;
  return arrow(before, end, Math.max(0, end - UNITS_PER_METRE));
}

function arrow(face: WallFace, from: number, to: number): Shape {
  const direction = from < to ? 'right' : 'left';
  const subject: Subject = { kind: 'direction', id: direction, says: hangFromStart(direction) };
  return { kind: 'line', from: face.inward(face.at(from), 0.5), to: face.inward(face.at(to), 0.5), pen: 'struck', hasArrow: true, subject };
}
