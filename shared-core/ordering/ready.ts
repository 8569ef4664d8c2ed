import type { House } from '../house/index.ts';
import type { CoveringOrder } from './order.ts';
import type { OrderLine } from './order-line.ts';

/** What a room still waits for of one covering. */
export interface Wait {
  readonly covering: string;
  /** Null while its run is not known. */
  readonly run: string | null;
  /** Rolls that are lacking so that it could be hung beside the rooms before it. */
  readonly rolls: number;
  /** Whether all of them are on their way. */
  readonly isOnOrder: boolean;
}

export interface RoomReadiness {
  readonly room: string;
  readonly state: 'hung' | 'ready' | 'waits';
  readonly waits: readonly Wait[];
}

type Counted = Pick<CoveringOrder, 'ledger' | 'lines' | 'countRooms'>;

/**
 * Which rooms can be hung at once from what is in hand, all of them together.
 *
 * Rule: what hangs already comes first, then the rooms as the house lists them; a room is ready when every covering that
 * is still to be hung in it is there, of its own run, for it and all the rooms that are ready before it.
 * Example: 8 rolls of run 2214 in hand, bed 1 takes 6 and the hall 4 of it, 9 together: bed 1 can start, the hall waits
 * for 1 more.
 */
export function findReadiness(house: Pick<House, 'rooms' | 'runChoices'>, orders: readonly Counted[]): readonly RoomReadiness[] {
  const hangs = (room: string, covering: string) => house.runChoices.some((choice) => choice.room === room && choice.covering === covering && choice.hung);
  const lines = orders.flatMap(({ ledger: { covering }, lines: own, countRooms }) => own.map((line) => ({ line, covering, started: line.rooms.filter((room) => hangs(room, covering)), countRooms })));
  const hasGoods = house.rooms.map(({ id }) => id).filter((id) => lines.some(({ line }) => line.rooms.includes(id)));
  return hasGoods.map((room): RoomReadiness => {
    const toHang = lines.filter(({ line, covering }) => line.rooms.includes(room) && !hangs(room, covering));
    const waits = toHang.flatMap(({ line, covering, started, countRooms }): readonly Wait[] => {
      const rolls = lackingFor([...started, room], line, countRooms);
      return rolls > 0 ? [{ covering, run: line.run, rolls, isOnOrder: rolls <= line.onOrder }] : [];
    });
    if (waits.length === 0) for (const { started } of toHang) started.push(room);
    return { room, state: toHang.length === 0 ? 'hung' : waits.length === 0 ? 'ready' : 'waits', waits };
  });
}

/** What rooms take of a line beyond what is in hand; they are cut together only where that is not plain without. */
function lackingFor(rooms: readonly string[], { run, inHand, rollsNeeded }: OrderLine, countRooms: Counted['countRooms']): number {
  if (rollsNeeded <= inHand || rooms.reduce((sum, room) => sum + countRooms(run, [room]), 0) <= inHand) return 0;
  return countRooms(run, rooms) - inHand;
}
