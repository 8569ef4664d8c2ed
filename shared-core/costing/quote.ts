import { present } from '../base/index.ts';
import type { HouseJob, JobKind } from '../calendar/house-job.ts';
import { type House, nameCovering } from '../house/index.ts';
import { type Money, moneyOf, splitMoney } from '../units/index.ts';
import { say } from '../words/index.ts';
import type { CostLine, CostPlan } from './cost-plan.ts';
import { sumOf } from './purchases.ts';

export type QuoteKind = JobKind | 'coverings' | 'paints' | 'materials';

/** One line of a quote: of what kind, where, what is included in it, and what is asked for it. */
export interface QuoteLine {
  /** Null for what is bought for the house together. */
  readonly room: string | null;
  readonly kind: QuoteKind;
  readonly words: string;
  readonly included: readonly string[];
  /** Before tax; null while the price is not known. */
  readonly amount: Money | null;
}

/** What the customer is asked to pay, and for what. */
export interface Quote {
  readonly lines: readonly QuoteLine[];
  /** What is not included, in words. */
  readonly excluded: readonly string[];
  readonly net: Money | null;
  /** The rate in percent; null where no tax is put on top. */
  readonly taxRate: string | null;
  readonly tax: Money | null;
  readonly gross: Money | null;
  /** What has to be known before there is a price. */
  readonly missing: readonly string[];
}

const GOODS: Readonly<Record<Exclude<CostLine['kind'], 'labour'>, QuoteKind>> = { covering: 'coverings', paint: 'paints', material: 'materials' };

const KIND_WORDS: Readonly<Record<QuoteKind, string>> = {
  preparation: say`Preparing the surfaces`,
  lining: say`Lining`,
  painting: say`Painting`,
  hanging: say`Hanging`,
  'clearing-up': say`Clearing up`,
  coverings: say`Wallcoverings`,
  paints: say`Paints`,
  materials: say`Materials of the preparation`,
};

/**
 * The lines of a quote, by room and kind, with what is included and what is not.
 *
 * Shapes: money in minor units, before tax but for `tax` and `gross`. Markup is in the amounts of what is bought and what
 * rounding adds is shared by all lines by their amounts, so that the lines add up to the net.
 * Example: materials of 420.00, a markup of 63.00 and labour of 126.00 rounded up to 610.00 are lines of 483.79 and
 * 126.21.
 */
export function quoteOf({ house, cost, jobs }: { readonly house: House; readonly cost: CostPlan; readonly jobs: readonly HouseJob[] }): Quote {
  const asked = amountsAsked(cost);
  const kinds = new Map(jobs.map(({ id, kind }) => [id, kind]));
  const kindOf = ({ kind, of }: CostLine): QuoteKind => (kind === 'labour' ? present(kinds.get(of), `a job ${of}`) : GOODS[kind]);
  const groups = Map.groupBy(cost.lines, (line) => JSON.stringify([line.room, kindOf(line)]));
  const lines = [...groups.values()].map((own): QuoteLine => {
    const kind = kindOf(own[0]!);
    return { room: own[0]!.room, kind, words: KIND_WORDS[kind], included: own.map(({ words }) => words), amount: sumOf(own.map((line) => asked?.get(line) ?? null)) };
  });
  return { lines, excluded: excludedFrom(house, jobs), net: cost.net, taxRate: house.work?.tax ?? null, tax: cost.tax, gross: cost.gross, missing: cost.missing };
}

/** Of each line its cost with its part of markup and rounding; null while the price is not known. */
function amountsAsked({ lines, materials, markup, net }: CostPlan): ReadonlyMap<CostLine, Money> | null {
  if (materials === null || markup === null || net === null) return null;
  const goods = lines.filter(({ kind }) => kind !== 'labour');
  const withMarkup = split(moneyOf(materials + markup), goods.map(({ cost }) => cost!));
  const marked = new Map(goods.map((line, index) => [line, withMarkup[index]!]));
  const asked = split(net, lines.map((line) => marked.get(line) ?? line.cost!));
  return new Map(lines.map((line, index) => [line, asked[index]!]));
}

/** As the amounts stand to each other; where all are nothing there is nothing to share. */
function split(total: Money, amounts: readonly Money[]): readonly Money[] {
  return amounts.some((amount) => amount > 0) ? splitMoney(total, amounts) : amounts;
}

function excludedFrom(house: House, jobs: readonly HouseJob[]): readonly string[] {
  const nameOf = (room: string | null) => house.rooms.find(({ id }) => id === room)?.name ?? say`the house`;
  const hung = new Set(house.rooms.flatMap(({ bands, ceiling }) => [...bands.map(({ covering }) => covering), ...(ceiling ? [ceiling.covering] : [])]));
  const there = [...new Set(house.stock.filter(({ covering, rolls }) => rolls > 0 && hung.has(covering)).map(({ covering }) => covering))];
  return [
    ...jobs.filter(({ isOthers }) => isOthers).map(({ room, words }) => say`${nameOf(room)}: ${words} (somebody else does it)`),
    ...there.map((covering) => say`${nameCovering(house, covering)} that was in hand before`),
    ...(jobs.some(({ kind }) => kind === 'preparation') ? [say`Damage that shows only once the surfaces are bare`] : []),
    ...(house.work?.tax === undefined ? [say`Tax`] : []),
  ];
}
