import { nameCovering } from '../../../shared-core/house/index.ts';
import { nameRoom } from '../../../shared-core/plan/index.ts';
import { printLength, printMoney } from '../../../shared-core/units/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { copyTable, type TableCell } from '../../parts/copy-table.ts';
import { lookingAt } from './looking-at.svelte.ts';
import type { OrderSheet } from './order.svelte.ts';
import { sayPriceHead } from './say-order.ts';

/** Puts the order on the clipboard as it is looked at, one row for each pattern number and run number. */
export function copyOrder(sheet: OrderSheet): void {
  const { house } = sheet;
  if (lookingAt.view === 'room') {
    void copyTable(
      [say`Room`, say`Pattern number`, say`Run number`, say`Cut alone`, say`Whole run together`],
      sheet.rooms.map(({ room, line, rollsAlone }) => [room.name, nameCovering(house, line.covering), line.run ?? '', rollsAlone, line.rollsNeeded]),
    );
    return;
  }
  const lines = lookingAt.view === 'pattern' ? sheet.patterns.flatMap((pattern) => pattern.lines) : sheet.suppliers.flatMap((supplier) => supplier.lines);
  const rows = lines.map((line): readonly TableCell[] => {
    const covering = house.coverings.find(({ id }) => id === line.covering);
    return [
      nameCovering(house, line.covering),
      line.run ?? '',
      covering?.supplier ?? '',
      line.rooms.map((room) => nameRoom(house, room)).join(', '),
      line.rollsByRoom,
      line.rollsNeeded,
      line.spare,
      line.inHand,
      line.onOrder,
      line.running ? printLength(line.running.toBuy, house.lengths) : line.toBuy,
      line.packs.map(({ rolls, count }) => `${count} x ${rolls}`).join(' + '),
      line.price === null ? '' : printMoney(line.price, house.currency),
    ];
  });
  void copyTable([say`Pattern number`, say`Run number`, say`Supplier`, say`Hung in`, say`Room by room`, say`Together`, say`Spare`, say`In hand`, say`On order`, say`To buy`, say`As sold`, sayPriceHead(house, sheet.suppliers)], rows);
}
