import { type House, moneyIn, type Room } from '../house/index.ts';
import { isBought, type RoomReadiness } from '../ordering/index.ts';
import { CLOSING_ERROR_WORTH_A_LOOK } from '../survey/index.ts';
import { type Money, moneyOf, splitMoney } from '../units/index.ts';
import { rollsAloneIn } from './explain-run.ts';
import type { HousePlan, RoomPlan } from './house-plan.ts';

/** What a room goes through, in the order of the work. */
export const ROOM_STEPS = ['surveyed', 'prepared', 'set-out', 'ordered', 'in-hand', 'hung'] as const;
export type RoomStep = (typeof ROOM_STEPS)[number];
export type StepState = 'done' | 'part' | 'open';

/** What a room takes of one covering. */
export interface RoomTake {
  readonly covering: string;
  /** From which runs; null while a run is not known. */
  readonly runs: readonly (string | null)[];
  /** What it would take if it were cut alone. */
  readonly rolls: number;
  /** Whether no run can hang it. */
  readonly isShort: boolean;
}

/** Where a room stands. */
export interface RoomGlance {
  readonly room: string;
  /** Prepared where its surfaces ask for anything; the others of what comes from rolls. A room that is only painted has no more. */
  readonly steps: readonly { readonly step: RoomStep; readonly state: StepState }[];
  readonly takes: readonly RoomTake[];
  readonly costs: readonly RoomCost[];
  /** The sum of its costs; null where one of them has no price, or nothing is bought for it. */
  readonly cost: Money | null;
}

/** A room's part of what was ordered or is to be bought of one covering. */
export interface RoomCost {
  readonly covering: string;
  readonly run: string | null;
  /** The order that it was placed with; null of what is still to be bought. */
  readonly order: string | null;
  /** What all the rooms of the line pay together. */
  readonly price: Money | null;
  readonly rolls: number;
  readonly rollsOfAll: number;
  readonly part: Money | null;
}

/**
 * Where every room stands, what it takes and its part of the cost, in the order of the house.
 *
 * Rule: a step is done, done in part or open. Surveyed: the walls go all the way round and meet. Prepared: its tasks were
 * ticked off, or all hangs. Set out: something hangs
 * and nothing of it is impossible. Ordered: what it waits for is on its way. In hand: it can be hung. A line's price is
 * shared by its rooms as many rolls as each takes alone; the parts add up to the price.
 * Example: 10 rolls at 420.00 for rooms that take 9 and 5 alone: 270.00 and 150.00.
 */
export function glanceAtRooms(house: House, plan: HousePlan): readonly RoomGlance[] {
  const costs = shareCosts(house, plan);
  const readiness = new Map(plan.readiness.map((one) => [one.room, one]));
  return house.rooms.map((room, index): RoomGlance => {
    const takes = takesOf(room, plan);
    const own = costs.get(room.id) ?? [];
    return {
      room: room.id,
      steps: stepsOf(room, plan.rooms[index]!, takes, readiness.get(room.id), house, plan),
      takes,
      costs: own,
      cost: own.length > 0 && own.every(({ part }) => part !== null) ? moneyOf(own.reduce((sum, { part }) => sum + part!, 0)) : null,
    };
  });
}

function takesOf({ id }: Room, plan: HousePlan): readonly RoomTake[] {
  const lines = plan.order.filter(({ rooms }) => rooms.includes(id));
  return [...Map.groupBy(lines, ({ covering }) => covering)].map(([covering, own]) => ({
    covering,
    runs: own.map(({ run }) => run),
    rolls: sumAlone(plan, id, covering),
    isShort: own.some(({ shortfall }) => shortfall > 0),
  }));
}

