import { nameSupplier } from '../../shared-core/house/index.ts';
import { printMoney, showMoney, writeSeparated } from '../../shared-core/units/index.ts';
import { say, sayDay, sayDecimal } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';
import { type PaperOrder, type PaperOrderLine, sayPacks, sayWanted } from './orders.ts';
import type { Block, Sheet } from './pdf/sheet.ts';
import { sayStamp } from './say-stamp.ts';

const OF_ONE_RUN = say`All rolls of a line are to be of one run: runs of the same pattern differ in shade. Please don’t make a line up from two runs; say instead how many rolls the run has.`;

/** The order as it goes to the supplier, on paper. */
export function orderSheet(facts: PaperFacts, order: PaperOrder): Sheet {
  const { house } = facts;
  const { currency } = house;
  const patterns = [...Map.groupBy(order.lines, ({ covering }) => covering).values()];
  return {
    title: order.id === null ? say`Order, not placed yet` : say`Order ${order.id}`,
    about: order.supplier === null ? say`No supplier named` : nameSupplier(house, order.supplier),
    blocks: [
      { kind: 'addresses', of: addressesOf(facts, order) },
      { kind: 'facts', of: [...(order.placed === null ? [] : [{ head: say`Placed`, text: sayDay(order.placed) }]), { head: say`Wanted by`, text: sayWanted(order) }, { head: say`State`, text: sayStamp(facts.stamp) }] },
      { kind: 'text', as: 'strong', text: OF_ONE_RUN },
      ...patterns.flatMap((own): readonly Block[] => [{
        kind: 'table',
        heading: own[0]!.patternNumber === null ? own[0]!.name : say`Pattern number ${own[0]!.patternNumber}: ${own[0]!.name}`,
        columns: [{ head: say`Run number`, width: 125 }, { head: say`Quantity`, isWide: true }, { head: say`As sold`, width: 125 }, { head: say`Price, ${currency}`, as: 'figure', width: 75 }],
        rows: own.map((line) => [{ text: sayRunAsked(line), isStrong: true }, line.quantity, sayPacks(line), line.price === null ? say`please quote` : sayDecimal(printMoney(line.price, currency))]),
      }, ...sequenceAsked(facts, own[0]!)]),
      ...totalsOf(order, currency),
      ...order.notes.map((text): Block => ({ kind: 'text', text })),
      { kind: 'text', as: 'soft', text: say`Please put the pattern number and the run number on the delivery note, and leave the labels on the rolls.` },
    ],
  };
}

/** Goods whose shade runs on along the roll are hung as they come from it. */
function sequenceAsked({ house }: PaperFacts, { covering }: PaperOrderLine): readonly Block[] {
  const found = house.coverings.find(({ id }) => id === covering);
  const isAsked = found?.kind === 'wallcovering' && found.sequence === 'required';
  return isAsked ? [{ kind: 'text', text: say`It is hung in the sequence of its rolls: please send rolls that follow one another, with their numbers. Seams and steps of shade will show.` }] : [];
}

function addressesOf({ house }: PaperFacts, { to, deliverTo }: PaperOrder) {
  return [{ head: say`Supplier`, text: to }, ...(house.contractor === undefined ? [] : [{ head: say`Ordered by`, text: house.contractor }]), ...(deliverTo === null ? [] : [{ head: say`Deliver to`, text: deliverTo }])];
}

/** Which run is asked for: 'run 2214 alone', or whichever one that has enough. */
function sayRunAsked({ run }: PaperOrderLine): string {
  return run === null ? say`any, all of one run` : say`${run}, and no other`;
}

function totalsOf({ rate, amounts: { net, tax, gross } }: PaperOrder, currency: string): readonly Block[] {
  if (net === null || tax === null || gross === null) return [];
  return [
    {
      kind: 'totals',
      of: [
        ...(rate === null ? [] : [{ head: rate.included ? say`Without the ${sayDecimal(rate.rate)} % of tax that the prices hold` : say`Before tax`, text: showMoney(net, currency) }, { head: say`Tax of ${sayDecimal(rate.rate)} %`, text: showMoney(tax, currency) }]),
        { head: say`To pay`, text: showMoney(gross, currency), isStrong: true },
      ],
    },
  ];
}

/** The same as a table for a spreadsheet, one row for each pattern number and run number. */
export function orderPaperCsv({ house }: PaperFacts, order: PaperOrder): string {
  const head = [say`Pattern number`, say`Run number`, say`Name`, say`Rolls`, say`Length`, say`Packs`, say`Quantity`, say`Price`, say`Currency`, say`Rooms`, say`Order`, say`Supplier`, say`Deliver to`, say`Wanted by`];
  const rows = order.lines.map((line) => [
    line.patternNumber ?? '',
    line.run ?? '',
    line.name,
    line.rolls,
    line.length ?? '',
    line.packs.map(({ rolls, count }) => `${count} x ${rolls}`).join(' + '),
    line.quantity,
    line.price === null ? '' : printMoney(line.price, house.currency),
    house.currency,
    line.rooms.join(', '),
    order.id ?? '',
    order.supplier === null ? '' : nameSupplier(house, order.supplier),
    (order.deliverTo ?? '').replaceAll('\n', ', '),
    order.deliverBy ?? order.firstHung ?? '',
  ]);
  return writeSeparated([head, ...rows]);
}

/** The same as the plain text of a mail. */
export function orderMail(facts: PaperFacts, order: PaperOrder): string {
  const { house } = facts;
  const { net, gross } = order.amounts;
  const lines = order.lines.flatMap((line) => [
    line.patternNumber === null ? line.name : say`Pattern number ${line.patternNumber}, ${line.name}`,
    line.run === null ? say`  any run, but all of one run` : say`  run number ${line.run}, and no other`,
    `  ${line.quantity}${line.packs.length > 0 ? say`, as ${sayPacks(line)}` : ''}${line.price === null ? say`, please quote the price` : `, ${showMoney(line.price, house.currency)}`}`,
    '',
  ]);
  return [
    order.id === null ? say`Order for ${house.name}` : say`Order ${order.id} for ${house.name}`,
    order.to,
    '',
    OF_ONE_RUN,
    '',
    ...lines,
    ...(net === null || gross === null ? [] : [...(order.rate === null ? [] : [order.rate.included ? say`The prices hold ${sayDecimal(order.rate.rate)} % of tax.` : say`${sayDecimal(order.rate.rate)} % of tax on top.`]), say`To pay: ${showMoney(gross, house.currency)}`, '']),
    ...(order.deliverTo === null ? [] : [say`Deliver to:`, order.deliverTo, '']),
    say`Wanted by: ${sayWanted(order)}`,
    ...order.notes,
    ...(house.contractor === undefined ? [] : ['', house.contractor]),
    '',
    sayStamp(facts.stamp),
    '',
  ].join('\n');
}
