import { type CalendarPlan, type CalendarQuestion, calendarWords, type CalendarWords } from '../../../shared-core/calendar/index.ts';
import type { CostFacts } from '../../../shared-core/costing/index.ts';
import type { House, Work } from '../../../shared-core/house/index.ts';
import type { HousePlan } from '../../../shared-core/plan/index.ts';

/** The work of a house of which nothing is said yet. */
const USUAL_WORK: Work = { people: 1, hours: 8, days: ['mon', 'tue', 'wed', 'thu', 'fri'], holidays: [] };

export function workOf({ work }: House): Work {
  return work ?? USUAL_WORK;
}

export function nameRoomIn({ rooms }: House, room: string): string {
  return rooms.find(({ id }) => id === room)?.name ?? room;
}

/** Says why the jobs of a plan stand where they stand. */
export function wordsOf(house: House, plan: CalendarPlan): CalendarWords {
  const question: CalendarQuestion = {
    jobs: plan.jobs,
    work: workOf(house),
    starts: plan.first!,
    keptUsable: house.rooms.filter(({ keptUsable }) => keptUsable).map(({ id }) => id),
    nameRoom: (room) => nameRoomIn(house, room),
  };
  return calendarWords(question, plan);
}

/** What the cost of a planned house was reckoned from. */
export function costFactsOf(house: House, plan: HousePlan): CostFacts {
  return { house, order: plan.order, materials: plan.prep?.materials ?? [], paints: plan.prep?.paints ?? [], jobs: plan.jobs ?? [] };
}
