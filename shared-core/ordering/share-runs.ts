import type { Assignment } from './assign-units.ts';
import type { Watch } from './known-cuts.ts';
import type { Ledger, RunStock } from './ledger.ts';
import { fewestSold } from './packs.ts';
import { asSold, assignRuns, type RunQuestion } from './runs.ts';
import type { Counter } from './take.ts';

type Runs = Assignment['runs'];

/** A sharing that was ordered stands unless another is better in so many of the first figures: rooms hung and rolls bought. */
const ORDERED_BY = 2;

/** How good a sharing is, the first figure first; less is better. */
type Marks = readonly number[];

/**
 * Shares the runs out over the rooms, and keeps to what was ordered where nothing is better.
 *
 * Rule: rooms hung, then rolls bought, then rolls bought with the spare of every run used, then rolls that are still to
 * come, then the larger rooms before the smaller, which leaves least over. The sharing that the orders were placed for
 * stands unless another hangs more rooms or buys fewer rolls. Tried are the exact ones (see `assignRuns`), with and
 * without what is on order as if it were in hand, and each run alone. A room that no run has enough for by a brief look is
 * looked at once more with the cutting that is ordered by. What hangs already stands on its run, however many rolls it
 * took.
 * Example: two rooms of 4 rolls, 7 together, two runs of 30 in doubles, a spare each: both from one run, 8 bought and not
 * 12.
 */
export function shareRuns(question: RunQuestion, ledger: Ledger, exact: Counter, spareOf: (needed: number) => number, watch?: Watch): Assignment {
  const { units, counter, sold } = question;
  const runs = withRoomForHung(question);
  const asked = { ...question, runs };
  const found = assignRuns(asked, watch);
  const bought = fewestSold(sold, Math.max(0, ...runs.map(({ offered }) => asSold(offered, sold))));
  const membersOf = (shared: Runs, run: number) => units.filter((_, unit) => shared[unit] === run);

  const marksOf = (shared: Runs, by: Counter): Marks | null => {
    let [more, withSpare, toCome] = [0, 0, 0];
    for (const [index, { inHand, onOrder, offered }] of runs.entries()) {
      const members = membersOf(shared, index);
      if (members.length === 0) continue;
      const needed = by.take(members).rolls;
      const most = asSold(offered, sold);
      const own = bought(Math.max(0, needed - inHand - onOrder));
      if (own > most) return null;
      more += own;
      withSpare += Math.min(most, bought(Math.max(0, needed + spareOf(needed) - inHand - onOrder)));
      toCome += Math.max(0, Math.min(onOrder, needed - inHand));
    }
    const left = units.filter((_, unit) => shared[unit] === null);
    return [new Set(left.flatMap(({ rooms }) => rooms)).size, more, withSpare, toCome, left.reduce((sum, unit) => sum + by.take([unit]).rolls, 0)];
  };

  let best: { readonly runs: Runs; readonly marks: Marks } = { runs: found.runs, marks: marksOf(found.runs, counter) ?? [Infinity] };
  const consider = (shared: Runs, by: Counter): void => {
    const marks = marksOf(shared, by);
    if (marks && compare(marks, best.marks) < 0) best = { runs: shared, marks };
  };
  if (!watch?.isStopped()) {
    const all = counter.take(units).rolls;
    if (runs.some(({ onOrder }) => onOrder > 0)) consider(assignRuns({ ...asked, runs: runs.map((run) => ({ ...run, onOrder: 0, offered: run.offered + run.onOrder })) }, watch).runs, counter);
    runs.forEach((run, index) => {
      const there = run.inHand + run.onOrder + asSold(run.offered, sold);
      if (units.every((unit) => unit.run === null || unit.run === run.run) && all - MOST_BEYOND <= there) consider(units.map(() => index), exact);
    });
    if (best.runs.includes(null)) {
      consider(filledIn(best.runs, asked, exact, marksOf), exact);
      for (const exchanged of withLargerRooms(best.runs, asked)) consider(exchanged, counter);
    }
  }
  const placed = asPlaced(question, ledger);
  const kept = placed && filledIn(placed, asked, exact, marksOf);
  const keptMarks = kept && marksOf(kept, exact);
  return { ...found, runs: kept && keptMarks && compare(keptMarks.slice(0, ORDERED_BY), best.marks.slice(0, ORDERED_BY)) <= 0 ? kept : best.runs };
}

