import { ICalCalendar } from 'ical-generator';
import { dayNumberOf, START_MINUTE, type WorkTime } from '../../shared-core/calendar/index.ts';
import { type House, nameCovering, nameSupplier } from '../../shared-core/house/index.ts';
import { type HousePlan, nameRoom, sayUnits } from '../../shared-core/plan/index.ts';
import { sayWait } from '../../shared-core/units/index.ts';
import { say } from '../../shared-core/words/index.ts';

const MILLISECONDS_PER_DAY = 86_400_000;
const MILLISECONDS_PER_MINUTE = 60_000;

/**
 * The calendar of a planned house as a file that calendar programs read (RFC 5545); null where no day is known yet.
 *
 * A job is an event on each day on which it is worked on, at the clock of wherever it is read; what takes no time has a
 * beginning alone. What orders bring stands on the day they are expected. Events keep their names from one file to the
 * next, so that a program takes a later file for the same events. `written` is the moment at which the file is made.
 *
 * Example: a job of 10 hours from Friday 2026-03-06 at 8 o'clock is an event of 8 hours that day and one of 2 on Monday.
 */
export function calendarFile(house: House, plan: HousePlan, written: Date): string | null {
  const { calendar, prep } = plan;
  if (!calendar?.first || !house.work) return null;
  const dayMinutes = house.work.hours * 60;
  const jobs = new Map(calendar.jobs.map((job) => [job.id, job]));
  // The library breaks no line of an event by what stands in it, and of the calendar's own name it does.
  const file = new ICalCalendar({ prodId: { company: 'Struckline', product: 'Struckline' }, name: plain(house.name).replaceAll(/\s+/g, ' ') });
  const nameOf = (...parts: readonly string[]) => `${parts.map(encodeURIComponent).join('.')}@${encodeURIComponent(house.name)}.struckline`;

  for (const { job: id, days, from, to } of calendar.bookings) {
    const job = jobs.get(id)!;
    const task = prep.tasks.find((one) => one.id === id);
    const cautions = prep.cautions.filter((caution) => task?.cautions.includes(caution.id));
    const description = [
      ...(job.people === 2 ? [say`Two people.`] : []),
      ...(job.waitMinutes > 0 ? [say`Then ${sayWait(job.waitMinutes)} before what follows.`] : []),
      ...(task?.checks ?? []),
      ...cautions.flatMap(({ words, threshold, ask, source }) => [words, ...(threshold === null ? [] : [threshold]), ask, source]),
    ];
    for (const [index, day] of (days.length > 0 ? days : [from.day]).entries()) {
      const start = momentOf({ day, minute: day === from.day ? from.minute : 0 });
      const end = momentOf({ day, minute: day === to.day ? to.minute : dayMinutes });
      file.createEvent({
        id: nameOf(id, String(index)),
        stamp: written,
        start,
        ...(end > start ? { end } : {}),
        floating: true,
        summary: plain(job.room === null ? job.words : `${nameRoom(house, job.room)}: ${job.words}`),
        location: plain(house.name),
        ...(description.length > 0 ? { description: plain(description.join('\n')) } : {}),
      });
    }
  }
  for (const order of house.orders) {
    const coming = plan.runs.flatMap(({ covering, ledger }) => ledger.lines.filter((line) => line.order === order.id && line.outstanding > 0).map((line) => ({ covering, ...line })));
    if (order.expected === undefined || coming.length === 0) continue;
    file.createEvent({
      id: nameOf('order', order.id),
      stamp: written,
      start: new Date(dayNumberOf(order.expected) * MILLISECONDS_PER_DAY),
      allDay: true,
      floating: true,
      summary: plain(order.supplier === undefined ? say`Order ${order.id} is expected` : say`Order ${order.id} is expected from ${nameSupplier(house, order.supplier)}`),
      location: plain(house.name),
      description: plain(coming.map(({ covering, run, outstanding }) => `${nameCovering(house, covering)}${run === null ? '' : say`, run ${run}`}: ${sayUnits(house, covering, outstanding)}`).join('\n')),
    });
  }
  return file.toString();
}

/** A text without the control characters that a calendar's text may not hold. */
function plain(text: string): string {
  return text.replaceAll(/\r\n?/g, '\n').replaceAll(/(?![\n\t])\p{Cc}/gu, '');
}

/** The moment at which a clock anywhere shows this time; written without a zone. */
function momentOf({ day, minute }: WorkTime): Date {
  return new Date(dayNumberOf(day) * MILLISECONDS_PER_DAY + (START_MINUTE + minute) * MILLISECONDS_PER_MINUTE);
}
