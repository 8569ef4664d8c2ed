import { afterEach, describe, expect, test } from 'vitest';
import { type CalendarQuestion, calendarWords, planCalendar } from '../../shared-core/calendar/index.ts';
import { ENGLISH, languageOf, speak } from '../../shared-core/words/index.ts';
import { job, question, work } from './houses-of-jobs.ts';

const why = (asked: CalendarQuestion, id: string) => calendarWords(asked, planCalendar(asked)).why(id);
const nameRoom = (room: string) => ({ bath: 'Bathroom', hall: 'Hall' })[room] ?? room;

afterEach(() => speak(ENGLISH));

describe('why a job stands where it stands', () => {
  test('is that work begins, that nobody is free, or that no two are', () => {
    const one = question([job('a', 480), job('b', 480)]);
    expect(planCalendar(one).bookings.map(({ job: id }) => why(one, id))).toEqual([['Work begins on 2 Mar 2026.'], ['Nobody is free for so long any earlier.']]);
    const late = question([job('a', 480, { chosen: '2026-03-02' }), job('c', 60, { people: 2 })], { work: work({ people: 2 }) });
    expect(why(late, 'c')).toEqual(['No two people are free for so long any earlier.']);
  });

  test('is what it waits for, with its room', () => {
    const asked = question([job('fill', 60, { room: 'hall', words: 'Fill', waitMinutes: 1_560 }), job('sand', 60, { words: 'Sand', after: ['fill'] }), job('paint', 60, { after: ['sand'] })], { nameRoom });
    expect(why(asked, 'sand')).toEqual(['It waits for ‘Fill’ in Hall, which dries until 11:00 on 3 Mar 2026.']);
    expect(why(asked, 'paint')).toEqual(['It waits for ‘Sand’, which is done at 12:00 on 3 Mar 2026.']);
  });

  test('is every thing that is over just then', () => {
    const asked = question([job('fill', 480), job('hang', 60, { after: ['fill'], earliest: '2026-03-03', chosen: '2026-03-03' })]);
    expect(why(asked, 'hang')).toEqual(['What it needs is delivered on 3 Mar 2026.', '3 Mar 2026 was chosen for it.', 'It waits for ‘Do fill’, which is done at 16:00 on 2 Mar 2026.']);
  });

  test('is a room that has to stay usable', () => {
    const asked = question([job('a', 300, { room: 'bath' }), job('b', 60, { room: 'hall' })], { keptUsable: ['bath', 'hall'], nameRoom });
    expect(why(asked, 'b')).toEqual(['Its room has to stay usable until Bathroom can be used again, after 2 Mar 2026.']);
  });

  test('says that somebody has to lend a hand, in German too', () => {
    const asked = question([job('a', 60, { people: 2 })]);
    expect(why(asked, 'a')).toEqual(['Work begins on 2 Mar 2026.', 'It takes two people, and there is only one: somebody has to lend a hand.']);
    speak(languageOf('de'));
    expect(why(asked, 'a')[0]).toBe('Die Arbeit beginnt am 2. März 2026.');
  });
});
