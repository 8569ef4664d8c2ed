import { assert } from '../../shared-core/base/index.ts';
import { type House, moneyIn, nameCovering, nameSupplier, type PlacedLine, type Tax } from '../../shared-core/house/index.ts';
import { type Amounts, amountsOfOrder } from '../../shared-core/ordering/index.ts';
import { type HousePlan, nameRoom, type PaperName, sayUnits, toBePlaced } from '../../shared-core/plan/index.ts';
import { type Money, printLength } from '../../shared-core/units/index.ts';
import { say, sayDay, sayDecimal } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';

/** One line of an order as it is written for the supplier. */
export interface PaperOrderLine {
  readonly covering: string;
  readonly patternNumber: string | null;
  readonly name: string;
  /** Null where any one run is asked for. */
  readonly run: string | null;
  /** Rolls as delivered; of goods by the length, pieces. */
  readonly rolls: number;
  /** How much is bought, in words: '10 rolls of 33' (= 20 singles)'. */
  readonly quantity: string;
  readonly packs: readonly { readonly rolls: number; readonly count: number }[];
  /** Of goods by the length, as it is typed. */
  readonly length: string | null;
  readonly price: Money | null;
  readonly rooms: readonly string[];
}

/** An order for one supplier: one that is still to be placed, or one as it was placed. */
export interface PaperOrder {
  /** Null while it is not placed. */
  readonly id: string | null;
  readonly placed: string | null;
  readonly supplier: string | null;
  /** As the supplier is called, with the address where there is one. */
  readonly to: string;
  readonly deliverTo: string | null;
  readonly deliverBy: string | null;
  /** The day on which the first of it is hung; null where no day is known. */
  readonly firstHung: string | null;
  readonly notes: readonly string[];
  /** By pattern number, then run number. */
  readonly lines: readonly PaperOrderLine[];
  readonly rate: Tax | null;
  readonly amounts: Amounts;
}

/** The order that a paper is about. */
export function orderOf({ house, plan }: PaperFacts, { kind, of }: PaperName): PaperOrder {
  return kind === 'order' ? draftOf(house, plan, of) : placedOf(house, plan, of);
}

/**
 * What is still to come: of each placed order what has not, then what is to be placed.
 *
 * Example: of 10 rolls that were ordered 4 came: 6 are to come.
 */
export function comingOrders({ house, plan }: PaperFacts): readonly PaperOrder[] {
  const progress = plan.runs.flatMap(({ ledger }) => ledger.lines);
  const placed = house.orders.map((order): PaperOrder => {
    const open = order.lines.flatMap((line, index) => {
      const found = progress.find((one) => one.order === order.id && one.index === index);
      return found && found.outstanding > 0 ? [{ ...placedLine(house, line), run: found.run, rolls: found.outstanding, packs: [], ...(found.outstanding === line.rolls ? {} : { length: null }) }] : [];
    });
    return { ...placedOf(house, plan, order.id), lines: sorted(open.map((line) => lineOf(house, line))) };
  });
  return [...placed.filter(({ lines }) => lines.length > 0), ...toBePlaced(house, plan.order).map(({ supplier }) => draftOf(house, plan, supplier))];
}

function draftOf(house: House, plan: HousePlan, supplier: string | null): PaperOrder {
  const found = toBePlaced(house, plan.order).find((one) => one.supplier === supplier);
  assert(found !== undefined, 'an order that is listed has something to buy');
  const { lines, rate, net, tax, gross } = found;
  return {
    id: null,
    placed: null,
    supplier,
    to: addressOf(house, supplier),
    deliverTo: house.deliverTo ?? null,
    deliverBy: house.deliverBy ?? null,
    firstHung: firstHungOf(plan, lines),
    notes: notesOf(house, supplier, house.orderNote),
    lines: sorted(lines.map((line) => lineOf(house, { covering: line.covering, patternNumber: line.patternNumber, run: line.run, rolls: line.toBuy, packs: line.packs, length: line.running && printLength(line.running.toBuy, house.lengths), price: line.price, rooms: line.rooms }))),
    rate,
    amounts: { net, tax, gross },
  };
}

