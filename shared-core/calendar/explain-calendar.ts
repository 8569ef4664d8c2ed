import { present } from '../base/index.ts';
import { modulo } from '../units/index.ts';
import { say, sayDay } from '../words/index.ts';
import { midnightAfter } from './calendar-model.ts';
import type { Booking, CalendarPlan, CalendarQuestion, Job, WorkTime } from './calendar-plan.ts';
import { MINUTES_PER_DAY, workingTimeOf } from './working-time.ts';

/** Says why jobs stand where they stand. */
export interface CalendarWords {
  /** Sentences that together say why a job begins no earlier; the last ones what else is to be known of it. */
  readonly why: (job: string) => readonly string[];
  /** Why a job does not begin on the day that was chosen for it; null where it does or none was chosen. */
  readonly whyMoved: (job: string) => string | null;
}

/** Something before whose end a job may not begin, by the clock. */
interface Hold {
  readonly until: number;
  readonly words: () => string;
}

/**
 * Explains a calendar: what holds each job back, from its bookings and the question alone.
 *
 * A job that is not in the plan is a bug of the caller. Example: paint that waits for filler to dry over night says
 * "It waits for ‘Fill’ in Hall, which dries until 12:00 on 3 Mar 2026."
 */
export function calendarWords(question: CalendarQuestion, plan: Pick<CalendarPlan, 'bookings' | 'inseparable'>): CalendarWords {
  const { work } = question;
  const time = workingTimeOf(work, work.starts ?? question.starts);
  const jobs = new Map(question.jobs.map((job) => [job.id, job]));
  const bookings = new Map(plan.bookings.map((booking) => [booking.job, booking]));
  const nameRoom = question.nameRoom ?? ((room: string) => room);
  const clockOf = ({ day, minute }: WorkTime) => time.clockOfDay(time.indexFrom(day)) + minute;
  const [firstClock, firstDay] = [time.clockOfDay(0), time.dayOf(0)];

  const sayHour = (clock: number): string => {
    const minutes = modulo(clock, MINUTES_PER_DAY);
    const padded = (number: number) => String(number).padStart(2, '0');
    return `${padded((minutes - (minutes % 60)) / 60)}:${padded(minutes % 60)}`;
  };
  const sayDate = (clock: number): string => sayDay(time.dateAt(clock));
  const sayJob = ({ words, room }: Job): string => (room === null ? say`‘${words}’` : say`‘${words}’ in ${nameRoom(room)}`);

  /** When the rooms that must stay usable are out of use, those that cannot be kept apart as one. */
  const outOfUse = keptSpans(question, plan, jobs, clockOf);

  const holdsOf = (job: Job): readonly Hold[] => {
    const holds: Hold[] = [];
    if (job.earliest !== null) {
      const { earliest } = job;
      holds.push({ until: time.clockOfDay(time.indexFrom(earliest)), words: () => say`What it needs is delivered on ${sayDay(earliest)}.` });
    }
    if (job.chosen !== null) {
      const { chosen } = job;
      holds.push({ until: time.clockOfDay(time.indexFrom(chosen)), words: () => say`${sayDay(chosen)} was chosen for it.` });
    }
    for (const id of job.after) {
      const earlier = present(jobs.get(id), `job ${id}`);
      const over = clockOf(present(bookings.get(id), `the booking of ${id}`).to);
      const until = over + earlier.waitMinutes;
      holds.push({ until, words: () => (earlier.waitMinutes > 0 ? say`It waits for ${sayJob(earlier)}, which dries until ${sayHour(until)} on ${sayDate(until)}.` : say`It waits for ${sayJob(earlier)}, which is done at ${sayHour(until)} on ${sayDate(until)}.`) });
    }
    const own = outOfUse.find(({ rooms }) => job.room !== null && rooms.includes(job.room));
    const earlier = own && outOfUse.filter(({ until }) => until < own.from).toSorted((one, other) => other.until - one.until)[0];
    if (earlier) {
      const [rooms, day] = [earlier.rooms.map(nameRoom).join(', '), sayDate(earlier.until - 1)];
      holds.push({ until: midnightAfter(earlier.until), words: () => say`Its room has to stay usable until ${rooms} can be used again, after ${day}.` });
    }
    return holds;
  };

  /** What holds a job back where it stands: what is over just when it begins, or else that nobody was free. */
  const heldBy = (job: Job, { from }: Booking): readonly string[] => {
    const begins = clockOf(from);
    const beginsAfter = (clock: number) => (job.minutes === 0 ? time.openFrom(clock) : time.clockAtStart(time.workedAt(clock)));
    const holds = holdsOf(job).filter(({ until }) => beginsAfter(Math.max(firstClock, until)) === begins && until > firstClock);
    if (holds.length > 0) return [...new Set(holds.map(({ words }) => words()))];
    if (begins === firstClock) return [say`Work begins on ${sayDay(firstDay)}.`];
    return [job.people === 2 && work.people > 1 ? say`No two people are free for so long any earlier.` : say`Nobody is free for so long any earlier.`];
  };

  return {
    why(id) {
      const job = present(jobs.get(id), `job ${id}`);
      const isLacking = job.people > work.people;
      return [...heldBy(job, present(bookings.get(id), `the booking of ${id}`)), ...(isLacking ? [say`It takes two people, and there is only one: somebody has to lend a hand.`] : [])];
    },
    whyMoved(id) {
      const job = present(jobs.get(id), `job ${id}`);
      const booking = present(bookings.get(id), `the booking of ${id}`);
      if (job.chosen === null || job.chosen === booking.from.day) return null;
      const target = time.dayOf(time.indexFrom(job.chosen));
      const isBeforeWork = job.chosen < firstDay;
      const off = target === job.chosen ? [] : [isBeforeWork ? say`Work begins on ${sayDay(firstDay)}.` : say`${sayDay(job.chosen)} is no working day.`];
      const held = booking.from.day === target ? [] : heldBy(job, booking);
      return [...new Set([...off, ...held])].join(' ');
    },
  };
}

interface Span {
  readonly rooms: readonly string[];
  readonly from: number;
  readonly until: number;
}

function keptSpans(question: CalendarQuestion, plan: Pick<CalendarPlan, 'bookings' | 'inseparable'>, jobs: ReadonlyMap<string, Job>, clockOf: (time: WorkTime) => number): readonly Span[] {
  const spans = new Map<string, { rooms: readonly string[]; from: number; until: number }>();
  for (const { job, from, to } of plan.bookings) {
    const room = jobs.get(job)?.room ?? null;
    if (room === null || !question.keptUsable.includes(room)) continue;
    const rooms = plan.inseparable.find((together) => together.includes(room)) ?? [room];
    const span = spans.get(rooms[0]!);
    const [begins, ends] = [clockOf(from), clockOf(to)];
    if (!span) spans.set(rooms[0]!, { rooms, from: begins, until: ends });
    else [span.from, span.until] = [Math.min(span.from, begins), Math.max(span.until, ends)];
  }
  return [...spans.values()];
}
