import { compareScores, latestTimes, type CalendarModel, type Score, scoreOf, type Times } from './calendar-model.ts';
import { leastSpans, thriftyOrder } from './kept-bound.ts';
import { type Keys, placeBackwards, placeForwards } from './place-jobs.ts';
import type { Budget } from './try-all-orders.ts';

/** A calendar, what it is worth, and what it was made by. */
export interface Found {
  readonly times: Times;
  readonly score: Score;
  readonly keys: Keys;
}

/** Of more rooms that must stay usable no thrifty order is looked for: it compares each with each. */
const MOST_THRIFTY = 60;

/**
 * The best of the calendars that plain rules make, each then pushed to and fro until that gains nothing.
 *
 * Rules for who comes first: what has to begin soonest for all to be done; what has most behind it; what takes most; what
 * stands first. What a chosen day hangs on always comes before the rest. Rules for rooms that must stay usable: the first
 * that can begin, the one that has to begin soonest, an order that wastes few days, the longest.
 */
export function findCalendar(model: CalendarModel, earliest: Times, floor: Score): Found {
  const last = Math.max(...earliest.end);
  const latest = latestTimes(model, last).start;
  const behind = lengthBehind(model);
  const urgent = beforeChosen(model);
  const jobRules = [latest, behind.map((length) => -length), model.minutes.map((minutes, job) => -minutes * model.hands[job]!), model.jobs.map((_, job) => job)];
  const of = (values: readonly number[], pick: (...all: number[]) => number) => model.kept.jobs.map((members) => pick(...members.map((job) => values[job]!)));
  const groupRules = [
    of(earliest.start, Math.min),
    of(latest, Math.min),
    model.kept.jobs.length > MOST_THRIFTY ? of(earliest.end, Math.max) : thriftyOrder(model, earliest.start, leastSpans(model, last)),
    model.kept.jobs.map((members) => -members.reduce((sum, job) => sum + model.minutes[job]!, 0)),
  ];
  const kept = urgent.map((isUrgent, job) => isUrgent || model.kept.of[job]! >= 0);
  let best: Found | null = null;
  for (const first of model.kept.jobs.length > 1 ? [kept, urgent] : [urgent]) {
    for (const [index, rule] of jobRules.entries()) {
      if (best && compareScores(best.score, floor) <= 0) return best;
      const found = pushToAndFro(model, place(model, { jobs: ranked(rule, first), groups: groupRules[index]! }));
      if (!best || compareScores(found.score, best.score) < 0) best = found;
    }
  }
  return best!;
}

const place = (model: CalendarModel, keys: Keys): Found => {
  const times = placeForwards(model, keys);
  return { times, score: scoreOf(model, times), keys };
};

/** Ranks by a rule, what a chosen day hangs on before all else. */
function ranked(rule: readonly number[], urgent: readonly boolean[]): readonly number[] {
  const order = rule.map((_, job) => job).sort((one, other) => Number(urgent[other]) - Number(urgent[one]) || rule[one]! - rule[other]! || one - other);
  const ranks: number[] = [];
  order.forEach((job, rank) => (ranks[job] = rank));
  return ranks;
}

/** Minutes of the longest chain that begins with each job, waits left out. */
function lengthBehind({ minutes, behind }: CalendarModel): readonly number[] {
  const lengths: number[] = [];
  for (let job = minutes.length - 1; job >= 0; job -= 1) lengths[job] = minutes[job]! + behind[job]!.reduce((longest, later) => Math.max(longest, lengths[later]!), 0);
  return lengths;
}

/** Whether each job has a chosen day, or comes before one that has. */
function beforeChosen({ target, behind }: CalendarModel): readonly boolean[] {
  const isUrgent: boolean[] = [];
  for (let job = target.length - 1; job >= 0; job -= 1) isUrgent[job] = target[job]! >= 0 || behind[job]!.some((later) => isUrgent[later]!);
  return isUrgent;
}

/**
 * Pushes all jobs as late as the end allows, the one that ends last first, then as early as they go in the order in which
 * they now begin, for as long as that gains something.
 *
 * A calendar that was pushed so is done no later than before, as long as nothing but hands and waits holds it.
 */
function pushToAndFro(model: CalendarModel, found: Found): Found {
  let best = found;
  for (;;) {
    const groups = model.kept.jobs.map((members) => Math.min(...members.map((job) => best.times.start[job]!)));
    const backwards = placeBackwards(model, { jobs: best.times.end.map((end) => -end), groups: groups.map((start) => -start) }, best.score.end);
    const next = place(model, { jobs: backwards.start, groups });
    if (compareScores(next.score, best.score) >= 0) return best;
    best = next;
  }
}

/** So many tries of exchanges before all is pushed to and fro again. */
const TRIES_A_PUSH = 12;

/**
 * Looks for a better calendar near a good one: a job is taken out of the order and put in elsewhere, or two rooms that must
 * stay usable change places; what is no worse is kept.
 *
 * The exchanges come from a generator of its own, so that the same jobs give the same calendar. Ends with the budget or at
 * `floor`, which none is better than.
 */
export function improveCalendar(model: CalendarModel, start: Found, floor: Score, budget: Budget): Found {
  const jobs = model.jobs.length;
  const groups = model.kept.jobs.length;
  let state = 1;
  const below = (count: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state * count) / 2 ** 32);
  };
  let best = start;
  let current = start;
  for (let tries = 1; budget.left > 0 && compareScores(best.score, floor) > 0; tries += 1) {
    budget.left -= jobs;
    const keys = { jobs: [...current.keys.jobs], groups: [...current.keys.groups] };
    if (groups > 1 && below(2) === 0) {
      const [one, other] = [below(groups), below(groups)];
      [keys.groups[one], keys.groups[other]] = [keys.groups[other]!, keys.groups[one]!];
    }
    const moved = below(jobs);
    // Beside another job, before or after it.
    keys.jobs[moved] = keys.jobs[below(jobs)]! + (below(2) === 0 ? 0.5 : -0.5);
    let next = place(model, keys);
    if (tries % TRIES_A_PUSH === 0) {
      next = pushToAndFro(model, next);
      budget.left -= 2 * jobs;
    }
    if (compareScores(next.score, current.score) <= 0) current = next;
    if (compareScores(current.score, best.score) < 0) best = current;
  }
  return best;
}
