import type { Covering, House, Room, Surface, Wall } from '../house/index.ts';
import type { Outline } from '../survey/index.ts';
import { type Area, ZERO_AREA } from '../units/index.ts';
import { bandsArea, wallArea, woodworkArea } from './areas.ts';
import type { SurfaceOf } from './prep-plan.ts';

/** What comes on a surface next: paper of any kind but a border, a border, a paint; none of them is nothing. */
export type Next = 'paper' | 'border' | 'paint' | 'nothing';

/** A surface as it is met, and what comes on it. */
export interface MetSurface {
  readonly of: SurfaceOf;
  readonly surface: Surface;
  /** Null of a ceiling and of woodwork. */
  readonly wall: Wall | null;
  readonly area: Area;
  /** What of it paper other than a border is to cover. */
  readonly papered: Area;
  readonly next: readonly Next[];
  /** What comes on it. */
  readonly coverings: readonly Covering[];
  /** False of a ceiling whose walls do not go all the way round: its area is not known. */
  readonly isMeasured: boolean;
}

/** A room with its outline as the survey draws it. */
export interface RoomToPrepare {
  readonly id: string;
  readonly outline: Pick<Outline, 'isClosed' | 'floorArea'>;
}

/**
 * The surfaces of a room of which it is known what they are: walls in their order, the ceiling, the woodwork.
 *
 * A wall without a surface is not among them. A ceiling is as large as the floor; where the walls do not go all the way
 * round it counts as nothing, and the tasks on it say so.
 */
export function meetSurfaces(house: House, room: Room, outline: RoomToPrepare['outline'] | undefined): readonly MetSurface[] {
  const coveringOf = (id: string) => house.coverings.filter((covering) => covering.id === id);
  const walls = room.walls.flatMap((wall): readonly MetSurface[] => {
    if (!wall.surface) return [];
    const bands = room.bands.filter((band) => band.walls.includes(wall.id));
    const coverings = bands.flatMap(({ covering }) => coveringOf(covering));
    const paper = bands.filter((band) => coveringOf(band.covering).some((covering) => nextOf(covering) === 'paper'));
    return [{ of: { kind: 'wall', wall: wall.id }, surface: wall.surface, wall, area: wallArea(wall), papered: bandsArea(room, wall, paper), next: nextOfAll(coverings), coverings, isMeasured: true }];
  });
  return [...walls, ...meetCeiling(room, coveringOf, outline), ...meetWoodwork(room, coveringOf)];
}

function meetCeiling({ ceiling, ceilingSurface }: Room, coveringOf: (id: string) => readonly Covering[], outline: RoomToPrepare['outline'] | undefined): readonly MetSurface[] {
  if (!ceilingSurface) return [];
  const coverings = ceiling ? coveringOf(ceiling.covering) : [];
  const isMeasured = outline?.isClosed ?? false;
  const area = outline && isMeasured ? outline.floorArea : ZERO_AREA;
  const next = nextOfAll(coverings);
  return [{ of: { kind: 'ceiling' }, surface: ceilingSurface, wall: null, area, papered: next.includes('paper') ? area : ZERO_AREA, next, coverings, isMeasured }];
}

function meetWoodwork(room: Room, coveringOf: (id: string) => readonly Covering[]): readonly MetSurface[] {
  const { woodwork } = room;
  if (!woodwork?.surface) return [];
  const coverings = coveringOf(woodwork.covering);
  return [{ of: { kind: 'woodwork' }, surface: woodwork.surface, wall: null, area: woodworkArea(room), papered: ZERO_AREA, next: nextOfAll(coverings), coverings, isMeasured: true }];
}

function nextOfAll(coverings: readonly Covering[]): readonly Next[] {
  return coverings.length === 0 ? ['nothing'] : [...new Set(coverings.map(nextOf))];
}

function nextOf({ kind }: Covering): Next {
  return kind === 'paint' || kind === 'border' ? kind : 'paper';
}
