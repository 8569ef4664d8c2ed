import { dueAt, midnightAfter, midnightBefore, readyAt, setFrom, setUntil, type CalendarModel, type Times } from './calendar-model.ts';
import { Hands } from './hands.ts';
import { Heap } from './heap.ts';

/** In which order jobs, and rooms that must stay usable, are given their place: smaller keys first. */
export interface Keys {
  readonly jobs: readonly number[];
  readonly groups: readonly number[];
}

/**
 * Gives each job in turn the earliest place there is for it: of those that wait for nothing more the one with the smallest
 * key comes first, and rooms that must stay usable one after the other.
 *
 * Every calendar in which no job alone could begin earlier comes from some keys, those by which its jobs begin. Takes about
 * as long for each job however many there are.
 */
export function placeForwards(model: CalendarModel, keys: Keys): Times {
  const { time, minutes, hands, kept } = model;
  const times: Times = { start: [], end: [] };
  const free = new EarliestFree(model.people);
  let [group, isOver, keptFrom] = [-1, 0, 0];
  walk(model, keys, (job) => {
    let ready = readyAt(model, times.end, job);
    const own = kept.of[job]!;
    if (own >= 0) {
      if (own !== group) [group, keptFrom] = [own, midnightAfter(isOver)];
      ready = Math.max(ready, keptFrom);
    }
    if (hands[job] === 0) {
      setFrom(model, times, job, ready);
    } else {
      const worked = free.take(time.workedAt(ready), minutes[job]!, hands[job]!);
      times.start[job] = time.clockAtStart(worked);
      times.end[job] = time.clockAtEnd(worked + minutes[job]!);
    }
    if (own >= 0) isOver = Math.max(isOver, times.end[job]!);
  });
  return times;
}

/**
 * Gives each job in turn the latest place there is for it before all is to be done, as `placeForwards` does the earliest.
 *
 * Smaller keys first, and of two jobs the later one first. Nothing keeps a job from beginning before its delivery or before
 * the first day: the answer says in which order to place jobs forwards, it is no calendar.
 */
export function placeBackwards(model: CalendarModel, keys: Keys, last: number): Times {
  const { time, minutes, hands, kept } = model;
  const times: Times = { start: [], end: [] };
  const free = new EarliestFree(model.people);
  const lastWorked = time.workedAt(last);
  let [group, isBegun, keptUntil] = [-1, last, last];
  walk({ before: model.behind, behind: model.before, kept: { ...kept, before: kept.behind, behind: kept.before } }, keys, (job) => {
    let due = dueAt(model, times.start, job, last);
    const own = kept.of[job]!;
    if (own >= 0) {
      if (own !== group) [keptUntil, group] = [group < 0 ? last : midnightBefore(isBegun), own];
      due = Math.min(due, keptUntil);
    }
    if (hands[job] === 0) {
      setUntil(model, times, job, due);
    } else {
      const worked = lastWorked - free.take(lastWorked - time.workedAt(due), minutes[job]!, hands[job]!);
      times.start[job] = time.clockAtStart(worked - minutes[job]!);
      times.end[job] = time.clockAtEnd(worked);
    }
    if (own >= 0) isBegun = Math.min(isBegun, times.start[job]!);
  });
  return times;
}

/** Hands that are only ever put to work, so that where there was no room there never will be. */
class EarliestFree {
  readonly #hands: Hands;
  /** By hands, and by the power of two that is no longer than a job: from where to where none so long can begin. */
  readonly #full: { from: number; until: number }[][] = [[], [], []];

  constructor(people: number) {
    this.#hands = new Hands(people);
  }

  take(from: number, minutes: number, hands: number): number {
    const known = this.#full[hands]!;
    const shorter = 31 - Math.clz32(minutes);
    const full = known[shorter];
    const start = this.#hands.find(full && from >= full.from && from < full.until ? full.until : from, minutes, hands);
    this.#hands.add(start, start + minutes, hands);
    const longer = minutes === 2 ** shorter ? shorter : shorter + 1;
    const before = known[longer];
    if (before && from <= before.until && start >= before.from) known[longer] = { from: Math.min(before.from, from), until: Math.max(before.until, start) };
    else if (!before || start - from > before.until - before.from) known[longer] = { from, until: start };
    return start;
  }
}

/** Goes through all jobs, none before what it waits for, the jobs of a group without another group's between them. */
function walk({ before, behind, kept }: Pick<CalendarModel, 'before' | 'behind' | 'kept'>, keys: Keys, place: (job: number) => void): void {
  const jobs = new Heap(keys.jobs);
  const groups = new Heap(keys.groups);
  const waitsFor = before.map(({ length }) => length);
  const groupWaitsFor = kept.before.map(({ length }) => length);
  const left = kept.jobs.map(({ length }) => length);
  let open: number | undefined = -1;
  const push = (job: number) => {
    if (kept.of[job]! < 0 || kept.of[job] === open) jobs.push(job);
  };
  const openNext = () => {
    open = groups.pop();
    if (open !== undefined) for (const job of kept.jobs[open]!) if (waitsFor[job] === 0) jobs.push(job);
  };
  groupWaitsFor.forEach((count, group) => count === 0 && groups.push(group));
  waitsFor.forEach((count, job) => count === 0 && push(job));
  openNext();
  for (let job = jobs.pop(); job !== undefined; job = jobs.pop()) {
    place(job);
    for (const later of behind[job]!) {
      waitsFor[later] = waitsFor[later]! - 1;
      if (waitsFor[later] === 0) push(later);
    }
    const group = kept.of[job]!;
    if (group < 0) continue;
    left[group] = left[group]! - 1;
    if (left[group]! > 0) continue;
    for (const next of kept.behind[group]!) {
      groupWaitsFor[next] = groupWaitsFor[next]! - 1;
      if (groupWaitsFor[next] === 0) groups.push(next);
    }
    openNext();
  }
}
