import { describe, expect, test } from 'vitest';
import { modelOf, scoreOf } from '../../shared-core/calendar/calendar-model.ts';
import type { CalendarQuestion } from '../../shared-core/calendar/index.ts';
import { type Budget, tryAllOrders } from '../../shared-core/calendar/try-all-orders.ts';
import { job, question, work } from './houses-of-jobs.ts';

/** The best of all orders, from a calendar in which everything is done a year later. */
function triedAll(asked: CalendarQuestion, budget: Budget = { left: 100_000 }) {
  const model = modelOf(asked);
  const nextYear = model.jobs.map(() => model.time.clockOfDay(250));
  const { times, isAll } = tryAllOrders(model, { start: nextYear, end: nextYear }, { late: 0, end: 0 }, budget);
  return { ...scoreOf(model, times), isAll };
}

describe('trying every order', () => {
  test('of 3, 3 and 2 hours with two people is done after 5 hours', () => {
    expect(triedAll(question([job('a', 180), job('b', 180), job('c', 120)], { work: work({ people: 2 }) }))).toEqual({ late: 0, end: 480 + 300, isAll: true });
  });

  test('leaves people idle for what is still to come and has to dry', () => {
    // Both coats begin with Tuesday and dry for two days; sanding from Monday on would keep one of them waiting.
    const coats = ['a', 'b'].flatMap((coat) => [job(coat, 60, { earliest: '2026-03-03', waitMinutes: 2_880 }), job(`${coat}2`, 60, { after: [coat] })]);
    const asked = question([...coats, job('sand', 540)], { work: work({ people: 2 }) });
    // Dry on Thursday at 09:00, done at 10:00.
    expect(triedAll(asked)).toEqual({ late: 0, end: 3 * 1_440 + 480 + 120, isAll: true });
  });

  test('says where its budget ends', () => {
    expect(triedAll(question(Array.from({ length: 9 }, (_, index) => job(`j${index}`, 10 + index))), { left: 50 }).isAll).toBe(false);
  });
});
