import type { House } from '../../shared-core/house/index.ts';
import { type HousePlan, nameRoom } from '../../shared-core/plan/index.ts';
import { printLength, printMoney, writeSeparated } from '../../shared-core/units/index.ts';

const HEAD = ['Pattern number', 'Run number', 'Name', 'Supplier', 'Rooms', 'Rolls needed', 'Spare', 'In hand', 'On order', 'To buy', 'Packs', 'Price', 'Currency', 'Shortfall', 'Length to buy'];

/**
 * The bulk order as CSV with one head row.
 *
 * Example: a pattern number `=1+1`, which a spreadsheet would run as a formula, is written `'=1+1`.
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
  return writeSeparated([HEAD, ...rows]);
}
