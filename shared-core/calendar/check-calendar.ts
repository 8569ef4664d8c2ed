import { WEEKDAYS } from '../house/index.ts';
import { isCalendarDay } from '../units/index.ts';
import type { Booking, CalendarPlan, CalendarQuestion, Job, WorkTime } from './calendar-plan.ts';

/** A rule that a calendar breaks. */
export interface CalendarFault {
  readonly kind: 'booked' | 'days' | 'length' | 'too-early' | 'hands' | 'kept-usable' | 'moved' | 'totals';
  readonly job: string | null;
  readonly message: string;
}

type Report = (kind: CalendarFault['kind'], job: string | null, message: string) => void;

/**
 * Checks a calendar against its question, from the rules alone and by none of the planner's code.
 *
 * Returns every fault found, none for a good calendar: jobs not booked once; days off, holidays or days before the start
 * worked on; days or minutes that do not make up a job's length; a job that begins before its delivery, its chosen day or
 * what it waits for; more people at once than there are or one of them at two jobs; rooms that must stay usable out of
 * use on one day; moved jobs without a reason; totals that do not add up. The working day is taken to begin at 08:00.
 * Example: one person and two jobs booked at the same minute are one fault, 'hands'.
 */
export function checkCalendar(question: CalendarQuestion, plan: CalendarPlan): readonly CalendarFault[] {
  const faults: CalendarFault[] = [];
  const report: Report = (kind, job, message) => faults.push({ kind, job, message });
  const jobs = new Map(question.jobs.map((job) => [job.id, job]));
  const bookings = new Map(plan.bookings.map((booking) => [booking.job, booking]));
  if (bookings.size !== plan.bookings.length || plan.bookings.length !== jobs.size || [...bookings.keys()].some((id) => !jobs.has(id))) {
    report('booked', null, `${plan.bookings.length} bookings do not book each of ${jobs.size} jobs once`);
    return faults;
  }
  const calendar = walkDays(question, plan);
  for (const booking of plan.bookings) checkDays(question, calendar, jobs.get(booking.job)!, booking, report);
  if (faults.length > 0) return faults;
  for (const booking of plan.bookings) checkNotTooEarly(calendar, jobs, bookings, booking, report);
  checkHands(question, calendar, jobs, plan, report);
  checkKeptUsable(question, jobs, plan, report);
  checkTotals(question, calendar, plan, report);
  return faults;
}

/** Of every date up to the last booking its place in the calendar and, on a working day, among these. */
interface Days {
  readonly dates: ReadonlyMap<string, { readonly date: number; readonly working: number | null }>;
  readonly working: readonly string[];
}

function walkDays({ work, starts }: CalendarQuestion, plan: CalendarPlan): Days {
  const dates = new Map<string, { date: number; working: number | null }>();
  const working: string[] = [];
  const last = plan.bookings.reduce((latest, { to }) => (to.day > latest ? to.day : latest), '');
  for (let day = work.starts ?? starts; day <= last; day = nextDay(day)) {
    const isWorking = work.days.includes(weekday(day)) && !work.holidays.includes(day);
    dates.set(day, { date: dates.size, working: isWorking ? working.length : null });
    if (isWorking) working.push(day);
  }
  return { dates, working };
}

const partsOf = (day: string): readonly [year: number, month: number, date: number] => {
  const [year, month, date] = day.split('-').map(Number);
  return [year!, month!, date!];
};

function nextDay(day: string): string {
  const [year, month, date] = partsOf(day);
  const write = (...parts: readonly number[]) => parts.map((part, index) => String(part).padStart(index === 0 ? 4 : 2, '0')).join('-');
  if (isCalendarDay(year, month, date + 1)) return write(year, month, date + 1);
  return month < 12 ? write(year, month + 1, 1) : write(year + 1, 1, 1);
}

