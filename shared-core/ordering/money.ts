import { type House, moneyIn, type PlacedOrder, type Tax } from '../house/index.ts';
import { type Money, moneyOf, scaleMoney } from '../units/index.ts';
import type { OrderLine } from './order-line.ts';

/** What is bought of one supplier, before and with tax. */
export interface Amounts {
  /** Null where a line has no price. */
  readonly net: Money | null;
  readonly tax: Money | null;
  readonly gross: Money | null;
}

export interface SupplierLines extends Amounts {
  /** As the coverings name it; null for those that name none. */
  readonly supplier: string | null;
  readonly rate: Tax | null;
  readonly lines: readonly OrderLine[];
}

/**
 * Net, tax and gross of an amount: the tax is reckoned once over the whole and rounded to the smallest unit of money, a
 * half away from zero.
 *
 * Example: 420.00 at 7.25 % is 30.45 more; 120.00 that holds 20 % is 100.00 and 20.00.
 */
export function amountsOf(sum: Money | null, tax: Tax | null): Amounts {
  if (sum === null) return { net: null, tax: null, gross: null };
  if (tax === null) return { net: sum, tax: moneyOf(0), gross: sum };
  if (tax.included) {
    const net = scaleMoney(sum, 100_000, 100_000 + thousandthsOf(tax.rate));
    return { net, tax: moneyOf(sum - net), gross: sum };
  }
  const added = percentOf(sum, tax.rate);
  return { net: sum, tax: added, gross: moneyOf(sum + added) };
}

/**
 * So many percent of an amount, rounded once to the smallest unit of money, a half away from zero.
 *
 * Takes a rate as the facts write it, up to three decimals. Example: 7.25 % of 420.00 are 30.45.
 */
export function percentOf(sum: Money, rate: string): Money {
  return scaleMoney(sum, thousandthsOf(rate), 100_000);
}

/** A rate in percent as thousandths of a percent: "7.25" is 7250. */
function thousandthsOf(rate: string): number {
  const [whole = '0', decimals = ''] = rate.split(/[.,]/);
  return Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
}

/** The tax of a supplier: its own, else the house's. */
export function taxOf(house: Pick<House, 'suppliers' | 'tax'>, supplier: string | null): Tax | null {
  return house.suppliers.find(({ id }) => id === supplier)?.tax ?? house.tax ?? null;
}

/**
 * The lines of an order by who supplies them, each with its amounts; suppliers in the order of the coverings.
 *
 * Example: two coverings of one supplier at 100.00 and 50.00 under a tax of 10 %: 150.00, 15.00 and 165.00.
 */
export function bySupplier(house: House, lines: readonly OrderLine[]): readonly SupplierLines[] {
  const supplierOf = new Map(house.coverings.map(({ id, supplier }) => [id, supplier ?? null]));
  return [...Map.groupBy(lines, ({ covering }) => supplierOf.get(covering) ?? null)].map(([supplier, own]) => {
    const rate = taxOf(house, supplier);
    const sum = own.every(({ price }) => price !== null) ? moneyOf(own.reduce((total, { price }) => total + price!, 0)) : null;
    return { supplier, rate, lines: own, ...amountsOf(sum, rate) };
  });
}

/**
 * What a placed order came to when it was placed, in the house's currency; nothing is known where a line had no price.
 *
 * Example: lines of 100.00 and 50.00 under a tax of 10 % that comes on top: 150.00, 15.00 and 165.00.
 */
export function amountsOfOrder(house: Pick<House, 'currency'>, { lines, tax }: Pick<PlacedOrder, 'lines' | 'tax'>): Amounts {
  const prices = lines.map(({ price }) => moneyIn(house, price));
  return amountsOf(prices.every((price) => price !== null) ? moneyOf(prices.reduce((total, price) => total + price, 0)) : null, tax ?? null);
}

/**
 * Amounts together; null where one of them is not known.
 *
 * Example: 150.00 with 15.00 of tax and 40.00 without any are 190.00, 15.00 and 205.00.
 */
export function addAmounts(all: readonly Amounts[]): Amounts {
  const add = (of: (amounts: Amounts) => Money | null) => (all.every((one) => of(one) !== null) ? moneyOf(all.reduce((total, one) => total + of(one)!, 0)) : null);
  return { net: add(({ net }) => net), tax: add(({ tax }) => tax), gross: add(({ gross }) => gross) };
}
