import { type Booking, type CalendarPlan, type Job, START_MINUTE, type WorkTime } from '../../../shared-core/calendar/index.ts';
import type { House } from '../../../shared-core/house/index.ts';
import { nameRoom } from '../../../shared-core/plan/index.ts';
import { say, sayDay, sayList } from '../../../shared-core/words/index.ts';
import type { Bar } from './chart.ts';

/** How long all takes, until when, and what no calendar can do better: '12 working days, until 20 Mar 2026; fewer than 11 will not do.' */
export function sayLength({ workingDays, last, lowerBound, isShortest }: CalendarPlan): string {
  const until = sayDay(last ?? '');
  if (workingDays === 1) return say`${workingDays} working day, on ${until}.`;
  if (isShortest) return say`${workingDays} working days, until ${until}; no calendar takes fewer.`;
  return lowerBound > 1 ? say`${workingDays} working days, until ${until}; fewer than ${lowerBound} will not do.` : say`${workingDays} working days, until ${until}.`;
}

/** What is to be known of a calendar beside its days. */
export function remarksOf(house: House, { inseparable, lackingHands }: CalendarPlan): readonly { readonly message: string }[] {
  const rooms = inseparable.map((together) => say`${sayList(together.map((room) => nameRoom(house, room)))} should stay usable and are out of use on the same days: each waits for something in the others.`);
  const count = lackingHands.length;
  const hands = count === 0 ? [] : [count === 1 ? say`${count} job takes two people, and there is only one: somebody has to lend a hand.` : say`${count} jobs take two people, and there is only one: somebody has to lend a hand.`];
  return [...rooms, ...hands].map((message) => ({ message }));
}

/** From when to when: '2 Mar 2026 to 4 Mar 2026', one day where it is one. */
export function sayWhen({ from, to }: Booking): string {
  return from.day === to.day ? sayDay(from.day) : say`${sayDay(from.day)} to ${sayDay(to.day)}`;
}

export function sayPeople({ people }: Job): string {
  return people === 0 ? say`done by others` : people === 1 ? say`one person` : say`two people`;
}

export function nameRoomOf(house: House, room: string | null): string {
  return room === null ? say`The house` : nameRoom(house, room);
}

/** A time of a working day: '2 Mar 2026, 09:30'. */
export function sayMoment({ day, minute }: WorkTime): string {
  const clock = START_MINUTE + minute;
  const two = (part: number) => String(part).padStart(2, '0');
  return say`${sayDay(day)}, ${`${two(Math.floor(clock / 60))}:${two(clock % 60)}`}`;
}

/** What a bar is called: '2 Fill the cracks, 2 Mar 2026 to 3 Mar 2026, two people'. */
export function sayBar({ number, job, booking }: Pick<Bar, 'number' | 'job' | 'booking'>): string {
  const day = booking.moved !== null ? [say`not on the day chosen`] : job.chosen !== null ? [say`on the day chosen`] : [];
  return [`${number} ${job.words}`, sayWhen(booking), sayPeople(job), ...day].join(', ');
}
