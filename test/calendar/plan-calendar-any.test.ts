import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkCalendar, planCalendar } from '../../shared-core/calendar/index.ts';
import { houseOfJobs, job, numbersFrom, question, work } from './houses-of-jobs.ts';
import { shareOf } from '../share-of.ts';

/** Jobs of any length up to a week and a bit, with whatever may be said of one. */
function anyQuestion(seed: number, most: number) {
  const below = numbersFrom(seed);
  const day = (from: number) => `2026-03-${String(from + below(25)).padStart(2, '0')}`;
  const rooms = 1 + below(6);
  const jobs = Array.from({ length: 1 + below(most) }, (_, index) =>
    job(`j${index}`, below(8) === 0 ? 0 : 1 + below(below(9) === 0 ? 3_000 : 400), {
      room: below(7) === 0 ? null : `r${below(rooms)}`,
      people: ([1, 1, 1, 2, 0] as const)[below(5)]!,
      waitMinutes: below(2) === 0 ? 0 : below(5_000),
      after: Array.from({ length: index === 0 ? 0 : below(3) }, () => `j${below(index)}`),
      earliest: below(6) === 0 ? day(1) : null,
      chosen: below(8) === 0 ? day(1) : null,
    }),
  );
  return question(below(2) === 0 ? jobs : jobs.toReversed(), {
    work: work({ people: 1 + below(5), hours: 1 + below(16), days: below(3) === 0 ? ['tue', 'sat'] : ['mon', 'tue', 'wed', 'thu', 'fri'], holidays: [day(1), day(1), day(1)] }),
    keptUsable: Array.from({ length: below(rooms + 1) }, (_, room) => `r${room}`),
  });
}

describe('any calendar', () => {
  test('keeps every rule, and an instant one is no better bounded than it is long', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const asked = anyQuestion(seed, 40);
        const [instant, usual] = [planCalendar({ ...asked, effort: 'instant' }), planCalendar(asked)];
        expect(checkCalendar(asked, instant)).toEqual([]);
        expect(checkCalendar(asked, usual)).toEqual([]);
        if (!asked.jobs.some(({ chosen }) => chosen !== null)) expect(Math.max(instant.lowerBound, usual.lowerBound)).toBeLessThanOrEqual(Math.min(instant.workingDays, usual.workingDays));
      }),
      { numRuns: shareOf(150, 40), seed: 3 },
    );
  });

  test('is the same whenever it is asked for', () => {
    const asked = anyQuestion(11, 40);
    expect(planCalendar(asked)).toEqual(planCalendar(asked));
  });

  test('of a house of a hundred rooms keeps every rule and comes near its bound', () => {
    for (const people of [1, 2, 3, 6]) {
      const asked = houseOfJobs(100, people);
      const plan = planCalendar(asked);
      expect(checkCalendar(asked, plan)).toEqual([]);
      expect([people, plan.workingDays - plan.lowerBound]).toEqual([people, expect.toSatisfy((more: number) => more <= 2)]);
    }
  });
});
