import { ceilDivide } from '../units/index.ts';
import { earliestTimes, latestTimes, setFrom, type CalendarModel, type Times } from './calendar-model.ts';

/** What has to be done between two points of time: never before `from`, over at `until`, so much of it. */
interface Load {
  readonly from: number;
  readonly until: number;
  readonly amount: number;
}

/** Of more loads not every beginning is tried. */
const MOST_BEGINNINGS = 60;
/** Spans of rooms are tried day by day as long as that takes no more jobs. */
const MOST_SPAN_STEPS = 300_000;

/**
 * The earliest clock at which no rule below says that all cannot be done; no calendar is done before it.
 *
 * `best` is the clock at which a known calendar is done. Rules, each for jobs that can begin no earlier than one point and,
 * for all to be done in time, must be over at another, with waits, days off, deliveries and chosen days reckoned in: a
 * job has room between the two; together they take no more than the crew's minutes; those for two no more than the pairs'
 * minutes; rooms that must stay usable no more days than there are, one after the other, each its least span.
 * Example: two people, 8 hours a day, five jobs of 4 hours: 20 hours are 10 of two, so the bound is the second day's
 * second hour.
 */
export function leastEnd(model: CalendarModel, best: number): number {
  const { time, people, minutes, hands, kept } = model;
  const head = earliestTimes(model);
  const spans = leastSpans(model, head, best);
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
  let [no, yes] = [Math.max(...head.end) - 1, best];
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
  const step = Math.max(1, ceilDivide(beginnings.length, MOST_BEGINNINGS));
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

/**
 * Of each group of rooms that must stay usable the fewest days it can be out of use, whichever day it is begun.
 */
function leastSpans(model: CalendarModel, head: Times, best: number): readonly number[] {
  const { time, kept } = model;
  const lastDay = time.indexAt(best);
  let left = MOST_SPAN_STEPS;
  return kept.jobs.map((members) => {
    const least = daysOfWork(model, members);
    let [span, day] = [Infinity, Math.min(...members.map((job) => time.indexAt(head.start[job]!)))];
    for (; day <= lastDay && span > least && left > 0; day += 1) {
      span = Math.min(span, spanFrom(model, members, day));
      left -= members.length;
    }
    return left > 0 ? Math.max(least, span) : least;
  });
}

/** Days that a group takes if its people work on nothing else and nothing has to dry. */
function daysOfWork({ time, minutes, hands, people }: CalendarModel, members: readonly number[]): number {
  const sum = members.reduce((all, job) => all + minutes[job]! * hands[job]!, 0);
  const longest = Math.max(...members.map((job) => minutes[job]!));
  return Math.max(1, ceilDivide(sum, people * time.dayMinutes), ceilDivide(longest, time.dayMinutes));
}

/** Days from one on until the group's jobs are over, if none waits for hands or for anything outside of the group. */
function spanFrom(model: CalendarModel, members: readonly number[], day: number): number {
  const from = model.time.clockOfDay(day);
  const times: Times = { start: [], end: [] };
  let last = from;
  for (const job of members) {
    const ready = model.before[job]!.reduce((latest, earlier) => (times.end[earlier] === undefined ? latest : Math.max(latest, times.end[earlier] + model.waits[earlier]!)), from);
    setFrom(model, times, job, ready);
    last = Math.max(last, times.end[job]!);
  }
  return model.time.indexAt(last) - day + 1;
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