function compare(one: Marks, other: Marks): number {
  const at = one.findIndex((mark, index) => mark !== other[index]);
  return at < 0 ? 0 : one[at]! - (other[at] ?? 0);
}

/** What hangs already has had its rolls: a run whose safe count is more than it had is as if it had had so many. */
export function withRoomForHung({ units, runs, counter, sold }: RunQuestion): readonly RunStock[] {
  return runs.map((run) => {
    const hung = units.filter((unit) => unit.isHung && unit.run === run.run);
    if (hung.length === 0) return run;
    const lacking = counter.take(hung).rolls - run.inHand - run.onOrder - asSold(run.offered, sold);
    return lacking > 0 ? { ...run, inHand: run.inHand + lacking } : run;
  });
}

/** More rooms that are left are not looked at again. */
const MOST_LOOKED_AT = 4;
/** Of more units no cutting that is ordered by is asked for on the way. */
const MOST_EXACT = 60;
/** A brief count is hardly further beyond that cutting. */
const MOST_BEYOND = 3;

/** Rooms that are left, each hung where it comes to most; looked at by the cutting that is ordered by where a brief one finds no run. */
function filledIn(shared: Runs, { units, runs, counter }: RunQuestion, exact: Counter, marksOf: (shared: Runs, by: Counter) => Marks | null): Runs {
  const left = units.flatMap((_, unit) => (shared[unit] === null ? [unit] : [])).slice(0, MOST_LOOKED_AT);
  const filledAll = left.reduce<Runs>((filled, unit) => {
    const tries = runs.flatMap(({ run }, index) => (units[unit]!.run === null || units[unit]!.run === run ? [filled.with(unit, index)] : []));
    for (const by of units.length > MOST_EXACT ? [counter] : [counter, exact]) {
      const judged = tries.flatMap((one) => {
        const marks = marksOf(one, by);
        return marks ? [{ one, marks }] : [];
      });
      const [best] = judged.toSorted((one, other) => compare(one.marks, other.marks));
      if (best) return best.one;
    }
    return filled;
  }, shared);
  // A room in parts hangs wholly or not at all.
  const unhung = new Set(units.flatMap(({ rooms }, unit) => (filledAll[unit] === null ? rooms : [])));
  return filledAll.map((run, unit) => (units[unit]!.rooms.some((room) => unhung.has(room)) ? null : run));
}

/** The same with a room that is left in the place of one that is a little smaller. */
function withLargerRooms(shared: Runs, { units, counter }: RunQuestion): readonly Runs[] {
  const alone = units.map((unit) => counter.take([unit]).rolls);
  const left = units.flatMap((_, unit) => (shared[unit] === null ? [unit] : [])).slice(0, MOST_LOOKED_AT);
  return left.flatMap((unit) => {
    const smaller = units.flatMap((other, index) => (shared[index] !== null && other.run === null && alone[index]! < alone[unit]! && other.rooms.length === units[unit]!.rooms.length ? [index] : []));
    const nearest = smaller.toSorted((one, other) => alone[other]! - alone[one]! || one - other).slice(0, MOST_EXCHANGED);
    return units[unit]!.run === null ? nearest.map((other) => shared.with(unit, shared[other]!).with(other, null)) : [];
  });
}

const MOST_EXCHANGED = 8;

/** The sharing that the orders were placed for, rooms they do not name on no run; null where there are none. */
function asPlaced({ units, runs }: RunQuestion, { sharing }: Ledger): Runs | null {
  if (sharing.size === 0) return null;
  return units.map((unit) => {
    const room = unit.rooms.find((one) => sharing.has(one));
    const wanted = unit.run ?? (room === undefined ? undefined : sharing.get(room));
    const index = wanted === undefined ? -1 : runs.findIndex(({ run }) => run === wanted);
    return index < 0 ? null : index;
  });
}
