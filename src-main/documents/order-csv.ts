import type { House } from '../../shared-core/house/index.ts';
import { type HousePlan, nameRoom } from '../../shared-core/plan/index.ts';
import { printLength, printMoney } from '../../shared-core/units/index.ts';

const HEAD = ['Pattern number', 'Run number', 'Name', 'Supplier', 'Rooms', 'Rolls needed', 'Spare', 'In hand', 'On order', 'To buy', 'Packs', 'Price', 'Currency', 'Shortfall', 'Length to buy'];

/**
 * The bulk order as CSV by RFC 4180: CRLF line ends, quotes doubled, one head row.
 *
 * A cell that a spreadsheet would run as a formula gets an apostrophe in front.
 * Example: a pattern number `=1+1` is written `'=1+1`.
 */
export function orderCsv(house: House, plan: HousePlan): string {
  const rows = plan.order.map((line) => {
    const covering = house.coverings.find(({ id }) => id === line.covering);
    return [
      line.patternNumber ?? '',
      line.run ?? '',
      covering?.name ?? '',
      covering?.supplier ?? '',
      line.rooms.map((room) => nameRoom(house, room)).join(', '),
      line.rollsNeeded,
      line.spare,
      line.inHand,
      line.onOrder,
      line.toBuy,
      line.packs.map(({ rolls, count }) => `${count} x ${rolls}`).join(' + '),
      line.price === null ? '' : printMoney(line.price, house.currency),
      house.currency,
      line.shortfall,
      line.running ? printLength(line.running.toBuy, house.lengths) : '',
    ];
  });
  return [HEAD, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
