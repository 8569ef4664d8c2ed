import type { House } from '../house/index.ts';
import type { CoveringOrder } from './order.ts';

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
 * Rule: the rooms that hang already come first, then the others as the house lists them; a room is ready when every
 * covering that hangs in it is there, of its own run, for it and all the rooms that are ready before it.
 * Example: 8 rolls of run 2214 in hand, bed 1 takes 6 and the hall 4 of it, 9 together: bed 1 can start, the hall waits
 * for 1 more.
 */
export function findReadiness(house: Pick<House, 'rooms' | 'runChoices'>, orders: readonly Counted[]): readonly RoomReadiness[] {
  const lines = orders.flatMap(({ ledger, lines: own, countRooms }) => own.map((line) => ({ line, covering: ledger.covering, started: [] as string[], countRooms })));
  const isHung = (room: string) => {
    const own = lines.filter(({ line }) => line.rooms.includes(room));
    return own.length > 0 && own.every(({ covering }) => house.runChoices.some((choice) => choice.room === room && choice.covering === covering && choice.hung));
  };
  const hasGoods = house.rooms.map(({ id }) => id).filter((id) => lines.some(({ line }) => line.rooms.includes(id)));
  const inOrder = [...hasGoods.filter(isHung), ...hasGoods.filter((room) => !isHung(room))];
  const found = new Map(
    inOrder.map((room): [string, RoomReadiness] => {
      const own = lines.filter(({ line }) => line.rooms.includes(room));
      const waits = own.flatMap(({ line, covering, started, countRooms }): readonly Wait[] => {
        const rolls = countRooms(line.run, [...started, room]) - line.inHand;
        return rolls > 0 ? [{ covering, run: line.run, rolls, isOnOrder: rolls <= line.onOrder }] : [];
      });
      const state = isHung(room) ? 'hung' : waits.length === 0 ? 'ready' : 'waits';
      if (state !== 'waits') for (const { started } of own) started.push(room);
      return [room, { room, state, waits: state === 'hung' ? [] : waits }];
    }),
  );
  return hasGoods.map((room) => found.get(room)!);
}
