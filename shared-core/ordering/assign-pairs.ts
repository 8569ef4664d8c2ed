import type { Budget } from './assign-budget.ts';
import { valueOf } from './assign-bounds.ts';
import { reachSums, sizesOfSum } from './assign-fill.ts';
import type { Model } from './assign-model.ts';
import { compareJudged, type Judged, judge } from './assign-score.ts';

/** An assignment of the additive form while it is worked on. */
export interface Hanging {
  readonly runOf: number[];
  /** Rolls taken of each run. */
  readonly loads: number[];
  /** Units that hang from each run. */
  readonly held: number[];
}

export function hangingOf(model: Model, choice: readonly number[]): Hanging {
  const hanging: Hanging = { runOf: model.typed.map(() => -1), loads: model.runs.map(() => 0), held: model.runs.map(() => 0) };
  choice.forEach((run, unit) => moveUnit(model, hanging, unit, run));
  return hanging;
}

/** Hangs a unit from a run, or with -1 from none. */
export function moveUnit({ scales }: Model, { runOf, loads, held }: Hanging, unit: number, run: number): void {
  const value = scales[0]!.values[unit]!;
  const before = runOf[unit]!;
  if (before >= 0) {
    loads[before] = loads[before]! - value;
    held[before] = held[before]! - 1;
  }
  if (run >= 0) {
    loads[run] = loads[run]! + value;
    held[run] = held[run]! + 1;
  }
  runOf[unit] = run;
}

/** What two runs cost, in the order of judging; of equals the one whose room is left in one place is the better. */
interface PairCost {
  readonly bought: number;
  readonly leftOver: number;
  readonly used: number;
  readonly gathered: number;
}

const MOST_ROUNDS = 12;
/** A pair of runs with more sums than this is left as it is. */
const MOST_SUMS = 5_000_000;

/**
 * Shares out the units of two runs anew, pair by pair, hangs what does not hang yet and exchanges it for what does.
 *
 * Rule: of all sums that the units of a pair make up, the one that buys least, leaves least and uses fewest runs is
 * taken; of equals the one that leaves the room in one run, where a further unit may use it. Ends at `goal`.
 * Example: units of 5, 4 and 3, runs of 7 and 5: 5 in the first and 4 in the second leave 3 out; 4 and 3 in the first
 * and 5 in the second hang all.
 */
export function improveByPairs(model: Model, runs: readonly number[], hanging: Hanging, goal: Judged, budget: Budget): void {
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let isChanged = false;
    for (const one of runs) {
      for (const other of runs) {
        if (one < other && !budget.isOver() && shareAnew(model, hanging, one, other, false, budget)) isChanged = true;
      }
    }
    if (hangMore(model, runs, hanging, budget)) isChanged = true;
    if (exchange(model, runs, hanging, budget)) isChanged = true;
    if (!isChanged || budget.isOver()) return;
    const judged = judge(model, hanging.runOf);
    if (judged && compareJudged(judged, goal) <= 0) return;
  }
}

/** Shares out the units of two runs anew where that is better, or, where it must be, in any way that both can give. */
function shareAnew(model: Model, hanging: Hanging, one: number, other: number, isNeeded: boolean, budget: Budget): boolean {
  const { values } = model.scales[0]!;
  const movable: number[] = [];
  let [fixedOne, fixedOther] = [0, 0];
  hanging.runOf.forEach((run, unit) => {
    if (run !== one && run !== other) return;
    if (model.pins[unit] === null) movable.push(unit);
    else if (run === one) fixedOne += values[unit]!;
    else fixedOther += values[unit]!;
  });
  const sizes = movable.map((unit) => values[unit]!);
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const most = Math.min(all, model.runs[one]!.most - fixedOne);
  const least = Math.max(0, all - (model.runs[other]!.most - fixedOther));
  if (most < least || sizes.length * most > MOST_SUMS) return false;
  budget.spend(sizes.length * (most + 1) + hanging.runOf.length);
  const last = reachSums(sizes, most);
  const costOf = (sum: number) => pairCost(model, [one, other], [fixedOne + sum, fixedOther + all - sum]);
  let best = isNeeded ? null : costOf(hanging.loads[one]! - fixedOne);
  let bestSum = -1;
  for (let sum = least; sum <= most; sum += 1) {
    if (sum > 0 && last[sum]! < 0) continue;
    const cost = costOf(sum);
    if (best && comparePairs(cost, best) >= 0) continue;
    best = cost;
    bestSum = sum;
  }
  if (bestSum < 0) return false;
  const chosen = new Set(sizesOfSum(sizes, last, bestSum));
  movable.forEach((unit, index) => moveUnit(model, hanging, unit, chosen.has(index) ? one : other));
  return true;
}

function pairCost(model: Model, runs: readonly [number, number], loads: readonly [number, number]): PairCost {
  let [bought, leftOver, used, gathered] = [0, 0, 0, 0];
  runs.forEach((run, index) => {
    const { inHand, most } = model.runs[run]!;
    const load = loads[index]!;
    gathered -= (most - load) * (most - load);
    if (load === 0) return;
    const more = model.bought(load - inHand);
    bought += more;
    leftOver += inHand + more - load;
    used += 1;
  });
  return { bought, leftOver, used, gathered };
}

