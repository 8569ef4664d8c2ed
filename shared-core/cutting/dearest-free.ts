import { type Dearest, FINEST_SCALE, type FindDearest } from './dearest.ts';
import { ceilDivide, floorDivide, type Roll, type Tape } from './tape.ts';
import type { Work } from './work.ts';

/** Where no more places than this do, every place is told apart. */
const MOST_PLACES = 12_000;
/** Where places are not told apart, fine prices ask for many choices that differ by next to nothing. */
const COARSE_SCALES: readonly number[] = [2 ** 11, 2 ** 16, 2 ** 22];
/** Choices tried for one answer before it is given up. */
const MOST_CHOICES = 50_000;

/**
 * The dearest rolls of a free match, where the order of cutting is all one.
 *
 * Rule: kind after kind, longest first, is taken so many times or not at all. A table says, for every kind and every
 * length that is left, how much that kind and those after it can still count for; whatever could not come to more than
 * is known already is left out. Lengths in the table are counted in the largest measure that all of them are wholes of,
 * and then the table leads straight to the dearest roll. Where that makes too many places, the measure is a coarser one
 * and pieces are rounded down: the table then says a little too much, and some choices are tried in vain, but what is
 * found and what is ruled out stays exact. For each kind there is a dearest roll of those whose longest it is.
 *
 * Example: a roll of 10, any number of kinds of 6 worth 6 and of 4 worth 5: 4 + 4 with a worth of 10 is beaten by
 * 6 + 4 with 11.
 */
