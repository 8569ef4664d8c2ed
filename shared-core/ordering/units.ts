import type { House } from '../house/index.ts';
import type { PlacedPiece } from './cut-roll.ts';

/** Parts that may be of different runs, and where one goes over into another: after a wall, by the parts' places. */
export interface PartsAtCorners {
  readonly parts: readonly (readonly PlacedPiece[])[];
  readonly changes: readonly { readonly after: string; readonly from: number; readonly to: number }[];
}

/** What hangs of a covering in a room, in parts that may each hang from a run of their own; one part is the usual. */
export interface RoomPieces {
  readonly room: string;
  readonly parts: readonly (readonly PlacedPiece[])[];
  /** The walls at whose right an inside corner is, and the parts where the run might change at some of those. */
  readonly corners?: { readonly inside: readonly string[]; at(walls: readonly string[]): PartsAtCorners };
  /** Of a mural, which is not cut: how many are hung. */
  readonly murals?: number;
}

/** What hangs from one run: a room, rooms that must match, or a part of a room. */
export interface Unit {
  readonly rooms: readonly string[];
  readonly hangings: readonly RoomPieces[];
  /** The run that the user has chosen for it. */
  readonly run: string | null;
  /** Those of its rooms that the run was chosen for; the others only go with them. */
  readonly chosen: readonly string[];
  /** Whether it hangs already, so that its run can't be another any more. */
  readonly isHung: boolean;
}

/**
 * What of a covering hangs from one run each: rooms that must match as one, a room whose run may change in its parts.
 *
 * Rule: rooms that are seen together differ in shade where they hang from two runs; ties carry over (A with B and B with
 * C are one). Where the user has set tied rooms to different runs, what was set stands. A room that is tied, or that is
 * set to a run, is not parted.
 * Example: bed 1, hall and landing, hall and landing tied: two units, bed 1 and the other two together.
 */
export function unitsOf(house: Pick<House, 'matching' | 'runChoices'>, covering: string, hangings: readonly RoomPieces[]): readonly Unit[] {
  const choiceOf = new Map(house.runChoices.filter((choice) => choice.covering === covering).map((choice) => [choice.room, choice]));
  const groupOf = new Map(hangings.map(({ room }) => [room, room]));
  const leader = (room: string): string => {
    const next = groupOf.get(room)!;
    return next === room ? room : leader(next);
  };
  for (const { covering: only, rooms } of house.matching) {
    if (only !== undefined && only !== covering) continue;
    const here = rooms.filter((room) => groupOf.has(room));
    for (const room of here.slice(1)) {
      const [first, second] = [leader(here[0]!), leader(room)];
      if (first !== second) groupOf.set(second, first);
    }
  }
  const groups = Map.groupBy(hangings, ({ room }) => leader(room));
  return [...groups.values()].flatMap((group): readonly Unit[] => {
    const [only] = group;
    if (group.length === 1 && !choiceOf.has(only!.room)) return only!.parts.map((part) => ({ rooms: [only!.room], hangings: [{ ...only!, parts: [part] }], run: null, chosen: [], isHung: false }));
    const chosen = [...new Set(group.flatMap(({ room }) => choiceOf.get(room)?.run ?? []))];
    const byRun = Map.groupBy(group, ({ room }) => choiceOf.get(room)?.run ?? chosen[0] ?? null);
    return [...byRun].map(([run, members]) => {
      const rooms = members.map(({ room }) => room);
      return { rooms, hangings: members, run, chosen: rooms.filter((room) => choiceOf.has(room)), isHung: rooms.some((room) => choiceOf.get(room)?.hung) };
    });
  });
}
