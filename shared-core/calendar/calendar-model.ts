import { assert } from '../base/index.ts';
import { ceilDivide } from '../units/index.ts';
import type { CalendarQuestion, Job } from './calendar-plan.ts';
import { keptGroups, type KeptGroups } from './kept-groups.ts';
import { MINUTES_PER_DAY, type WorkingTime, workingTimeOf } from './working-time.ts';

/** A question made ready for reckoning; a job is its number, and those before it have smaller ones. */
export interface CalendarModel {
  readonly time: WorkingTime;
  readonly people: number;
  readonly jobs: readonly Job[];
  readonly minutes: readonly number[];
  /** How many of the crew each job takes: of a crew of one, one for what wants two. */
  readonly hands: readonly number[];
  readonly waits: readonly number[];
  readonly before: readonly (readonly number[])[];
  readonly behind: readonly (readonly number[])[];
  /** The clock before which no job may begin, for its delivery or the day that was chosen for it. */
  readonly release: readonly number[];
  /** The working day on which it should begin; -1 where nobody chose one. */
  readonly target: readonly number[];
  readonly kept: KeptGroups;
}

/** When jobs are begun and ended, by the clock. */
export interface Times {
  readonly start: number[];
  readonly end: number[];
}

/** What a calendar is judged by: days by which chosen jobs begin late, then when all is done. */
export interface Score {
  readonly late: number;
  /** The clock. */
  readonly end: number;
}

/**
 * Makes a question ready. Ids that are missing or come twice, and jobs that wait for each other, are bugs of the caller.
 */
export function modelOf(question: CalendarQuestion): CalendarModel {
  const { work } = question;
  const time = workingTimeOf(work, work.starts ?? question.starts);
  const jobs = inOrder(question.jobs);
  const numbers = new Map(jobs.map((job, number) => [job.id, number]));
  const before = jobs.map(({ after }) => [...new Set(after)].map((id) => numbers.get(id)!));
  const behind: number[][] = jobs.map(() => []);
  before.forEach((earlier, job) => earlier.forEach((number) => behind[number]!.push(job)));
  const target = jobs.map(({ chosen }) => (chosen === null ? -1 : time.indexFrom(chosen)));
  return {
    time,
    people: work.people,
    jobs,
    minutes: jobs.map(({ minutes }) => minutes),
    hands: jobs.map(({ people, minutes }) => (minutes === 0 ? 0 : Math.min(people, work.people))),
    waits: jobs.map(({ waitMinutes }) => waitMinutes),
    before,
    behind,
    release: jobs.map(({ earliest }, job) => time.clockOfDay(Math.max(0, target[job]!, earliest === null ? 0 : time.indexFrom(earliest)))),
    target,
    kept: keptGroups(question.keptUsable, jobs.map(({ room }) => room), behind),
  };
}

/** The jobs, each after all that it waits for, otherwise as they stand. */
function inOrder(jobs: readonly Job[]): readonly Job[] {
  const byId = new Map(jobs.map((job) => [job.id, job]));
  assert(byId.size === jobs.length, 'every job has an id of its own');
  const waiting = new Map<string, number>();
  const behind = new Map<string, Job[]>(jobs.map(({ id }) => [id, []]));
  for (const job of jobs) {
    const after = new Set(job.after);
    waiting.set(job.id, after.size);
    assert(Number.isSafeInteger(job.minutes) && job.minutes >= 0 && Number.isSafeInteger(job.waitMinutes) && job.waitMinutes >= 0, `job ${job.id} takes whole minutes`);
    for (const id of after) {
      const list = behind.get(id);
      assert(list, `job ${job.id} waits for ${id}, which there is not`);
      list.push(job);
    }
  }
  const ordered = jobs.filter(({ id }) => waiting.get(id) === 0);
  for (const job of ordered) {
    for (const next of behind.get(job.id)!) {
      const left = waiting.get(next.id)! - 1;
      waiting.set(next.id, left);
      if (left === 0) ordered.push(next);
    }
  }
  assert(ordered.length === jobs.length, 'no jobs wait for each other');
  return ordered;
}

/** The clock from which a job may begin for its day and for what it waits for, hands and usable rooms left aside. */
export function readyAt({ release, before, waits }: CalendarModel, end: readonly number[], job: number): number {
  let ready = release[job]!;
  for (const earlier of before[job]!) ready = Math.max(ready, end[earlier]! + waits[earlier]!);
  return ready;
}

/** The clock by which a job has to be over for what waits for it. */
export function dueAt({ behind, waits }: CalendarModel, start: readonly number[], job: number, last: number): number {
  let due = last;
  for (const later of behind[job]!) due = Math.min(due, start[later]! - waits[job]!);
  return due;
}

/** The midnight after a clock in working hours, and the one before. */
export const midnightAfter = (clock: number): number => ceilDivide(clock, MINUTES_PER_DAY) * MINUTES_PER_DAY;
export const midnightBefore = (clock: number): number => (ceilDivide(clock, MINUTES_PER_DAY) - 1) * MINUTES_PER_DAY;

/** Days by which a job begins after the day that was chosen for it. */
export function lateOf({ target, time }: CalendarModel, job: number, start: number): number {
  return target[job]! < 0 ? 0 : Math.max(0, time.indexAt(start) - target[job]!);
}

export function scoreOf(model: CalendarModel, { start, end }: Times): Score {
  let [late, last] = [0, 0];
  for (let job = 0; job < model.jobs.length; job += 1) {
    late += lateOf(model, job, start[job]!);
    last = Math.max(last, end[job]!);
  }
  return { late, end: last };
}

/** Below 0 where the first is the better one. */
export const compareScores = (one: Score, other: Score): number => one.late - other.late || one.end - other.end;

/**
 * When each job could begin and end at the earliest if hands were without number and no room had to stay usable.
 */
export function earliestTimes(model: CalendarModel): Times {
  const times: Times = { start: [], end: [] };
  for (let job = 0; job < model.jobs.length; job += 1) setFrom(model, times, job, readyAt(model, times.end, job));
  return times;
}

/** Has a job begin at the first working minute from a clock on, whoever is free. */
export function setFrom({ time, minutes }: CalendarModel, { start, end }: Times, job: number, clock: number): void {
  if (minutes[job] === 0) {
    start[job] = end[job] = time.openFrom(clock);
    return;
  }
  const worked = time.workedAt(clock);
  start[job] = time.clockAtStart(worked);
  end[job] = time.clockAtEnd(worked + minutes[job]!);
}

/**
 * When each job has to begin and end at the latest for all to be done at a clock, hands without number.
 */
export function latestTimes(model: CalendarModel, last: number): Times {
  const times: Times = { start: [], end: [] };
  for (let job = model.jobs.length - 1; job >= 0; job -= 1) setUntil(model, times, job, dueAt(model, times.start, job, last));
  return times;
}

/** Has a job end at the last working minute until a clock, whoever is free. */
export function setUntil({ time, minutes }: CalendarModel, { start, end }: Times, job: number, clock: number): void {
  if (minutes[job] === 0) {
    start[job] = end[job] = time.openUntil(clock);
    return;
  }
  const worked = time.workedAt(clock);
  start[job] = time.clockAtStart(worked - minutes[job]!);
  end[job] = time.clockAtEnd(worked);
}
