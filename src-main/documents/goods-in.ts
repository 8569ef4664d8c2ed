import { nameSupplier } from '../../shared-core/house/index.ts';
import { say, sayDay } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';
import { comingOrders, type PaperOrder } from './orders.ts';
import { type Sheet, TICK_BOX } from './pdf/sheet.ts';

/** In points: what somebody writes with a thick pencil on a pile of rolls. */
const ROOM_TO_WRITE = 24;
const ROWS_TO_WRITE = 4;

/** What should arrive, to be ticked off beside the van: a sheet for each order, of what of it is still to come. */
export function goodsInSheets(facts: PaperFacts): readonly Sheet[] {
  return comingOrders(facts).map((order) => goodsInSheet(order, facts));
}

function goodsInSheet(order: PaperOrder, { house }: PaperFacts): Sheet {
  const expected = house.orders.find(({ id }) => id === order.id)?.expected;
  const columns = [
    { head: say`Pattern number` },
    { head: say`agrees`, as: 'tick' },
    { head: say`Run number` },
    { head: say`agrees`, as: 'tick' },
    { head: say`To come`, isWide: true },
    { head: say`Came`, width: 48 },
    { head: say`whole`, as: 'tick' },
    { head: say`Damaged or short`, width: 84 },
  ] as const;
  return {
    title: say`Goods in`,
    about: order.supplier === null ? say`No supplier named` : nameSupplier(house, order.supplier),
    blocks: [
      {
        kind: 'facts',
        of: [
          { head: say`Order`, text: order.id === null ? say`not placed yet` : say`${order.id}, placed ${sayDay(order.placed!)}` },
          ...(expected === undefined ? [] : [{ head: say`Expected on`, text: sayDay(expected) }]),
          ...(order.deliverTo === null ? [] : [{ head: say`Delivered to`, text: order.deliverTo }]),
          { head: say`Received by, on`, text: '' },
        ],
      },
      { kind: 'text', as: 'strong', text: say`Read the label of every roll, not of the box: pattern number and run number. A roll of another run is put aside, whatever the delivery note says. Keep the labels.` },
      {
        kind: 'table',
        heading: say`Still to come`,
        columns,
        rows: order.lines.map((line) => [{ text: line.patternNumber ?? line.name, isStrong: true }, TICK_BOX, line.run ?? say`any, all of one run: ……………`, TICK_BOX, line.quantity, '', TICK_BOX, '']),
        rowHeight: ROOM_TO_WRITE,
      },
      { kind: 'table', heading: say`What else came`, columns, rows: Array.from({ length: ROWS_TO_WRITE }, () => columns.map(() => '')), rowHeight: ROOM_TO_WRITE },
      { kind: 'text', as: 'soft', text: say`A wrong pattern number, another run and damage are told to the supplier on the day; nothing is cut from it before.` },
    ],
  };
}
