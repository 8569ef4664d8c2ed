import { ceilDivide } from '../units/index.ts';
import { type CalendarModel, midnightAfter, setFrom, type Times } from './calendar-model.ts';

/** Of more groups not every order is bounded. */
const MOST_IN_EVERY_ORDER = 10;
/** Days that begin alike are followed by the same days off for so many working days. */
const DAYS_ALIKE = 40;
/** A delivery in the far future has more days before it than are looked at. */
const MOST_DAYS = 3_000;

/**
 * Of each group of rooms that must stay usable the fewest days it can be out of use, whichever day it is begun.
 *
 * `best` is the clock at which a known calendar is done. Rule: a day is as good as any with the same days off after it, so
 * one of each kind is tried. Example: a room that dries for 60 hours between two jobs of an hour, worked on from Monday to
 * Friday, is out of use for four days from Monday on, for two from Friday on.
 */
export function leastSpans(model: CalendarModel, best: number): readonly number[] {
  const { time, kept } = model;
  if (kept.jobs.length < 2 || time.indexAt(best) > MOST_DAYS) return kept.jobs.map(() => 1);
  const days = new Map<string, number>();
  for (let day = time.indexAt(best); day >= 0; day -= 1) {
    const first = time.clockOfDay(day);
    days.set(Array.from({ length: DAYS_ALIKE }, (_, later) => time.clockOfDay(day + later) - first).join(), day);
  }
  return kept.jobs.map((members) => {
    let span = DAYS_ALIKE;
    for (const day of days.values()) span = Math.min(span, time.indexAt(overFrom(model, members, time.clockOfDay(day), [])) - day + 1);
    return span;
  });
}

/**
 * The clock at which all rooms that must stay usable can be over, one group after the other in the best order there is, if
 * they wait for no hands but for those of their own jobs; 0 where these are too many to try every order.
 *
 * Takes the clock at which each job can begin at the earliest. Example: two rooms that take two days each, the second
 * one's paper delivered on the third day: over on the fourth.
 */
export function keptEnd(model: CalendarModel, earliest: readonly number[]): number {
  const { jobs, before } = model.kept;
  if (jobs.length > MOST_IN_EVERY_ORDER) return 0;
  const known = jobs.map(() => new Map<number, number>());
  const groupOver = (group: number, from: number): number => {
    const clock = known[group]!.get(from) ?? overFrom(model, jobs[group]!, from, earliest);
    known[group]!.set(from, clock);
    return clock;
  };
  /** By the groups that are over, one bit each. */
  const over = [0];
  for (let done = 1; done < 1 << jobs.length; done += 1) {
    over[done] = jobs.reduce((least, _members, group) => {
      const rest = done & ~(1 << group);
      if (rest === done || over[rest] === Infinity || before[group]!.some((earlier) => (rest & (1 << earlier)) === 0)) return least;
      return Math.min(least, groupOver(group, midnightAfter(over[rest]!)));
    }, Infinity);
  }
  return over.at(-1)!;
}

/**
 * The groups in an order that wastes few days: each time the one that takes no more days from there on than it takes at
 * least, of several the one that takes most; ranks by group.
 *
 * A room that dries over a weekend is out of use for fewer working days, so it is begun where the weekend is in its way.
 */
export function thriftyOrder(model: CalendarModel, earliest: readonly number[], spans: readonly number[]): readonly number[] {
  const { time, kept } = model;
  const ranks: number[] = [];
  let from = 0;
  for (let rank = 0; rank < kept.jobs.length; rank += 1) {
    let best = { group: -1, wasted: Infinity, over: 0 };
    for (const [group, members] of kept.jobs.entries()) {
      if (ranks[group] !== undefined || kept.before[group]!.some((earlier) => ranks[earlier] === undefined)) continue;
      const over = overFrom(model, members, from, earliest);
      const wasted = time.indexAt(over) - time.indexAt(from + 1) + 1 - spans[group]!;
      if (wasted < best.wasted || (wasted === best.wasted && spans[group]! > spans[best.group]!)) best = { group, wasted, over };
    }
    ranks[best.group] = rank;
    from = midnightAfter(best.over);
  }
  return ranks;
}

/** The clock at which a group can be over if it is begun at a clock or later and waits for no hands but for its own jobs. */
function overFrom(model: CalendarModel, members: readonly number[], from: number, earliest: readonly number[]): number {
  const { time, people, minutes, hands, before, waits } = model;
  const times: Times = { start: [], end: [] };
  let [last, work] = [from, 0];
  for (const job of members) {
    let ready = Math.max(from, earliest[job] ?? from);
    for (const earlier of before[job]!) if (times.end[earlier] !== undefined) ready = Math.max(ready, times.end[earlier] + waits[earlier]!);
    setFrom(model, times, job, ready);
    last = Math.max(last, times.end[job]!);
    work += minutes[job]! * hands[job]!;
  }
  return work === 0 ? last : Math.max(last, time.clockAtEnd(time.workedAt(from) + ceilDivide(work, people)));
}
