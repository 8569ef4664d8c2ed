import type { CalendarQuestion, Job } from '../../shared-core/calendar/index.ts';
import type { Work } from '../../shared-core/house/index.ts';

/** A Monday. */
export const MONDAY = '2026-03-02';

export const work = (facts: Partial<Work> = {}): Work => ({ people: 1, hours: 8, days: ['mon', 'tue', 'wed', 'thu', 'fri'], holidays: [], ...facts });

export const job = (id: string, minutes: number, facts: Partial<Job> = {}): Job => ({
  id,
  room: null,
  words: `Do ${id}`,
  minutes,
  people: 1,
  waitMinutes: 0,
  after: [],
  earliest: null,
  chosen: null,
  ...facts,
});

export const question = (jobs: readonly Job[], facts: Partial<CalendarQuestion> = {}): CalendarQuestion => ({ jobs, work: work(), starts: MONDAY, keptUsable: [], ...facts });

/** Numbers from 0 up to a count, the same ones for the same seed. */
export function numbersFrom(seed: number): (count: number) => number {
  let state = seed >>> 0;
  return (count) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * count);
  };
}

/** A house of rooms with nine jobs each, as a redecoration has them; every tenth room has to stay usable. */
export function houseOfJobs(rooms: number, people: number, seed = rooms): CalendarQuestion {
  const below = numbersFrom(seed);
  const jobs = Array.from({ length: rooms }, (_, index) => {
    const room = `room${index}`;
    const of = (name: string, minutes: number, after: readonly string[], facts: Partial<Job> = {}) =>
      job(`${room}-${name}`, minutes, { room, words: name, after: after.map((earlier) => `${room}-${earlier}`), ...facts });
    return [
      of('strip', 60 + 5 * below(48), []),
      of('wash', 30 + 5 * below(12), ['strip'], { waitMinutes: 60 * below(12) }),
      of('fill', 20 + 5 * below(24), ['wash'], { waitMinutes: 60 * (4 + below(20)) }),
      of('sand', 20 + 5 * below(12), ['fill']),
      of('prime', 40 + 5 * below(12), ['sand'], { waitMinutes: 240 }),
      of('ceiling', 60 + 5 * below(24), ['sand'], { waitMinutes: 360, people: below(4) === 0 ? 2 : 1 }),
      of('line', 90 + 5 * below(24), ['prime', 'ceiling'], { waitMinutes: 1_440 }),
      of('woodwork', 45 + 5 * below(24), ['sand'], { waitMinutes: 960 }),
      of('hang', 120 + 5 * below(60), ['line', 'woodwork'], { earliest: below(5) === 0 ? '2026-03-16' : null }),
    ];
  });
  return question(jobs.flat(), { work: work({ people, holidays: ['2026-04-03', '2026-04-06'] }), keptUsable: jobs.flatMap((_, index) => (index % 10 === 0 ? [`room${index}`] : [])) });
}
