import type { Budget } from './assign-budget.ts';
import { compareByRoom, valueOf } from './assign-bounds.ts';
import { fillUpTo } from './assign-fill.ts';
import type { Model } from './assign-model.ts';
import { hangingOf, hangUnit, improveByPairs, moveUnit, type Hanging } from './assign-pairs.ts';
import type { Choice, Judged } from './assign-score.ts';

/** The groups that take least by room, until so many rooms are together. */
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
  const chosen = lightestGroups(model, runs, goal.hung).toSorted((one, other) => one - other);
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
