import type { HouseJob } from '../calendar/house-job.ts';
import { type House, moneyIn } from '../house/index.ts';
import { percentOf } from '../ordering/index.ts';
import { ceilDivide, type Money, moneyOf, scaleMoney, ZERO_MONEY } from '../units/index.ts';
import { say } from '../words/index.ts';
import type { CostLine, CostPlan } from './cost-plan.ts';
import { findPurchases, type Goods, type Purchase, sumOf } from './purchases.ts';

/** What the cost of a house is reckoned from. */
export interface CostFacts extends Goods {
  readonly jobs: readonly HouseJob[];
}

const MINUTES_PER_HOUR = 60;

/**
 * What the work of a house costs and the price asked for it, with what was spent of it so far.
 *
 * Shapes: money in minor units of the house's currency, minutes of all people together. A job's labour is its minutes ×
 * people × rate of an hour, rounded once to the smallest unit, a half up; a job without minutes has no line. Markup is a
 * share of the materials and tax one of the price, rounded so too; the price is rounded up to the house's multiple. A sum
 * that takes something of unknown price is null, and `missing` says what. What was spent beside is compared as typed with
 * the materials, net of tax; of minutes spent, those of each person were typed.
 * Example: 90 min of two people at 42.00 an hour are 126.00; materials of 420.00 with a markup of 15 % are 483.00;
 * together 609.00, rounded up to tens 610.00, with 19 % of tax 725.90.
 */
export function planCost(facts: CostFacts): CostPlan {
  const { house, jobs } = facts;
  const rate = moneyIn(house, house.work?.rate);
  const purchases = findPurchases(facts);
  const goods = [...Map.groupBy(purchases, ({ kind, of }) => `${kind}:${of}`).values()].map(costOfGoods);
  const work = jobs.filter(({ minutes }) => minutes > 0).map((job) => costOfJob(job, rate, house));
  const materials = sumOf(goods.map(({ cost }) => cost));
  const labour = sumOf(work.map(({ cost }) => cost));
  const price = priceOf(house, materials, labour);
  const peopleOf = new Map(jobs.map(({ id, people }) => [id, people]));
  return {
    lines: [...goods, ...work],
    materials,
    labour,
    ...price,
    missing: [...new Set(purchases.flatMap(({ missing }) => missing ?? []).concat(labour === null ? [say`What an hour of work costs is not known.`] : []))],
    actual: {
      minutesPlanned: work.reduce((sum, { minutes }) => sum + minutes!, 0),
      minutesSpent: house.tasks.reduce((sum, { task, spent }) => sum + (spent ?? 0) * (peopleOf.get(task) ?? 1), 0),
      spent: moneyOf(house.expenses.reduce((sum, { cost }) => sum + (moneyIn(house, cost) ?? 0), 0)),
      planned: materials,
    },
  };
}

function costOfGoods(purchases: readonly Purchase[]): CostLine {
  const { kind, of, words } = purchases[0]!;
  return { kind, of, words, room: null, minutes: null, spentMinutes: null, cost: sumOf(purchases.map(({ net }) => net)) };
}

function costOfJob({ id, room, words, minutes, people }: HouseJob, rate: Money | null, house: House): CostLine {
  const all = minutes * people;
  const spent = house.tasks.find(({ task }) => task === id)?.spent;
  return { kind: 'labour', of: id, words, room, minutes: all, spentMinutes: spent === undefined ? null : spent * people, cost: rate === null ? null : scaleMoney(rate, all, MINUTES_PER_HOUR) };
}

function priceOf(house: House, materials: Money | null, labour: Money | null): Pick<CostPlan, 'markup' | 'rounding' | 'net' | 'tax' | 'gross'> {
  const { work } = house;
  const markup = materials === null ? null : work?.markup === undefined ? ZERO_MONEY : percentOf(materials, work.markup);
  const sum = sumOf([materials, labour, markup]);
  if (sum === null) return { markup, rounding: null, net: null, tax: null, gross: null };
  const multiple = moneyIn(house, work?.rounding) ?? 0;
  const net = multiple > 0 ? moneyOf(ceilDivide(sum, multiple) * multiple) : sum;
  const tax = work?.tax === undefined ? ZERO_MONEY : percentOf(net, work.tax);
  return { markup, rounding: moneyOf(net - sum), net, tax, gross: moneyOf(net + tax) };
}
