import { ceilDivide } from '../units/index.ts';
import { leastBoughtOf, runsToUse, type RunsToUse } from './assign-bounds.ts';
import { assignBudget, type Budget, partOfBudget } from './assign-budget.ts';
import { dealEvenly, improveByAsking } from './assign-deal.ts';
import { type Model, modelOf } from './assign-model.ts';
import type { Assignment, AssignmentProblem } from './assign-problem.ts';
import { type Choice, compareJudged, type Found, type Judged, judge, NOTHING_HUNG, setsOf } from './assign-score.ts';
import { searchAll } from './assign-search.ts';
import { startsOf } from './assign-starts.ts';

export type { Assignment, AssignmentProblem, AssignmentScore } from './assign-problem.ts';

const STEPS = {
  thorough: { starts: 60_000_000, search: 3_000_000, fewerRuns: 300_000 },
  brief: { starts: 6_000_000, search: 200_000, fewerRuns: 0 },
};
/** Units cut to be counted: some hundred cuttings of a few rooms, some dozens of very many. */
const CUT_UNITS = { thorough: { atLeast: 500, byUnit: 6 }, brief: { atLeast: 150, byUnit: 1 } };
/** How much is tried: briefly where very many assignments are asked for themselves. */
export type Care = keyof typeof STEPS;
/** Combinations of runs that are begun with. */
const MOST_BEGUN = { additive: 24, pooled: 3 };
/** Of more units not every assignment is tried. */
const MOST_SEARCHED = { additive: 200, pooled: 20 };

/**
 * Assigns rooms to runs so that no room mixes runs, and says whether a better assignment is possible.
 *
 * Judged by the most rooms hung, then the fewest rolls bought, then the least left over of the runs used, then the fewest
 * runs used; of equals the largest rooms go to the first run. The order in which rooms are typed decides only between
 * rooms that are alike to every scale. Bounded by steps and by the units that are cut to be counted. Once the watch is
 * stopped the best so far comes back, not proved. Numbers are whole rolls.
 *
 * Rule: every combination of runs has a bound (see `runsToUse`); good starts for the most promising ones often meet it,
 * and then nothing is better. Where none does, every assignment is tried as far as the budget goes (see `searchAll`).
 *
 * Example: rooms of 6 and 3 rolls, 8 on offer of the first run and 3 in hand of the second: the room of 6 from the first,
 * that of 3 from the second; 2 hung, 6 bought, none left over, proved.
 */
export function assignUnits(problem: AssignmentProblem, watch?: { isStopped(): boolean }, care: Care = 'thorough'): Assignment {
  const budget = assignBudget(Infinity, mostCut(problem.units.length, care), watch);
  const model = modelOf(problem, budget);
  const leastBought = leastBoughtOf(model);
  const ways = runsToUse(model, leastBought);
  const floor = ways[0]?.bound ?? NOTHING_HUNG;
  let best: Found = { choice: model.typed.map(() => -1), judged: NOTHING_HUNG };
  const consider = (found: Found | null) => {
    if (found && compareJudged(found.judged, best.judged) < 0) best = found;
  };
  begin(model, ways, partOfBudget(budget, STEPS[care].starts, Infinity), () => best, consider);

  const isMet = compareJudged(best.judged, floor) <= 0;
  const isScoreMet = compareScores(best.judged, floor) <= 0;
  const isSearchable = model.typed.length <= (model.isAdditive ? MOST_SEARCHED.additive : MOST_SEARCHED.pooled);
  const steps = partOfBudget(budget, isScoreMet ? STEPS[care].fewerRuns : STEPS[care].search, Infinity);
  const isSearched = !isMet && isSearchable && !budget.isOver() && searchAll(model, best, floor, leastBought, steps, consider);
  const { hung, bought, leftOver } = best.judged;
  return {
    runs: inTypedOrder(problem, model, tidied(model, best.choice)),
    score: { hung, bought, leftOver },
    isProven: !budget.isStopped() && (isSearched || isScoreMet || compareScores(best.judged, floor) <= 0),
  };
}

