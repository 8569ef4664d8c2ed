import { type CalendarPlan, calendarWords, type CalendarWords } from '../../../shared-core/calendar/index.ts';
import type { CostFacts } from '../../../shared-core/costing/index.ts';
import { type House, USUAL_WORK, type Work } from '../../../shared-core/house/index.ts';
import { type HousePlan, nameRoom } from '../../../shared-core/plan/index.ts';

export function workOf({ work }: House): Work {
  return work ?? USUAL_WORK;
}

/** The calendar of a planned house, in which what somebody else does takes nobody; null as long as nobody says when the work starts. */
export function calendarIn({ calendar, jobs }: Pick<HousePlan, 'calendar' | 'jobs'>): CalendarPlan | null {
  const others = new Set(jobs.flatMap(({ id, isOthers }) => (isOthers ? [id] : [])));
  return calendar && { ...calendar, jobs: calendar.jobs.map((job) => (others.has(job.id) ? { ...job, people: 0 } : job)) };
}

/** Says why the jobs of a calendar stand where they stand; null as long as nobody says when the work starts. */
export function wordsOf(house: House, plan: CalendarPlan): CalendarWords | null {
  const { starts } = workOf(house);
  if (starts === undefined) return null;
  const keptUsable = house.rooms.flatMap(({ id, keptUsable: isKept }) => (isKept ? [id] : []));
  return calendarWords({ jobs: plan.jobs, work: workOf(house), starts, keptUsable, nameRoom: (room) => nameRoom(house, room) }, plan);
}

/** What the cost of a planned house was reckoned from. */
export function costFactsOf(house: House, { order, prep, jobs }: HousePlan): CostFacts {
  return { house, order, materials: prep.materials, paints: prep.paints, jobs };
}
