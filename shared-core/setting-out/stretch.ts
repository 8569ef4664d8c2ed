import { type Band, endsOf, type Opening, type REVEAL_SIDES, type Room, type Rules, type Wall } from '../house/index.ts';
import { type CornerKind, goesAllRound, readTurn } from '../survey/index.ts';
import { type Length, lengthOf } from '../units/index.ts';

export interface Ends {
  readonly left: Length;
  readonly right: Length;
}

/** A wall as the setting out reads it: lengths in units, heights above its floor line. */
export interface StretchWall {
  readonly id: string;
  readonly length: Length;
  readonly height: Ends;
  readonly base: Ends;
  readonly cornerRight: CornerKind;
  /** How far its right corner leans over its height, either way; 0 where that was not measured. */
  readonly lean: Length;
  readonly openings: readonly StretchOpening[];
}

export interface StretchOpening {
  readonly id: string;
  readonly kind: Opening['kind'];
  readonly from: Length;
  readonly to: Length;
  readonly sill: Length;
  readonly head: Length;
  readonly isEntrance: boolean;
  /** The sides that are covered as the wall is, and how deep they go. */
  readonly reveal: ({ readonly depth: Length } & Readonly<Record<(typeof REVEAL_SIDES)[number], boolean>>) | null;
}

/** The longest connected row of walls that one band covers. */
export interface Stretch {
  readonly walls: readonly StretchWall[];
  /** Whether it goes all the way round, so that the last strip meets the first. */
  readonly isClosed: boolean;
}

/**
 * The stretches of a band, in the order of the room's walls.
 *
 * Example: in a room of walls A, B, C, D a band on D, A and C gives two stretches, C–D–A joined through the room's
 * last corner; a band on all four gives one closed stretch that begins at A.
 */
export function findStretches(room: Room, band: Pick<Band, 'walls'>): readonly Stretch[] {
  const covered = new Set(band.walls);
  const isRound = goesAllRound(room);
  const walls = room.walls.map(readWall);
  if (isRound && walls.every((wall) => covered.has(wall.id))) return [{ walls, isClosed: true }];
  const rows: StretchWall[][] = [];
  walls.forEach((wall, index) => {
    if (!covered.has(wall.id)) return;
    const previous = walls[index - 1];
    if (previous && covered.has(previous.id)) rows.at(-1)!.push(wall);
    else rows.push([wall]);
  });
  const [first, last] = [rows[0], rows.at(-1)];
  if (isRound && first && last && first !== last && first[0] === walls[0] && last.at(-1) === walls.at(-1)) {
    rows.shift();
    last.push(...first);
  }
  return rows.map((row) => ({ walls: row, isClosed: false }));
}

/**
 * The width that a strip spends on the corner at a wall's right.
 *
 * At an inside corner the house's wrap, or the corner's lean where that is larger, so that the strip is wide enough at
 * its widest. At an outside corner none, unless it leans by more than that wrap: then the strip is cut after it has gone
 * round and the rest is hung plumb over it, lapped by what the corner leans. Source: common practice, no source.
 * Example: with a wrap of 1/8 in, a corner that leans by 1/2 in takes 1/2 in, an outside one that leans by 1/8 in none.
 */
export function wrapAfter({ cornerRight, lean }: StretchWall, rules: Rules): Length {
  const least = rules.insideWrap.length;
  if (cornerRight === 'inside') return lengthOf(Math.max(least, lean));
  return lengthOf(cornerRight === 'outside' && lean > least ? lean : 0);
}

/** How much of what a strip spends on a corner is for its lean alone. */
export function leanAfter(wall: StretchWall, wrap: number, rules: Rules): number {
  return Math.max(0, wall.cornerRight === 'inside' ? wrap - rules.insideWrap.length : wrap);
}

/** A wall's facts as lengths in units. */
export function readWall(wall: Wall): StretchWall {
  return {
    id: wall.id,
    length: wall.length.length,
    height: endsOf(wall.height),
    base: endsOf(wall.base),
    cornerRight: readTurn(wall.turn).kind,
    lean: lengthOf(Math.abs(wall.plumbRight?.length ?? 0)),
    openings: wall.openings.map(({ id, kind, entrance, from, width, sill, height, reveal }) => ({
      id,
      kind,
      from: from.length,
      to: lengthOf(from.length + width.length),
      sill: sill.length,
      head: lengthOf(sill.length + height.length),
      isEntrance: entrance,
      reveal: reveal ? { depth: reveal.depth.length, left: reveal.sides.includes('left'), right: reveal.sides.includes('right'), head: reveal.sides.includes('head'), sill: reveal.sides.includes('sill') } : null,
    })),
  };
}
