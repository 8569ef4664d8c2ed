import { ceilDivide } from '../units/index.ts';
import { fullestFill } from './assign-fill.ts';
import type { Group, Model, Scale } from './assign-model.ts';
import { compareJudged, type Judged } from './assign-score.ts';

/** Runs that might be the ones used, and what no assignment that uses just these can better. */
export interface RunsToUse {
  readonly runs: readonly number[];
  readonly bound: Judged;
  /** The same where so many rooms are to hang and no more; null where that is none. */
  readonly boundFor: (rooms: number) => Judged | null;
}

/** More runs than this are not tried in every combination. */
const MOST_COMBINED = 12;

/**
 * Every combination of runs that might be used, with the best that it can come to; the most promising first.
 *
 * Rule: the rooms that take least go into all that the runs can give, as if they could be cut from several. The least
 * that so many rooms take, beyond what is in hand, is bought in the best split. Of runs that are alike the first are
 * used. Where there are too many runs, one entry stands for all combinations.
 * Example: rooms of 6 and 3, runs with 8 on offer and with 3 in hand: using both, 2 hung, 6 bought, none left over.
 */
export function runsToUse(model: Model, leastBought: (rolls: number) => number): readonly RunsToUse[] {
  const open = model.runs.flatMap(({ most }, index) => (most > 0 || model.scales[0]!.values.includes(0) ? [index] : []));
  const reach = fullestOf(model);
  const leastFor = leastRollsOf(model);
  const boundOf = (runs: readonly number[], rooms = Infinity) => judgeAtBest(model, runs, rooms, reach, leastFor(runs), leastBought);
  if (open.length > MOST_COMBINED) {
    const bound = boundOf(open);
    return bound ? [{ runs: open, bound: { ...bound, leftOver: 0, used: 1 }, boundFor: (rooms) => boundOf(open, rooms) }] : [];
  }
  const found: RunsToUse[] = [];
  for (let combination = 1; combination < 2 ** open.length; combination += 1) {
    const runs = open.filter((_, bit) => (combination >> bit) % 2 === 1);
    if (runs.length > model.typed.length || runs.some((run) => isPassedOver(model, open, runs, run))) continue;
    const bound = boundOf(runs);
    if (bound) found.push({ runs, bound, boundFor: (rooms) => boundOf(runs, rooms) });
  }
  return found.sort((one, other) => compareJudged(one.bound, other.bound));
}

/** A run before it is just like it and stays unused. */
function isPassedOver({ runs }: Model, open: readonly number[], used: readonly number[], run: number): boolean {
  const { likeness } = runs[run]!;
  return likeness >= 0 && open.some((other) => other < run && runs[other]!.likeness === likeness && !used.includes(other));
}

/** The most of each run that units can fill exactly; where that is not worked out, all it has. */
function fullestOf({ isAdditive, scales, runs }: Model): readonly number[] {
  const most = runs.map((run) => run.most);
  if (!isAdditive) return most;
  const fullest = fullestFill(scales[0]!.values, Math.max(0, ...most));
  return most.map((limit) => fullest(limit));
}

/** What groups count for by scale, of those that hang where some runs are used; worked out once for the same pins among them. */
function leastRollsOf({ groups, pins, scales }: Model): (runs: readonly number[]) => readonly LeastRolls[] {
  const pinned = new Set(pins);
  const known = new Map<string, readonly LeastRolls[]>();
  return (runs) => {
    const key = runs.filter((run) => pinned.has(run)).join(' ');
    const before = known.get(key);
    if (before) return before;
    const hanging = groups.filter(({ first, end }) => pins.slice(first, end).every((pin) => pin === null || runs.includes(pin)));
    const least = scales.map((scale) => new LeastRolls(scale, hanging));
    known.set(key, least);
    return least;
  };
}

function judgeAtBest(model: Model, runs: readonly number[], rooms: number, reach: readonly number[], rolls: readonly LeastRolls[], leastBought: (rolls: number) => number): Judged | null {
  const capacity = runs.reduce((sum, run) => sum + reach[run]!, 0);
  const hung = Math.min(rooms, ...rolls.map((least) => least.mostRooms(capacity)));
  if (hung <= 0) return null;
  const inHand = runs.reduce((sum, run) => sum + Math.min(reach[run]!, model.runs[run]!.inHand), 0);
  const bought = leastBought(Math.max(0, Math.max(...rolls.map((least) => least.forRooms(hung))) - inHand));
  const held = runs.reduce((sum, run) => sum + model.runs[run]!.inHand, 0);
  const taken = model.isAdditive ? rolls[0]!.mostForRooms(hung, Math.min(capacity, held + bought)) : bought;
  return { hung, bought, leftOver: Math.max(0, held + bought - taken), used: runs.length };
}

