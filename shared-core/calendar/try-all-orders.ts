import { compareScores, lateOf, latestTimes, midnightAfter, readyAt, setFrom, type CalendarModel, type Score, scoreOf, type Times } from './calendar-model.ts';
import { Hands } from './hands.ts';

/** What a search may still do, in jobs tried at a place. */
export interface Budget {
  left: number;
}

/**
 * Tries every order in which jobs can be given the earliest place there is, but for those that cannot be better than the
 * best that is known.
 *
 * Rule: nothing gets worse where a job begins earlier and all else stays, once it is settled which room that must stay
 * usable comes after which; so a best calendar is among those in which no job alone could begin earlier. Each of these
 * comes from placing its jobs in the order in which they begin. So only such orders are tried: an order ends where a job
 * would begin before the one placed last, where a job that is left out could have been done before it, where a job
 * cannot begin in time for something better, and where what is left takes more than the free hands until then.
 *
 * `floor` is a score that none is better than; where it is met nothing more is tried. Says whether all was tried or the
 * floor met, and the best calendar. Example: jobs of 3, 3 and 2 hours for two people: 3 beside 3 and then 2 is done after
 * 5 hours; so is every other order but 3 and 2 beside 3, which is no better.
 */
export function tryAllOrders(model: CalendarModel, known: Times, floor: Score, budget: Budget): { readonly times: Times; readonly isAll: boolean } {
  return new OrderSearch(model, known, floor, budget).run();
}

class OrderSearch {
  readonly #model: CalendarModel;
  readonly #floor: Score;
  readonly #budget: Budget;
  readonly #hands: Hands;
  readonly #times: Times = { start: [], end: [] };
  readonly #isPlaced: boolean[];
  readonly #waitsFor: number[];
  readonly #left: number[];
  readonly #groupLeft: number[];
  #best: Times;
  #bestScore: Score;
  /** When each job has to begin for all to be done before the best that is known. */
  #latest: readonly number[] = [];
  #open = -1;
  #keptFrom = 0;

  constructor(model: CalendarModel, known: Times, floor: Score, budget: Budget) {
    this.#model = model;
    this.#floor = floor;
    this.#budget = budget;
    this.#hands = new Hands(model.people);
    this.#isPlaced = model.jobs.map(() => false);
    this.#waitsFor = model.before.map(({ length }) => length);
    this.#left = model.kept.jobs.map(({ length }) => length);
    this.#groupLeft = model.kept.before.map(({ length }) => length);
    this.#best = known;
    this.#bestScore = scoreOf(model, known);
    this.#aim();
  }

  run(): { readonly times: Times; readonly isAll: boolean } {
    const work = this.#model.minutes.reduce((sum, minutes, job) => sum + minutes * this.#model.hands[job]!, 0);
    this.#try(0, -1, 0, 0, work, 0);
    return { times: this.#best, isAll: this.#budget.left > 0 || this.#isBest() };
  }

  #isBest(): boolean {
    return compareScores(this.#bestScore, this.#floor) <= 0;
  }

  #aim(): void {
    this.#latest = latestTimes(this.#model, this.#bestScore.end - 1).start;
  }

