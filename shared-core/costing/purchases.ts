import { type House, moneyIn, nameCovering, type Tax } from '../house/index.ts';
import { amountsOf, isBought, keepLedger, type OrderLine, taxOf } from '../ordering/index.ts';
import type { MaterialNeed, PaintNeed } from '../prep/prep-plan.ts';
import { type Money, moneyOf, scaleMoney, splitMoney, ZERO_MONEY } from '../units/index.ts';
import { say } from '../words/index.ts';
import type { CostLine } from './cost-plan.ts';

/** Something that was bought or is to be, as it is priced and without what tax its price holds. */
export interface Purchase {
  readonly kind: Exclude<CostLine['kind'], 'labour'>;
  /** The covering or the material. */
  readonly of: string;
  readonly words: string;
  /** The order that it was placed with; null of what is still to be bought. */
  readonly order: string | null;
  /** Null where no price is known. */
  readonly price: Money | null;
  /** Of a placed line: rolls of it that come, of as many; the rest is not paid. */
  readonly coming: { readonly rolls: number; readonly of: number } | null;
  readonly tax: Tax | null;
  readonly net: Money | null;
  /** Why it has no price, as a sentence; null where it has one. */
  readonly missing: string | null;
}

export interface Goods {
  readonly house: House;
  readonly order: readonly OrderLine[];
  readonly materials: readonly MaterialNeed[];
  readonly paints: readonly PaintNeed[];
}

/** A purchase whose tax is not taken out yet, and what its tax is reckoned over together with. */
type Priced = Omit<Purchase, 'net'> & { readonly account: string };

/**
 * All that is bought for a house: what was ordered, what is still to be bought, the paints and the preparation's materials.
 *
 * Shapes: money in minor units. Of a placed line only the rolls that came or still come are paid. Where prices hold tax it
 * is taken out once over each order and over what one supplier still sells of coverings, of paints and of materials, as
 * the order does it; the net is shared by the prices to the smallest unit.
 * Example: coverings of 60.00 and 60.00 that hold 20 % are 50.00 and 50.00 net.
 */
export function findPurchases(goods: Goods): readonly Purchase[] {
  const priced = [...placedLines(goods.house), ...linesToBuy(goods), ...paintsToBuy(goods), ...materialsToBuy(goods)];
  const nets = new Map([...Map.groupBy(priced, ({ account }) => account).values()].flatMap(netOf));
  return priced.map((one): Purchase => {
    const { account: _account, ...purchase } = one;
    return { ...purchase, net: nets.get(one) ?? null };
  });
}

function netOf(account: readonly Priced[]): readonly (readonly [Priced, Money])[] {
  const known = account.filter(({ price }) => price !== null);
  const paid = known.map(({ price, coming }) => (coming === null || coming.of === 0 ? price! : scaleMoney(price!, coming.rolls, coming.of)));
  const sum = moneyOf(paid.reduce((total, one) => total + one, 0));
  const net = amountsOf(sum, account[0]!.tax).net!;
  const parts = sum === 0 ? paid : splitMoney(net, paid);
  return known.map((one, index) => [one, parts[index]!]);
}

function placedLines(house: House): readonly Priced[] {
  const ledgers = new Map(house.coverings.map(({ id }) => [id, keepLedger(house, id).lines]));
  return house.orders.flatMap(({ id, tax, lines }) =>
    lines.map(({ covering, price, rolls }, index): Priced => {
      const notComing = ledgers.get(covering)?.find((line) => line.order === id && line.index === index)?.notComing ?? 0;
      const words = nameCovering(house, covering);
      const known = moneyIn(house, price);
      return {
        kind: 'covering',
        of: covering,
        words,
        order: id,
        price: known,
        coming: notComing > 0 ? { rolls: rolls - notComing, of: rolls } : null,
        tax: tax ?? null,
        missing: known === null ? say`${words} has no price in order ${id}.` : null,
        account: `order:${id}`,
      };
    }),
  );
}

function linesToBuy({ house, order }: Goods): readonly Priced[] {
  return order.filter(isBought).map(({ covering, price }) => bought(house, 'covering', { of: covering, words: nameCovering(house, covering), price, supplier: supplierOf(house, covering) }));
}

function paintsToBuy({ house, paints }: Goods): readonly Priced[] {
  return paints
    .filter(({ millilitres }) => millilitres !== 0)
    .map(({ covering, millilitres, price }) => {
      const words = nameCovering(house, covering);
      return bought(house, 'paint', { of: covering, words, price: millilitres === null ? null : price, supplier: supplierOf(house, covering) }, millilitres === null ? say`How far ${words} spreads is not known.` : undefined);
    });
}

function materialsToBuy({ house, materials }: Goods): readonly Priced[] {
  return materials
    .filter(({ amount }) => amount > 0)
    .map(({ material, words, packs, price }) =>
      bought(house, 'material', { of: material, words, price, supplier: house.materials.find((own) => own.material === material)?.supplier ?? null }, packs === null ? say`What ${words} is sold in is not known.` : undefined),
    );
}

function supplierOf(house: House, covering: string): string | null {
  return house.coverings.find(({ id }) => id === covering)?.supplier ?? null;
}

function bought(house: House, kind: Purchase['kind'], { supplier, ...what }: Pick<Purchase, 'of' | 'words' | 'price'> & { readonly supplier: string | null }, why = say`${what.words} has no price.`): Priced {
  return { kind, ...what, order: null, coming: null, tax: taxOf(house, supplier), missing: what.price === null ? why : null, account: `${kind}:${supplier ?? ''}` };
}

/** Together; null where one is not known. */
export function sumOf(amounts: readonly (Money | null)[]): Money | null {
  return amounts.reduce<Money | null>((sum, one) => (sum === null || one === null ? null : moneyOf(sum + one)), ZERO_MONEY);
}
