import { describe, expect, test } from 'vitest';
import type { CalendarPlan, Job } from '../../shared-core/calendar/index.ts';
import { columnsOf, dayAfter, layChart, nextBar, weeksOf } from '../../src-renderer/places/calendar/chart.ts';

const WORK = { days: ['mon', 'tue', 'wed', 'thu', 'fri'] as const, holidays: ['2026-03-05'], hours: 8 };

function job(id: string, room: string | null, facts: Partial<Job> = {}): Job {
  return { id, room, words: id, minutes: 120, people: 1, waitMinutes: 0, after: [], earliest: null, chosen: null, ...facts };
}

function booked(id: string, from: readonly [string, number], to: readonly [string, number]) {
  return { job: id, from: { day: from[0], minute: from[1] }, to: { day: to[0], minute: to[1] }, days: [from[0]], crew: [1], moved: null };
}

/** Two rooms from Wednesday 4 March 2026; Thursday is a holiday. */
const PLAN: CalendarPlan = {
  jobs: [job('fill', 'hall', { waitMinutes: 1_440 }), job('paint', 'hall', { people: 2, earliest: '2026-03-06' }), job('hang', 'attic'), job('skip', null)],
  bookings: [booked('fill', ['2026-03-04', 120], ['2026-03-04', 240]), booked('hang', ['2026-03-04', 200], ['2026-03-06', 60]), booked('skip', ['2026-03-06', 0], ['2026-03-06', 0]), booked('paint', ['2026-03-06', 0], ['2026-03-06', 240])],
  first: '2026-03-04',
  last: '2026-03-06',
  workingDays: 2,
  lowerBound: 2,
  isShortest: true,
  inseparable: [],
  lackingHands: [],
};
const chart = layChart(PLAN, { ...WORK, days: [...WORK.days] }, ['attic', 'hall'], { leastWidth: 0 });
const barOf = (id: string) => chart.rows.flatMap(({ bars }) => bars).find((bar) => bar.job.id === id)!;

describe('the chart of a calendar', () => {
  test('has a column for every day of its weeks, days off and holidays among them, and some to spare', () => {
    expect(chart.days.slice(0, 7).map(({ day, weekday, date, isOff }) => [day, weekday, date, isOff])).toEqual([
      ['2026-03-02', 'mon', 2, false],
      ['2026-03-03', 'tue', 3, false],
      ['2026-03-04', 'wed', 4, false],
      ['2026-03-05', 'thu', 5, true],
      ['2026-03-06', 'fri', 6, false],
      ['2026-03-07', 'sat', 7, true],
      ['2026-03-08', 'sun', 8, true],
    ]);
    expect(chart.days.at(-1)?.day).toBe('2026-03-09');
    expect(columnsOf(PLAN)).toBe(chart.days.length);
    expect(weeksOf(chart.days)).toEqual([{ day: '2026-03-02', left: 0, width: 7 }, { day: '2026-03-09', left: 7, width: 1 }]);
  });

  test('sets bars by the minutes of a working day, and what belongs to no room above the rooms in their order', () => {
    expect(chart.rows.map(({ room }) => room)).toEqual([null, 'attic', 'hall']);
    expect([barOf('fill').left, barOf('fill').width]).toEqual([2.25, 0.25]);
    // From 200 of 480 minutes of the third column to 60 of the fifth.
    expect(barOf('hang').left).toBeCloseTo(2 + 200 / 480, 10);
    expect(barOf('hang').left + barOf('hang').width).toBeCloseTo(4 + 60 / 480, 10);
    expect([barOf('skip').width, barOf('fill').number, barOf('paint').number]).toEqual([0, 1, 2]);
  });

  test('lets what dries over night go on to the same hour of the next day, whether it is worked on or not', () => {
    expect(barOf('fill').drying).toEqual({ left: 2.5, width: 1 });
    expect(barOf('paint').drying).toBeNull();
    const overNight = layChart({ ...PLAN, jobs: PLAN.jobs.map((one) => (one.id === 'fill' ? { ...one, waitMinutes: 600 } : one)) }, { ...WORK, days: [...WORK.days] }, ['hall'], { leastWidth: 0 });
    // From 12:00 to 22:00, which is past the hours of the day: to the edge of its column.
    expect(overNight.rows[1]!.bars[0]!.drying).toEqual({ left: 2.5, width: 0.5 });
  });

  test('marks a delivery on its day', () => {
    expect(chart.rows.map(({ deliveries }) => deliveries)).toEqual([[], [], [{ day: '2026-03-06', left: 4 }]]);
  });

  test('puts bars that would overlap into lines of their own, for as wide as they are drawn', () => {
    const two = { ...PLAN, jobs: [job('one', 'hall'), job('two', 'hall'), job('three', 'hall')], bookings: [booked('one', ['2026-03-04', 0], ['2026-03-04', 60]), booked('two', ['2026-03-04', 30], ['2026-03-04', 90]), booked('three', ['2026-03-04', 60], ['2026-03-04', 120])] };
    const lanesAt = (leastWidth: number) => layChart(two, { ...WORK, days: [...WORK.days] }, ['hall'], { leastWidth }).rows[0]!.bars.map(({ lane }) => lane);
    expect(lanesAt(0)).toEqual([0, 1, 0]);
    expect(lanesAt(0.25)).toEqual([0, 1, 2]);
  });

  test('keeps its first column and reaches further for a bar in hand', () => {
    const held = layChart(PLAN, { ...WORK, days: [...WORK.days] }, ['hall'], { leastWidth: 0, from: '2026-02-26', until: '2026-04-01' });
    expect([held.days[0]?.day, held.days.at(-1)?.day]).toEqual(['2026-02-23', '2026-04-04']);
  });

  test('is empty where nothing is to be done', () => {
    expect(layChart({ ...PLAN, jobs: [], bookings: [], first: null, last: null }, { ...WORK, days: [...WORK.days] }, ['hall'], { leastWidth: 0 })).toEqual({ days: [], rows: [] });
    expect(columnsOf({ first: null, last: null })).toBe(0);
  });
});

test('steps go along a row by time, and to the nearest bar of the next row', () => {
  expect(nextBar(chart, null, 'right')).toBe('skip');
  expect(nextBar(chart, 'fill', 'right')).toBe('paint');
  expect(nextBar(chart, 'paint', 'right')).toBe('paint');
  expect([nextBar(chart, 'paint', 'first'), nextBar(chart, 'fill', 'last')]).toEqual(['fill', 'paint']);
  expect([nextBar(chart, 'skip', 'up'), nextBar(chart, 'skip', 'down'), nextBar(chart, 'hang', 'down')]).toEqual(['skip', 'hang', 'fill']);
});

test('days are counted over the end of a month', () => {
  expect([dayAfter('2026-02-27', 3), dayAfter('2026-03-02', -7), dayAfter('2028-02-28', 1)]).toEqual(['2026-03-02', '2026-02-23', '2028-02-29']);
});