function comparePairs(one: PairCost, other: PairCost): number {
  return one.bought - other.bought || one.leftOver - other.leftOver || one.used - other.used || one.gathered - other.gathered;
}

/** Hangs groups that do not hang, the smallest first. */
function hangMore(model: Model, runs: readonly number[], hanging: Hanging, budget: Budget): boolean {
  const [scale] = model.scales;
  const sizes = model.groups.map((group) => valueOf(scale!, group));
  const refused = new Set<string>();
  const likenessOf = (group: number) => `${sizes[group]} ${model.groups[group]!.end - model.groups[group]!.first} ${model.pins[model.groups[group]!.first]}`;
  let isChanged = false;
  for (;;) {
    const free = runs.reduce((sum, run) => sum + model.runs[run]!.most - hanging.loads[run]!, 0);
    const [next] = model.groups
      .flatMap(({ first }, group) => (hanging.runOf[first]! < 0 && sizes[group]! <= free && !refused.has(likenessOf(group)) ? [group] : []))
      .sort((one, other) => sizes[one]! - sizes[other]! || one - other);
    if (next === undefined || budget.isOver()) return isChanged;
    if (hangGroup(model, runs, hanging, next, budget)) {
      isChanged = true;
      refused.clear();
    } else refused.add(likenessOf(next));
  }
}

/** Hangs all units of a group, or leaves everything as it was. */
function hangGroup(model: Model, runs: readonly number[], hanging: Hanging, group: number, budget: Budget): boolean {
  const before = [...hanging.runOf];
  const { first, end } = model.groups[group]!;
  for (let unit = first; unit < end; unit += 1) {
    if (hangUnit(model, runs, hanging, unit, budget)) continue;
    before.forEach((run, one) => moveUnit(model, hanging, one, run));
    return false;
  }
  return true;
}

/** Hangs a unit where it costs least, or after two runs have been shared out anew. */
export function hangUnit(model: Model, runs: readonly number[], hanging: Hanging, unit: number, budget: Budget): boolean {
  const value = model.scales[0]!.values[unit]!;
  const pin = model.pins[unit];
  const allowed = pin === null ? runs : runs.filter((run) => run === pin);
  const free = (run: number) => model.runs[run]!.most - hanging.loads[run]!;
  const extra = (run: number) => model.bought(hanging.loads[run]! + value - model.runs[run]!.inHand) - model.bought(hanging.loads[run]! - model.runs[run]!.inHand);
  const [fit] = allowed.filter((run) => free(run) >= value).sort((one, other) => extra(one) - extra(other) || free(one) - free(other) || one - other);
  if (fit !== undefined) {
    moveUnit(model, hanging, unit, fit);
    return true;
  }
  for (const run of allowed) {
    for (const other of runs) {
      if (run === other || free(run) + free(other) < value || (pin === null && run > other) || budget.isOver()) continue;
      moveUnit(model, hanging, unit, run);
      if (shareAnew(model, hanging, run, other, true, budget)) return true;
      moveUnit(model, hanging, unit, -1);
    }
  }
  return false;
}

/** Hangs a room in another's stead where that buys less or leaves less. */
function exchange(model: Model, runs: readonly number[], hanging: Hanging, budget: Budget): boolean {
  const { values } = model.scales[0]!;
  const isAlone = model.groups.map(({ first, end }) => end === first + 1 && model.pins[first] === null);
  const outside = distinct(model, model.groups.filter(({ first }, group) => isAlone[group] && hanging.runOf[first]! < 0).map(({ first }) => first));
  if (outside.length === 0) return false;
  let isChanged = false;
  for (const run of runs) {
    const inside = distinct(model, hanging.runOf.flatMap((at, unit) => (at === run && isAlone[model.groupOf[unit]!] ? [unit] : [])));
    budget.spend(inside.length * outside.length);
    const { inHand, most } = model.runs[run]!;
    const cost = (load: number) => ({ bought: model.bought(load - inHand), left: inHand + model.bought(load - inHand) - load });
    const now = cost(hanging.loads[run]!);
    const better = inside.flatMap((unit) => outside.map((instead) => ({ unit, instead, load: hanging.loads[run]! - values[unit]! + values[instead]! })))
      .filter(({ unit, instead, load }) => load <= most && hanging.runOf[instead]! < 0 && model.groups[model.groupOf[unit]!]!.rooms === model.groups[model.groupOf[instead]!]!.rooms)
      .map((change) => ({ ...change, ...cost(change.load) }))
      .filter(({ bought, left }) => bought < now.bought || (bought === now.bought && left < now.left))
      .sort((one, other) => one.bought - other.bought || one.left - other.left)[0];
    if (!better) continue;
    moveUnit(model, hanging, better.unit, -1);
    moveUnit(model, hanging, better.instead, run);
    isChanged = true;
  }
  return isChanged;
}

function distinct({ kinds }: Model, units: readonly number[]): readonly number[] {
  return [...new Map(units.map((unit) => [kinds[unit], unit])).values()];
}
