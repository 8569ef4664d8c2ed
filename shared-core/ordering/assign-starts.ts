import type { Budget } from './assign-budget.ts';
import { compareByRoom, valueOf } from './assign-bounds.ts';
import { fillUpTo } from './assign-fill.ts';
import type { Model } from './assign-model.ts';
import { hangingOf, hangUnit, improveByPairs, moveUnit, type Hanging } from './assign-pairs.ts';
import type { Choice, Judged } from './assign-score.ts';

/**
 * The groups that take least by room, until so many rooms are together; of those that may hang from these runs.
 *
 * Example: of rooms of 5, 3 and 4 two: those of 3 and 4.
 */
export function lightestGroups(model: Model, runs: readonly number[], rooms: number): readonly number[] {
  const hanging = model.groups
    .map((group, index) => ({ index, value: valueOf(model.size, group), rooms: group.rooms }))
    .filter(({ index }) => model.pins.slice(model.groups[index]!.first, model.groups[index]!.end).every((pin) => pin === null || runs.includes(pin)))
    .sort((one, other) => compareByRoom(one, other) || one.index - other.index);
  let left = rooms;
  return hanging.flatMap((group) => {
    if (group.rooms > left) return [];
    left -= group.rooms;
    return [group.index];
  });
}

/** Which runs are filled first, and how far. */
type Way = (model: Model, runs: readonly number[]) => readonly (readonly [run: number, limit: number])[];

const WAYS: readonly Way[] = [
  // What is in hand exactly, then all there is.
  ({ runs: all }, runs) => runs.toSorted((one, other) => all[other]!.inHand - all[one]!.inHand).map((run) => [run, all[run]!.inHand]),
  ({ runs: all }, runs) => runs.toSorted((one, other) => all[one]!.most - all[other]!.most).map((run) => [run, all[run]!.most]),
  ({ runs: all }, runs) => runs.toSorted((one, other) => all[other]!.most - all[one]!.most).map((run) => [run, all[run]!.most]),
  // None: the largest first, wherever they cost least.
  () => [],
];

/**
 * Good assignments of the additive form that use some runs, one by one: begun in several ways, each improved.
 *
 * Example: rooms of 6, 5 and 4, runs with 9 and with 6 in hand: 5 and 4 fill the first, 6 the second.
 */
export function* startsOf(model: Model, runs: readonly number[], goal: Judged, budget: Budget): Generator<Choice> {
  for (const way of WAYS) {
    const hanging = begin(model, runs, goal, way, budget);
    if (!budget.isOver()) improveByPairs(model, runs, hanging, goal, budget);
    yield [...hanging.runOf];
    if (budget.isOver()) return;
  }
}

function begin(model: Model, runs: readonly number[], goal: Judged, way: Way, budget: Budget): Hanging {
  const { values } = model.scales[0]!;
  const hanging = hangingOf(model, []);
  const held = runs.reduce((sum, run) => sum + model.runs[run]!.inHand, 0);
  const chosen = heavierBy(model, runs, lightestGroups(model, runs, goal.hung), held + goal.bought - goal.leftOver).toSorted((one, other) => one - other);
  let units = chosen.flatMap((group) => Array.from({ length: model.groups[group]!.end - model.groups[group]!.first }, (_, index) => model.groups[group]!.first + index));
  const hang = (unit: number, run: number) => {
    moveUnit(model, hanging, unit, run);
    units = units.filter((one) => one !== unit);
  };
  for (const unit of units) {
    const pin = model.pins[unit];
    if (typeof pin === 'number' && hanging.loads[pin]! + values[unit]! <= model.runs[pin]!.most) hang(unit, pin);
  }
  for (const [run, limit] of way(model, runs)) {
    const free = units.filter((unit) => model.pins[unit] === null);
    budget.spend(free.length * Math.max(1, limit));
    const filled = fillUpTo(free.map((unit) => values[unit]!), limit - hanging.loads[run]!).map((index) => free[index]!);
    for (const unit of filled) moveUnit(model, hanging, unit, run);
    const gone = new Set(filled);
    units = units.filter((unit) => !gone.has(unit));
  }
  const given = new Set<number>();
  for (const unit of units) {
    const group = model.groupOf[unit]!;
    if (!given.has(group) && !hangUnit(model, runs, hanging, unit, budget)) given.add(group);
  }
  for (const group of given) {
    for (let unit = model.groups[group]!.first; unit < model.groups[group]!.end; unit += 1) moveUnit(model, hanging, unit, -1);
  }
  return hanging;
}

/** So many exchanges are tried to come to a weight. */
const MOST_EXCHANGED = 4;

/**
 * The same number of rooms with others in place of some, so that together they take as nearly so many rolls as they can.
 *
 * Rule: where the same is bought, larger rooms leave less over. Rooms that are alone in their groups are exchanged, as few
 * as do. Example: of rooms of 4, 4, 5 and 7 two are to come to 10: 4 and 5 do with 9, one exchanged.
 */
function heavierBy(model: Model, runs: readonly number[], chosen: readonly number[], rolls: number): readonly number[] {
  const { groups, pins } = model;
  const [scale] = model.scales;
  const sizeOf = (group: number) => valueOf(scale!, groups[group]!);
  const missing = rolls - chosen.reduce((sum, group) => sum + sizeOf(group), 0);
  const isIn = new Set(chosen);
  const isPlain = (group: number) => groups[group]!.rooms === 1 && groups[group]!.end === groups[group]!.first + 1 && (pins[groups[group]!.first] ?? -1) === -1;
  const bySize = (of: readonly number[]) => of.reduce((sizes, group) => sizes.set(sizeOf(group), [...(sizes.get(sizeOf(group)) ?? []), group]), new Map<number, number[]>());
  const inside = bySize(chosen.filter(isPlain));
  const outside = bySize(groups.flatMap((_, group) => (isIn.has(group) || !isPlain(group) ? [] : [group])));
  if (missing <= 0 || outside.size === 0 || runs.length === 0) return chosen;
  const steps = [...inside.keys()].flatMap((from) => [...outside.keys()].map((to) => ({ from, to, more: to - from }))).filter(({ more }) => more > 0 && more <= missing);
  const reached = new Map<number, readonly (typeof steps)[number][]>([[0, []]]);
  for (let length = 0; length < MOST_EXCHANGED && !reached.has(missing); length += 1) {
    for (const [sum, taken] of [...reached].filter(([, list]) => list.length === length)) {
      for (const step of steps) {
        const all = [...taken, step];
        const isThere = all.filter(({ from }) => from === step.from).length <= inside.get(step.from)!.length && all.filter(({ to }) => to === step.to).length <= outside.get(step.to)!.length;
        if (isThere && sum + step.more <= missing && !reached.has(sum + step.more)) reached.set(sum + step.more, all);
      }
    }
  }
  const taken = reached.get(Math.max(...reached.keys()))!;
  const gone = new Set(taken.map(({ from }) => inside.get(from)!.pop()!));
  return [...chosen.filter((group) => !gone.has(group)), ...taken.map(({ to }) => outside.get(to)!.pop()!)];
}
