import { describe, expect, test } from 'vitest';
import { type Booking, type CalendarPlan, checkCalendar, planCalendar } from '../../shared-core/calendar/index.ts';
import { job, question, work } from './houses-of-jobs.ts';

const asked = question(
  [
    job('fill', 120, { room: 'bath', waitMinutes: 1_440 }),
    job('paint', 120, { room: 'bath', after: ['fill'] }),
    job('hang', 240, { room: 'hall', people: 2, earliest: '2026-03-04' }),
    job('sand', 600, { chosen: '2026-03-05' }),
    job('kitchen', 60, { room: 'kitchen' }),
    job('ladder', 0),
  ],
  { work: work({ people: 2, holidays: ['2026-03-06'] }), keptUsable: ['bath', 'kitchen'] },
);
const good = planCalendar(asked);

/** The plan with some of a booking's facts others. */
const other = (id: string, facts: Partial<Booking>): CalendarPlan => ({ ...good, bookings: good.bookings.map((booking) => (booking.job === id ? { ...booking, ...facts } : booking)) });
const kindsOf = (plan: CalendarPlan) => [...new Set(checkCalendar(asked, plan).map(({ kind, job: id }) => `${kind} ${id ?? ''}`.trim()))];
const one = (day: string, from: number, to: number): Partial<Booking> => ({ from: { day, minute: from }, to: { day, minute: to }, days: [day] });

describe('the checker of calendars', () => {
  test('finds nothing wrong with a good one', () => {
    expect(checkCalendar(asked, good)).toEqual([]);
    expect(checkCalendar(question([]), planCalendar(question([])))).toEqual([]);
  });

  test('finds jobs that are not booked once', () => {
    expect(kindsOf({ ...good, bookings: good.bookings.slice(1) })).toEqual(['booked']);
    expect(kindsOf({ ...good, bookings: [...good.bookings, good.bookings[0]!] })).toEqual(['booked']);
    expect(kindsOf(other('sand', { job: 'nothing' }))).toEqual(['booked']);
  });

  test('finds days that are not worked on, hours that there are not, and wrong lengths', () => {
    expect(kindsOf(other('kitchen', one('2026-03-06', 0, 60)))).toEqual(['days kitchen']);
    expect(kindsOf(other('kitchen', one('2026-03-07', 0, 60)))).toEqual(['days kitchen']);
    expect(kindsOf(other('kitchen', one('2026-03-01', 0, 60)))).toEqual(['days kitchen']);
    expect(kindsOf(other('kitchen', one('2026-03-04', 450, 510)))).toEqual(['days kitchen']);
    expect(kindsOf(other('kitchen', one('2026-03-04', 450, 470)))).toEqual(['length kitchen']);
    expect(kindsOf(other('sand', { days: ['2026-03-05'] }))).toEqual(['days sand']);
    expect(kindsOf(other('kitchen', { from: { day: '2026-03-04', minute: 480 }, to: { day: '2026-03-05', minute: 60 }, days: ['2026-03-04', '2026-03-05'] }))).toEqual(['days kitchen']);
  });

  test('finds what begins too early', () => {
    expect(kindsOf(other('paint', one('2026-03-03', 60, 180)))).toEqual(['too-early paint']);
    expect(kindsOf(other('hang', one('2026-03-03', 240, 480)))).toContain('too-early hang');
    expect(kindsOf(other('sand', { from: { day: '2026-03-04', minute: 0 }, to: { day: '2026-03-05', minute: 120 }, days: ['2026-03-04', '2026-03-05'] }))).toContain('too-early sand');
  });

  test('finds too many people, too few and one at two jobs', () => {
    expect(kindsOf(other('hang', { crew: [1] }))).toEqual(['hands hang']);
    expect(kindsOf(other('hang', { crew: [1, 1] }))).toContain('hands hang');
    expect(kindsOf(other('hang', { crew: [1, 3] }))).toEqual(['hands hang']);
    expect(kindsOf(other('ladder', { crew: [1] }))).toEqual(['hands ladder']);
    const [from, to] = [good.bookings.find(({ job: id }) => id === 'hang')!.from, 60];
    expect(kindsOf(other('kitchen', one(from.day, from.minute, from.minute + to))).filter((kind) => kind.startsWith('hands'))).not.toEqual([]);
    expect(kindsOf({ ...good, lackingHands: ['hang'] })).toEqual(['hands']);
  });

  test('finds rooms that must stay usable out of use on one day', () => {
    const { from } = good.bookings.find(({ job: id }) => id === 'paint')!;
    expect(kindsOf(other('kitchen', { ...one(from.day, 400, 460), crew: [2] }))).toContain('kept-usable');
    expect(kindsOf({ ...good, inseparable: [['bath', 'kitchen']] })).toEqual(['kept-usable']);
  });

  test('finds moved jobs without a reason, and reasons without a move', () => {
    expect(kindsOf(other('sand', { moved: 'for no reason' }))).toEqual(['moved sand']);
    expect(kindsOf(other('fill', { moved: 'for no reason' }))).toEqual(['moved fill']);
    const late = question([job('a', 60, { chosen: '2026-03-07' })]);
    const plan = planCalendar(late);
    expect(checkCalendar(late, { ...plan, bookings: plan.bookings.map((booking) => ({ ...booking, moved: null })) })).toMatchObject([{ kind: 'moved' }]);
  });

  test('finds totals that do not add up', () => {
    expect(kindsOf({ ...good, first: '2026-03-01' })).toEqual(['totals']);
    expect(kindsOf({ ...good, last: '2026-03-01' })).toEqual(['totals']);
    expect(kindsOf({ ...good, workingDays: good.workingDays + 1 })).toContain('totals');
    expect(kindsOf({ ...good, lowerBound: good.workingDays + 1 })).toEqual(['totals']);
    expect(kindsOf({ ...good, isShortest: !good.isShortest })).toEqual(['totals']);
    expect(kindsOf({ ...good, jobs: [] })).toEqual(['totals']);
  });
});
