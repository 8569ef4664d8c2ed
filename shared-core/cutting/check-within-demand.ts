import { mostFromEachPlace, type PlacedSort, type Places, type Start } from './check-places.ts';
import type { Most } from './check-plain-roll.ts';
import type { Steps } from './check-steps.ts';

/**
 * The most that the pieces of a roll can count for that holds no more of a sort than is wanted, if that is `least` or more.
 *
 * Finds the best roll without regard to demand. As long as it holds too many of some sorts, those
 * are counted in the next search; the first best roll within demand is then the best of all that are.
 */
export function mostWithinDemandOnPlaces(places: Places, least: number, tapeSteps: Steps, steps: Steps): Most {
  const counted = new Set<number>();
  let most: Most = 'less';
  let wanted = least;
  for (const start of places.starts) {
    const fromEachPlace = mostFromEachPlace(places, start, tapeSteps);
    if (fromEachPlace === null) return 'unsettled';
    for (;;) {
      const roll = bestRoll(places, start, fromEachPlace, [...counted], wanted, steps);
      if (roll === 'unsettled') return 'unsettled';
      if (roll === null) break;
      const tooMany = places.sorts.flatMap(({ count }, sort) => ((roll.held[sort] ?? 0) > count ? [sort] : []));
      for (const sort of tooMany) counted.add(sort);
      if (tooMany.length > 0) continue;
      most = roll.worth;
      wanted = roll.worth + 1;
      break;
    }
  }
  return most;
}

interface Roll {
  readonly worth: number;
  /** By sort. */
  readonly held: readonly number[];
}

/** By place of the tape and then by what is held of the counted sorts: the most that the pieces before count for. */
type Reached = readonly (Map<number, number> | undefined)[];

/** The best roll that holds no more of the counted sorts than is wanted; null where it does not come up to `least`. */
function bestRoll(places: Places, start: Start, fromEachPlace: Float64Array, counted: readonly number[], least: number, steps: Steps): Roll | null | 'unsettled' {
  const { sorts, perRepeat } = places;
  const holdings = nameHoldings(counted.map((sort) => sorts[sort]?.count ?? 0));
  const digits = sorts.map((_, sort) => counted.indexOf(sort));
  const rows = Array.from({ length: perRepeat }, (_, row) => sorts.flatMap((sort, index) => (sort.row === row ? [index] : [])));
  const reached: (Map<number, number> | undefined)[] = [];
  const reach = (place: number, holding: number, worth: number): void => {
    if (worth + (fromEachPlace[place] ?? 0) < least) return;
    const here = (reached[place] ??= new Map<number, number>());
    // Holding none of them leaves every way open that another holding does.
    if (worth > (here.get(holding) ?? -1) && (holding === 0 || worth > (here.get(0) ?? -1))) here.set(holding, worth);
  };
  reach(start.place, 0, 0);
  let best: { readonly place: number; readonly holding: number; readonly worth: number } | null = null;
  for (let place = start.place; place < fromEachPlace.length; place += 1) {
    for (const [holding, worth] of reached[place] ?? []) {
      if (worth >= least && worth > (best?.worth ?? -1)) best = { place, holding, worth };
      reach(place + 1, holding, worth);
      for (const sort of rows[place % perRepeat] ?? []) {
        if (place > (start.lastTops[sort] ?? -1)) continue;
        steps.left -= 1;
        const next = holdings.add(holding, digits[sort] ?? -1);
        const { jump, worth: more } = sorts[sort] as PlacedSort;
        if (next !== null) reach(place + jump, next, worth + more);
      }
      steps.left -= 1;
    }
    if (steps.left < 0) return 'unsettled';
  }
  return best && { worth: best.worth, held: traceBack(places, start, reached, digits, holdings, best) };
}

/** Goes back from the end over cuts and waste that lead to just what was reached. */
function traceBack(
  { sorts, perRepeat }: Places,
  start: Start,
  reached: Reached,
  digits: readonly number[],
  holdings: Holdings,
  end: { readonly place: number; readonly holding: number; readonly worth: number },
): readonly number[] {
  const held = sorts.map(() => 0);
  let { place, holding, worth } = end;
  while (place > start.place) {
    if (reached[place - 1]?.get(holding) === worth) {
      place -= 1;
      continue;
    }
    const sort = sorts.findIndex(({ row, jump, worth: more }, index) => {
      const top = place - jump;
      const before = holdings.remove(holding, digits[index] ?? -1);
      return top >= start.place && top % perRepeat === row && top <= (start.lastTops[index] ?? -1) && before !== null && reached[top]?.get(before) === worth - more;
    });
    const { jump, worth: more } = sorts[sort] as PlacedSort;
    held[sort] = (held[sort] ?? 0) + 1;
    holding = holdings.remove(holding, digits[sort] ?? -1) ?? 0;
    place -= jump;
    worth -= more;
  }
  return held;
}

/** Gives a number to every way of holding some of the counted sorts; 0 holds none of them. */
interface Holdings {
  /** With one more of the counted sort at `digit`, unchanged for -1, null where that is more than is wanted. */
  readonly add: (holding: number, digit: number) => number | null;
  readonly remove: (holding: number, digit: number) => number | null;
}

function nameHoldings(most: readonly number[]): Holdings {
  const named: (readonly number[])[] = [most.map(() => 0)];
  const numbers = new Map<string, number>([[named[0]?.join(' ') ?? '', 0]]);
  const known = new Map<number, number | null>();
  const numberOf = (held: readonly number[]): number => {
    const name = held.join(' ');
    const number = numbers.get(name) ?? named.length;
    if (number === named.length) {
      named.push(held);
      numbers.set(name, number);
    }
    return number;
  };
  const change = (holding: number, digit: number, by: 1 | -1): number | null => {
    const held = [...(named[holding] ?? [])];
    const now = (held[digit] ?? 0) + by;
    if (now < 0 || now > (most[digit] ?? 0)) return null;
    held[digit] = now;
    return numberOf(held);
  };
  const add = (holding: number, digit: number): number | null => {
    if (digit < 0) return holding;
    const key = holding * most.length + digit;
    const before = known.get(key);
    if (before !== undefined) return before;
    const after = change(holding, digit, 1);
    known.set(key, after);
    return after;
  };
  return { add, remove: (holding, digit) => (digit < 0 ? holding : change(holding, digit, -1)) };
}
