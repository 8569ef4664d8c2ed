import { ceilDivide } from '../units/index.ts';
import { type CalendarModel, earliestTimes, latestTimes } from './calendar-model.ts';
import { keptEnd, leastSpans } from './kept-bound.ts';

/** What has to be done between two points of time: never before `from`, over at `until`, so much of it. */
interface Load {
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

/** Of more beginnings with all that begins then or later not every one is tried. */
const LOADS_TRIED = 80_000;

/**
 * The earliest clock at which no rule below says that all cannot be done; no calendar is done before it.
 *
 * `best` is the clock at which a known calendar is done. Rules, each for jobs that can begin no earlier than one point and,
 * for all to be done in time, must be over at another, with waits, days off, deliveries and chosen days reckoned in: a
 * job has room between the two; together they take no more than the crew's minutes; those for two no more than the pairs'
 * minutes; rooms that must stay usable no more days than there are, one after the other, each its least span. Few such
 * rooms are put one after the other in every way.
 * Example: two people, 8 hours a day, five jobs of 4 hours: 20 hours are 10 of two, so the bound is the second day's
 * second hour.
 */
export function leastEnd(model: CalendarModel, best: number): number {
  const { time, people, minutes, hands, kept } = model;
  const head = earliestTimes(model);
  const spans = leastSpans(model, best);
  const least = Math.max(...head.end, keptEnd(model, head.start));
  const isPossible = (last: number): boolean => {
    const tail = latestTimes(model, last);
    if (head.start.some((start, job) => start > tail.start[job]!)) return false;
    const loads = (wanted: number): readonly Load[] =>
      minutes.flatMap((length, job) =>
        hands[job]! >= wanted ? [{ from: time.workedAt(head.start[job]!), until: time.workedAt(tail.end[job]!), amount: length * (wanted === 2 ? 1 : hands[job]!) }] : [],
      );
    const days = kept.jobs.map((members, group) => ({
      from: Math.min(...members.map((job) => time.indexAt(head.start[job]!))),
      until: Math.max(...members.map((job) => time.indexAt(tail.end[job]!))) + 1,
      amount: spans[group]!,
    }));
    return fit(loads(1), people) && (people < 2 || fit(loads(2), Math.floor(people / 2))) && fit(days, 1);
  };
  let [no, yes] = [least - 1, best];
  while (no + 1 < yes) {
    const middle = Math.floor((no + yes) / 2);
    if (isPossible(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

/** Whether no loads between two points take more than so many can do in that time. */
function fit(loads: readonly Load[], capacity: number): boolean {
  const byEnd = loads.toSorted((one, other) => one.until - other.until);
  const beginnings = [...new Set(loads.map(({ from }) => from))].sort((one, other) => one - other);
  const step = Math.max(1, ceilDivide(beginnings.length * loads.length, LOADS_TRIED));
  for (let index = 0; index < beginnings.length; index += step) {
    const from = beginnings[index]!;
    let sum = 0;
    for (const load of byEnd) {
      if (load.from < from) continue;
      sum += load.amount;
      if (sum > capacity * (load.until - from)) return false;
    }
  }
  return true;
}

/** Days by which chosen jobs begin late in every calendar. */
export function leastLate(model: CalendarModel): number {
  const head = earliestTimes(model);
  return model.target.reduce((sum, day, job) => (day < 0 ? sum : sum + Math.max(0, model.time.indexAt(head.start[job]!) - day)), 0);
}

/** The first working day on which anything could begin, whatever the order. */
export function firstDayOf(model: CalendarModel): number {
  const head = earliestTimes(model);
  return Math.min(...head.start.map((start) => model.time.indexAt(start)));
}
