import { layPlaces, mostFromEachPlace, type PlacedSort, type Places, type Sort, type Start } from './check-places.ts';
import { STEPS_OVER_A_ROLL, type Steps } from './check-steps.ts';
import type { CuttingProblem } from './problem.ts';

export type CoverAnswer = 'covered' | 'ruled-out' | 'unsettled';

/** Sorts that a roll holds, in rising order, once for each piece. */
type Filling = readonly number[];

/** A start with what its places can hold, and what they can with one of a given sort. */
interface Tape {
  readonly start: Start;
  readonly most: Float64Array;
  readonly mostWith: Map<number, Float64Array>;
}

interface Search {
  readonly places: Places;
  readonly tapes: readonly Tape[];
  readonly isPlain: boolean;
  readonly mostPerRoll: number;
  readonly tapeSteps: Steps;
  readonly steps: Steps;
  /** By pieces left: the most rolls that are known not to hold them. */
  readonly ruledOut: Map<string, number>;
}

/**
 * Tries whether so many rolls can hold all wanted pieces, no roll's pieces counting for more than `mostPerRoll`.
 *
 * Exhaustive but for what cannot matter. The longest piece left is in one of the rolls left, taken
 * to be the next. A roll to which a piece left could be added, or put in place of a shorter one of
 * its phase, need not be tried, as the roll so changed is, which leaves less to the others: what
 * comes free takes the place of what it had. And a roll that falls short of `mostPerRoll` by more
 * than all the rolls left may together, need not be.
 *
 * Example: two rolls of 1000 for pieces of 700, 550 and 500 that count for their lengths. Two of
 * 500 would make 1000, so the rolls may fall short by 2000 - 1750 = 250 together. The 700 goes with
 * no other piece and falls short by 300: ruled out.
 */
export function tryToCover(problem: CuttingProblem, sorts: readonly Sort[], rolls: number, mostPerRoll: number, steps: Steps): CoverAnswer {
  const places = layPlaces(problem, sorts);
  const tapeSteps = { left: STEPS_OVER_A_ROLL };
  const tapes: Tape[] = [];
  for (const start of places.starts) {
    const most = mostFromEachPlace(places, start, tapeSteps);
    if (most === null) return 'unsettled';
    tapes.push({ start, most, mostWith: new Map() });
  }
  const search: Search = { places, tapes, isPlain: problem.repeat === 0, mostPerRoll, tapeSteps, steps, ruledOut: new Map() };
  return coverWith(search, sorts.map(({ count }) => count), rolls);
}

function coverWith(search: Search, left: readonly number[], rolls: number): CoverAnswer {
  const longest = left.findIndex((count) => count > 0);
  if (longest < 0) return 'covered';
  const leftWorth = left.reduce((sum, count, sort) => sum + count * (search.places.sorts[sort] as PlacedSort).worth, 0);
  const mayFallShort = rolls * search.mostPerRoll - leftWorth;
  if (rolls === 0 || mayFallShort < 0) return 'ruled-out';
  const name = left.join(' ');
  if ((search.ruledOut.get(name) ?? 0) >= rolls) return 'ruled-out';
  const fillings = fillingsWith(search, longest, left, search.mostPerRoll - mayFallShort);
  if (fillings === null) return 'unsettled';
  for (const filling of fillings) {
    const after = [...left];
    for (const sort of filling) after[sort] = (after[sort] ?? 0) - 1;
    const answer = coverWith(search, after, rolls - 1);
    if (answer !== 'ruled-out') return answer;
  }
  search.ruledOut.set(name, rolls);
  return 'ruled-out';
}

/** Every filling of a roll from the pieces left that holds the given sort, counts for `least` or more and has to be tried. */
function fillingsWith(search: Search, sort: number, left: readonly number[], least: number): readonly Filling[] | null {
  const found = new Map<string, Filling>();
  for (const tape of search.tapes) if (!fillTape(search, tape, sort, left, least, found)) return null;
  return [...found.values()].filter((filling) => !isBettered(search.places, filling, left, found));
}

/** Whether another of the fillings leaves less to the rolls to come: one with a piece more, or with a longer one of the same phase. */
function isBettered({ sorts }: Places, filling: Filling, left: readonly number[], found: ReadonlyMap<string, Filling>): boolean {
  const free = sorts.flatMap((_, sort) => ((left[sort] ?? 0) > countOf(filling, sort) ? [sort] : []));
  const isFound = (pieces: Filling, sort: number): boolean => found.has(withPiece(pieces, sort).join(' '));
  // Sorts are longest first. If a longer piece of a phase fits, so does a shorter: one trial for each phase tells.
  const shortestOfPhase = new Map(free.map((sort) => [sorts[sort]?.row, sort]));
  for (const sort of shortestOfPhase.values()) if (isFound(filling, sort)) return true;
  return filling.some((held, at) => {
    const { row, length } = sorts[held] as PlacedSort;
    const longer = free.findLast((sort) => sorts[sort]?.row === row && (sorts[sort]?.length ?? 0) > length);
    return longer !== undefined && isFound(filling.toSpliced(at, 1), longer);
  });
}

/** A filling that is kept takes memory too, which the steps have to keep within reason. */
const STEPS_OF_A_FILLING = 10;

/** False where it takes more steps than are left. */
function fillTape({ places, isPlain, tapeSteps, steps }: Search, tape: Tape, must: number, left: readonly number[], least: number, found: Map<string, Filling>): boolean {
  const { start, most } = tape;
  // Where no pattern tells the order of the cuts, one order stands for all: that of the sorts, from the first that is left.
  let mostWith = isPlain ? most : tape.mostWith.get(must);
  if (mostWith === undefined) {
    const computed = mostFromEachPlace(places, start, tapeSteps, { sort: must, others: most });
    if (computed === null) return false;
    tape.mostWith.set(must, (mostWith = computed));
  }
  const firstFreeOf = new Map<string, number>();
  const extend = (filling: Filling, free: number, worth: number, hasMust: boolean): void => {
    const onRow = free % places.perRepeat;
    for (let sort = isPlain ? (filling.at(-1) ?? 0) : 0; sort < left.length; sort += 1) {
      if (isPlain && filling.length === 0 && sort > must) return;
      if ((left[sort] ?? 0) <= countOf(filling, sort)) continue;
      const { row, jump, worth: more } = places.sorts[sort] as PlacedSort;
      const top = free + (row >= onRow ? row - onRow : row - onRow + places.perRepeat);
      if (top > (start.lastTops[sort] ?? -1)) continue;
      steps.left -= 1;
      if (steps.left < 0) return;
      const behind = top + jump;
      const hasIt = hasMust || sort === must;
      const others = (hasIt ? most[behind] : mostWith[behind]) ?? (hasIt ? 0 : -Infinity);
      if (worth + more + others < least) continue;
      const longer = withPiece(filling, sort);
      const name = longer.join(' ');
      if ((firstFreeOf.get(name) ?? Infinity) <= behind) continue;
      firstFreeOf.set(name, behind);
      steps.left -= STEPS_OF_A_FILLING;
      if (hasIt && worth + more >= least) found.set(name, longer);
      extend(longer, behind, worth + more, hasIt);
    }
  };
  extend([], start.place, 0, false);
  return steps.left >= 0;
}

function countOf(filling: Filling, sort: number): number {
  return filling.reduce((count, held) => count + (held === sort ? 1 : 0), 0);
}

function withPiece(filling: Filling, sort: number): Filling {
  const before = filling.filter((held) => held <= sort);
  return [...before, sort, ...filling.slice(before.length)];
}
