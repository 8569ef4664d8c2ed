import type { House } from '../house/index.ts';
import { type CheckedDelivery, isRollGoods, type Ledger, type OrderLine, spareRule } from '../ordering/index.ts';
import type { WorkingLine } from './explain-order.ts';
import type { HousePlan } from './house-plan.ts';
import { nameRoom } from './name-room.ts';
import { say, sayDay } from '../words/index.ts';

/**
 * Where the rolls of a run that are in hand come from: stock, every package that counts, and what went back.
 *
 * Example: '2 in stock.', '8 came on 2 Mar 2026, 2 of them damaged: 6.' and '2 + 6 = 8 in hand.'
 */
export function explainInHand(house: House, { covering, deliveries, runs }: Ledger, run: string | null): readonly WorkingLine[] {
  if (run === null) return [{ text: say`Nothing has come of it yet.` }];
  const stock = house.stock.reduce((sum, entry) => sum + (entry.covering === covering && entry.run === run ? entry.rolls : 0), 0);
  const came = deliveries.filter(({ verdict, delivery }) => verdict === 'counts' && delivery.run === run);
  const total = runs.find((one) => one.run === run)?.inHand ?? 0;
  const back = stock + came.reduce((sum, { sound }) => sum + sound, 0) - total;
  const terms = [...(stock > 0 ? [stock] : []), ...came.map(({ sound }) => sound)];
  return [
    ...(stock > 0 ? [{ text: say`${stock} in stock before the order.` }] : []),
    ...came.map((one) => ({ text: sayPackage(one) })),
    ...(back > 0 ? [{ text: say`${back} went back.` }] : []),
    { text: terms.length + (back > 0 ? 1 : 0) > 1 ? say`${terms.join(' + ')}${back > 0 ? ` - ${back}` : ''} = ${total} in hand.` : say`${total} in hand.` },
  ];
}

function sayPackage({ delivery: { rolls, damaged, short, received }, sound }: CheckedDelivery): string {
  const less = [damaged > 0 && say`${damaged} of them damaged`, short > 0 && say`${short} missing`].filter(Boolean);
  const came = received ? say`${rolls} came on ${sayDay(received)}` : say`${rolls} came`;
  return less.length > 0 ? `${came}, ${less.join(', ')}: ${sound}.` : `${came}.`;
}

/**
 * What of a run is still to come, order by order.
 *
 * Example: 'Order 1: 10 ordered - 6 come = 4 still to come.'
 */
export function explainOnOrder({ lines }: Ledger, run: string | null): readonly WorkingLine[] {
  const own = lines.filter((line) => line.run === run);
  if (own.length === 0) return [{ text: say`None of it was ordered.` }];
  return own.map(({ order, line, received, instead, outstanding, notComing }) => ({
    text: say`Order ${order}: ${line.rolls} ordered - ${received} come${instead > 0 ? say` - ${instead} kept of another run` : ''}${notComing > 0 ? say` - ${notComing} that will not come` : ''} = ${outstanding} still to come.`,
  }));
}

/**
 * What each room of a line takes when it is cut on its own.
 *
 * Example: 'Front bedroom: 9.', 'Nursery: 8.' and 'Room by room 17; together 16: 1 saved.'
 */
export function explainByRoom(house: House, plan: Pick<HousePlan, 'rooms' | 'order'>, line: OrderLine): readonly WorkingLine[] {
  const rooms = line.rooms.map((id) => {
    const alone = rollsAloneIn(plan, id, line.covering);
    const taken = alone.join(' + ');
    const isParted = plan.order.filter((one) => one.covering === line.covering && one.rooms.includes(id)).length > 1;
    if (isParted) return say`${nameRoom(house, id)}: a part of it.`;
    return alone.length > 1 ? say`${nameRoom(house, id)}: ${taken} for each of its bands, fewer where they share rolls.` : `${nameRoom(house, id)}: ${taken}.`;
  });
  const saved = line.rollsByRoom - line.rollsNeeded;
  const compared = saved > 0 ? say`Room by room ${line.rollsByRoom}; together ${line.rollsNeeded}: ${saved} saved.` : say`Room by room ${line.rollsByRoom}; together ${line.rollsNeeded}.`;
  return [...rooms.map((text) => ({ text })), { text: compared, rule: say`what one room leaves of a roll serves another` }];
}

/**
 * What each band of a covering in a room takes when it alone is cut, and what hangs overhead last.
 *
 * Example: a dado of 3 rolls and a filling of 5 are 3 and 5.
 */
export function rollsAloneIn({ rooms }: Pick<HousePlan, 'rooms'>, id: string, covering: string): readonly number[] {
  const room = rooms.find((one) => one.id === id);
  const overhead = room?.ceiling?.covering === covering ? [room.ceiling.rollsAlone] : [];
  return [...(room?.bands ?? []).filter((band) => band.covering === covering).map(({ rollsAlone }) => rollsAlone), ...overhead];
}

/**
 * How the spare of a line was reckoned.
 *
 * Example: '10% of 23 rolls, rounded up: 3.'
 */
export function explainSpare(house: House, line: OrderLine): readonly WorkingLine[] {
  const covering = house.coverings.find(({ id }) => id === line.covering);
  const rule = covering ? spareRule(house, covering) : 0;
  const isOwn = covering && covering.kind !== 'paint' && covering.spareRolls !== undefined;
  const whose = isOwn ? say`the covering’s own rule` : say`the rule of the house; common practice, no source`;
  if (covering && 'soldBy' in covering && covering.soldBy) return [{ text: say`None: it is cut to length.` }];
  if (typeof rule === 'string') return [{ text: say`${rule} of ${line.rollsNeeded} rolls, rounded up: ${line.spare}.`, rule: whose }];
  if (covering && !isRollGoods(covering) && !isOwn) return [{ text: say`None: no spare is reckoned for it unless its own facts say so.` }];
  return [{ text: say`${line.spare} for each pattern and run.`, rule: whose }];
}
