import type { Sort } from './check-places.ts';
import type { Steps } from './check-steps.ts';

/** Exactly the most, 'less' where it is less than was asked for, 'unsettled' where it takes more steps than are left. */
export type Most = number | 'less' | 'unsettled';

/** Room for the rounding of the one product that is not exact; what is put down too early would be an error, too late is none. */
const ROUNDING = 1 + 2 ** -40;

/**
 * The most that the pieces of a roll without a repeat can count for, if that is `least` or more.
 *
 * Sort by sort it keeps every filling that no other one beats by ending no later and counting for
 * no less. It puts down those that could not come up to `least`, or to more than was found, even
 * if the rest of the roll were filled as densely as the densest of the sorts to come.
 *
 * Example: a roll of 1000; pieces of 400 count for 5 and pieces of 300 for 3: two and none make
 * 10, one and two 11, none and three 9; with one piece of 300 at most, two and none make the most.
 */
export function mostOnAPlainRoll(rollLength: number, sorts: readonly Sort[], isWithinDemand: boolean, least: number, steps: Steps): Most {
  const densestFirst = [...sorts].sort((a, b) => b.worth / b.length - a.worth / a.length);
  let ends: number[] = [0];
  let worths: number[] = [0];
  let most = -1;
  for (const [index, { length, worth, count }] of densestFirst.entries()) {
    const density = densestFirst.slice(index).reduce((densest, sort) => Math.max(densest, sort.worth / sort.length), 0);
    const room = (rollLength - (rollLength % length)) / length;
    const copies = isWithinDemand ? Math.min(count, room) : room;
    for (const batch of batchesOf(copies)) {
      const isBeaten = (end: number, counts: number): boolean => (counts + (rollLength - end) * density) * ROUNDING < Math.max(least, most + 1);
      ({ ends, worths } = addBatch({ ends, worths }, batch * length, batch * worth, rollLength, isBeaten));
      steps.left -= ends.length + 1;
      if (steps.left < 0) return 'unsettled';
      most = Math.max(most, worths.at(-1) ?? -1);
    }
  }
  return most >= least ? most : 'less';
}

/** Batches of which any number of copies up to that many can be put together: 1, 2, 4 and what is left over. */
function batchesOf(copies: number): readonly number[] {
  const batches: number[] = [];
  for (let left = copies; left > 0; left -= batches.at(-1) ?? left) batches.push(Math.min(left, 2 ** batches.length));
  return batches;
}

interface Fillings {
  /** Rising, and so are the worths beside them. */
  readonly ends: number[];
  readonly worths: number[];
}

function addBatch(fillings: Fillings, length: number, worth: number, rollLength: number, isBeaten: (end: number, worth: number) => boolean): Fillings {
  const ends: number[] = [];
  const worths: number[] = [];
  let best = -1;
  const keep = (end: number, counts: number): void => {
    if (counts <= best || end > rollLength || isBeaten(end, counts)) return;
    best = counts;
    ends.push(end);
    worths.push(counts);
  };
  let without = 0;
  let added = 0;
  const count = fillings.ends.length;
  while (without < count || added < count) {
    const endWithout = fillings.ends[without] ?? Infinity;
    const endAdded = (fillings.ends[added] ?? Infinity) + length;
    // Of two that end alike the one that counts for more has to come first, or both would be kept.
    const isWithoutNext = endWithout < endAdded || (endWithout === endAdded && (fillings.worths[without] ?? 0) >= (fillings.worths[added] ?? 0) + worth);
    if (isWithoutNext) keep(endWithout, fillings.worths[without++] ?? 0);
    else keep(endAdded, (fillings.worths[added++] ?? 0) + worth);
  }
  return { ends, worths };
}