function placedOf(house: House, plan: HousePlan, id: string | null): PaperOrder {
  const order = house.orders.find((one) => one.id === id);
  assert(order !== undefined, 'an order that is listed was placed');
  const { supplier = null, placed, tax = null, lines, note } = order;
  return {
    id,
    placed,
    supplier,
    to: addressOf(house, supplier),
    deliverTo: order.deliverTo ?? null,
    deliverBy: order.deliverBy ?? null,
    firstHung: firstHungOf(plan, lines),
    notes: notesOf(house, supplier, note),
    lines: sorted(lines.map((line) => lineOf(house, placedLine(house, line)))),
    rate: tax,
    amounts: amountsOfOrder(house, order),
  };
}

function placedLine(house: House, { covering, patternNumber, run, rolls, packs, length, price, rooms }: PlacedLine): Omit<PaperOrderLine, 'name' | 'quantity'> {
  return { covering, patternNumber: patternNumber ?? null, run: run ?? null, rolls, packs, length: length?.typed ?? null, price: moneyIn(house, price), rooms };
}

function lineOf(house: House, line: Omit<PaperOrderLine, 'name' | 'quantity'>): PaperOrderLine {
  const covering = house.coverings.find(({ id }) => id === line.covering);
  const name = covering?.name ?? nameCovering(house, line.covering);
  const rooms = line.rooms.map((room) => nameRoom(house, room));
  return { ...line, name, quantity: sayQuantity(house, line), rooms };
}

/** How much is bought in the trade's words: '10 rolls of 33' (= 20 singles)', '30 yd in one piece'. */
function sayQuantity(house: House, { covering: id, rolls, length }: Pick<PaperOrderLine, 'covering' | 'rolls' | 'length'>): string {
  const covering = house.coverings.find((one) => one.id === id);
  const units = sayUnits(house, id, rolls);
  if (length !== null) return say`${length} in ${units}`;
  if (!covering || !('rollLength' in covering) || covering.rollLength === undefined) return units;
  const long = say`${units} of ${sayDecimal(covering.rollLength.typed)}`;
  return 'singlesPerRoll' in covering && covering.singlesPerRoll > 1 ? say`${long} (= ${rolls * covering.singlesPerRoll} singles)` : long;
}

/** What it is sold in: '8 packs of 2, 1 singly'. */
export function sayPacks({ packs }: Pick<PaperOrderLine, 'packs'>): string {
  return packs.map(({ rolls, count }) => (rolls === 1 ? say`${count} singly` : count === 1 ? say`${count} pack of ${rolls}` : say`${count} packs of ${rolls}`)).join(', ');
}

/** Of what hangs in the rooms of its lines, the earliest day. */
function firstHungOf({ calendar, jobs }: HousePlan, lines: readonly { readonly rooms: readonly string[] }[]): string | null {
  const rooms = new Set(lines.flatMap((line) => line.rooms));
  const hanging = new Set(jobs.flatMap(({ id, kind, room }) => (room !== null && rooms.has(room) && (kind === 'hanging' || kind === 'lining') ? [id] : [])));
  return (calendar?.bookings ?? []).filter(({ job }) => hanging.has(job)).map(({ from }) => from.day).toSorted()[0] ?? null;
}

/** The runs that a room is planned to hang from, of a covering. */
export function plannedRuns({ order }: HousePlan, room: string, covering: string): readonly string[] {
  return [...new Set(order.flatMap((line) => (line.covering === covering && line.rooms.includes(room) && line.run !== null ? [line.run] : [])))];
}

/** By when an order is wanted, in words. */
export function sayWanted({ deliverBy, firstHung }: Pick<PaperOrder, 'deliverBy' | 'firstHung'>): string {
  if (deliverBy !== null) return sayDay(deliverBy);
  return firstHung === null ? say`as soon as it can be had` : say`${sayDay(firstHung)}, when the first of it is hung`;
}

function addressOf(house: House, supplier: string | null): string {
  if (supplier === null) return say`No supplier named`;
  const address = house.suppliers.find(({ id }) => id === supplier)?.address;
  return address === undefined ? nameSupplier(house, supplier) : `${nameSupplier(house, supplier)}\n${address}`;
}

function notesOf(house: House, supplier: string | null, note: string | undefined): readonly string[] {
  const own = house.suppliers.find(({ id }) => id === supplier)?.note;
  return [note, own].filter((one) => one !== undefined);
}

function sorted(lines: readonly PaperOrderLine[]): readonly PaperOrderLine[] {
  const patterns = [...Map.groupBy(lines, ({ covering }) => covering).values()];
  return patterns.flatMap((own) => own.toSorted((one, other) => (one.run ?? '').localeCompare(other.run ?? '', 'en', { numeric: true })));
}
