import type { Dearest, FindDearest } from './dearest.ts';
import { ceilDivide, floorDivide, type Roll, type Tape } from './tape.ts';
import type { Work } from './work.ts';

/** So many copies of one kind, taken together or not at all; or, where `isAnyNumber`, one copy taken again and again. */
interface Bundle {
  readonly rank: number;
  readonly copies: number;
  readonly size: number;
  readonly isAnyNumber: boolean;
}

/** Dear rolls are looked for with no more places in a roll than this. */
const MOST_PLACES = 60_000;
/** What is proved takes every place into account, and is given up beyond so many. */
const MOST_FINE_PLACES = 2_000_000;

/**
 * The dearest rolls of a free match, where the order of cutting is all one.
 *
 * Rule: the most that can be cut from each length is kept while the kinds are added one after the other, best worth for
 * their length first: taking a kind once more is worth its price and the most from what is left. A kind of which only
 * a few are wanted is taken in bundles of 1, 2, 4 ... pieces and a rest, each once, which makes up every number up to
 * what is wanted. After each bundle there is a dearest roll of those that hold it.
 *
 * Lengths are counted in the largest measure that all of them are wholes of. Where that makes too many places, dear
 * rolls are looked for in a coarser one, rounded up; what is proved is never rounded.
 *
 * Example: a roll of 10, any number of kinds of 6 worth 6 and of 4 worth 5: 4 + 4 with a worth of 10 is beaten by
 * 6 + 4 with 11.
 */
export function dearestFree(tape: Tape, work: Work): FindDearest {
  const { kinds } = tape;
  const finest = kinds.reduce((measure, { length }) => greatestCommonDivisor(measure, length), 0) || 1;
  const whole = tape.lanes[0]!.capacity;
  const measure = Math.max(finest, ceilDivide(whole, MOST_PLACES));
  const capacity = floorDivide(whole, measure);
  const sizes = Int32Array.from(kinds, ({ length }) => ceilDivide(length, measure));
  const after = new Float64Array(capacity + 1);
  let taken = new Uint8Array(0);

  const fill = (bundles: readonly Bundle[], duals: ArrayLike<number>, each: (index: number, worthWith: number) => void): void => {
    after.fill(0);
    if (taken.length < bundles.length * (capacity + 1)) taken = new Uint8Array(bundles.length * (capacity + 1));
    bundles.forEach(({ rank, copies, size, isAnyNumber }, index) => {
      const worth = duals[rank]! * copies;
      const row = index * (capacity + 1);
      taken.fill(0, row, row + capacity + 1);
      const worthWith = (): number => (size <= capacity ? worth + after[capacity - size]! : 0);
      if (isAnyNumber) {
        for (let room = size; room <= capacity; room += 1) {
          const sum = worth + after[room - size]!;
          if (sum > after[room]!) {
            after[room] = sum;
            taken[row + room] = 1;
          }
        }
        each(index, worthWith());
      } else {
        each(index, worthWith());
        for (let room = capacity; room >= size; room -= 1) {
          const sum = worth + after[room - size]!;
          if (sum > after[room]!) {
            after[room] = sum;
            taken[row + room] = 1;
          }
        }
      }
    });
    work.spend(2 * bundles.length * (capacity + 1));
  };
  const read = (bundles: readonly Bundle[], upTo: number, from: number, into: number[]): readonly number[] => {
    for (let index = upTo, room = from; index >= 0; ) {
      const { rank, copies, size, isAnyNumber } = bundles[index]!;
      if (taken[index * (capacity + 1) + room] === 1) {
        for (let copy = 0; copy < copies; copy += 1) into.push(rank);
        room -= size;
        if (isAnyNumber) continue;
      }
      index -= 1;
    }
    return into.sort((one, other) => one - other);
  };
  const bestFirst = (duals: ArrayLike<number>): readonly number[] =>
    kinds
      .map(({ rank }) => rank)
      .filter((rank) => duals[rank]! > 0)
      .sort((one, other) => duals[other]! * sizes[one]! - duals[one]! * sizes[other]! || one - other);
  const bundlesOf = (rank: number, wanted: number): readonly Bundle[] => {
    const most = floorDivide(capacity, sizes[rank]!);
    const bundle = (copies: number, isAnyNumber: boolean): Bundle => ({ rank, copies, size: copies * sizes[rank]!, isAnyNumber });
    if (wanted >= most) return [bundle(1, true)];
    const bundles: Bundle[] = [];
    let left = wanted;
    for (let copies = 1; left > 0; copies *= 2) {
      bundles.push(bundle(Math.min(copies, left), false));
      left -= Math.min(copies, left);
    }
    return bundles;
  };

  return {
    rest(duals) {
      const places = floorDivide(whole, finest);
      if (places > MOST_FINE_PLACES) return null;
      const most = new Float64Array(places + 1);
      for (const rank of bestFirst(duals)) {
        const size = kinds[rank]!.length / finest;
        for (let room = size; room <= places; room += 1) most[room] = Math.max(most[room]!, duals[rank]! + most[room - size]!);
      }
      work.spend(2 * places * kinds.length);
      return (_, end) => most[floorDivide(whole - end, finest)]!;
    },
    within({ duals, wanted, above, enough }): Dearest {
      const bundles = bestFirst(duals).flatMap((rank) => bundlesOf(rank, wanted[rank]!));
      const withBundle: { readonly index: number; readonly worth: number }[] = [];
      fill(bundles, duals, (index, worth) => {
        if (worth > above) withBundle.push({ index, worth });
      });
      if (withBundle.length === 0) return { rolls: [], most: measure === finest ? after[capacity]! : null };
      withBundle.sort((one, other) => other.worth - one.worth || one.index - other.index);
      const rolls = withBundle.slice(0, enough).map(({ index }): Roll => {
        const { rank, copies, size, isAnyNumber } = bundles[index]!;
        return { lane: 0, order: read(bundles, isAnyNumber ? index : index - 1, capacity - size, Array<number>(copies).fill(rank)) };
      });
      return { rolls, most: null };
    },
  };
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other);
}