export function dearestFree(tape: Tape, work: Work): FindDearest {
  const { kinds } = tape;
  const { capacity } = tape.lanes[0]!;
  const finest = kinds.reduce((measure, { length }) => greatestCommonDivisor(measure, length), 0) || 1;
  const measure = Math.max(finest, ceilDivide(capacity, MOST_PLACES));
  const places = floorDivide(capacity, measure);
  const width = places + 1;
  const sizes = Int32Array.from(kinds, ({ length }) => floorDivide(length, measure));
  /** By kind and places left: no more than this can be had from the kind and those after it. */
  let table = new Float64Array(width);

  const fill = (ranks: readonly number[], duals: ArrayLike<number>, limits: ArrayLike<number>): void => {
    if (table.length < (ranks.length + 1) * width) table = new Float64Array((ranks.length + 1) * width);
    table.fill(0, ranks.length * width, (ranks.length + 1) * width);
    let steps = 0;
    for (let index = ranks.length - 1; index >= 0; index -= 1) {
      const rank = ranks[index]!;
      const start = index * width;
      table.copyWithin(start, start + width, start + 2 * width);
      const row = table.subarray(start, start + width);
      const size = sizes[rank]!;
      const bundles = size === 0 ? [{ copies: mostOf(rank, limits), isAnyNumber: false }] : bundlesOf(limits[rank]!, floorDivide(places, size));
      for (const { copies, isAnyNumber } of bundles) takeBundle(row, copies * size, copies * duals[rank]!, isAnyNumber);
      steps += bundles.length * width;
    }
    work.spend(steps);
  };
  const ranksOf = (duals: ArrayLike<number>, limits: ArrayLike<number>): readonly number[] => kinds.map(({ rank }) => rank).filter((rank) => duals[rank]! > 0 && limits[rank]! > 0);
  const mostOf = (rank: number, limits: ArrayLike<number>, room = capacity): number => Math.min(limits[rank]!, floorDivide(room, kinds[rank]!.length));
  const placesIn = (length: number): number => floorDivide(length, measure);

  /** The dearest roll whose longest kind is the one at `first`, if it counts for more than `known`; not exact where it was given up. */
  const dearestFrom = (first: number, ranks: readonly number[], duals: ArrayLike<number>, limits: ArrayLike<number>, known: number): { readonly worth: number; readonly order: readonly number[]; readonly isExact: boolean } => {
    let worth = known;
    let best: readonly number[] = [];
    let choices = 0;
    const taken: number[] = [];
    const take = (index: number, left: number, sum: number): void => {
      if (sum > worth) {
        worth = sum;
        best = [...taken];
      }
      if (index === ranks.length || choices > MOST_CHOICES) return;
      const rank = ranks[index]!;
      const { length } = kinds[rank]!;
      const most = mostOf(rank, limits, left);
      for (let copies = 0; copies < most; copies += 1) taken.push(rank);
      for (let copies = most; copies >= (index === first ? 1 : 0); copies -= 1) {
        const rest = left - copies * length;
        const counted = sum + copies * duals[rank]!;
        choices += 1;
        if (counted + table[(index + 1) * width + placesIn(rest)]! > worth) take(index + 1, rest, counted);
        if (copies > 0) taken.pop();
      }
    };
    take(first, capacity, 0);
    work.spend(60 * choices);
    return { worth, order: best, isExact: choices <= MOST_CHOICES };
  };

  return {
    scales: measure === finest ? [FINEST_SCALE] : COARSE_SCALES,
    rest(duals) {
      const anyNumber = new Float64Array(kinds.length).fill(Infinity);
      fill(ranksOf(duals, anyNumber), duals, anyNumber);
      const most = table.slice(0, width);
      return (_, end) => most[placesIn(capacity - end)]!;
    },
    mostOverAll(duals) {
      const anyNumber = new Float64Array(kinds.length).fill(Infinity);
      const ranks = ranksOf(duals, anyNumber);
      fill(ranks, duals, anyNumber);
      let most = 0;
      for (let first = 0; first < ranks.length; first += 1) {
        const dearest = dearestFrom(first, ranks, duals, anyNumber, most);
        if (!dearest.isExact) return null;
        most = dearest.worth;
      }
      return most;
    },
    within({ duals, wanted, above, surely, enough }): Dearest {
      const ranks = ranksOf(duals, wanted);
      fill(ranks, duals, wanted);
      const firsts = ranks
        .map((rank, first) => ({ first, most: duals[rank]! + table[first * width + Math.max(0, places - sizes[rank]!)]! }))
        .sort((one, other) => other.most - one.most || one.first - other.first);
      const rolls: { readonly worth: number; readonly roll: Roll }[] = [];
      let most = surely;
      let isExact = true;
      for (const { first } of firsts) {
        if (rolls.length >= enough) break;
        const dearest = dearestFrom(first, ranks, duals, wanted, rolls.length > 0 ? above : Math.min(most, above));
        if (dearest.order.length > 0 && dearest.worth > above) rolls.push({ worth: dearest.worth, roll: { lane: 0, order: dearest.order } });
        most = Math.max(most, dearest.worth);
        isExact &&= dearest.isExact;
      }
      if (rolls.length === 0) return { rolls: [], most: isExact ? most : null };
      return { rolls: rolls.sort((one, other) => other.worth - one.worth).map(({ roll }) => roll), most: null };
    },
  };
}

/** So many copies of a kind, taken together or not at all; or one copy, taken again and again. */
interface Bundle {
  readonly copies: number;
  readonly isAnyNumber: boolean;
}

/** Bundles of 1, 2, 4 ... and a rest make up every number up to what is wanted, each taken once. */
function bundlesOf(wanted: number, most: number): readonly Bundle[] {
  if (wanted >= most) return [{ copies: 1, isAnyNumber: true }];
  const bundles: Bundle[] = [];
  for (let left = wanted, copies = 1; left > 0; copies *= 2) {
    bundles.push({ copies: Math.min(copies, left), isAnyNumber: false });
    left -= copies;
  }
  return bundles;
}

function takeBundle(row: Float64Array, size: number, worth: number, isAnyNumber: boolean): void {
  if (isAnyNumber) for (let room = size; room < row.length; room += 1) row[room] = Math.max(row[room]!, worth + row[room - size]!);
  else for (let room = row.length - 1; room >= size; room -= 1) row[room] = Math.max(row[room]!, worth + row[room - size]!);
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other);
}