/** Begins with one combination of runs after the other until none that is left can be better. */
function begin(model: Model, ways: readonly RunsToUse[], budget: Budget, best: () => Found, consider: (found: Found | null) => void): void {
  for (const way of ways.slice(0, model.isAdditive ? MOST_BEGUN.additive : MOST_BEGUN.pooled)) {
    const { runs, bound } = way;
    if (compareJudged(bound, best().judged) >= 0) return;
    const isFirst = best().judged.hung === 0;
    if (budget.isOver() && !isFirst) return;
    if (!model.isAdditive) dealAndAsk(model, way, budget, best, consider);
    else {
      for (const choice of startsOf(model, runs, bound, budget)) {
        const judged = judge(model, choice);
        consider(judged && { choice, judged });
        if (compareJudged(best().judged, bound) <= 0) return;
      }
    }
  }
}

function mostCut(units: number, care: Care): number {
  return CUT_UNITS[care].atLeast + CUT_UNITS[care].byUnit * units;
}

/** Of three parts of what may still be cut two go into one number of rooms that are to hang, the rest into fewer. */
const PARTS = { all: 3, one: 2 };

/** Deals as many rooms as may hang, and where runs have not enough for them one room fewer each time, until they have. */
function dealAndAsk(model: Model, { runs, bound, boundFor }: RunsToUse, budget: Budget, best: () => Found, consider: (found: Found | null) => void): void {
  for (let goal: Judged | null = bound; goal; goal = boundFor(goal.hung - 1)) {
    const left = budget.cutsLeft();
    const found = improveByAsking(model, runs, dealEvenly(model, runs, goal), goal, partOfBudget(budget, Infinity, ceilDivide(left * PARTS.one, PARTS.all)));
    consider(found);
    if (found?.judged.hung === goal.hung || goal.hung <= best().judged.hung || budget.isOver()) return;
  }
}

function compareScores(one: Judged, other: Judged): number {
  return compareJudged({ ...one, used: 0 }, { ...other, used: 0 });
}

/** Of runs that are alike the first takes most, and of units that are alike the first goes to the first run. */
function tidied(model: Model, choice: Choice): Choice {
  const [scale] = model.scales;
  const loads = setsOf(model, choice).map((units) => units.reduce((sum, unit) => sum + scale!.values[unit]!, 0));
  const firsts = setsOf(model, choice).map(([first]) => first ?? Infinity);
  const renamed = new Map<number, number>();
  model.runs.forEach(({ likeness }, run) => {
    const alike = model.runs.flatMap((other, index) => (likeness >= 0 && other.likeness === likeness ? [index] : []));
    const byLoad = alike.toSorted((one, other) => loads[other]! - loads[one]! || firsts[one]! - firsts[other]! || one - other);
    renamed.set(likeness < 0 ? run : byLoad[alike.indexOf(run)]!, run);
  });
  const hanging = choice.map((run) => (run < 0 ? -1 : renamed.get(run)!));
  if (!model.isAdditive) return hanging;
  const last = model.runs.length;
  for (const kind of new Set(model.kinds.filter((one) => one >= 0))) {
    const units = hanging.flatMap((_, unit) => (model.kinds[unit] === kind ? [unit] : []));
    const runs = units.map((unit) => hanging[unit]!).sort((one, other) => (one < 0 ? last : one) - (other < 0 ? last : other));
    units.forEach((unit, index) => (hanging[unit] = runs[index]!));
  }
  return hanging;
}

function inTypedOrder(problem: AssignmentProblem, model: Model, choice: Choice): readonly (number | null)[] {
  const runs: (number | null)[] = problem.units.map(() => null);
  choice.forEach((run, unit) => (runs[model.typed[unit]!] = run < 0 ? null : run));
  return runs;
}
