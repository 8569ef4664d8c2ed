import type { House } from '../../../shared-core/house/index.ts';
import type { OrderLine, SupplierLines } from '../../../shared-core/ordering/index.ts';
import { sayUnits } from '../../../shared-core/plan/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';

/**
 * What cutting the house together takes and saves, rolls and spools each counted by themselves; null where nothing is cut
 * from rolls.
 *
 * Example: 'Cut together the house takes 49 rolls and 10 spools; room by room it would take 58 rolls and 10 spools. That
 * saves 9 rolls.'
 */
export function saySaving(house: House, order: readonly OrderLine[]): string | null {
  // Murals and goods by the length are not cut from rolls.
  const lines = order.filter(({ problems, running }) => problems.length > 0 && running === null);
  if (lines.length === 0) return null;
  const isSpool = ({ covering }: OrderLine) => house.coverings.find(({ id }) => id === covering)?.kind === 'border';
  const kinds = [lines.filter((line) => !isSpool(line)), lines.filter(isSpool)].filter((own) => own.length > 0);
  const sayAll = (figure: (line: OrderLine) => number) =>
    sayList(
      kinds
        .map((own) => ({ covering: own[0]!.covering, count: own.reduce((sum, line) => sum + figure(line), 0) }))
        .filter(({ count }) => count > 0)
        .map(({ covering, count }) => sayUnits(house, covering, count)),
    );
  const together = sayAll(({ rollsNeeded }) => rollsNeeded);
  const saved = sayAll(({ rollsByRoom, rollsNeeded }) => rollsByRoom - rollsNeeded);
  if (house.rules.pooling === 'room') return say`Each room is cut on its own, by the house's rule: ${together}.`;
  if (saved === '') return say`Cut together or room by room, the house takes ${together}.`;
  return say`Cut together the house takes ${together}; room by room it would take ${sayAll(({ rollsByRoom }) => rollsByRoom)}. That saves ${saved}.`;
}

/** The head over the prices: 'Price before tax, USD' where a tax that they do not hold comes on top, else 'Price, USD'. */
export function sayPriceHead(house: House, suppliers: readonly Pick<SupplierLines, 'rate'>[]): string {
  const rates = suppliers.flatMap(({ rate }) => rate ?? []);
  const isBeforeTax = rates.length > 0 && rates.every(({ included }) => !included);
  return `${isBeforeTax ? say`Price before tax` : say`Price`}, ${house.currency}`;
}

/** That not all of the spare is to be had: '1 of the spare is lacking: the run has no more.' */
export function sayLacking({ spareLacking }: Pick<OrderLine, 'spareLacking'>): string {
  return spareLacking === 1 ? say`${spareLacking} of the spare is lacking: the run has no more.` : say`${spareLacking} of the spare are lacking: the run has no more.`;
}

export function sayNoMatch(typed: string): string {
  return say`Nothing here matches ‘${typed.trim()}’.`;
}
