import { present } from '../base/index.ts';
import type { JobWorking } from '../calendar/house-job.ts';
import { type House, moneyIn } from '../house/index.ts';
import { type Money, moneyOf, showMoney } from '../units/index.ts';
import { say, sayDecimal } from '../words/index.ts';
import type { CostLine, CostPlan } from './cost-plan.ts';
import type { CostFacts } from './plan-cost.ts';
import { findPurchases, type Purchase } from './purchases.ts';

/** One line of arithmetic, with the rule it follows where there is one. */
export type CostWorking = JobWorking;

/** How each figure of a cost plan was reached. */
export interface CostWorkings {
  readonly materials: readonly CostWorking[];
  readonly labour: readonly CostWorking[];
  readonly markup: readonly CostWorking[];
  readonly net: readonly CostWorking[];
  readonly tax: readonly CostWorking[];
  readonly gross: readonly CostWorking[];
  readonly actual: readonly CostWorking[];
}

/**
 * How a line's cost was reached, in lines of arithmetic: of labour its minutes too.
 *
 * Example: '126 min at 42.00 USD an hour = 88.20 USD.'
 */
export function explainCostLine(facts: CostFacts, line: CostLine): readonly CostWorking[] {
  const { house } = facts;
  if (line.kind === 'labour') return explainLabour(facts, line);
  const purchases = findPurchases(facts).filter(({ kind, of }) => kind === line.kind && of === line.of);
  const each = purchases.flatMap((purchase) => explainPurchase(house, purchase));
  return purchases.length > 1 && line.cost !== null ? [...each, { text: say`Together ${showMoney(line.cost, house.currency)}.` }] : each;
}

/**
 * How the sums of a cost plan were reached, in lines of arithmetic with the rule of each rounding.
 *
 * Example: '420.00 USD of materials + 126.00 USD of labour + 63.00 USD of markup = 609.00 USD.', '1.00 USD more up to a
 * multiple of 10.00 USD = 610.00 USD.'
 */
export function explainCost({ house }: CostFacts, cost: CostPlan): CostWorkings {
  const show = (money: Money) => showMoney(money, house.currency);
  const unknown = cost.missing.map((text): CostWorking => ({ text }));
  const { work } = house;
  const sumOfLines = (sum: Money | null, lines: readonly CostLine[], rule: string): readonly CostWorking[] => [
    ...lines.map(({ words, cost: own }) => ({ text: `${words}: ${own === null ? say`no price` : show(own)}.` })),
    sum === null ? { text: say`Not all of it has a price.` } : { text: say`Together ${show(sum)}.`, rule },
  ];
  const { materials, labour, markup, net, tax, gross, rounding } = cost;
  return {
    materials: sumOfLines(materials, cost.lines.filter(({ kind }) => kind !== 'labour'), say`what was ordered and what is still to be bought, net of tax; prices as typed`),
    labour: sumOfLines(labour, cost.lines.filter(({ kind }) => kind === 'labour'), say`minutes × people × what an hour costs, each job rounded once to the smallest unit of money, a half up`),
    markup:
      markup === null || materials === null
        ? unknown
        : [work?.markup === undefined ? { text: say`None was said.` } : { text: say`${sayDecimal(work.markup)} % of ${show(materials)} = ${show(markup)}.`, rule: say`rounded once to the smallest unit of money, a half up` }],
    net:
      net === null || materials === null || labour === null || markup === null || rounding === null
        ? unknown
        : [
            { text: say`${show(materials)} of materials + ${show(labour)} of labour + ${show(markup)} of markup = ${show(moneyOf(net - rounding))}.` },
            ...explainRounding(house, rounding, net),
          ],
    tax:
      tax === null || net === null
        ? unknown
        : [work?.tax === undefined ? { text: say`None was said.` } : { text: say`${sayDecimal(work.tax)} % of ${show(net)} = ${show(tax)}.`, rule: say`rounded once to the smallest unit of money, a half up` }],
    gross: gross === null || net === null || tax === null ? unknown : [{ text: say`${show(net)} + ${show(tax)} of tax = ${show(gross)}.` }],
    actual: explainActual(house, cost.actual),
  };
}

function explainRounding(house: House, rounding: Money, net: Money): readonly CostWorking[] {
  const multiple = moneyIn(house, house.work?.rounding) ?? 0;
  const show = (money: Money) => showMoney(money, house.currency);
  if (multiple === 0) return [];
  return [{ text: say`${show(rounding)} more up to a multiple of ${show(moneyOf(multiple))} = ${show(net)}.`, rule: say`the price is rounded up, never down` }];
}

function explainActual(house: House, { minutesPlanned, minutesSpent, spent, planned }: CostPlan['actual']): readonly CostWorking[] {
  const show = (money: Money) => showMoney(money, house.currency);
  const less = minutesPlanned - minutesSpent;
  return [
    { text: less >= 0 ? say`${minutesPlanned} min planned - ${minutesSpent} min spent = ${less} min left.` : say`${minutesSpent} min spent - ${minutesPlanned} min planned = ${-less} min too many.`, rule: say`of all people together` },
    planned === null
      ? { text: say`${show(spent)} spent; what was planned for it is not known.` }
      : spent <= planned
        ? { text: say`${show(planned)} planned for materials - ${show(spent)} spent = ${show(moneyOf(planned - spent))} left.`, rule: say`materials net of tax, what was spent as typed` }
        : { text: say`${show(spent)} spent - ${show(planned)} planned for materials = ${show(moneyOf(spent - planned))} too much.`, rule: say`materials net of tax, what was spent as typed` },
  ];
}

function explainLabour({ house, jobs }: CostFacts, { of, minutes, cost }: CostLine): readonly CostWorking[] {
  const job = present(jobs.find(({ id }) => id === of), `a job ${of}`);
  const all = present(minutes, 'minutes of labour');
  const rate = moneyIn(house, house.work?.rate);
  return [
    ...job.working,
    ...(job.people === 2 ? [{ text: say`2 people × ${job.minutes} min = ${all} min.` }] : []),
    rate === null || cost === null
      ? { text: say`What an hour of work costs is not known.` }
      : { text: say`${all} min at ${showMoney(rate, house.currency)} an hour = ${showMoney(cost, house.currency)}.`, rule: say`rounded once to the smallest unit of money, a half up` },
  ];
}

function explainPurchase(house: House, { order, price, coming, tax, net, missing }: Purchase): readonly CostWorking[] {
  if (price === null || net === null) return missing === null ? [] : [{ text: missing }];
  const show = (money: Money) => showMoney(money, house.currency);
  const what = order === null ? say`to buy` : say`order ${order}`;
  const paid = coming === null ? `${what}: ${show(price)}.` : say`${what}: ${show(price)} × ${coming.rolls} of ${coming.of} rolls that come.`;
  const isTaken = tax !== null && tax.included;
  return [{ text: paid, rule: say`prices as typed` }, ...(isTaken ? [{ text: say`Without the ${sayDecimal(tax.rate)} % of tax that it holds: ${show(net)}.`, rule: say`tax is reckoned once over all that is bought together, then shared by the prices` }] : coming === null ? [] : [{ text: say`Together ${show(net)}.` }])];
}
