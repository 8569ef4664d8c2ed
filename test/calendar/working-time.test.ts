import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civilDay, dayNumberOf, weekdayOf } from '../../shared-core/calendar/index.ts';
import { workingTimeOf } from '../../shared-core/calendar/working-time.ts';
import { work } from './houses-of-jobs.ts';

describe('a day of the calendar', () => {
  test.each([
    ['1970-01-01', 0, 'thu'],
    ['2026-03-02', 20_514, 'mon'],
    ['2000-02-29', 11_016, 'tue'],
    ['2000-03-01', 11_017, 'wed'],
    ['1900-02-28', -25_509, 'wed'],
    ['1900-03-01', -25_508, 'thu'],
    ['1969-07-20', -165, 'sun'],
    ['2024-02-29', 19_782, 'thu'],
    ['0001-01-01', -719_162, 'mon'],
  ])('%s is day %i, a %s', (day, number, weekday) => {
    expect([dayNumberOf(day), civilDay(number), weekdayOf(number)]).toEqual([number, day, weekday]);
  });

  test('is the one that the machine has', () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_162, max: 2_932_896 }), (number) => {
        const day = new Date(number * 86_400_000);
        expect(civilDay(number)).toBe(day.toISOString().slice(0, 10));
        expect(dayNumberOf(civilDay(number))).toBe(number);
        expect(weekdayOf(number)).toBe(['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][day.getUTCDay()]);
      }),
    );
  });
});

describe('working time', () => {
  const time = workingTimeOf(work({ holidays: ['2026-03-10'] }), '2026-03-06');

  test('begins on Monday again after a Friday of 8 hours', () => {
    expect([time.clockOfDay(0), time.clockAtStart(480), time.clockAtEnd(480)]).toEqual([480, 4_800, 960]);
    expect([0, 1, 2].map(time.dayOf)).toEqual(['2026-03-06', '2026-03-09', '2026-03-11']);
  });

  test('finds the working day on a day or after it', () => {
    expect(['2026-01-01', '2026-03-06', '2026-03-07', '2026-03-10', '2026-03-12'].map(time.indexFrom)).toEqual([0, 0, 1, 2, 3]);
  });

  test('counts what is worked by a clock: before hours, in them, after them, on days off', () => {
    expect([0, 480, 600, 960, 961, 2_000, 4_799, 4_800, 4_801].map(time.workedAt)).toEqual([0, 0, 120, 480, 480, 480, 480, 480, 481]);
  });

  test('is open from a clock or until one', () => {
    expect([0, 480, 960, 961, 2_000, 4_800].map(time.openFrom)).toEqual([480, 480, 960, 4_800, 4_800, 4_800]);
    expect([480, 960, 961, 2_000, 4_799, 4_800].map(time.openUntil)).toEqual([480, 960, 960, 960, 960, 4_800]);
  });

  test('has the end of a day of 16 hours on that day', () => {
    const long = workingTimeOf(work({ hours: 16 }), '2026-03-06');
    expect([long.clockAtEnd(960), long.indexAt(1_440), long.indexAt(480)]).toEqual([1_440, 0, 0]);
  });
});
