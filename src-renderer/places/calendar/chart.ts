import { type Booking, type CalendarPlan, civilDay, dayNumberOf, type Job, START_MINUTE, weekdayOf, type WorkTime } from '../../../shared-core/calendar/index.ts';
import { WEEKDAYS, type Work } from '../../../shared-core/house/index.ts';
import type { Weekday } from './weekday-words.ts';

const MINUTES_PER_DAY = 1_440;
/** Days after the last one, to which a bar can be moved. */
const DAYS_TO_SPARE = 3;

/** One column: a day, whether it is worked on or not. */
export interface ChartDay {
  readonly day: string;
  readonly weekday: Weekday;
  /** Of the month. */
  readonly date: number;
  readonly isOff: boolean;
}

/** A stretch of a row, in days from the first column on. */
export interface Span {
  readonly left: number;
  readonly width: number;
}

/** A job in its room's row. */
export interface Bar extends Span {
  readonly job: Job;
  readonly booking: Booking;
  /** Its number among those of its room, in the order in which they begin. */
  readonly number: number;
  /** Which line of the row it stands in, from 0. */
  readonly lane: number;
  /** In which nothing that comes after it may begin; null where nothing has to dry. */
  readonly drying: Span | null;
}

export interface ChartRow {
  readonly room: string | null;
  readonly lanes: number;
  /** In the order of the plan's jobs, which stays as it is while they are moved. */
  readonly bars: readonly Bar[];
  readonly deliveries: readonly { readonly day: string; readonly left: number }[];
}

export interface Chart {
  readonly days: readonly ChartDay[];
  readonly rows: readonly ChartRow[];
}

/**
 * The calendar as rows of bars under columns of days.
 *
 * Shapes: a column is as wide as the hours of a working day; what dries over night reaches the next column's edge. The
 * columns begin with the week of the first day, or of `from` where that is earlier, and end some days after the last one,
 * or after `until`. `leastWidth` is the part of a column that a bar takes at least, so that bars of one line never overlap.
 * Rooms stand in the order of `rooms`, what belongs to none before them. Example: with days of 8 hours a job from minute
 * 120 to minute 240 of the first column begins at 0.25 and is 0.25 wide.
 */
export function layChart(plan: CalendarPlan, work: Pick<Work, 'days' | 'holidays' | 'hours'>, rooms: readonly string[], { leastWidth, from = null, until = null }: { readonly leastWidth: number; readonly from?: string | null; readonly until?: string | null }): Chart {
  if (plan.first === null || plan.last === null) return { days: [], rows: [] };
  const first = mondayBefore(Math.min(dayNumberOf(plan.first), ...(from === null ? [] : [dayNumberOf(from)])));
  const last = Math.max(dayNumberOf(plan.last), ...(until === null ? [] : [dayNumberOf(until)])) + DAYS_TO_SPARE;
  const holidays = new Set(work.holidays);
  const days = Array.from({ length: last - first + 1 }, (_, index): ChartDay => {
    const [day, weekday] = [civilDay(first + index), weekdayOf(first + index)];
    return { day, weekday, date: Number(day.slice(-2)), isOff: !work.days.includes(weekday) || holidays.has(day) };
  });
  const dayMinutes = work.hours * 60;
  const at = ({ day, minute }: WorkTime) => dayNumberOf(day) - first + minute / dayMinutes;
  /** Where a time of the clock stands: before the working hours at the column's left edge, after them at its right one. */
  const atClock = (day: number, clock: number) => {
    const [over, minute] = [Math.floor(clock / MINUTES_PER_DAY), ((clock % MINUTES_PER_DAY) + MINUTES_PER_DAY) % MINUTES_PER_DAY];
    return day + over - first + Math.min(1, Math.max(0, (minute - START_MINUTE) / dayMinutes));
  };
  const bookings = new Map(plan.bookings.map((booking) => [booking.job, booking]));
  const order = new Map(plan.bookings.map(({ job }, index) => [job, index]));
  const byRoom = Map.groupBy(plan.jobs.filter(({ id }) => bookings.has(id)), ({ room }) => room);
  const rows = [null, ...rooms].flatMap((room): readonly ChartRow[] => {
    const jobs = byRoom.get(room);
    if (!jobs) return [];
    const placed = jobs.toSorted((one, other) => order.get(one.id)! - order.get(other.id)!).map((job, index) => {
      const booking = bookings.get(job.id)!;
      const left = at(booking.from);
      const width = at(booking.to) - left;
      const end = left + width;
      const dry = job.waitMinutes === 0 ? null : { left: end, width: Math.max(0, atClock(dayNumberOf(booking.to.day), START_MINUTE + booking.to.minute + job.waitMinutes) - end) };
      return { job, booking, number: index + 1, left, width, drying: dry };
    });
    const lanes = lanesOf(placed.map(({ left, width }) => ({ left, width: Math.max(width, leastWidth) })));
    const bars = new Map(placed.map((bar, index) => [bar.job.id, { ...bar, lane: lanes[index]! }]));
    const deliveries = [...new Set(jobs.flatMap(({ earliest }) => (earliest !== null && dayNumberOf(earliest) >= first && dayNumberOf(earliest) <= last ? [earliest] : [])))];
    return [{ room, lanes: Math.max(...lanes) + 1, bars: jobs.map(({ id }) => bars.get(id)!), deliveries: deliveries.map((day) => ({ day, left: dayNumberOf(day) - first })) }];
  });
  return { days, rows };
}

