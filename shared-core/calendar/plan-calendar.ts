import { type CalendarModel, compareScores, earliestTimes, modelOf, type Score, type Times } from './calendar-model.ts';
import type { Booking, CalendarPlan, CalendarQuestion } from './calendar-plan.ts';
import { calendarWords } from './explain-calendar.ts';
import { findCalendar, improveCalendar } from './improve-calendar.ts';
import { firstDayOf, leastEnd, leastLate } from './lower-bound.ts';
import { tryAllOrders } from './try-all-orders.ts';

/** Of more jobs not every order is tried: the budget would end long before they do. */
const MOST_TO_TRY_ALL = 40;
/** Jobs tried at a place, about half a microsecond to a microsecond each. */
const STEPS = {
  instant: { all: 5_000, near: 0 },
  usual: { all: 200_000, near: 100_000 },
} as const;

/**
 * Puts jobs into the days of a crew so that all are done on the earliest day there is, and says how early any calendar
 * could be done.
 *
 * Shapes: days such as "2026-03-02"; minutes whole. A job takes its people for its whole length and is not interrupted but
 * by the end of a working day, after which the same people go on; the working day begins at 08:00. It waits for all jobs
 * that it comes after, and for as many minutes of the clock as each of these has to dry. Chosen days come first: a
 * calendar in which chosen jobs begin fewer days late, all together, is the better one; then the one that is done earlier,
 * to the minute. Where no calendar keeps to a chosen day the booking says why. Work that begins nowhere is from `starts` on.
 *
 * Rule: calendars that come from priority rules are pushed to and fro and exchanged; of few jobs every order is tried.
 * `isShortest` where every order was tried or the lower bound is met. Ids that are missing or come twice, and jobs that wait
 * for each other, are bugs of the caller and throw.
 * Example: one person, 8 hours a day from Monday: fill two rooms, 4 hours each, then 24 hours to dry, then paint each for 4
 * hours. Both are filled on Monday, at 12:00 and 16:00; on Tuesday the first is painted from 12:00, on Wednesday the
 * second, which was not dry before Tuesday 16:00: three days, and no calendar takes fewer.
 */
export function planCalendar(question: CalendarQuestion): CalendarPlan {
  const model = modelOf(question);
  if (model.jobs.length === 0) {
    return { jobs: question.jobs, bookings: [], first: null, last: null, workingDays: 0, lowerBound: 0, isShortest: true, inseparable: [], lackingHands: [] };
  }
  const { times, floor, isAll } = bestTimes(model, question.effort ?? 'usual');
  const { time, jobs } = model;
  const firstDay = firstDayOf(model);
  const workingDays = time.indexAt(Math.max(...times.end)) - firstDay + 1;
  const lowerBound = isAll ? workingDays : time.indexAt(floor.end) - firstDay + 1;
  const plan = {
    jobs: question.jobs,
    bookings: bookingsOf(model, times),
    first: time.dayOf(time.indexAt(Math.min(...times.start))),
    last: time.dayOf(time.indexAt(Math.max(...times.end))),
    workingDays,
    lowerBound,
    isShortest: lowerBound === workingDays,
    inseparable: model.kept.rooms.filter(({ length }) => length > 1),
    lackingHands: jobs.filter(({ people }) => people > model.people).map(({ id }) => id),
  };
  const words = calendarWords(question, plan);
  return { ...plan, bookings: plan.bookings.map((booking) => ({ ...booking, moved: words.whyMoved(booking.job) })) };
}

function bestTimes(model: CalendarModel, effort: 'instant' | 'usual'): { readonly times: Times; readonly floor: Score; readonly isAll: boolean } {
  const earliest = earliestTimes(model);
  const late = leastLate(model);
  const first = findCalendar(model, earliest, { late, end: Math.max(...earliest.end) });
  const floor = { late, end: leastEnd(model, first.score.end) };
  const steps = STEPS[effort];
  const better = improveCalendar(model, first, floor, { left: steps.near });
  if (compareScores(better.score, floor) <= 0 || model.jobs.length > MOST_TO_TRY_ALL) return { times: better.times, floor, isAll: false };
  return { floor, ...tryAllOrders(model, better.times, floor, { left: steps.all }) };
}

/** Jobs in the order in which they begin, each with the people who are free then, those who were last in its room first. */
function bookingsOf(model: CalendarModel, { start, end }: Times): readonly Booking[] {
  const { time, jobs, hands } = model;
  const freeFrom = Array.from({ length: model.people }, () => 0);
  const lastRoom: (string | null)[] = freeFrom.map(() => null);
  const order = jobs.map((_, job) => job).sort((one, other) => start[one]! - start[other]! || end[one]! - end[other]! || one - other);
  return order.map((job): Booking => {
    const { id, room } = jobs[job]!;
    const from = start[job]!;
    const free = freeFrom.flatMap((until, person) => (until <= from ? [person] : []));
    const chosen = [...free.filter((person) => room !== null && lastRoom[person] === room), ...free.filter((person) => room === null || lastRoom[person] !== room)].slice(0, hands[job]);
    for (const person of chosen) [freeFrom[person], lastRoom[person]] = [end[job]!, room];
    const [firstDay, lastDay] = [time.indexAt(from), time.indexAt(end[job]!)];
    const at = (clock: number, day: number) => ({ day: time.dayOf(day), minute: clock - time.clockOfDay(day) });
    return {
      job: id,
      from: at(from, firstDay),
      to: at(end[job]!, lastDay),
      days: Array.from({ length: lastDay - firstDay + 1 }, (_, index) => time.dayOf(firstDay + index)),
      crew: chosen.map((person) => person + 1).sort((one, other) => one - other),
      moved: null,
    };
  });
}
