import { describe, expect, test } from 'vitest';
import { type CalendarQuestion, checkCalendar, planCalendar } from '../../shared-core/calendar/index.ts';
import { job, MONDAY, question, work } from './houses-of-jobs.ts';

/** From when to when each job is worked on, as '03-02 0:00' counted from the day's start. */
function bookedOf(asked: CalendarQuestion): Readonly<Record<string, string>> {
  const plan = planCalendar(asked);
  expect(checkCalendar(asked, plan)).toEqual([]);
  const write = ({ day, minute }: { readonly day: string; readonly minute: number }) => `${day.slice(5)} ${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
  return Object.fromEntries(plan.bookings.map(({ job: id, from, to }) => [id, `${write(from)} - ${write(to)}`]));
}

const movedOf = (asked: CalendarQuestion, id: string) => planCalendar(asked).bookings.find((booking) => booking.job === id)?.moved;

describe('a calendar', () => {
  test('of nothing has no days', () => {
    expect(planCalendar(question([]))).toMatchObject({ bookings: [], first: null, last: null, workingDays: 0, lowerBound: 0, isShortest: true });
  });

  test('of two rooms that dry over night takes three days for one person', () => {
    const asked = question([
      job('fill1', 240, { waitMinutes: 1_440 }),
      job('fill2', 240, { waitMinutes: 1_440 }),
      job('paint1', 240, { after: ['fill1'] }),
      job('paint2', 240, { after: ['fill2'] }),
    ]);
    expect(bookedOf(asked)).toEqual({ fill1: '03-02 0:00 - 03-02 4:00', fill2: '03-02 4:00 - 03-02 8:00', paint1: '03-03 4:00 - 03-03 8:00', paint2: '03-04 0:00 - 03-04 4:00' });
    expect(planCalendar(asked)).toMatchObject({ first: MONDAY, last: '2026-03-04', workingDays: 3, isShortest: true });
  });

  test('goes on with a job on the next day, with the same person', () => {
    const asked = question([job('long', 600), job('longer', 1_000)], { work: work({ people: 2 }) });
    expect(bookedOf(asked)).toEqual({ long: '03-02 0:00 - 03-03 2:00', longer: '03-02 0:00 - 03-04 0:40' });
    expect(planCalendar(asked).bookings.map(({ crew, days }) => [crew, days.length])).toEqual([[[1], 2], [[2], 3]]);
  });

  test('leaves out weekends and holidays, over which things dry', () => {
    const friday = { starts: '2026-03-06', work: work({ holidays: ['2026-03-09'] }) };
    const asked = question([job('coat', 480, { waitMinutes: 4_000 }), job('next', 60, { after: ['coat'] }), job('third', 60, { after: ['next'], waitMinutes: 0 })], friday);
    // 4000 minutes from Friday 16:00 are over on Monday at 10:40, a holiday.
    expect(bookedOf(asked)).toEqual({ coat: '03-06 0:00 - 03-06 8:00', next: '03-10 0:00 - 03-10 1:00', third: '03-10 1:00 - 03-10 2:00' });
  });

  test('waits to the minute', () => {
    expect(bookedOf(question([job('wash', 30, { waitMinutes: 95 }), job('fill', 10, { after: ['wash'] })]))['fill']).toBe('03-02 2:05 - 03-02 2:15');
    // From 15:45 it is dry at 16:00, when nobody begins any more.
    expect(bookedOf(question([job('wash', 465, { waitMinutes: 15 }), job('fill', 10, { after: ['wash'] })]))['fill']).toBe('03-03 0:00 - 03-03 0:10');
  });

  test('has two people for a job of two, and nobody else beside it', () => {
    const asked = question([job('paper', 120, { people: 2 }), job('sand', 120)], { work: work({ people: 2 }) });
    expect(planCalendar(asked).bookings.map(({ crew }) => crew.length).toSorted()).toEqual([1, 2]);
    expect(bookedOf({ ...asked, work: work({ people: 3 }) })).toEqual({ paper: '03-02 0:00 - 03-02 2:00', sand: '03-02 0:00 - 03-02 2:00' });
    expect(planCalendar({ ...asked, work: work({ people: 2, hours: 2 }) })).toMatchObject({ workingDays: 2, lowerBound: 2 });
  });

  test('of one person says for which jobs a hand is lacking', () => {
    expect(planCalendar(question([job('paper', 120, { people: 2 })]))).toMatchObject({ lackingHands: ['paper'], bookings: [{ crew: [1] }] });
  });

  test('lets somebody else work beside the crew', () => {
    const asked = question([job('plaster', 480, { people: 0, waitMinutes: 960 }), job('paint', 60, { after: ['plaster'] }), job('sand', 480)]);
    expect(bookedOf(asked)).toEqual({ plaster: '03-02 0:00 - 03-02 8:00', sand: '03-02 0:00 - 03-02 8:00', paint: '03-03 0:00 - 03-03 1:00' });
  });

  test('begins a job that waits for a delivery with the day', () => {
    const asked = question([job('hang', 60, { earliest: '2026-03-04' }), job('fill', 60)]);
    expect(bookedOf(asked)).toEqual({ fill: '03-02 0:00 - 03-02 1:00', hang: '03-04 0:00 - 03-04 1:00' });
    expect(planCalendar(asked)).toMatchObject({ workingDays: 3, lowerBound: 3, isShortest: true });
    // What could begin no earlier in any order does not count.
    expect(planCalendar(question([job('hang', 60, { earliest: '2026-03-07' })]))).toMatchObject({ first: '2026-03-09', workingDays: 1, lowerBound: 1 });
  });

  test('has a job begin on the day that was chosen, whatever stood there', () => {
    const asked = question([job('a', 480), job('b', 480), job('c', 480, { chosen: '2026-03-03' })]);
    expect(bookedOf(asked)).toEqual({ a: '03-02 0:00 - 03-02 8:00', c: '03-03 0:00 - 03-03 8:00', b: '03-04 0:00 - 03-04 8:00' });
    expect(movedOf(asked, 'c')).toBeNull();
  });

  test('says why a job does not begin on the day that was chosen', () => {
    expect(movedOf(question([job('a', 60, { chosen: '2026-03-07' })]), 'a')).toBe('7 Mar 2026 is no working day.');
    expect(movedOf(question([job('a', 60, { chosen: '2026-02-20' })]), 'a')).toBe('Work begins on 2 Mar 2026.');
    expect(movedOf(question([job('a', 60, { chosen: MONDAY, earliest: '2026-03-04' })]), 'a')).toBe('What it needs is delivered on 4 Mar 2026.');
    expect(movedOf(question([job('a', 60, { waitMinutes: 1_440 }), job('b', 60, { after: ['a'], chosen: MONDAY })]), 'b')).toBe('It waits for ‘Do a’, which dries until 09:00 on 3 Mar 2026.');
    expect(movedOf(question([job('a', 480, { chosen: MONDAY }), job('b', 480, { chosen: MONDAY })]), 'b')).toBe('Nobody is free for so long any earlier.');
  });

  test('never has two rooms that must stay usable out of use on one day', () => {
    const rooms = ['bath', 'kitchen'].flatMap((room) => [job(`${room}-fill`, 60, { room, waitMinutes: 1_440 }), job(`${room}-paint`, 60, { room, after: [`${room}-fill`] })]);
    expect(planCalendar(question(rooms))).toMatchObject({ workingDays: 2 });
    const asked = question(rooms, { keptUsable: ['bath', 'kitchen', 'nowhere'] });
    expect(bookedOf(asked)).toEqual({
      'bath-fill': '03-02 0:00 - 03-02 1:00',
      'bath-paint': '03-03 1:00 - 03-03 2:00',
      'kitchen-fill': '03-04 0:00 - 03-04 1:00',
      'kitchen-paint': '03-05 1:00 - 03-05 2:00',
    });
    expect(planCalendar({ ...asked, effort: 'instant' })).toMatchObject({ workingDays: 4, lowerBound: 4, isShortest: true, inseparable: [] });
  });

  test('has rooms out of use together that cannot be kept apart, and says so', () => {
    const asked = question(
      [
        job('bath-fill', 60, { room: 'bath' }),
        job('kitchen-fill', 60, { room: 'kitchen' }),
        job('cut', 60, { after: ['bath-fill', 'kitchen-fill'] }),
        job('bath-hang', 60, { room: 'bath', after: ['cut'] }),
        job('kitchen-hang', 60, { room: 'kitchen', after: ['cut'] }),
        job('hall', 60, { room: 'hall' }),
      ],
      { keptUsable: ['hall', 'kitchen', 'bath'] },
    );
    expect(bookedOf(asked)['hall']).toMatch(/^03-0[23] 0:00/);
    expect(planCalendar(asked)).toMatchObject({ workingDays: 2, inseparable: [['kitchen', 'bath']] });
  });

  test('takes the day that the work names before the one it is given', () => {
    expect(planCalendar(question([job('a', 60)], { work: work({ starts: '2026-04-04' }) })).first).toBe('2026-04-06');
  });

  test('puts what takes no time where what it waits for ends, be it the end of a day', () => {
    const asked = question([job('fill', 480), job('dry', 0, { after: ['fill'], waitMinutes: 960 }), job('paint', 60, { after: ['dry'] })]);
    expect(bookedOf(asked)).toEqual({ fill: '03-02 0:00 - 03-02 8:00', dry: '03-02 8:00 - 03-02 8:00', paint: '03-03 0:00 - 03-03 1:00' });
  });

  test('is no matter of the order in which jobs stand', () => {
    const jobs = [job('b', 60, { after: ['a'] }), job('a', 60)];
    expect(bookedOf(question(jobs))).toEqual({ a: '03-02 0:00 - 03-02 1:00', b: '03-02 1:00 - 03-02 2:00' });
  });

  test('takes a delivery at the end of all years', () => {
    const asked = question([job('a', 60, { room: 'bath', earliest: '9999-12-30' }), job('b', 60, { room: 'hall' })], { keptUsable: ['bath', 'hall'] });
    expect(planCalendar(asked)).toMatchObject({ last: '9999-12-30', isShortest: true });
  });

  test('is not asked about jobs that there are not, that come twice or that wait for each other', () => {
    expect(() => planCalendar(question([job('a', 1, { after: ['b'] })]))).toThrow('job a waits for b, which there is not');
    expect(() => planCalendar(question([job('a', 1), job('a', 2)]))).toThrow('every job has an id of its own');
    expect(() => planCalendar(question([job('a', 1, { after: ['b'] }), job('b', 1, { after: ['a'] })]))).toThrow('no jobs wait for each other');
  });
});
