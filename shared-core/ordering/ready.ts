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
  const lines = orders.flatMap(({ ledger: { covering }, lines: own, countRooms }) => own.map((line) => new LineInHand(line, covering, line.rooms.filter((room) => hangs(room, covering)), (rooms) => countRooms(line, rooms))));
  const hasGoods = house.rooms.map(({ id }) => id).filter((id) => lines.some(({ line }) => line.rooms.includes(id)));
  const toHangIn = (room: string) => lines.filter(({ line, covering }) => line.rooms.includes(room) && !hangs(room, covering));
  const isReady = (room: string) => toHangIn(room).every((line) => line.lackingFor(room) === 0);
  const ready = new Set<string>();
  for (const room of hasGoods) {
    if (!isReady(room)) continue;
    ready.add(room);
    for (const { started } of toHangIn(room)) started.push(room);
  }
  return hasGoods.map((room): RoomReadiness => {
    const toHang = toHangIn(room);
    if (ready.has(room)) return { room, state: toHang.length === 0 ? 'hung' : 'ready', waits: [] };
    const waits = toHang.flatMap((one): readonly Wait[] => {
      const rolls = one.lackingFor(room);
      return rolls === 0 ? [] : [{ covering: one.covering, run: one.line.run, rolls, isOnOrder: one.isOnOrderFor(room) }];
    });
    return { room, state: 'waits', waits };
  });
}

/** Of a line with more rooms they are cut together only where the most that cutting together saves would do. */
const MOST_CUT_ONE_BY_ONE = 60;

/** A line, the rooms that can be hung of it, and those that wait for what is on order. */
class LineInHand {
  readonly line: OrderLine;
  readonly covering: string;
  readonly started: string[];
  readonly #waiting: string[] = [];
  readonly #count: (rooms: readonly string[]) => number;
  readonly #alone = new Map<string, number>();
  #isAllPromised: boolean;

  constructor(line: OrderLine, covering: string, hung: readonly string[], count: (rooms: readonly string[]) => number) {
    this.line = line;
    this.covering = covering;
    this.started = [...hung];
    this.#count = count;
    this.#isAllPromised = line.onOrder === 0;
  }

  /** What a room beside those that can be hung takes beyond what is in hand. */
  lackingFor(room: string): number {
    return this.#beyond([...this.started, room], this.line.inHand);
  }

  /** Whether what is on order does for a room beside all that wait for it already. */
  isOnOrderFor(room: string): boolean {
    if (this.#isAllPromised) return false;
    this.#waiting.push(room);
    this.#isAllPromised = this.#beyond([...this.started, ...this.#waiting], this.line.inHand + this.line.onOrder) > 0;
    return !this.#isAllPromised;
  }

  #beyond(rooms: readonly string[], there: number): number {
    const apart = rooms.reduce((sum, room) => sum + this.#aloneOf(room), 0);
    if (this.line.rollsNeeded <= there || apart <= there) return 0;
    // What cutting together saves of some rooms is at most what it saves of all.
    const isPlain = this.line.rooms.length > MOST_CUT_ONE_BY_ONE && apart - (this.line.rollsByRoom - this.line.rollsNeeded) > there;
    return Math.max(isPlain ? 1 : 0, (rooms.length === 1 || isPlain ? apart : this.#count(rooms)) - there);
  }

  #aloneOf(room: string): number {
    const known = this.#alone.get(room) ?? this.#count([room]);
    this.#alone.set(room, known);
    return known;
  }
}
