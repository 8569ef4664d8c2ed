import type { Model } from './assign-model.ts';

/** In the order of judging; `used` is how many runs something hangs from. */
export interface Judged {
  readonly hung: number;
  readonly bought: number;
  readonly leftOver: number;
  readonly used: number;
}

export const NOTHING_HUNG: Judged = { hung: 0, bought: 0, leftOver: 0, used: 0 };

/** For each unit of the model the run it hangs from, -1 for none. */
export type Choice = readonly number[];

export interface Found {
  readonly choice: Choice;
  readonly judged: Judged;
}

/**
 * Below zero where the first is the better one: more rooms hung, fewer rolls bought, less left over, fewer runs used.
 *
 * Example: 5 rooms with 9 rolls bought are better than 4 with none.
 */
export function compareJudged(one: Judged, other: Judged): number {
  return other.hung - one.hung || one.bought - other.bought || one.leftOver - other.leftOver || one.used - other.used;
}

/** The units of each run, in rising order. */
export function setsOf(model: Model, choice: Choice): readonly (readonly number[])[] {
  const sets: number[][] = model.runs.map(() => []);
  choice.forEach((run, unit) => {
    if (run >= 0) sets[run]!.push(unit);
  });
  return sets;
}

/** The rolls that a set takes: of the scale where the form is additive, else of a cutting. */
export function rollsOf(model: Model, units: readonly number[]): number {
  return model.isAdditive ? units.reduce((sum, unit) => sum + model.scales[0]!.values[unit]!, 0) : model.count(units);
}

/**
 * The judgement of a choice whose groups hang wholly or not at all; null where a run has not enough.
 *
 * Example: a room of 5 from a run with 2 in hand and doubles on offer: 1 hung, 4 bought, 1 left over, 1 run used.
 */
export function judge(model: Model, choice: Choice): Judged | null {
  let [bought, leftOver, used] = [0, 0, 0];
  for (const [index, units] of setsOf(model, choice).entries()) {
    if (units.length === 0) continue;
    const { inHand, most } = model.runs[index]!;
    const rolls = rollsOf(model, units);
    if (rolls > most) return null;
    const more = model.bought(rolls - inHand);
    bought += more;
    leftOver += leftOverOf(model, inHand, inHand + more - rolls);
    used += 1;
  }
  return { hung: roomsHung(model, choice), bought, leftOver, used };
}

/**
 * What counts as left over of a run. Where rooms are cut together a worse cutting leaves less, which is no merit: there it
 * is what was in hand of the runs used.
 */
export function leftOverOf({ isAdditive }: Pick<Model, 'isAdditive'>, inHand: number, left: number): number {
  return isAdditive ? left : inHand;
}

export function roomsHung({ groups }: Model, choice: Choice): number {
  return groups.reduce((sum, { first, rooms }) => sum + (choice[first]! >= 0 ? rooms : 0), 0);
}
