import { type CalendarPlan, sayPeople, sayWhen } from '../../../shared-core/calendar/index.ts';
import type { House } from '../../../shared-core/house/index.ts';
import { nameRoom } from '../../../shared-core/plan/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';
import type { Bar } from './chart.ts';

/** What is to be known of a calendar beside its days. */
export function remarksOf(house: House, { inseparable, lackingHands }: CalendarPlan): readonly { readonly message: string }[] {
  const rooms = inseparable.map((together) => say`${sayList(together.map((room) => nameRoom(house, room)))} should stay usable and are out of use on the same days: each waits for something in the others.`);
  const count = lackingHands.length;
  const hands = count === 0 ? [] : [count === 1 ? say`${count} job takes two people, and there is only one: somebody has to lend a hand.` : say`${count} jobs take two people, and there is only one: somebody has to lend a hand.`];
  return [...rooms, ...hands].map((message) => ({ message }));
}

export function nameRoomOf(house: House, room: string | null): string {
  return room === null ? say`The house` : nameRoom(house, room);
}

/** What a bar is called: '2 Fill the cracks, 2 Mar 2026 to 3 Mar 2026, two people'. */
export function sayBar({ number, job, booking }: Pick<Bar, 'number' | 'job' | 'booking'>): string {
  const day = booking.moved !== null ? [say`not on the day chosen`] : job.chosen !== null ? [say`on the day chosen`] : [];
  return [`${number} ${job.words}`, sayWhen(booking), sayPeople(job), ...day].join(', ');
}
