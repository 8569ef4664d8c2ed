import { type Booking, type CalendarPlan, type CalendarWords, type Job, sayLength } from '../../../shared-core/calendar/index.ts';
import { type Edit, type House, WEEKDAYS, type Work } from '../../../shared-core/house/index.ts';
import { say, sayDay } from '../../../shared-core/words/index.ts';
import { readDay, sayNoDay } from '../../parts/read-day.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { today } from '../../parts/today.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { type BarStep, type Chart, columnsOf, dayAfter, layChart, nextBar } from './chart.ts';
import { calendarIn, wordsOf, workOf } from './plan-facts.ts';
import { changedTasks } from '../../state/changed-tasks.ts';
import { readDays, readMinutes } from './typed-work.ts';
import type { Weekday } from './weekday-words.ts';

/** How wide a day can be, in rem; the least still has room for its date. */
const DAY_WIDTHS = [3, 5, 8, 12, 20] as const;
/** As wide as the chart is drawn where nobody chose a width of its days. */
const USUAL_CHART_REM = 72;
/** Wide enough to be hit, in rem. */
const LEAST_BAR_REM = 1.5;

/** A bar that is moved, and the day on which it would be put down. */
interface Held {
  readonly job: string;
  readonly day: string;
  readonly takenFrom: string;
  /** The chart as it was when the bar was taken, so that it stays under the hand. */
  readonly firstColumn: string;
  readonly dayWidth: number;
  readonly isByKeys: boolean;
}

/** The calendar of a house as it is planned, who works when, and the bar that is in hand. */
export class CalendarSheet {
  readonly #house: HouseState;
  /** The bar that is pointed at, or was last. */
  pointed = $state<string | null>(null);
  #held = $state.raw<Held | null>(null);
  #width = $state<number | null>(null);
  /** Why a bar could not be put down. */
  trouble = $state<string | null>(null);

