import type { CalendarPlan, CalendarQuestion, Job } from '../../shared-core/calendar/index.ts';
import { civilDay, dayNumberOf, weekdayOf } from '../../shared-core/calendar/index.ts';

/** Days by which chosen jobs begin late, the last working day, and the minute in it: smaller is better, in this order. */
export type Judged = readonly [late: number, lastDay: number, minute: number];

const isBetter = (one: Judged, other: Judged) => one[0] - other[0] || one[1] - other[1] || one[2] - other[2];

interface Slot {
  readonly day: number;
  readonly minute: number;
}

/**
 * The best calendar there is, by trying every start that is a multiple of `grid` minutes for every job. All minutes and
 * waits are such multiples, so that nothing is lost by it. `bound` is what a calendar is known to reach, so that nothing
 * beyond it is tried but for fewer days late, for which as many days more are. Rooms that are `tied` may be out of use
 * together.
 */
export function bestByBruteForce(question: CalendarQuestion, grid: number, bound: Judged, tied: CalendarPlan['inseparable']): Judged {
  const { work, jobs, keptUsable } = question;
  const dayMinutes = work.hours * 60;
  const first = dayNumberOf(work.starts ?? question.starts);
  const days: number[] = [];
  const most = bound[1] + 1 + bound[0];
  for (let day = first; days.length < most; day += 1) if (work.days.includes(weekdayOf(day)) && !work.holidays.includes(civilDay(day))) days.push(day);
  const indexFrom = (day: string) => {
    const index = days.findIndex((number) => number >= dayNumberOf(day));
    return index < 0 ? most : index;
  };
  const order = inOrder(jobs);
  const begins = new Map<string, Slot>();
  const ends = new Map<string, Slot>();
  const busy = new Map<number, number>();
  const clock = ({ day, minute }: Slot) => (days[day]! - first) * 1_440 + 480 + minute;
  const isBeyond = (late: number, { day, minute }: Slot) => isBetter([late, day, minute], best) >= 0;
  let best: Judged = bound;

  const clashes = (job: Job): boolean => {
    if (job.room === null || !keptUsable.includes(job.room)) return false;
    const spans = new Map<string, [number, number]>();
    for (const { id, room } of order) {
      const [begin, end] = [begins.get(id), ends.get(id)];
      if (!begin || !end || room === null || !keptUsable.includes(room)) continue;
      const name = tied.find((together) => together.includes(room))?.[0] ?? room;
      const span = spans.get(name) ?? [begin.day, end.day];
      spans.set(name, [Math.min(span[0], begin.day), Math.max(span[1], end.day)]);
    }
    const all = [...spans.values()];
    return all.some((one, index) => all.some((other, later) => later > index && one[0] <= other[1] && other[0] <= one[1]));
  };

  const tryFrom = (index: number, late: number, last: Slot): void => {
    const job = order[index];
    if (!job) {
      best = [late, last.day, last.minute];
      return;
    }
    const target = job.chosen === null ? -1 : indexFrom(job.chosen);
    const hands = Math.min(job.people, work.people);
    for (let day = Math.max(0, target, job.earliest === null ? 0 : indexFrom(job.earliest)); day < most; day += 1) {
      const lateNow = late + (target < 0 ? 0 : day - target);
      if (lateNow > best[0]) return;
      for (let minute = 0; minute < dayMinutes || (job.minutes === 0 && minute === dayMinutes); minute += grid) {
        const begin = { day, minute };
        if (job.after.some((id) => clock(begin) < clock(ends.get(id)!) + order.find((earlier) => earlier.id === id)!.waitMinutes)) continue;
        const over = minute + job.minutes;
        const further = over === 0 ? 0 : Math.ceil(over / dayMinutes) - 1;
        const end = { day: day + further, minute: over - further * dayMinutes };
        if (end.day >= most) return;
        const worst = end.day > last.day || (end.day === last.day && end.minute > last.minute) ? end : last;
        if (isBeyond(lateNow, worst)) break;
        const from = day * dayMinutes + minute;
        const minutes = Array.from({ length: job.minutes / grid }, (_, step) => from + step * grid);
        if (minutes.some((at) => (busy.get(at) ?? 0) + hands > work.people)) continue;
        begins.set(job.id, begin);
        ends.set(job.id, end);
        for (const at of minutes) busy.set(at, (busy.get(at) ?? 0) + hands);
        if (!clashes(job)) tryFrom(index + 1, lateNow, worst);
        for (const at of minutes) busy.set(at, busy.get(at)! - hands);
        begins.delete(job.id);
        ends.delete(job.id);
      }
    }
  };
  tryFrom(0, 0, { day: 0, minute: 0 });
  return best;
}

function inOrder(jobs: readonly Job[]): readonly Job[] {
  const ordered: Job[] = [];
  while (ordered.length < jobs.length) ordered.push(...jobs.filter((job) => !ordered.includes(job) && job.after.every((id) => ordered.some((earlier) => earlier.id === id))).slice(0, 1));
  return ordered;
}

/** What a plan is worth, from its bookings. */
export function judgedOf(question: CalendarQuestion, plan: CalendarPlan): Judged {
  const { work } = question;
  const days: string[] = [];
  for (let day = dayNumberOf(work.starts ?? question.starts); (days.at(-1) ?? '') < plan.last!; day += 1) if (work.days.includes(weekdayOf(day)) && !work.holidays.includes(civilDay(day))) days.push(civilDay(day));
  let [late, lastDay, minute] = [0, 0, 0];
  for (const { job, from, to } of plan.bookings) {
    const { chosen } = question.jobs.find(({ id }) => id === job)!;
    if (chosen !== null) late += days.indexOf(from.day) - days.findIndex((day) => day >= chosen);
    const day = days.indexOf(to.day);
    if (day > lastDay || (day === lastDay && to.minute > minute)) [lastDay, minute] = [day, to.minute];
  }
  return [late, lastDay, minute];
}
