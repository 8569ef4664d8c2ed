import { assert } from '../../shared-core/base/index.ts';
import { decodeHouse } from '../../shared-core/house/index.ts';
import { countStrips, planHouse } from '../../shared-core/plan/index.ts';

/** A source's example as the facts of a house of one room; lengths with their unit, as they are typed. */
export interface Example {
  /** Left to right; four of them are a room all round, one is a wall alone. */
  readonly walls: readonly string[];
  readonly height: string;
  readonly covering: Readonly<Record<string, unknown>>;
  readonly band?: Readonly<Record<string, unknown>>;
  /** The example's own allowances, where they are not the house's usual ones. */
  readonly rules?: Readonly<Record<string, unknown>>;
}

export interface Counted {
  readonly strips: number;
  readonly rolls: number;
  /** The longest piece, trims included, in units. */
  readonly longest: number;
  /** The most pieces that are cut from one roll. */
  readonly mostFromARoll: number;
  /** The most from the top of one piece to the top of the next in a roll, in units; 0 where no roll gives two. */
  readonly spacing: number;
  /** In minor units of the house's currency; null where the covering has no price. */
  readonly price: number | null;
}

/** Neither trim nor wraps: the example's figures already hold what it allows, or it allows nothing. */
export const NO_ALLOWANCES = { trim: '0 in', insideWrap: '0 in', borderAllowance: '0 in' };

/** Takes an example through the real plan, from the facts as they are typed to the order. */
export function planExample({ walls, height, covering, band, rules }: Example): Counted {
  const ids = walls.map((_, index) => `w${index + 1}`);
  const house = decodeHouse({
    format: 'struckline-house',
    version: 1,
    name: 'An example',
    rules: { spareRolls: 0, ...rules },
    coverings: [{ id: 'c', kind: 'wallcovering', ...covering }],
    rooms: [{ id: 'r', name: 'Room', walls: walls.map((length, index) => ({ id: ids[index], length, height })), bands: [{ id: 'b', covering: 'c', walls: ids, ...band }] }],
  });
  assert(house.ok, `the example's facts are good: ${house.ok ? '' : house.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`);
  const plan = planHouse(house.value);
  assert(plan.problems.length === 0, `the example can be met: ${plan.problems.map(({ message }) => message).join(' ')}`);
  const rolls = plan.cuts.flatMap((list) => list.rolls);
  const strips = plan.rooms.flatMap(({ bands }) => bands).reduce((sum, planned) => sum + countStrips(planned), 0);
  const prices = plan.order.map(({ price }) => price);
  return {
    strips,
    rolls: plan.order.reduce((sum, { rollsNeeded }) => sum + rollsNeeded, 0),
    longest: Math.max(...rolls.flatMap(({ cuts }) => cuts.map(({ placed }) => placed.piece.length))),
    mostFromARoll: Math.max(...rolls.map(({ cuts }) => cuts.length)),
    spacing: Math.max(0, ...rolls.flatMap(({ cuts }) => cuts.slice(1).map(({ from }, index) => from - cuts[index]!.from))),
    price: prices.reduce<number | null>((sum, price) => (sum === null || price === null ? null : sum + price), 0),
  };
}
