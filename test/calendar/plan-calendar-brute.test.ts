import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CalendarQuestion, checkCalendar, civilDay, dayNumberOf, type Job, planCalendar } from '../../shared-core/calendar/index.ts';
import { tryAllOrders } from '../../shared-core/calendar/try-all-orders.ts';
import type { Work } from '../../shared-core/house/index.ts';
import { modelOf, scoreOf } from '../../shared-core/calendar/calendar-model.ts';
import { leastEnd, leastLate } from '../../shared-core/calendar/lower-bound.ts';
import { bestByBruteForce, type Judged, judgedOf } from './calendar-brute.ts';
import { job, question, work } from './houses-of-jobs.ts';
import { shareOf } from '../share-of.ts';

const GRID = 30;
/** From a Wednesday on, so that weekends are met; the days that facts name are up to a fortnight later. */
const STARTS = '2026-03-04';
const dayAfter = (days: number) => civilDay(dayNumberOf(STARTS) + days);

interface Facts {
  readonly length: number;
  readonly people: 0 | 1 | 2;
  readonly wait: number;
  readonly after: number;
  readonly room: number;
  readonly earliest: number;
  readonly chosen: number;
}

/** Up to `most` jobs in up to three rooms, of which two or three have to stay usable; each may wait for any before it. */
function questions(most: number, isChosen: boolean): fc.Arbitrary<CalendarQuestion> {
  const facts: fc.Arbitrary<Facts> = fc.record({
    length: fc.constantFrom(0, 1, 1, 2, 2, 3, 4, 5),
    people: fc.constantFrom(1 as const, 1 as const, 1 as const, 2 as const, 0 as const),
    wait: fc.constantFrom(0, 0, 0, 1, 30, 48, 49, 100),
    after: fc.nat(2 ** most - 1),
    room: fc.nat(3),
    earliest: fc.constantFrom(-9, -9, -9, 0, 1, 2, 5),
    chosen: isChosen ? fc.constantFrom(-9, -9, -1, 0, 1, 3, 5) : fc.constant(-9),
  });
  return fc
    .record({
      jobs: fc.array(facts, { minLength: 1, maxLength: most }),
      sparse: fc.boolean(),
      kept: fc.constantFrom<readonly string[]>([], ['r0', 'r1'], ['r0', 'r1', 'r2']),
      people: fc.integer({ min: 1, max: 3 }),
      hours: fc.integer({ min: 1, max: 2 }),
      days: fc.constantFrom<Work['days']>(['mon', 'tue', 'wed', 'thu', 'fri'], ['mon', 'wed', 'thu', 'sat'], ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']),
      holidays: fc.constantFrom<string[]>([], [dayAfter(1)], [dayAfter(0), dayAfter(5)]),
    })
    .map(({ jobs, sparse, kept, people, hours, days, holidays }) =>
      question(
        jobs.map(({ length, people: hands, wait, after, room, earliest, chosen }, index): Job => {
          const behind = jobs.flatMap((_, earlier) => (earlier < index && (after >> earlier) % 2 === 1 && (!sparse || earlier === index - 1) ? [`j${earlier}`] : []));
          return job(`j${index}`, length * GRID, {
            people: hands,
            waitMinutes: wait * GRID,
            room: room === 3 ? null : `r${room}`,
            after: behind,
            earliest: earliest === -9 ? null : dayAfter(earliest),
            chosen: chosen === -9 ? null : dayAfter(chosen),
          });
        }),
        { work: work({ people, hours, days, holidays }), starts: STARTS, keptUsable: kept },
      ),
    );
}

function expectBest(asked: CalendarQuestion): void {
  const plan = planCalendar(asked);
  expect(checkCalendar(asked, plan)).toEqual([]);
  const judged = judgedOf(asked, plan);
  // Every order of so few jobs is tried.
  expect(plan.isShortest).toBe(true);
  expect(bestByBruteForce(asked, GRID, judged, plan.inseparable)).toEqual(judged);
  expect(checkCalendar(asked, planCalendar({ ...asked, effort: 'instant' }))).toEqual([]);
  expectBelow(asked, judged);
  expectAllTried(asked, judged);
}

/** Trying every order finds the best by itself, from a calendar in which all is done a year later. */
function expectAllTried(asked: CalendarQuestion, [late, day, minute]: Judged): void {
  const model = modelOf(asked);
  const nextYear = model.jobs.map(() => model.time.clockOfDay(250));
  const { times, isAll } = tryAllOrders(model, { start: nextYear, end: nextYear }, { late: 0, end: 0 }, { left: 1_000_000 });
  expect(isAll).toBe(true);
  expect(scoreOf(model, times)).toEqual({ late, end: model.time.clockOfDay(day) + minute });
}

/** The bound that is worked out without trying all is never above the best, and keeps what it claims. */
function expectBelow(asked: CalendarQuestion, [late, day, minute]: Judged): void {
  const model = modelOf(asked);
  const best = model.time.clockOfDay(day) + minute;
  for (const known of [best, best + 1_440, best + 20_000]) expect(leastEnd(model, known)).toBeLessThanOrEqual(best);
  expect(leastLate(model)).toBeLessThanOrEqual(late);
}

describe('a calendar of few jobs', () => {
  test('is the best of all calendars', () => {
    fc.assert(fc.property(questions(5, false), expectBest), { numRuns: shareOf(400, 100), seed: 7 });
  });

  test('is the best of all calendars where days are chosen', () => {
    fc.assert(fc.property(questions(4, true), expectBest), { numRuns: shareOf(400, 100), seed: 7 });
  });

  test('is the best of all calendars of six jobs', () => {
    fc.assert(fc.property(questions(6, false), expectBest), { numRuns: shareOf(150, 40), seed: 8 });
  });
});
