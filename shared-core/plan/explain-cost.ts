import { type House, nameCovering } from '../house/index.ts';
import { showMoney } from '../units/index.ts';
import type { WorkingLine } from './explain-order.ts';
import type { RoomCost, RoomGlance } from './room-glance.ts';
import { say } from '../words/index.ts';

/**
 * How a room's part of the cost was reckoned, a line for each line of an order.
 *
 * Example: 'K-2041, run 2214, to buy: 420.00 USD × 9 of 14 rolls = 270.00 USD.'
 */
export function explainRoomCost(house: House, { costs, cost }: Pick<RoomGlance, 'costs' | 'cost'>): readonly WorkingLine[] {
  const show = (money: RoomCost['price']) => (money === null ? say`no price` : showMoney(money, house.currency));
  const lines = costs.map(({ covering, run, order, price, rolls, rollsOfAll, part }) => {
    const what = [nameCovering(house, covering), ...(run === null ? [] : [say`run ${run}`]), order === null ? say`to buy` : say`order ${order}`].join(', ');
    if (part === price) return { text: `${what}: ${show(price)}.` };
    return { text: rollsOfAll === 0 ? say`${what}: ${show(price)} shared alike = ${show(part)}.` : say`${what}: ${show(price)} × ${rolls} of ${rollsOfAll} rolls = ${show(part)}.` };
  });
  const rule = say`the rooms of a line share its price, spare and all, by the rolls that each would take alone; as priced, with no tax put on top`;
  return [...lines, { text: cost === null ? say`Not all of it has a price.` : say`Together ${show(cost)}.`, rule }];
}
