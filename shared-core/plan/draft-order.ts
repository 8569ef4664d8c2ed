import type { Edit, House } from '../house/index.ts';
import { bySupplier, isBought, type OrderLine, type SupplierLines } from '../ordering/index.ts';
import { printLength, printMoney } from '../units/index.ts';

type PlaceOrder = Extract<Edit, { kind: 'place-order' }>;

/**
 * The edit that places an order with one supplier: what is to be bought of its coverings, as it stands now.
 *
 * Lines, packs, prices, tax, the house's note, and where and by when it wants them are written down as they are, so that
 * the order stays what it was. Null where nothing is to be bought. Orders are numbered from 1; `placed` is a date such
 * as "2026-03-02".
 * Example: 9 rolls of K-2041 needed and 1 spare in doubles are one line of 10 rolls, packs of 2 five times, 420.00.
 */
export function draftOrder(house: House, order: readonly OrderLine[], supplier: string | null, placed: string): PlaceOrder | null {
  const found = toBePlaced(house, order).find((one) => one.supplier === supplier);
  if (!found) return null;
  const lines = found.lines.map((line) => ({
    covering: line.covering,
    ...(line.patternNumber === null ? {} : { patternNumber: line.patternNumber }),
    ...(line.run === null ? {} : { run: line.run }),
    rolls: line.toBuy,
    ...(line.packs.length > 0 ? { packs: line.packs.map(({ rolls, count }) => ({ rolls, count })) } : {}),
    ...(line.running ? { length: printLength(line.running.toBuy, house.lengths) } : {}),
    ...(line.price === null ? {} : { price: printMoney(line.price, house.currency) }),
    rooms: [...line.rooms],
  }));
  const numbers = house.orders.map(({ id }) => Number(id)).filter(Number.isSafeInteger);
  return {
    kind: 'place-order',
    order: {
      id: String(Math.max(0, ...numbers) + 1),
      placed,
      earlier: house.deliveries.length,
      ...(supplier === null ? {} : { supplier }),
      ...(found.rate === null ? {} : { tax: { ...found.rate } }),
      ...(house.orderNote === undefined ? {} : { note: house.orderNote }),
      ...(house.deliverTo === undefined ? {} : { deliverTo: house.deliverTo }),
      ...(house.deliverBy === undefined ? {} : { deliverBy: house.deliverBy }),
      sharing: order
        .filter((line) => line.shortfall === 0 && found.lines.some(({ covering }) => covering === line.covering))
        .map((line) => ({ covering: line.covering, ...(line.run === null ? {} : { run: line.run }), rooms: [...line.rooms] })),
      lines,
    },
  };
}

/**
 * What would be placed with each supplier as it stands, with what it comes to.
 *
 * Not what rooms want that hang from no run while the supplier has named the runs there are; it is asked for as any one
 * run where nobody has. Example: run 2214 has 8 and a room takes 9: nothing is placed for it; with 3 in stock of an old run
 * and no offer 10 of any one run are.
 */
export function toBePlaced(house: House, order: readonly OrderLine[]): readonly SupplierLines[] {
  const isOpen = ({ covering, shortfall }: OrderLine) => shortfall > 0 && house.offers.some((offer) => offer.covering === covering);
  return bySupplier(house, order.filter((line) => isBought(line) && !isOpen(line)));
}
