import { jobsOf } from '../../shared-core/calendar/jobs.ts';
import type { HouseJob } from '../../shared-core/calendar/house-job.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import type { PaintNeed, Task } from '../../shared-core/prep/prep-plan.ts';
import { areaOf, millimetres, rectangleArea } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';

/** So many hundredths of a square metre. */
export const hundredths = (count: number) => rectangleArea(millimetres(10 * count), millimetres(1000));

export function task(id: string, facts: Partial<Task> = {}): Task {
  return { id, room: 'room', rule: 'wash', words: 'Wash', surfaces: [], area: areaOf(0), minutes: 60, people: 1, waitMinutes: 0, after: [], materials: [], checks: [], cautions: [], source: 'somewhere', ...facts };
}

/** A paint on surfaces of the room, each with its area in hundredths of a square metre. */
export function paintNeed(covering: string, surfaces: readonly (readonly [PaintNeed['surfaces'][number]['surface'], number])[], coats = 2, facts: Partial<PaintNeed> = {}): PaintNeed {
  return {
    covering,
    surfaces: surfaces.map(([surface, count]) => ({ room: 'room', surface, gross: hundredths(count), deducted: areaOf(0), area: hundredths(count), coats, factor: 100, firstFactor: 100, millilitres: 1000, band: null, reveals: areaOf(0) })),
    rule: 'none',
    spreading: { squareMillimetres: 10_000, millilitres: 1 },
    millilitres: 1000,
    tins: [{ litres: 1, count: 1 }],
    price: null,
    ...facts,
  };
}

/** A house in metric with 'paper' 50 cm wide in rolls of 10 m without a repeat, and what is said otherwise. */
export function metricHouse(facts: Loose = {}) {
  return houseOf(documentOf({ lengths: 'metric', currency: 'EUR', coverings: [metricPaper()], ...facts }));
}

export const metricPaper = (facts: Loose = {}): Loose => wallcovering({ width: '50 cm', rollLength: '10 m', repeat: '0 cm', ...facts });

export function workOf(house: ReturnType<typeof metricHouse>, { tasks = [], paints = [] }: { readonly tasks?: readonly Task[]; readonly paints?: readonly PaintNeed[] } = {}): readonly HouseJob[] {
  const plan = planHouse(house, 'instant');
  return jobsOf({ house, tasks, rooms: plan.rooms, paints, readiness: plan.readiness });
}
