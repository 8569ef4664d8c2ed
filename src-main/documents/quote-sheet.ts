import { quoteOf } from '../../shared-core/costing/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { nameRoom } from '../../shared-core/plan/index.ts';
import { printMoney, showMoney } from '../../shared-core/units/index.ts';
import { say, sayDecimal } from '../../shared-core/words/index.ts';
import type { PaperFacts } from './paper-facts.ts';
import type { Block, Sheet } from './pdf/sheet.ts';

/** The price to the customer: what is done where, what it includes and what not, and where it is accepted. */
export function quoteSheet({ house, plan }: PaperFacts): Sheet {
  const quote = quoteOf({ house, cost: plan.cost, jobs: plan.jobs });
  const { currency } = house;
  const addresses = [...(house.customer === undefined ? [] : [{ head: say`For`, text: house.customer }]), ...(house.contractor === undefined ? [] : [{ head: say`From`, text: house.contractor }])];
  const byRoom = [...Map.groupBy(quote.lines, ({ room }) => room)];
  const { net, tax, gross, taxRate } = quote;
  return {
    title: say`Quote`,
    about: null,
    blocks: [
      ...(addresses.length > 0 ? [{ kind: 'addresses', of: addresses } satisfies Block] : []),
      { kind: 'text', text: say`For the work in ${house.name}, as it is described here:` },
      {
        kind: 'table',
        columns: [{ head: say`Where`, width: 90 }, { head: say`Work and what it includes`, isWide: true }, { head: say`Price before tax, ${currency}`, as: 'figure', width: 96 }],
        rows: byRoom.flatMap(([room, lines]) =>
          lines.map(({ kind, words, included, amount }, index) => [{ text: index === 0 ? nameOf(house, room) : '', isStrong: true }, kind === 'clearing-up' ? words : `${words}: ${included.join('; ')}`, amount === null ? say`not known yet` : sayDecimal(printMoney(amount, currency))]),
        ),
      },
      ...(net === null
        ? []
        : [
            {
              kind: 'totals',
              of: [
                { head: say`Price before tax`, text: showMoney(net, currency), isStrong: taxRate === null },
                ...(taxRate === null || tax === null || gross === null ? [] : [{ head: say`Tax of ${sayDecimal(taxRate)} %`, text: showMoney(tax, currency) }, { head: say`Price with tax`, text: showMoney(gross, currency), isStrong: true }]),
              ],
            } satisfies Block,
          ]),
      ...listed(say`Not included`, quote.excluded),
      ...listed(say`Not known yet, so that there is no price`, quote.missing),
      ...(net === null ? [] : [{ kind: 'heading', text: say`Accepted` } satisfies Block, { kind: 'facts', of: [say`Date`, say`Name`, say`Signature`].map((head) => ({ head, text: '………………………………………………………' })) } satisfies Block]),
    ],
  };
}

function nameOf(house: House, room: string | null): string {
  return room === null ? say`The whole house` : nameRoom(house, room);
}

function listed(heading: string, texts: readonly string[]): readonly Block[] {
  return texts.length === 0 ? [] : [{ kind: 'heading', text: heading }, ...texts.map((text): Block => ({ kind: 'text', text: `– ${text}` }))];
}
