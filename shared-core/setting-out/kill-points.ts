import type { HungBand, Room } from '../house/index.ts';
import { lengthOf } from '../units/index.ts';
import type { Axis } from './axis.ts';
import type { WallPlace } from './chosen-layout.ts';
import { bandOn, interrupts } from './heights.ts';
import type { StretchWall } from './stretch.ts';

/** What the ends of a closed stretch can be hidden by, the most inconspicuous first. */
export type KillKind = 'entrance-corner' | 'over-opening' | 'corner';

export interface KillPoint {
  readonly place: WallPlace;
  readonly kind: KillKind;
  /** How much a mismatch shows there: hundredths of what it would show on a bare wall. */
  readonly exposure: number;
}

/** What of a room decides where an eye falls. */
export interface Sight {
  readonly focalWall: string | null;
  readonly entrance: { readonly wall: string; readonly from: number; readonly to: number } | null;
}

/** Our own weights: nobody looks back at the corner by the door he came through. */
const EXPOSURE: Readonly<Record<KillKind, number>> = { 'entrance-corner': 20, 'over-opening': 40, corner: 40 };
const ON_FOCAL_WALL = 3;
const BESIDE_FOCAL_WALL = 2;

export function sightOf(room: Pick<Room, 'focalWall' | 'walls'>): Sight {
  for (const wall of room.walls) {
    const entrance = wall.openings.find((opening) => opening.entrance);
    if (entrance) return { focalWall: room.focalWall ?? null, entrance: { wall: wall.id, from: entrance.from.length, to: entrance.from.length + entrance.width.length } };
  }
  return { focalWall: room.focalWall ?? null, entrance: null };
}

/**
 * The places at which the ends of a closed stretch may meet: inside corners, then the edges of openings.
 *
 * Shapes: places on walls; an exposure of 100 is a bare wall, less is hidden better. Over an opening only the height
 * that is hung there shows. Source: common practice of the trade for the order, the weights are ours.
 * Example: in a room with its entrance 2 ft from the left of wall A and 7 ft from its right, the corner at the left of A
 * is the entrance's.
 */
export function killPoints(axis: Axis, band: HungBand, sight: Sight): readonly KillPoint[] {
  if (!axis.isClosed) return [];
  const entranceCorner = cornerByEntrance(axis, sight);
  return axis.walls.flatMap(({ wall }, index): readonly KillPoint[] => {
    const before = axis.walls.at(index - 1)!.wall;
    const isEntrance = entranceCorner === wall.id;
    const kind = isEntrance ? 'entrance-corner' : 'corner';
    const besideFocal = wall.id === sight.focalWall || before.id === sight.focalWall;
    const corner: KillPoint = { place: { wall: wall.id, at: lengthOf(0) }, kind, exposure: EXPOSURE[kind] * (besideFocal ? BESIDE_FOCAL_WALL : 1) };
    return [...(before.cornerRight === 'inside' ? [corner] : []), ...openingEdges(wall, before, band, sight)];
  });
}

function openingEdges(wall: StretchWall, before: StretchWall, band: HungBand, sight: Sight): readonly KillPoint[] {
  const { bottom, top } = bandOn(band, wall);
  return wall.openings
    .filter((opening) => interrupts(opening, band, wall))
    .flatMap((opening) => {
      const open = Math.min(opening.head, top) - Math.max(opening.sill, bottom);
      const shown = (100 * (top - bottom - open)) / (top - bottom);
      const exposure = Math.ceil((EXPOSURE['over-opening'] * shown) / 100) * (wall.id === sight.focalWall ? ON_FOCAL_WALL : 1);
      return [opening.from, opening.to]
        .filter((at) => (at > 0 || before.cornerRight === 'straight') && (at < wall.length || wall.cornerRight === 'straight'))
        .map((at) => ({ place: { wall: wall.id, at }, kind: 'over-opening' as const, exposure }));
    });
}

/** The wall at whose left the entrance's own corner lies: the nearer inside corner of the entrance's wall. */
function cornerByEntrance(axis: Axis, { entrance }: Sight): string | null {
  const index = axis.walls.findIndex(({ wall }) => wall.id === entrance?.wall);
  const own = axis.walls[index]?.wall;
  if (!own || !entrance) return null;
  const next = axis.walls[(index + 1) % axis.walls.length]!.wall;
  const sides = [
    { at: own.id, isInside: axis.walls.at(index - 1)!.wall.cornerRight === 'inside', distance: entrance.from },
    { at: next.id, isInside: own.cornerRight === 'inside', distance: own.length - entrance.to },
  ];
  const [nearest] = sides.filter(({ isInside }) => isInside).sort((one, other) => one.distance - other.distance);
  return nearest?.at ?? null;
}
