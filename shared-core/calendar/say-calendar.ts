import { say, sayDay } from '../words/index.ts';
import type { Booking, CalendarPlan, Job, WorkTime } from './calendar-plan.ts';
import { START_MINUTE } from './working-time.ts';

/** How long all takes, until when, and what no calendar can do better: '12 working days, until 20 Mar 2026; fewer than 11 will not do.' */
export function sayLength({ workingDays, last, lowerBound, isShortest }: CalendarPlan): string {
  const until = sayDay(last ?? '');
  if (workingDays === 1) return say`${workingDays} working day, on ${until}.`;
  if (isShortest) return say`${workingDays} working days, until ${until}; no calendar takes fewer.`;
  return lowerBound > 1 ? say`${workingDays} working days, until ${until}; fewer than ${lowerBound} will not do.` : say`${workingDays} working days, until ${until}.`;
}

/** From when to when: '2 Mar 2026 to 4 Mar 2026', one day where it is one. */
export function sayWhen({ from, to }: Booking): string {
  return from.day === to.day ? sayDay(from.day) : say`${sayDay(from.day)} to ${sayDay(to.day)}`;
}

/** How many of the crew: 'one person', 'two people'; nobody of it where somebody else does the job. */
export function sayPeople({ people }: Job): string {
  return people === 0 ? say`done by others` : people === 1 ? say`one person` : say`two people`;
}

/** A time of a working day: '2 Mar 2026, 09:30'. */
export function sayMoment({ day, minute }: WorkTime): string {
  const clock = START_MINUTE + minute;
  const two = (part: number) => String(part).padStart(2, '0');
  return say`${sayDay(day)}, ${`${two(Math.floor(clock / 60))}:${two(clock % 60)}`}`;
}
