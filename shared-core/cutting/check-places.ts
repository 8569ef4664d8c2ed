import type { CuttingProblem } from './problem.ts';
import type { Steps } from './check-steps.ts';

/** Wanted pieces alike in length, phase and what they count for, which no proof has to tell apart. */
export interface Sort {
  readonly length: number;
  readonly phase: number;
  readonly count: number;
  readonly worth: number;
}

/** Groups the wanted pieces into sorts, longest first. */
export function sortPieces(problem: CuttingProblem, wanted: readonly number[], duals: readonly number[]): readonly Sort[] {
  const sorts = new Map<string, Sort>();
  problem.pieces.forEach(({ length, phase }, piece) => {
    const count = wanted[piece] ?? 0;
    const worth = duals[piece] ?? 0;
    const name = `${length} ${phase} ${worth}`;
    if (count > 0) sorts.set(name, { length, phase, worth, count: count + (sorts.get(name)?.count ?? 0) });
  });
  return [...sorts.values()].sort((a, b) => b.length - a.length || a.phase - b.phase || b.worth - a.worth);
}

/** A sort on the places of the tape. */
export interface PlacedSort extends Sort {
  /** Which of the repeat's places its tops take. */
  readonly row: number;
  /** From the place of its top to the first place at or behind its end. */
  readonly jump: number;
}

/** One way for a roll to begin. */
export interface Start {
  readonly place: number;
  /** By sort: the last place of a top with which it still ends within the roll, or one before every place. */
  readonly lastTops: readonly number[];
}

/**
 * The only places of the tape where a top can lie: those at the phase of some sort, numbered along
 * the tape, so many to each repeat. A piece always leads on by the same number of places.
 */
export interface Places {
  readonly sorts: readonly PlacedSort[];
  readonly perRepeat: number;
  readonly starts: readonly Start[];
}

/**
 * Lays out the places for rolls of a problem.
 *
 * A roll that starts at a repeat begins at the tape's first place, and ends at its length. One that
 * starts anywhere begins at its first piece's top, whatever its phase, and can be relied on for its
 * length less a repeat from there: one start for each phase. For a free match the common divisor
 * of all lengths stands in for the repeat: every end is a multiple of it.
 *
 * Example: rolls of 1000 that start at a repeat of 100, pieces of 450 at phase 0 and of 300 at
 * phase 50: places at 0, 50, 100, 150 ...; the first leads on by 9 places, the second by 6; their
 * last tops are places 10 (at 500) and 13 (at 650).
 */
export function layPlaces({ rollLength, repeat, rollStart }: CuttingProblem, sorts: readonly Sort[]): Places {
  const step = repeat > 0 ? repeat : sorts.reduce((divisor, { length }) => commonDivisor(divisor, length), 0);
  const phases = [...new Set(sorts.map(({ phase }) => phase))].sort((a, b) => a - b);
  const perRepeat = phases.length;
  const firstPlaceFrom = (position: number): number => {
    const within = position % step;
    const row = phases.findIndex((phase) => phase >= within);
    return ((position - within) / step) * perRepeat + (row < 0 ? perRepeat : row);
  };
  const placed = sorts.map((sort): PlacedSort => {
    const row = phases.indexOf(sort.phase);
    return { ...sort, row, jump: firstPlaceFrom(sort.phase + sort.length) - row };
  });
  const startWith = (place: number, end: number): Start => ({
    place,
    lastTops: placed.map(({ row, phase, length }) => {
      const room = end - phase - length;
      return room < 0 ? -1 : ((room - (room % step)) / step) * perRepeat + row;
    }),
  });
  const starts = rollStart === 'at-repeat' || repeat === 0 ? [startWith(0, rollLength)] : phases.map((phase, row) => startWith(row, phase + rollLength - repeat));
  return { sorts: placed, perRepeat, starts };
}

/** Each place takes memory too, which the steps have to keep within reason. */
const STEPS_OF_A_PLACE = 4;

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/**
 * By place: the most that pieces cut from there on can count for, as many of a sort as there is
 * room for; null where it takes more steps than are left. With `musts`, one of that sort is among
 * them, and where there is no room for it the most is -Infinity. Places behind the array hold nothing.
 */
export function mostFromEachPlace({ sorts, perRepeat }: Places, { place, lastTops }: Start, steps: Steps, musts?: { readonly sort: number; readonly others: Float64Array }): Float64Array | null {
  const placeCount = sorts.reduce((most, { jump }, sort) => Math.max(most, (lastTops[sort] ?? -1) + jump + 1), place + 1);
  steps.left -= placeCount * (STEPS_OF_A_PLACE + sorts.length / perRepeat);
  if (steps.left < 0) return null;
  const rows = Array.from({ length: perRepeat }, (_, row) => sorts.flatMap((sort, index) => (sort.row === row ? [index] : [])));
  const worths = sorts.map(({ worth }) => worth);
  const jumps = sorts.map(({ jump }) => jump);
  const nothing = musts === undefined ? 0 : -Infinity;
  const most = new Float64Array(placeCount).fill(nothing);
  for (let here = placeCount - 2; here >= place; here -= 1) {
    let best = most[here + 1] as number;
    for (const sort of rows[here % perRepeat] as readonly number[]) {
      if (here > (lastTops[sort] as number)) continue;
      const behind = here + (jumps[sort] as number);
      const worth = (worths[sort] as number) + ((musts?.sort === sort ? musts.others : most)[behind] as number);
      if (worth > best) best = worth;
    }
    most[here] = best;
  }
  return most;
}