/** By Sakamoto's table of how far each month's first day is moved. */
function weekday(day: string): (typeof WEEKDAYS)[number] {
  const [year, month, date] = partsOf(day);
  const years = month < 3 ? year - 1 : year;
  const sunday = (years + Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400) + [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1]! + date) % 7;
  return WEEKDAYS[(sunday + 6) % 7]!;
}

const clockOf = ({ dates }: Days, { day, minute }: WorkTime) => dates.get(day)!.date * 1_440 + 480 + minute;
const workedOf = (question: CalendarQuestion, { dates }: Days, { day, minute }: WorkTime) => dates.get(day)!.working! * question.work.hours * 60 + minute;

function checkDays(question: CalendarQuestion, days: Days, job: Job, { from, to, days: named }: Booking, report: Report): void {
  const most = question.work.hours * 60;
  for (const { day, minute } of [from, to]) {
    if ((days.dates.get(day)?.working ?? null) === null) return report('days', job.id, `${day} is not worked on`);
    if (!Number.isSafeInteger(minute) || minute < 0 || minute > most) return report('days', job.id, `${minute} is no minute of a day of ${most}`);
  }
  const [first, last] = [days.dates.get(from.day)!.working!, days.dates.get(to.day)!.working!];
  if (named.join() !== days.working.slice(first, last + 1).join()) report('days', job.id, `${named.join()} are not the days from ${from.day} to ${to.day}`);
  if (job.minutes > 0 && (from.minute === most || to.minute === 0)) report('days', job.id, 'nothing is worked at the end of its first day or the start of its last');
  const length = workedOf(question, days, to) - workedOf(question, days, from);
  if (length !== job.minutes) report('length', job.id, `takes ${length} minutes instead of ${job.minutes}`);
  if (job.minutes === 0 && from.day !== to.day) report('length', job.id, 'takes no time and ends on another day');
}

function checkNotTooEarly(days: Days, jobs: ReadonlyMap<string, Job>, bookings: ReadonlyMap<string, Booking>, { job: id, from, moved }: Booking, report: Report): void {
  const job = jobs.get(id)!;
  if (job.earliest !== null && from.day < job.earliest) report('too-early', id, `begins on ${from.day}, before its delivery on ${job.earliest}`);
  if (job.chosen !== null && from.day < job.chosen) report('too-early', id, `begins on ${from.day}, before ${job.chosen}, which was chosen`);
  for (const earlier of job.after) {
    const dry = clockOf(days, bookings.get(earlier)!.to) + jobs.get(earlier)!.waitMinutes;
    if (clockOf(days, from) < dry) report('too-early', id, `begins ${dry - clockOf(days, from)} minutes before ${earlier} lets it`);
  }
  const isMoved = job.chosen !== null && job.chosen !== from.day;
  if (isMoved !== (moved !== null && moved !== '')) report('moved', id, isMoved ? 'was moved and does not say why' : 'says why it was moved and was not');
}

function checkHands(question: CalendarQuestion, days: Days, jobs: ReadonlyMap<string, Job>, plan: CalendarPlan, report: Report): void {
  const { people } = question.work;
  const busy: { readonly job: string; readonly person: number; readonly from: number; readonly to: number }[] = [];
  for (const { job: id, crew, from, to } of plan.bookings) {
    const job = jobs.get(id)!;
    const wanted = job.minutes === 0 ? 0 : Math.min(job.people, people);
    if (crew.length !== wanted || new Set(crew).size !== wanted) report('hands', id, `has ${crew.length} people instead of ${wanted}`);
    for (const person of crew) {
      if (!Number.isSafeInteger(person) || person < 1 || person > people) report('hands', id, `is done by person ${person} of ${people}`);
      busy.push({ job: id, person, from: workedOf(question, days, from), to: workedOf(question, days, to) });
    }
  }
  busy.sort((one, other) => one.person - other.person || one.from - other.from);
  busy.forEach((booked, index) => {
    const next = busy[index + 1];
    if (next && next.person === booked.person && next.from < booked.to) report('hands', next.job, `begins while person ${next.person} is at ${booked.job}`);
  });
  const lacking = question.jobs.filter((job) => job.people > people).map(({ id }) => id);
  if (lacking.toSorted().join() !== plan.lackingHands.toSorted().join()) report('hands', null, `${plan.lackingHands.join()} lack hands instead of ${lacking.join()}`);
}

