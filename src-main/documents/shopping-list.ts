import { type House, nameSupplier } from '../../shared-core/house/index.ts';
import type { HousePlan } from '../../shared-core/plan/index.ts';
import { type MaterialNeed, type PaintNeed, sayAmount } from '../../shared-core/prep/index.ts';
import { type Money, moneyOf, printMoney, showMoney } from '../../shared-core/units/index.ts';
import { say, sayDecimal } from '../../shared-core/words/index.ts';
import { nameInFull } from './cut-list.ts';
import type { PaperFacts } from './paper-facts.ts';
import { type Block, type Cell, type Sheet, TICK_BOX } from './pdf/sheet.ts';

interface Item {
  readonly supplier: string | null;
  readonly name: string;
  readonly needed: string;
  readonly toBuy: string;
  readonly price: Money | null;
}

/** Paints and materials for the whole house, to be ticked off in the shop, by who sells them. */
export function shoppingList({ house, plan }: PaperFacts): Sheet {
  const items = itemsOf(house, plan);
  const suppliers = [...Map.groupBy(items, ({ supplier }) => supplier)];
  const prices = items.map(({ price }) => price);
  return {
    title: say`Shopping list`,
    about: null,
    blocks: [
      { kind: 'text', text: say`Paints and what the preparation takes. Wallcoverings are ordered by themselves, as their runs have to be.` },
      ...suppliers.map(([supplier, own]): Block => ({
        kind: 'table',
        heading: supplier === null ? say`Wherever it is had` : nameSupplier(house, supplier),
        columns: [{ head: '', as: 'tick' }, { head: say`What`, isWide: true }, { head: say`Needed`, as: 'figure', width: 80 }, { head: say`To buy`, width: 130 }, { head: say`Price, ${house.currency}`, as: 'figure', width: 70 }],
        rows: own.map(({ name, needed, toBuy, price }): readonly Cell[] => [TICK_BOX, name, needed, toBuy, price === null ? '' : sayDecimal(printMoney(price, house.currency))]),
      })),
      ...(prices.every((price) => price !== null) ? [{ kind: 'totals', of: [{ head: say`All of it, at these prices`, text: showMoney(moneyOf(prices.reduce((sum, price) => sum + price, 0)), house.currency), isStrong: true }] } satisfies Block] : []),
    ],
  };
}

function itemsOf(house: House, plan: HousePlan): readonly Item[] {
  return [...plan.prep.paints.map((paint) => paintItem(house, paint)), ...plan.prep.materials.map((need) => materialItem(house, need))];
}

function paintItem(house: House, { covering, millilitres, tins, price }: PaintNeed): Item {
  return {
    supplier: house.coverings.find(({ id }) => id === covering)?.supplier ?? null,
    name: nameInFull(house, covering),
    needed: millilitres === null ? say`spreading rate not known` : sayAmount(millilitres, 'ml'),
    toBuy: tins === null ? say`tins not known` : tins.map(({ litres, count }) => say`${count} × ${sayDecimal(String(litres))} L`).join(' + '),
    price,
  };
}

function materialItem(house: House, { material, words, amount, unit, packs, price }: MaterialNeed): Item {
  return {
    supplier: house.materials.find((own) => own.material === material)?.supplier ?? null,
    name: words,
    needed: sayAmount(amount, unit),
    toBuy: packs === null ? '' : packs.map((pack) => say`${pack.count} × ${sayAmount(pack.amount, unit)}`).join(' + '),
    price,
  };
}
