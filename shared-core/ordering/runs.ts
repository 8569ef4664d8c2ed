import { memoryOf } from '../base/index.ts';
import { type Assignment, assignUnits, type Care } from './assign-units.ts';
import type { Watch } from './known-cuts.ts';
import type { RunStock } from './ledger.ts';
import { choosePacks, fewestSold, MOST_ROLLS, type SaleUnit } from './packs.ts';
import type { Counter } from './take.ts';
import type { Unit } from './units.ts';

/** Units and the runs they may hang from, and how their rolls are counted and bought. */
export interface RunQuestion {
  readonly units: readonly Unit[];
  readonly runs: readonly RunStock[];
  readonly counter: Counter;
  readonly sold: readonly SaleUnit[];
  /** How much is asked for; thorough unless said otherwise. */
  readonly care?: Care;
}

/** The assignments that were searched to their end. */
const searched = memoryOf<Assignment>(400);

/**
 * Assigns what hangs from one run each to the runs that there are (see `assignUnits`).
 *
 * Rolls on order are as good as in hand: they are bought. Once a watch is stopped, what was found before for the same
 * rooms and runs stands where the runs still have enough, else the best that is met.
 * Example: rooms of 6 and 3 rolls, run 2214 with 8 on offer and 3 of run 2207 in hand: the first from 2214, the second
 * from 2207.
 */
export function assignRuns({ units, runs, counter, sold, care = 'thorough' }: RunQuestion, watch?: Watch): Assignment {
  const asked = JSON.stringify([units.map(({ rooms, hangings, run }) => [rooms, hangings.map(({ parts }) => parts.map((part) => part.length)), run]), runs]);
  const rooms = [...new Set(units.flatMap((unit) => unit.rooms))];
  const number = new Map(rooms.map((room, index) => [room, index]));
  const stocks = runs.map(({ inHand, onOrder, offered }) => ({ inHand: inHand + onOrder, offered: asSold(offered, sold) }));
  const bought = fewestSold(sold, Math.max(0, ...stocks.map(({ offered }) => offered)));
  const count = (indexes: readonly number[]) => counter.take(indexes.map((index) => units[index]!)).rolls;
  const hasEnough = (assignment: Assignment) =>
    stocks.every(({ inHand, offered }, run) => {
      const members = assignment.runs.flatMap((one, unit) => (one === run ? [unit] : []));
      return members.length === 0 || bought(Math.max(0, count(members) - inHand)) <= offered;
    });
  if (watch?.isStopped()) {
    const before = searched.recall(asked);
    if (before && hasEnough(before)) return { ...before, isProven: false };
  }
  const assignment = assignUnits(
    {
      units: units.map((unit) => ({ rooms: unit.rooms.map((room) => number.get(room)!), ...(unit.run === null ? {} : { run: runs.findIndex(({ run }) => run === unit.run) }) })),
      runs: stocks,
      count,
      bounds: counter.bounds(units),
      isAdditive: counter.isAdditive,
      bought,
    },
    watch,
    care,
  );
  return watch?.isStopped() ? assignment : searched.remember(asked, assignment);
}

/**
 * What of an offer can be bought in whole sale units.
 *
 * Example: of seven rolls on offer that are sold in doubles, six.
 */
export function asSold(offered: number, sold: readonly SaleUnit[]): number {
  const most = Math.min(offered, MOST_ROLLS);
  return choosePacks(most, sold, most).rolls;
}