function stepsOf(room: Room, planned: RoomPlan, takes: readonly RoomTake[], readiness: RoomReadiness | undefined, house: House, plan: HousePlan): RoomGlance['steps'] {
  const surveyed = { step: 'surveyed', state: surveyOf(room, planned) } as const;
  const hangs = room.bands.length > 0 || room.ceiling !== undefined;
  const prepared = preparationOf(room, readiness?.state === 'hung', house, plan);
  if (hangs && takes.length === 0) return [surveyed, ...prepared];
  const isImpossible = plan.problems.some((problem) => problem.room === room.id && problem.place !== 'order');
  const isHungInPart = house.runChoices.some((choice) => choice.room === room.id && choice.hung);
  return [
    surveyed,
    ...prepared,
    { step: 'set-out', state: takes.length === 0 ? 'open' : isImpossible ? 'part' : 'done' },
    { step: 'ordered', state: reached(takes, readiness, ({ isOnOrder }) => isOnOrder) },
    { step: 'in-hand', state: reached(takes, readiness, () => false) },
    { step: 'hung', state: readiness?.state === 'hung' ? 'done' : isHungInPart ? 'part' : 'open' },
  ];
}

function surveyOf({ walls }: Room, { outline }: RoomPlan): StepState {
  if (walls.length === 0) return 'open';
  return outline.isClosed && outline.closingError <= CLOSING_ERROR_WORTH_A_LOOK ? 'done' : 'part';
}

function preparationOf({ id }: Room, isHung: boolean, { tasks }: House, { prep }: HousePlan): RoomGlance['steps'] {
  const own = prep.tasks.filter(({ room }) => room === id);
  const done = own.filter((task) => tasks.some((choice) => choice.task === task.id && choice.done)).length;
  return own.length === 0 ? [] : [{ step: 'prepared', state: isHung || done === own.length ? 'done' : done > 0 ? 'part' : 'open' }];
}

/** Done where every wait is over for this step, in part where one of its coverings is so far. */
function reached(takes: readonly RoomTake[], readiness: RoomReadiness | undefined, isOver: (wait: RoomReadiness['waits'][number]) => boolean): StepState {
  if (!readiness) return 'open';
  const waiting = new Set(readiness.waits.filter((wait) => !isOver(wait)).map(({ covering }) => covering));
  return waiting.size === 0 ? 'done' : waiting.size < takes.length ? 'part' : 'open';
}

interface Purchase extends Pick<RoomCost, 'covering' | 'run' | 'order' | 'price'> {
  readonly rooms: readonly string[];
}

/** Of each room its part of every line that was placed or is to be bought. */
function shareCosts(house: House, plan: HousePlan): ReadonlyMap<string, readonly RoomCost[]> {
  const there = new Set(house.rooms.map(({ id }) => id));
  const placed = house.orders.flatMap(({ id, lines }) =>
    lines.map(({ covering, run = null, price, rooms }): Purchase => ({ covering, run, order: id, price: moneyIn(house, price), rooms })),
  );
  const costs = new Map<string, RoomCost[]>();
  for (const { rooms, ...purchase } of [...placed, ...plan.order.filter(isBought).map((line) => ({ covering: line.covering, run: line.run, order: null, price: line.price, rooms: line.rooms }))]) {
    const own = rooms.filter((room) => there.has(room));
    const rolls = own.map((room) => sumAlone(plan, room, purchase.covering));
    const rollsOfAll = rolls.reduce((sum, one) => sum + one, 0);
    // An order stays as it was, whatever hangs in its rooms by now: they share it alike then.
    const parts = own.length === 0 || purchase.price === null ? null : splitMoney(purchase.price, rollsOfAll > 0 ? rolls : own.map(() => 1));
    for (const [index, room] of own.entries()) {
      const cost: RoomCost = { ...purchase, rolls: rolls[index]!, rollsOfAll, part: parts?.[index] ?? null };
      costs.set(room, [...(costs.get(room) ?? []), cost]);
    }
  }
  return costs;
}

function sumAlone(plan: HousePlan, room: string, covering: string): number {
  return rollsAloneIn(plan, room, covering).reduce((sum, rolls) => sum + rolls, 0);
}
