import { type House, nameSupplier } from '../house/index.ts';
import { say } from '../words/index.ts';
import { toBePlaced } from './draft-order.ts';
import type { HousePlan } from './house-plan.ts';
import { nameRoom } from './name-room.ts';

/** What of a house's plan is written for others to read; `orders` and `job-sheets` are those of all suppliers and rooms in one. */
export type PaperKind = 'order' | 'orders' | 'placed-order' | 'goods-in' | 'job-sheet' | 'job-sheets' | 'cut-list' | 'shopping-list' | 'quote' | 'calendar' | 'record';
/** `text` is for a mail, `ics` for calendar programs. */
export type PaperForm = 'pdf' | 'csv' | 'text' | 'ics';
/** ISO 216's A4, or US Letter. */
export type PaperSize = 'a4' | 'letter';

/** Where US Letter is usual, by the territories of Unicode's CLDR (from memory). */
const LETTER_COUNTRIES = ['BZ', 'CA', 'CL', 'CO', 'CR', 'GT', 'MX', 'NI', 'PA', 'PH', 'PR', 'SV', 'US', 'VE'];

/** Which paper: of an order its supplier, of one that was placed its id, of a job sheet its room; of others nothing. */
export interface PaperName {
  readonly kind: PaperKind;
  /** Null too of the supplier of coverings that name none. */
  readonly of: string | null;
}

/** A paper that a house has something for. */
export interface PaperListing extends PaperName {
  readonly title: string;
  readonly forms: readonly PaperForm[];
  /** It holds other papers of the list in one. */
  readonly isTogether?: true;
}

/**
 * The papers that there is something to write on, in the order of the work; each stands on its own.
 *
 * A supplier of whom something is still to be bought has an order and a goods-in sheet, and so has each order that was
 * placed; every room in which something is done has a job sheet. Example: a house with one room hung from one supplier
 * and no day to begin has an order, a goods-in sheet, a job sheet, a cut list, a shopping list for its paste, a quote and a record.
 */
export function papersOf(house: House, plan: HousePlan): readonly PaperListing[] {
  const rooms = roomsAtWork(house, plan);
  const drafts = toBePlaced(house, plan.order).map(({ supplier }) => supplier);
  const isComing = (order: string) => plan.runs.some(({ ledger }) => ledger.lines.some((line) => line.order === order && line.outstanding > 0));
  return [
    ...drafts.map((supplier): PaperListing => ({ kind: 'order', of: supplier, title: supplier === null ? say`Order, no supplier named` : say`Order for ${nameSupplier(house, supplier)}`, forms: ['pdf', 'csv', 'text'] })),
    ...(drafts.length > 1 ? [{ ...paper('orders', say`Orders for all suppliers`), isTogether: true as const }] : []),
    ...house.orders.map(({ id }): PaperListing => ({ kind: 'placed-order', of: id, title: say`Order ${id}`, forms: ['pdf', 'csv', 'text'] })),
    ...(drafts.length > 0 || house.orders.some(({ id }) => isComing(id)) ? [paper('goods-in', say`Goods in`)] : []),
    ...(rooms.length > 1 ? [{ ...paper('job-sheets', say`Job sheets of all rooms`), isTogether: true as const }] : []),
    ...rooms.map((room): PaperListing => ({ kind: 'job-sheet', of: room, title: say`Job sheet, ${nameRoom(house, room)}`, forms: ['pdf'] })),
    ...(plan.cuts.some(({ rolls }) => rolls.length > 0) ? [paper('cut-list', say`Cut list`)] : []),
    ...(plan.prep.paints.length + plan.prep.materials.length > 0 ? [paper('shopping-list', say`Shopping list`)] : []),
    ...(plan.cost.lines.length > 0 ? [paper('quote', say`Quote`)] : []),
    ...(plan.calendar?.first ? [{ ...paper('calendar', say`Calendar`), forms: ['pdf', 'ics'] as const }] : []),
    ...(house.rooms.length > 0 ? [paper('record', say`House record`)] : []),
  ];
}

function paper(kind: PaperKind, title: string): PaperListing {
  return { kind, of: null, title, forms: ['pdf'] };
}

/** The rooms in which something is prepared, painted or hung, as the house has them. */
export function roomsAtWork(house: House, plan: HousePlan): readonly string[] {
  const named = new Set(plan.jobs.flatMap(({ room }) => (room === null ? [] : [room])));
  return house.rooms.map(({ id }) => id).filter((id) => named.has(id) || plan.rooms.some((room) => room.id === id && (room.bands.length > 0 || room.ceiling !== null)));
}

/**
 * The paper that is usual where a house is; where its country is not known, by its units.
 *
 * Example: US Letter in Canada and for a house of feet of which no country is known, A4 in Ireland.
 */
export function usualPaperSize({ country, lengths }: Pick<House, 'country' | 'lengths'>): PaperSize {
  const isLetter = country === undefined ? lengths === 'imperial' : LETTER_COUNTRIES.includes(country);
  return isLetter ? 'letter' : 'a4';
}
