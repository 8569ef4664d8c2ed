import { describe, expect, test } from 'vitest';
import { ratesOf, WORK_RATES } from '../../shared-core/calendar/work-rates.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { faultsOf, type Loose } from '../builders.ts';
import { metricHouse } from './house-to-work.ts';

const house = (rates?: Loose) =>
  metricHouse({
    rooms: [{ id: 'room', name: 'Stube', walls: [{ id: 'A', length: '5 m', height: '2.5 m', surface: { kind: 'painted-matt', states: ['grease'] } }], bands: [{ id: 'main', covering: 'paper', walls: ['A'] }] }],
    work: { starts: '2026-03-02', ...(rates ? { rates } : {}) },
  });
const jobsOf = (rates?: Loose) => new Map(planHouse(house(rates)).jobs.map((job) => [job.id, job]));

describe('the house’s own figures', () => {
  test('stand in place of ours, each for itself', () => {
    const rates = ratesOf(house([{ of: 'strip', minutes: 12 }]));
    expect(rates.strip).toMatchObject({ minutes: 12, source: 'the house’s own figure' });
    expect({ ...rates, strip: WORK_RATES.strip }).toEqual(WORK_RATES);
  });

  test('ten strips of 12 min with the lines in 10 min are 130 min', () => {
    const job = jobsOf([{ of: 'strip', minutes: 12 }, { of: 'strikingLines', minutes: 10 }]).get('room:hang:main')!;
    expect(job.minutes).toBe(130);
    expect(job.working[1]).toEqual({ text: 'Whole pieces: 10 × 12 min = 120 min.', rule: 'the house’s own figure' });
  });

  test('of a task go by its area as ours do: 12.5 m² at 6 min are 75 min', () => {
    const [id, ours] = [...jobsOf()].find(([, { kind }]) => kind === 'preparation')!;
    const rule = id.split(':').at(-1)!;
    const own = jobsOf([{ of: rule, minutes: 6 }]).get(id)!;
    expect(own.minutes).toBe(75);
    expect(own.working).toEqual([{ text: 'By the house’s own figure for it: 75 min.' }]);
    expect(ours.working[0]!.rule).toBeDefined();
  });

  test('are each named once, in whole minutes', () => {
    const document = { format: 'struckline-house', version: 1, name: 'Home' };
    const faults = (rates: Loose) => faultsOf({ ...document, work: { rates } }).map(({ path, message }) => `${path} ${message}`);
    expect(faults([{ of: 'strip', minutes: 1 }, { of: 'strip', minutes: 2 }])).toEqual(['work.rates names one rate twice']);
    expect(faults([{ of: 'strip', minutes: 1.5 }])[0]).toMatch(/^work\.rates\[0\]\.minutes is 1\.5; it takes minutes/);
    expect(faults([{ of: '', minutes: 1 }])[0]).toMatch(/^work\.rates\[0\]\.of is empty/);
  });
});
