import type { StretchLayout, Strip } from '../setting-out/index.ts';

/** Strips that hang from one run. */
export interface RunPart {
  readonly strips: readonly Strip[];
  /** The wall at whose right the part begins; null for the first. */
  readonly after: string | null;
  /** Parts of the same number are of one run. */
  readonly group: number;
}

/**
 * The strips of a stretch in parts, each of which may hang from a run of its own.
 *
 * Rule: a run may change at the inside corners at the right of the walls named, where two planes meet and the light
 * falls differently on each (common practice, no source). A strip that turns such a corner is in both parts: where their
 * runs differ it is cut from each, and each gives its own side. All round a room the last part meets the first; where
 * that is not in an inside corner both are one group.
 * Example: a room of walls A to D worked from the corner of D and A, whose run may change after B, has two parts; worked
 * from the middle of A its two parts are one group, and it takes a second corner to change the run.
 */
export function findRunParts({ strips, axis, kill }: Pick<StretchLayout, 'strips' | 'axis' | 'kill'>, mayChange: readonly string[]): readonly RunPart[] {
  const changes = new Set(insideCorners(axis).filter(({ wall }) => mayChange.includes(wall)).map(({ wall, next }) => `${wall} ${next}`));
  const parts: { strips: Strip[]; after: string | null; group: number }[] = [{ strips: [], after: null, group: 0 }];
  let lastWall: string | null = null;
  for (const strip of strips) {
    for (const { wall } of strip.parts) {
      if (lastWall !== null && changes.has(`${lastWall} ${wall}`)) parts.push({ strips: [], after: lastWall, group: parts.length });
      const { strips: own } = parts.at(-1)!;
      if (own.at(-1) !== strip) own.push(strip);
      lastWall = wall;
    }
  }
  const meetsInCorner = kill !== null && kill.at === 0 && insideCorners(axis).some(({ next }) => next === kill.wall);
  if (axis.isClosed && !meetsInCorner) parts.at(-1)!.group = 0;
  return parts;
}

/** The inside corners of a stretch, each by the walls at its left and right. */
export function insideCorners({ walls, isClosed }: StretchLayout['axis']): readonly { readonly wall: string; readonly next: string }[] {
  return walls.flatMap(({ wall }, index) => {
    const next = walls[index + 1] ?? (isClosed ? walls[0] : undefined);
    return wall.cornerRight === 'inside' && next && next.wall !== wall ? [{ wall: wall.id, next: next.wall.id }] : [];
  });
}
