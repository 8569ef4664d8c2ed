import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civilDay } from '../../shared-core/calendar/index.ts';
import { changedTasks } from '../../src-renderer/state/changed-tasks.ts';
import { sayTime, sayWait } from '../../shared-core/units/index.ts';
import { readDay } from '../../src-renderer/parts/read-day.ts';
import { readDays, readMinutes, sayDays, writeDays } from '../../src-renderer/places/calendar/typed-work.ts';

describe('days that are typed', () => {
  test('are separated by commas, each once and in their order; several in a row by their first and last', () => {
    expect(readDays('2026-12-24 to 2026-12-26, 2026-05-01; 2026-12-25,')).toEqual({ days: ['2026-05-01', '2026-12-24', '2026-12-25', '2026-12-26'] });
    expect(readDays('2026-12-31 – 2027-01-01\n2026-04-03 bis 2026-04-03')).toEqual({ days: ['2026-04-03', '2026-12-31', '2027-01-01'] });
    expect(readDays('  ')).toEqual({ days: [] });
  });

  test('that are none are named', () => {
    expect(readDays('2026-05-01, 2026-02-30')).toEqual({ trouble: '‘2026-02-30’ is no day; a date takes year, month and day, such as 2026-03-02.' });
    expect(readDays('Easter')).toEqual({ trouble: '‘Easter’ is no day; a date takes year, month and day, such as 2026-03-02.' });
    expect(readDays('2026-05-03 to 2026-05-01')).toEqual({ trouble: '‘2026-05-03 to 2026-05-01’ ends before it begins.' });
    expect(readDays('2026-01-01 to 2028-01-01')).toEqual({ trouble: 'These are more than 400 days.' });
    expect([readDay(' 2028-02-29 '), readDay('2026-02-29'), readDay('2026-3-2'), readDay('')]).toEqual(['2028-02-29', null, null, null]);
  });

  test('are written as they can be typed again', () => {
    expect(writeDays(['2026-12-26', '2026-12-24', '2026-12-25', '2026-05-01', '2026-05-02'])).toBe('2026-05-01, 2026-05-02, 2026-12-24 to 2026-12-26');
    expect(sayDays(['2026-12-24', '2026-12-25', '2026-12-26'])).toBe('24 Dec 2026 to 26 Dec 2026');
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 20_000, max: 20_040 }), { maxLength: 30 }), (numbers) => {
        const days = numbers.toSorted((one, other) => one - other).map(civilDay);
        expect(readDays(writeDays(days))).toEqual({ days });
      }),
    );
  });
});

test('a time that is typed is minutes, hours and minutes, or hours', () => {
  expect(['90', '1:30', '1.5 h', '1,5h', '0', '0:05', '2 h', '1.25h'].map(readMinutes)).toEqual([90, 90, 90, 90, 0, 5, 120, 75]);
  expect(['', '1:75', '-3', 'an hour', '1.5'].map(readMinutes)).toEqual([null, null, null, null, null]);
  expect([45, 120, 150, 0].map(sayTime)).toEqual(['45 min', '2 h', '2 h 30 min', '0 min']);
  expect([240, 2879, 2880, 2881].map(sayWait)).toEqual(['4 h', '47 h 59 min', '2 days', '3 days']);
});

describe('what is said of a task', () => {
  const TASKS = [{ task: 'a', day: '2026-03-02', spent: 30 }, { task: 'b', day: '2026-03-03' }];

  test('changes with the rest of it kept, and of the others everything', () => {
    expect(changedTasks(TASKS, 'a', { day: '2026-03-04' })).toEqual([{ task: 'b', day: '2026-03-03' }, { task: 'a', day: '2026-03-04', spent: 30 }]);
    expect(changedTasks(TASKS, 'c', { spent: 0 })).toEqual([...TASKS, { task: 'c', spent: 0 }]);
  });

  test('is gone where nothing of it is left', () => {
    expect(changedTasks(TASKS, 'b', { day: undefined })).toEqual([TASKS[0]]);
    expect(changedTasks(TASKS, 'a', { day: undefined })).toEqual([TASKS[1], { task: 'a', spent: 30 }]);
    expect(changedTasks(TASKS, 'c', { day: undefined })).toEqual(TASKS);
  });
});