/** How many columns a calendar takes: 0 where nothing is to be done. */
export function columnsOf({ first, last }: Pick<CalendarPlan, 'first' | 'last'>): number {
  return first === null || last === null ? 0 : dayNumberOf(last) + DAYS_TO_SPARE - mondayBefore(dayNumberOf(first)) + 1;
}

/** The first lines that are free, for spans in the order of their left edges. */
function lanesOf(spans: readonly Span[]): readonly number[] {
  const ends: number[] = [];
  // What begins where another ends stands behind it, whatever was lost in dividing.
  const grain = 1e-9;
  return spans.map(({ left, width }) => {
    const free = ends.findIndex((end) => end <= left + grain);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = left + width;
    return lane;
  });
}

function mondayBefore(day: number): number {
  return day - WEEKDAYS.indexOf(weekdayOf(day));
}

/** Columns of one week together, or what of it there is. */
export function weeksOf(days: readonly ChartDay[]): readonly { readonly day: string; readonly left: number; readonly width: number }[] {
  const starts = days.flatMap(({ weekday }, index) => (index === 0 || weekday === 'mon' ? [index] : []));
  return starts.map((left, index) => ({ day: days[left]!.day, left, width: (starts[index + 1] ?? days.length) - left }));
}

/** A day so many days after another: `dayAfter('2026-02-27', 3)` is "2026-03-02". */
export function dayAfter(day: string, by: number): string {
  return civilDay(dayNumberOf(day) + by);
}

export type BarStep = 'left' | 'right' | 'up' | 'down' | 'first' | 'last';

/** The bar that a step leads to from another: along its row in the order of time, or to the nearest one of the next row. */
export function nextBar({ rows }: Chart, from: string | null, step: BarStep): string | null {
  const place = rows.findIndex(({ bars }) => bars.some(({ job }) => job.id === from));
  if (place < 0) return rows[0] ? (inTime(rows[0])[0]?.job.id ?? null) : null;
  const row = inTime(rows[place]!);
  const index = row.findIndex(({ job }) => job.id === from);
  switch (step) {
    case 'first':
      return row[0]!.job.id;
    case 'last':
      return row.at(-1)!.job.id;
    case 'left':
    case 'right':
      return row[index + (step === 'right' ? 1 : -1)]?.job.id ?? from;
    default: {
      const next = rows[place + (step === 'down' ? 1 : -1)];
      const { left } = row[index]!;
      return next ? inTime(next).reduce((best, bar) => (Math.abs(bar.left - left) < Math.abs(best.left - left) ? bar : best)).job.id : from;
    }
  }
}

function inTime({ bars }: ChartRow): readonly Bar[] {
  return bars.toSorted((one, other) => one.number - other.number);
}
