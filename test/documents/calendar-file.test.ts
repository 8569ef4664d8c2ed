import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { calendarFile } from '../../src-main/documents/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { exampleDocument, houseOf, type Loose } from '../builders.ts';

const WRITTEN = new Date('2026-03-01T10:20:30Z');
const WORK = { people: 2, hours: 8, days: ['mon', 'tue', 'wed', 'thu', 'fri'], holidays: [], starts: '2026-03-06' } as const;
const demo = { ...demoHouse(), work: { ...WORK, days: [...WORK.days] } };
const plan = planHouse(demo);
const text = calendarFile(demo, plan, WRITTEN)!;
/** Read by a library that is not the one that wrote it. */
const eventsOf = (file: string) => new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
const events = eventsOf(text);
const at = (time: ICAL.Time) => time.toString();

describe('a calendar file', () => {
  test('gives each job on each of its days, as the plan has them', () => {
    const minutes = new Map(plan.calendar!.bookings.map(({ job, days }) => [job, days.length]));
    expect(events).toHaveLength([...minutes.values()].reduce((sum, days) => sum + Math.max(1, days), 0));
    const first = plan.calendar!.bookings.find(({ from, to }) => from.day === to.day && to.minute > from.minute)!;
    const event = events.find(({ uid }) => uid.startsWith(encodeURIComponent(first.job)))!;
    const clock = (minute: number) => `${String(8 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00`;
    expect([at(event.startDate), at(event.endDate)]).toEqual([`${first.from.day}T${clock(first.from.minute)}`, `${first.to.day}T${clock(first.to.minute)}`]);
    const long = plan.calendar!.bookings.find(({ days, job }) => days.length > 1 && plan.calendar!.jobs.some(({ id, people }) => id === job && people > 0))!;
    const parts = events.filter(({ uid }) => uid.startsWith(encodeURIComponent(long.job)));
    expect(parts.map(({ startDate }) => at(startDate).slice(0, 10))).toEqual(long.days);
    expect(at(parts[0]!.endDate).slice(11)).toBe('16:00:00');
    expect(at(parts[1]!.startDate).slice(11)).toBe('08:00:00');
  });

  test('is what RFC 5545 asks for: lines of at most 75 octets, ended by CRLF, names that are unique, one stamp', () => {
    const lines = text.split('\r\n');
    expect(text.includes('\n') && text.replaceAll('\r\n', '').includes('\n')).toBe(false);
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    expect(lines.filter((line) => line.startsWith('DTSTAMP'))).toEqual(events.map(() => 'DTSTAMP:20260301T102030Z'));
    for (const { startDate, endDate } of events) expect([startDate.zone.tzid, endDate.compare(startDate) >= 0]).toEqual(['floating', true]);
  });

  test('carries every caution of the house beside its job, with its source', () => {
    const told = events.map(({ description }) => description ?? '').join('\n');
    for (const { words, ask, source } of plan.prep.cautions) expect([words, ask, source].filter((part) => !told.includes(part))).toEqual([]);
    expect(plan.prep.cautions.length).toBeGreaterThan(9);
  });

  test('keeps the names of its events when it is written again', () => {
    const later = calendarFile(demo, plan, new Date('2026-04-01T00:00:00Z'))!;
    expect(eventsOf(later).map(({ uid }) => uid)).toEqual(events.map(({ uid }) => uid));
    expect(later.replaceAll('20260401T000000Z', '20260301T102030Z')).toBe(text);
  });

  const ordered = (facts: Loose) => {
    const document = exampleDocument();
    const house = houseOf({ ...document, work: { starts: '2026-03-02' }, orders: [{ id: '1', placed: '2026-02-20', supplier: 'Northgate', lines: [{ covering: 'fern', patternNumber: 'K-2041', rolls: 10, rooms: ['bed1'] }], ...facts }] });
    return eventsOf(calendarFile(house, planHouse(house), WRITTEN)!).filter(({ uid }) => uid.startsWith('order'));
  };

  test('has a whole day for what an order brings', () => {
    const [expected] = ordered({ expected: '2026-03-12' });
    expect([expected!.summary, at(expected!.startDate), expected!.description]).toEqual(['Order 1 is expected from Northgate', '2026-03-12', 'K-2041: 10 rolls']);
    expect(ordered({})).toEqual([]);
  });

  test('there is none where no day is known', () => {
    expect(calendarFile(demoHouse(), planHouse(demoHouse()), WRITTEN)).toBe(null);
  });
});