  readonly plan: CalendarPlan | null = $derived.by(() => this.#house.plan && calendarIn(this.#house.plan));
  /** Whether there is something to do, whose days are not known yet. */
  readonly wantsStart: boolean = $derived.by(() => this.plan === null && (this.#house.plan?.jobs.length ?? 0) > 0);
  readonly dayWidth: number = $derived.by(() => this.#held?.dayWidth ?? DAY_WIDTHS[this.#widthIndex]!);
  readonly #from: string | null = $derived.by(() => this.#held?.firstColumn ?? null);
  /** Only a day past the last one makes more columns. */
  readonly #until: string | null = $derived.by(() => (this.#held && this.plan?.last && this.#held.day > this.plan.last ? this.#held.day : null));
  readonly chart: Chart = $derived.by(() => {
    const rooms = this.house.rooms.map(({ id }) => id);
    return this.plan ? layChart(this.plan, workOf(this.house), rooms, { leastWidth: LEAST_BAR_REM / this.dayWidth, from: this.#from, until: this.#until }) : { days: [], rows: [] };
  });
  readonly words: CalendarWords | null = $derived.by(() => (this.plan?.first ? wordsOf(this.house, this.plan) : null));
  readonly #bookings: ReadonlyMap<string, Booking> = $derived.by(() => new Map(this.plan?.bookings.map((booking) => [booking.job, booking])));
  readonly #jobs: ReadonlyMap<string, Job> = $derived.by(() => new Map(this.plan?.jobs.map((job) => [job.id, job])));
  /** What does not stand on the day that was chosen for it. */
  readonly moved: readonly { readonly job: Job; readonly words: string }[] = $derived.by(() =>
    (this.plan?.bookings ?? []).flatMap(({ job, moved }) => (moved === null ? [] : [{ job: this.#jobs.get(job)!, words: moved }])),
  );
  readonly hasNarrower: boolean = $derived.by(() => this.#widthIndex > 0);
  readonly hasWider: boolean = $derived.by(() => this.#widthIndex < DAY_WIDTHS.length - 1);

  constructor(house: HouseState) {
    this.#house = house;
  }

  /** The house that the calendar was made of. */
  get house(): House {
    return this.#house.planner.planned ?? this.#house.shown;
  }

  get held(): Held | null {
    return this.#held;
  }

  bookingOf(job: string): Booking | null {
    return this.#bookings.get(job) ?? null;
  }

  jobOf(job: string): Job | null {
    return this.#jobs.get(job) ?? null;
  }

  get #widthIndex(): number {
    if (this.#width !== null) return this.#width;
    const { plan } = this;
    const columns = plan ? columnsOf(plan) : 1;
    return Math.max(0, DAY_WIDTHS.findLastIndex((rem) => rem * columns <= USUAL_CHART_REM));
  }

  widen(by: 1 | -1): void {
    this.#width = Math.min(DAY_WIDTHS.length - 1, Math.max(0, this.#widthIndex + by));
  }

  step(step: BarStep): string | null {
    this.pointed = nextBar(this.chart, this.pointed, step);
    return this.pointed;
  }

  /** Takes a bar in hand where it stands. */
  take(job: string, isByKeys: boolean): void {
    const [booking, first] = [this.bookingOf(job), this.chart.days[0]];
    if (!booking || !first) return;
    this.trouble = null;
    this.pointed = job;
    this.#held = { job, day: booking.from.day, takenFrom: booking.from.day, firstColumn: first.day, dayWidth: this.dayWidth, isByKeys };
  }

  /** Moves what is in hand by days, and shows what would come of it. */
  moveBy(days: number): void {
    if (this.#held) this.moveTo(dayAfter(this.#held.day, days));
  }

  moveTo(day: string): void {
    const held = this.#held;
    if (!held || day === held.day || day < held.firstColumn) return;
    this.#held = { ...held, day };
    this.trouble = sayFaults(this.#house.preview(this.#edit(held.job, day)));
  }

  /** Makes the day of what is in hand its fact. */
  putDown(): void {
    const held = this.#held;
    if (!held) return;
    this.#held = null;
    // Put down where it was taken it stays the plan's.
    if (held.day === held.takenFrom) this.#house.preview(null);
    else this.#choose(held.job, held.day);
  }

  giveUp(): void {
    if (!this.#held) return;
    this.#held = null;
    this.trouble = null;
    this.#house.preview(null);
  }

  /** Has a job begin on a day that is typed; on none, the plan chooses. */
  chooseTyped = async (job: string, typed: string): Promise<string | null> => {
    const day = typed.trim() === '' ? null : readDay(typed);
    if (day === null && typed.trim() !== '') return sayNoDay(typed);
    return sayFaults(await this.#house.edit(this.#edit(job, day)));
  };

  /** Lets the plan choose the day of a job again. */
  release(job: string): void {
    this.giveUp();
    if (this.#house.saved.tasks.some(({ task, day }) => task === job && day !== undefined)) this.#choose(job, null);
  }

  #choose(job: string, day: string | null): void {
    const faults = this.#house.editAtOnce(this.#edit(job, day));
    this.trouble = faults.length > 0 ? `${sayFaults(faults)} ${say`Nothing was changed.`}` : null;
  }

  #edit(job: string, day: string | null): Edit {
    return { kind: 'set-tasks', tasks: changedTasks(this.#house.saved.tasks, job, { day: day ?? undefined }) };
  }

  /** What is in hand and where, and what would come of it. */
  get says(): string {
    const held = this.#held;
    const job = held && this.jobOf(held.job);
    if (!held || !job) return '';
    // The plan of that day may not be there yet.
    const comes = this.plan && job.chosen === held.day ? [this.bookingOf(job.id)?.moved ?? '', sayLength(this.plan)] : [];
    const where = say`‘${job.words}’ is to begin on ${sayDay(held.day)}.`;
    const how = held.isByKeys ? [say`Arrows move it by a day, up and down by a week. Enter puts it down, Escape leaves it where it was.`] : [];
    return [where, ...comes, ...how].filter(Boolean).join(' ');
  }

  changeStart = async (typed: string): Promise<string | null> => {
    if (typed.trim() === '') return this.changeWork({ starts: undefined });
    const day = readDay(typed);
    return day === null ? sayNoDay(typed) : this.changeWork({ starts: day });
  };

  /** Has the work begin today. */
  beginToday = (): Promise<string | null> => this.changeWork({ starts: today() });

  changeCount = (fact: 'people' | 'hours') => async (typed: string): Promise<string | null> =>
    /^\d{1,3}$/.test(typed.trim()) ? this.changeWork({ [fact]: Number(typed) }) : say`This takes a whole number.`;

  changeHolidays = async (typed: string): Promise<string | null> => {
    const read = readDays(typed);
    return 'trouble' in read ? read.trouble : this.changeWork({ holidays: [...read.days] });
  };

  /** How many minutes something takes here; ours again where nothing is typed. */
  async changeRate(of: string, typed: string): Promise<string | null> {
    const minutes = readMinutes(typed);
    if (minutes === null && typed.trim() !== '') return say`This takes minutes, such as 12 or 1:30. Nothing was changed.`;
    const others = (this.#house.saved.work?.rates ?? []).filter((rate) => rate.of !== of);
    const rates = minutes === null ? others : [...others, { of, minutes }];
    return this.changeWork({ rates: rates.length > 0 ? rates : undefined });
  }

  toggleWeekday(weekday: Weekday): Promise<string | null> {
    const { days } = workOf(this.#house.saved);
    if (days.length === 1 && days.includes(weekday)) return Promise.resolve(say`Some day of the week has to be worked on.`);
    return this.changeWork({ days: days.includes(weekday) ? days.filter((one) => one !== weekday) : WEEKDAYS.filter((one) => one === weekday || days.includes(one)) });
  }

  /** The work is one fact of the house: the others go with the one that changes. */
  async changeWork(change: WorkChange): Promise<string | null> {
    const facts = Object.entries({ ...workOf(this.#house.saved), ...change }).filter(([, value]) => value !== undefined);
    const work = structuredClone(Object.fromEntries(facts)) as Extract<Edit, { kind: 'change-house' }>['facts']['work'];
    return sayFaults(await this.#house.edit({ kind: 'change-house', facts: { work } }));
  }
}

/** What changes of the work; undefined takes a fact away. */
export type WorkChange = { readonly [Fact in keyof Work]?: Work[Fact] | undefined };