  /** `last` is the job placed last, `work` what is left to be done, `atWork` the most that may be done after `from` already. */
  #try(placed: number, last: number, late: number, end: number, work: number, from: number): void {
    const { jobs, kept } = this.#model;
    if (placed === jobs.length) {
      const score = { late, end };
      if (compareScores(score, this.#bestScore) < 0) {
        this.#best = { start: [...this.#times.start], end: [...this.#times.end] };
        this.#bestScore = score;
        this.#aim();
      }
      return;
    }
    const found = this.#candidates(last, from);
    if (!found || this.#isHopeless(late, work, from)) return;
    for (const { job, start, over, worked } of found) {
      if (this.#budget.left <= 0 || this.#isBest()) return;
      const [open, keptFrom] = [this.#open, this.#keptFrom];
      this.#times.start[job] = start;
      this.#times.end[job] = over;
      this.#place(job, worked, 1);
      if (kept.of[job]! >= 0) this.#enter(kept.of[job]!);
      const takes = this.#model.minutes[job]! * this.#model.hands[job]!;
      this.#try(placed + 1, job, late + lateOf(this.#model, job, start), Math.max(end, over), work - takes, start);
      [this.#open, this.#keptFrom] = [open, keptFrom];
      this.#place(job, worked, -1);
    }
  }

  /** Puts a job in its place, or takes it away again. */
  #place(job: number, worked: number, sign: 1 | -1): void {
    const { behind, kept, hands, minutes } = this.#model;
    this.#isPlaced[job] = sign === 1;
    if (hands[job]! > 0) this.#hands.add(worked, worked + minutes[job]!, sign * hands[job]!);
    for (const later of behind[job]!) this.#waitsFor[later] = this.#waitsFor[later]! - sign;
    const group = kept.of[job]!;
    if (group < 0) return;
    const isOver = this.#left[group] === 0;
    this.#left[group] = this.#left[group]! - sign;
    if (isOver === (this.#left[group] === 0)) return;
    for (const later of kept.behind[group]!) this.#groupLeft[later] = this.#groupLeft[later]! - sign;
  }

  #enter(group: number): void {
    if (this.#left[group]! > 0) {
      this.#open = group;
      return;
    }
    this.#open = -1;
    this.#keptFrom = midnightAfter(Math.max(...this.#model.kept.jobs[group]!.map((job) => this.#times.end[job]!)));
  }

  /** The jobs that may come next, most urgent first; null where one should have come before. */
  #candidates(last: number, from: number): readonly { readonly job: number; readonly start: number; readonly over: number; readonly worked: number }[] | null {
    const { jobs, kept, hands, minutes, time } = this.#model;
    const found = [];
    for (let job = 0; job < jobs.length; job += 1) {
      if (this.#isPlaced[job] || this.#waitsFor[job]! > 0) continue;
      const group = kept.of[job]!;
      if (group >= 0 && group !== this.#open && (this.#open >= 0 || this.#groupLeft[group]! > 0)) continue;
      this.#budget.left -= 1;
      let ready = readyAt(this.#model, this.#times.end, job);
      if (group >= 0) ready = Math.max(ready, this.#keptFrom);
      let worked = 0;
      if (hands[job] === 0) {
        setFrom(this.#model, this.#times, job, ready);
      } else {
        worked = this.#hands.find(time.workedAt(ready), minutes[job]!, hands[job]!);
        this.#times.start[job] = time.clockAtStart(worked);
        this.#times.end[job] = time.clockAtEnd(worked + minutes[job]!);
      }
      const [start, over] = [this.#times.start[job]!, this.#times.end[job]!];
      // A room that is not begun yet may be begun later for the sake of another.
      if (over <= from && start < from && (group < 0 || group === this.#open)) return null;
      if (start > from || (start === from && job > last)) found.push({ job, start, over, worked });
    }
    return found.sort((one, other) => this.#latest[one.job]! - this.#latest[other.job]! || one.start - other.start || one.job - other.job);
  }

  /** Whether nothing that begins from here on can make it better than the best. */
  #isHopeless(late: number, work: number, from: number): boolean {
    const { jobs, target, time, people, minutes, hands } = this.#model;
    let least = late;
    let isTooLate = false;
    const end: number[] = [...this.#times.end];
    const times: Times = { start: [], end };
    let busy = 0;
    const begun = time.workedAt(from);
    for (let job = 0; job < jobs.length; job += 1) {
      if (this.#isPlaced[job]) {
        if (hands[job]! > 0) busy += hands[job]! * Math.min(minutes[job]!, Math.max(0, time.workedAt(end[job]!) - begun));
        continue;
      }
      let ready = Math.max(from, readyAt(this.#model, end, job));
      if (this.#model.kept.of[job]! >= 0) ready = Math.max(ready, this.#keptFrom);
      setFrom(this.#model, times, job, ready);
      if (target[job]! >= 0) least += lateOf(this.#model, job, times.start[job]!);
      isTooLate ||= times.start[job]! > this.#latest[job]!;
    }
    if (least !== this.#bestScore.late) return least > this.#bestScore.late;
    return isTooLate || busy + work > people * (time.workedAt(this.#bestScore.end - 1) - begun);
  }
}
