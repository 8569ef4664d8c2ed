import { isSaid } from '../../../shared-core/base/index.ts';
import type { Covering, Edit, House, PlacedOrder, Room, RunQuantity } from '../../../shared-core/house/index.ts';
import { addAmounts, type Amounts, bySupplier, type CutList, type OrderLine, type SupplierLines, type WayOut } from '../../../shared-core/ordering/index.ts';
import { type CoveringRuns, draftOrder, nameRoom, rollsAloneIn, toBePlaced } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { today } from '../../parts/today.ts';
import { changeSupplier } from '../../state/change-supplier.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { lookingAt } from './looking-at.svelte.ts';

/** The order's lines of one pattern number, and the rolls they are cut from. */
export interface PatternOrder {
  readonly covering: Covering;
  readonly lines: readonly OrderLine[];
  readonly cutLists: readonly CutList[];
  /** Null of a pattern of which nothing hangs from rolls. */
  readonly runs: CoveringRuns | null;
}

/** What one room takes of one line. */
export interface RoomLine {
  readonly room: Room;
  readonly line: OrderLine;
  readonly rollsAlone: number;
}

export type RunList = 'stock' | 'offers';

/** The bulk order grouped by pattern, and the runs that the user knows of. */
export class OrderSheet {
  readonly #house: HouseState;
  trouble = $state<Readonly<Record<RunList, string | null>>>({ stock: null, offers: null });
  #placed = $state<string | null>(null);
  /** What was just done, until it is undone. */
  readonly said: string = $derived.by(() => (this.#placed !== null && this.#house.saved.orders.some(({ id }) => id === this.#placed) ? say`Order ${this.#placed} is placed and stays as it is.` : ''));

  readonly patterns: readonly PatternOrder[] = $derived.by(() => this.#found(groupByPattern(this.house, this.#house.plan?.order ?? [], this.#house.plan?.cuts ?? [], this.#house.plan?.runs ?? [])));
  readonly rooms: readonly RoomLine[] = $derived.by(() => this.#roomLines());
  readonly suppliers: readonly SupplierLines[] = $derived.by(() => bySupplier(this.house, this.#lines));
  /** What would be placed with each supplier; less than what is to be bought where no run has enough. */
  readonly placing: readonly SupplierLines[] = $derived.by(() => toBePlaced(this.house, this.#lines));
  readonly amounts: Amounts = $derived.by(() => addAmounts(this.suppliers));

  /** What came and is in hand of each run, beside what was typed as in hand. */
  readonly brought: readonly RunQuantity[] = $derived.by(() =>
    (this.#house.plan?.runs ?? []).flatMap(({ covering, ledger }) =>
      ledger.runs.flatMap(({ run, inHand }) => {
        const typed = this.house.stock.filter((entry) => entry.covering === covering && entry.run === run).reduce((total, { rolls }) => total + rolls, 0);
        return run !== null && inHand > typed ? [{ covering, run, rolls: inHand - typed }] : [];
      }),
    ),
  );

  constructor(house: HouseState) {
    this.#house = house;
  }

  get #lines(): readonly OrderLine[] {
    return this.#house.plan?.order ?? [];
  }

  get house(): House {
    return this.#house.planner.planned ?? this.#house.shown;
  }

  /** Whether an order of the house has gone out. */
  get isPlaced(): boolean {
    return this.#house.saved.orders.length > 0;
  }

  get isEmpty(): boolean {
    return this.#lines.length === 0;
  }

  /** The patterns that the words typed are said of, in the order chosen. */
  #found(patterns: readonly PatternOrder[]): readonly PatternOrder[] {
    const words = ({ covering, lines }: PatternOrder) =>
      [covering.patternNumber, covering.name, covering.id, covering.supplier, ...lines.flatMap(({ run, rooms }) => [sayRunFor(run), ...rooms.map((room) => nameRoom(this.house, room))])].map((said) => said ?? '');
    return lookingAt.sort(patterns.filter((pattern) => isSaid(lookingAt.words, words(pattern))), {
      pattern: ({ covering }) => covering.patternNumber ?? covering.name ?? covering.id,
      buy: ({ lines }) => -sum(lines, ({ toBuy }) => toBuy),
      price: ({ lines }) => -sum(lines, ({ price }) => price ?? 0),
      open: ({ lines }) => -Math.max(...lines.map((line) => (line.shortfall > 0 ? 3 : line.price === null ? 2 : line.run === null ? 1 : 0))),
    });
  }

  #roomLines(): readonly RoomLine[] {
    const { plan } = this.#house;
    const lines = this.house.rooms.flatMap((room) =>
      this.#lines
        .filter((line) => line.rooms.includes(room.id))
        .map((line) => ({ room, line, rollsAlone: plan ? rollsAloneIn(plan, room.id, line.covering).reduce((total, rolls) => total + rolls, 0) : 0 })),
    );
    return lines.filter(({ room, line }) => isSaid(lookingAt.words, [room.name, room.storey ?? '', line.patternNumber ?? '', sayRunFor(line.run)]));
  }

  async setRun(list: RunList, index: number, change: Partial<RunQuantity>): Promise<string | null> {
    const entries = this.#house.saved[list].map((entry, place) => (place === index ? { ...entry, ...change } : entry));
    return this.#set(list, entries);
  }

  async addRun(list: RunList, covering: string, run: string, rolls: string): Promise<boolean> {
    const trouble = run.trim() === '' ? say`The run wants its number, as it stands on the label.` : /^\d+$/.test(rolls.trim()) ? null : say`The rolls are a whole number.`;
    this.#say(list, trouble);
    return trouble === null && this.#setOrSay(list, [...this.#house.saved[list], { covering, run: run.trim(), rolls: Number(rolls) }]);
  }

  async removeRun(list: RunList, index: number): Promise<void> {
    this.#say(list, null);
    await this.#setOrSay(list, this.#house.saved[list].filter((_, place) => place !== index));
  }

  /** What the disk takes says nothing: by then something may be said of the next run. */
  async #setOrSay(list: RunList, entries: readonly RunQuantity[]): Promise<boolean> {
    const refused = await this.#set(list, entries);
    if (refused !== null) this.#say(list, refused);
    return refused === null;
  }

  #say(list: RunList, trouble: string | null): void {
    this.trouble = { ...this.trouble, [list]: trouble };
  }

  async #set(list: RunList, entries: readonly RunQuantity[]): Promise<string | null> {
    const copies = entries.map((entry) => ({ ...entry }));
    return this.edit(list === 'stock' ? { kind: 'set-stock', stock: copies } : { kind: 'set-offers', offers: copies });
  }

  edit = async (edit: Edit): Promise<string | null> => sayFaults(await this.#house.edit(edit));

  /** Sets the run of a room, or leaves it to the plan again. */
  chooseRun(covering: string, room: string, run: string | null): Promise<string | null> {
    const others = this.#house.saved.runChoices.filter((choice) => choice.covering !== covering || choice.room !== room);
    return this.edit({ kind: 'set-run-choices', runChoices: run === null ? others.map(copy) : [...others.map(copy), { covering, room, run }] });
  }

  /** Lets the run change in a room at the corner after a wall, or no longer. */
  async toggleCorner(covering: string, room: Room, wall: string): Promise<string | null> {
    const band = room.bands.find((one) => one.covering === covering);
    if (!band) return null;
    const corners = band.runMayChange ?? [];
    const changed = corners.includes(wall) ? corners.filter((one) => one !== wall) : [...corners, wall];
    return this.edit({ kind: 'change-band', room: room.id, band: band.id, facts: { runMayChange: changed.length === 0 ? null : changed } });
  }

  match(rooms: readonly string[], covering: string | null): Promise<string | null> {
    const others = this.#house.saved.matching.map((one) => ({ ...one, rooms: [...one.rooms] }));
    return this.edit({ kind: 'set-matching', matching: [...others, { ...(covering === null ? {} : { covering }), rooms: [...rooms] }] });
  }

  unmatch(index: number): Promise<string | null> {
    return this.edit({ kind: 'set-matching', matching: this.#house.saved.matching.filter((_, place) => place !== index).map((one) => ({ ...one, rooms: [...one.rooms] })) });
  }

  /** Takes a way out of a shortage where that is the user's to take; the others are words. */
  async take(covering: string, way: WayOut): Promise<string | null> {
    const { saved } = this.#house;
    switch (way.kind) {
      case 'untie':
        return this.edit({ kind: 'set-matching', matching: saved.matching.filter(({ covering: only, rooms }) => (only !== undefined && only !== covering) || !rooms.some((room) => way.rooms.includes(room))).map((one) => ({ ...one, rooms: [...one.rooms] })) });
      case 'choose-otherwise':
        return this.edit({ kind: 'set-run-choices', runChoices: saved.runChoices.filter((choice) => choice.covering !== covering || choice.hung || !way.rooms.includes(choice.room)).map(copy) });
      case 'change-at-corner': {
        const room = saved.rooms.find(({ id }) => id === way.room);
        const band = room?.bands.find((one) => one.covering === covering);
        return room && band ? this.edit({ kind: 'change-band', room: room.id, band: band.id, facts: { runMayChange: [...new Set([...(band.runMayChange ?? []), ...way.walls])] } }) : null;
      }
      case 'ask-for-more': {
        if (way.run === null) return null;
        const offers = saved.offers.map(copy);
        const index = offers.findIndex((offer) => offer.covering === covering && offer.run === way.run);
        if (index < 0) return this.edit({ kind: 'set-offers', offers: [...offers, { covering, run: way.run, rolls: way.rolls }] });
        return this.edit({ kind: 'set-offers', offers: offers.map((offer, place) => (place === index ? { ...offer, rolls: offer.rolls + way.rolls } : offer)) });
      }
      case 'another-run':
        return null;
    }
  }

  async place(supplier: string | null): Promise<string | null> {
    const edit = draftOrder(this.house, this.#lines, supplier, today());
    if (!edit) return null;
    const refused = await this.edit(edit);
    if (refused === null) this.#placed = edit.order.id;
    return refused;
  }

  /** Nothing more of a line will come, or it will after all. */
  closeLine(order: PlacedOrder, line: number, closed: boolean): Promise<string | null> {
    return this.#changeLines((one, index, of) => (of === order && index === line ? { ...one, closed } : one));
  }

  /** The day on which an order is expected, as the supplier said; none where it is not known. */
  async expect(order: PlacedOrder, typed: string): Promise<string | null> {
    const day = readDay(typed);
    if (day === null && typed.trim() !== '') return sayNoDay(typed);
    const { expected: _expected, ...others } = order;
    const changed = day === null ? others : { ...others, expected: day };
    return this.edit({ kind: 'set-orders', orders: this.#house.saved.orders.map((one) => writeOrder(one === order ? changed : one)) });
  }

  /** The supplier takes rolls of a run off what is still to come, the last order first. */
  takeOff(covering: string, run: string | null, rolls: number): Promise<string | null> {
    const ledger = this.#house.plan?.runs.find((one) => one.covering === covering)?.ledger;
    let left = rolls;
    const off = (ledger?.lines ?? []).filter((line) => line.run === run).toReversed().map(({ order, index, outstanding }) => {
      const taken = Math.min(left, outstanding);
      left -= taken;
      return { order, index, taken };
    });
    return this.#changeLines((line, index, { id }) => ({ ...line, takenOff: line.takenOff + (off.find((one) => one.order === id && one.index === index)?.taken ?? 0) }));
  }

  #changeLines(change: (line: PlacedOrder['lines'][number], index: number, order: PlacedOrder) => PlacedOrder['lines'][number]): Promise<string | null> {
    const orders = this.#house.saved.orders.map((order) => writeOrder({ ...order, lines: order.lines.map((line, index) => change(line, index, order)) }));
    return this.edit({ kind: 'set-orders', orders });
  }

  setSupplier(id: string, change: Parameters<typeof changeSupplier>[2]): Promise<string | null> {
    return this.edit(changeSupplier(this.#house.saved.suppliers, id, change));
  }
}

/** A run as it may be looked for: what others call a batch or a lot. */
function sayRunFor(run: string | null): string {
  return run === null ? say`run batch lot not known` : say`run batch lot ${run}`;
}

type WrittenOrders = Extract<Edit, { kind: 'set-orders' }>['orders'];

function writeOrder({ tax, lines, sharing, ...order }: PlacedOrder): WrittenOrders[number] {
  return {
    ...order,
    ...(tax ? { tax: { ...tax } } : {}),
    sharing: sharing.map((share) => ({ ...share, rooms: [...share.rooms] })),
    lines: lines.map(({ length, packs, rooms, ...line }) => ({ ...line, packs: packs.map(copy), rooms: [...rooms], ...(length ? { length: length.typed } : {}) })),
  } as WrittenOrders[number];
}

function copy<Facts extends object>(facts: Facts): Facts {
  return { ...facts };
}

function groupByPattern(house: House, lines: readonly OrderLine[], cuts: readonly CutList[], runs: readonly CoveringRuns[]): readonly PatternOrder[] {
  return house.coverings.flatMap((covering) => {
    const own = lines.filter((line) => line.covering === covering.id);
    return own.length === 0 ? [] : [{ covering, lines: own, cutLists: cuts.filter((list) => list.covering === covering.id), runs: runs.find((one) => one.covering === covering.id) ?? null }];
  });
}

function sum(lines: readonly OrderLine[], figure: (line: OrderLine) => number): number {
  return lines.reduce((total, line) => total + figure(line), 0);
}
