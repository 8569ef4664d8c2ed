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
  const lines = orders.flatMap(({ ledger: { covering }, lines: own, countRooms }) => own.map((line) => ({ line, covering, started: line.rooms.filter((room) => hangs(room, covering)), waiting: [] as string[], countRooms })));
  const hasGoods = house.rooms.map(({ id }) => id).filter((id) => lines.some(({ line }) => line.rooms.includes(id)));
  const toHangIn = (room: string) => lines.filter(({ line, covering }) => line.rooms.includes(room) && !hangs(room, covering));
  const isReady = (room: string) => toHangIn(room).every(({ line, started, countRooms }) => lackingFor([...started, room], line, line.inHand, countRooms) === 0);
  const ready = new Set<string>();
  for (const room of hasGoods) {
    if (!isReady(room)) continue;
    ready.add(room);
    for (const { started } of toHangIn(room)) started.push(room);
  }
  return hasGoods.map((room): RoomReadiness => {
    const toHang = toHangIn(room);
    if (ready.has(room)) return { room, state: toHang.length === 0 ? 'hung' : 'ready', waits: [] };
    const waits = toHang.flatMap(({ line, covering, started, waiting, countRooms }): readonly Wait[] => {
      const rolls = lackingFor([...started, room], line, line.inHand, countRooms);
      if (rolls === 0) return [];
      waiting.push(room);
      return [{ covering, run: line.run, rolls, isOnOrder: lackingFor([...started, ...waiting], line, line.inHand + line.onOrder, countRooms) === 0 }];
    });
    return { room, state: 'waits', waits };
  });
}

/** What rooms take of a line beyond what there is; they are cut together only where that is not plain without. */
function lackingFor(rooms: readonly string[], line: OrderLine, there: number, countRooms: Counted['countRooms']): number {
  if (line.rollsNeeded <= there || rooms.reduce((sum, room) => sum + countRooms(line, [room]), 0) <= there) return 0;
  return Math.max(0, countRooms(line, rooms) - there);
}