function checkKeptUsable(question: CalendarQuestion, jobs: ReadonlyMap<string, Job>, plan: CalendarPlan, report: Report): void {
  const rooms = [...new Set(question.keptUsable)];
  const spans = rooms.flatMap((room) => {
    const own = plan.bookings.filter(({ job }) => jobs.get(job)!.room === room);
    const days = own.flatMap((booking) => booking.days).sort();
    return days.length === 0 ? [] : [{ room, first: days[0]!, last: days.at(-1)! }];
  });
  const isTied = tiedRooms(question, rooms);
  for (const one of spans) {
    for (const other of spans) {
      if (one.room >= other.room) continue;
      const isNamed = plan.inseparable.some((together) => together.includes(one.room) && together.includes(other.room));
      if (isNamed !== isTied(one.room, other.room)) report('kept-usable', null, `${one.room} and ${other.room} are ${isNamed ? '' : 'not '}said to be inseparable`);
      if (!isNamed && one.first <= other.last && other.first <= one.last) report('kept-usable', null, `${one.room} and ${other.room} are out of use on the same day`);
    }
  }
}

/** Says of two rooms whether each waits for the other, be it by way of further rooms that must stay usable. */
function tiedRooms(question: CalendarQuestion, rooms: readonly string[]): (one: string, other: string) => boolean {
  /** A room stands for all of its jobs: they are over before another room's begin. */
  const next = new Map<string, Set<string>>();
  const nodeOf = (job: Job) => (job.room !== null && rooms.includes(job.room) ? `room ${job.room}` : `job ${job.id}`);
  const jobs = new Map(question.jobs.map((job) => [job.id, job]));
  for (const job of question.jobs) for (const id of job.after) next.set(nodeOf(jobs.get(id)!), (next.get(nodeOf(jobs.get(id)!)) ?? new Set()).add(nodeOf(job)));
  const reached = new Map<string, ReadonlySet<string>>();
  const reachedFrom = (node: string): ReadonlySet<string> => {
    const known = reached.get(node);
    if (known) return known;
    const found = new Set(next.get(node));
    for (const other of found) for (const further of next.get(other) ?? []) found.add(further);
    reached.set(node, found);
    return found;
  };
  return (one, other) => reachedFrom(`room ${one}`).has(`room ${other}`) && reachedFrom(`room ${other}`).has(`room ${one}`);
}

function checkTotals(question: CalendarQuestion, days: Days, plan: CalendarPlan, report: Report): void {
  const first = plan.bookings.map(({ from }) => from.day).sort()[0] ?? null;
  const last = plan.bookings.map(({ to }) => to.day).sort().at(-1) ?? null;
  if (plan.first !== first || plan.last !== last) report('totals', null, `is said to be from ${plan.first} to ${plan.last} and is from ${first} to ${last}`);
  const until = last === null ? 0 : days.dates.get(last)!.working! + 1;
  const least = first === null ? 0 : until - days.dates.get(first)!.working!;
  if (plan.workingDays < least || plan.workingDays > until) report('totals', null, `is said to take ${plan.workingDays} working days and takes ${least} of ${until}`);
  if (plan.lowerBound > plan.workingDays || plan.isShortest !== (plan.lowerBound === plan.workingDays)) report('totals', null, `claims ${plan.workingDays} days and a bound of ${plan.lowerBound}`);
  if (plan.jobs.length !== question.jobs.length) report('totals', null, `has ${plan.jobs.length} jobs`);
}