/** The least that so many rooms count for in a scale, groups taken in parts where a part is enough. */
class LeastRolls {
  readonly #scale: Scale;
  readonly #values: readonly number[];
  readonly #rooms: readonly number[];

  constructor(scale: Scale, groups: readonly Group[]) {
    this.#scale = scale;
    const lightFirst = groups.map((group) => ({ value: valueOf(scale, group), rooms: group.rooms })).sort(compareByRoom);
    this.#values = lightFirst.map(({ value }) => value);
    this.#rooms = lightFirst.map(({ rooms }) => rooms);
  }

  mostRooms(rolls: number): number {
    let [left, rooms] = [rolls * this.#scale.worth, 0];
    for (const [index, value] of this.#values.entries()) {
      if (value > left) return rooms + this.#rooms[index]! - 1;
      left -= value;
      rooms += this.#rooms[index]!;
    }
    return rooms;
  }

  forRooms(rooms: number): number {
    let [left, value] = [rooms, 0];
    for (let index = 0; left > 0 && index < this.#values.length; index += 1) {
      const [all, whole] = [this.#rooms[index]!, this.#values[index]!];
      value += left >= all ? whole : ((whole - (whole % all)) / all) * left;
      left -= all;
    }
    return ceilDivide(value, this.#scale.worth);
  }

  /** At most what so many rooms take of a capacity, in a scale that is exact. */
  mostForRooms(rooms: number, capacity: number): number {
    const isByRoom = this.#rooms.every((one) => one === 1);
    if (!isByRoom) return Math.min(capacity, sumOf(this.#values));
    const most = Math.min(capacity, sumOf(this.#values.slice(Math.max(0, this.#values.length - rooms))));
    const [inside, outside] = [this.#values.slice(0, rooms), this.#values.slice(rooms)];
    const least = sumOf(inside);
    // Any other such rooms come of the lightest by exchanges, each of which adds one of these.
    const steps = [...new Set(distinct(outside).flatMap((to) => distinct(inside).map((from) => to - from)))].filter((step) => step > 0);
    return most - least > LONGEST_EXCHANGE || most <= least ? most : least + fullestOfSteps(steps, most - least);
  }
}

/** Beyond so many rolls more than the least it is not worked out which can be come to. */
const LONGEST_EXCHANGE = 500;

/** The most up to a limit that steps, each as often as wanted, come to. */
function fullestOfSteps(steps: readonly number[], limit: number): number {
  const isReached = [true];
  let fullest = 0;
  for (let sum = 1; sum <= limit; sum += 1) {
    isReached[sum] = steps.some((step) => isReached[sum - step] ?? false);
    if (isReached[sum]) fullest = sum;
  }
  return fullest;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function distinct(values: readonly number[]): readonly number[] {
  return [...new Set(values)];
}

export function valueOf({ values }: Scale, { first, end }: Group): number {
  let value = 0;
  for (let unit = first; unit < end; unit += 1) value += values[unit]!;
  return value;
}

/** The least for a room first; exact, since a product of these can be beyond what is counted exactly. */
export function compareByRoom(one: { readonly value: number; readonly rooms: number }, other: { readonly value: number; readonly rooms: number }): number {
  if (one.rooms === other.rooms) return one.value - other.value;
  const [left, right] = [BigInt(one.value) * BigInt(other.rooms), BigInt(other.value) * BigInt(one.rooms)];
  return left < right ? -1 : left > right ? 1 : 0;
}

/** A table of purchases larger than this is not worked out. */
const MOST_SPLITS = 20_000_000;

/**
 * The fewest rolls bought for so many beyond those in hand, however they are split over runs.
 *
 * Rule: where packs are of one size, whole packs; else the best first part and the best of the rest; where that would be
 * too long a table, as many rolls as are needed, which is never more.
 * Example: in sixes, 7 rolls are 12 bought.
 */
export function leastBoughtOf(model: Model): (rolls: number) => number {
  const part = Math.max(0, ...model.runs.map(({ inHand, most }) => most - inHand));
  const least = [0];
  let [pack, checked, isInPacks] = [1, 0, true];
  return (rolls) => {
    if (rolls <= 0) return 0;
    if (part === 0) return Infinity;
    const largest = Math.min(part, rolls);
    for (; isInPacks && checked < largest; checked += 1) {
      if (checked === 0) pack = Math.max(1, model.bought(1));
      isInPacks = model.bought(checked + 1) === ceilDivide(checked + 1, pack) * pack;
    }
    if (isInPacks) return ceilDivide(rolls, pack) * pack;
    if (rolls < least.length) return least[rolls]!;
    if (largest * rolls > MOST_SPLITS) return rolls;
    for (let total = least.length; total <= rolls; total += 1) {
      let best = Infinity;
      for (let first = Math.min(part, total); first > 0; first -= 1) best = Math.min(best, model.bought(first) + least[total - first]!);
      least.push(best);
    }
    return least[rolls]!;
  };
}
