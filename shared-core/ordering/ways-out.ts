import { ceilDivide } from '../units/index.ts';
import type { Watch } from './known-cuts.ts';
import type { RunStock } from './ledger.ts';
import { fewestSold } from './packs.ts';
import { assignRuns, type RunQuestion } from './runs.ts';
import type { Unit } from './units.ts';

/** Something that would let every room hang. */
export type WayOut =
  /** Free: rooms that were to match, or that were set to a run, hang from different ones. */
  | { readonly kind: 'untie'; readonly rooms: readonly string[] }
  | { readonly kind: 'choose-otherwise'; readonly rooms: readonly string[] }
  /** The run changes in one room, at the inside corners at the right of these walls. */
  | { readonly kind: 'change-at-corner'; readonly room: string; readonly walls: readonly string[] }
  /** So many more of a run than it is known to have. */
  | { readonly kind: 'ask-for-more'; readonly run: string | null; readonly rolls: number }
  /** One further run with so many rolls, for these rooms; they wait for it. */
  | { readonly kind: 'another-run'; readonly rolls: number; readonly rooms: readonly string[] };

/** Of runs of which more could be asked for only the cheapest are worth it. */
const MOST_ASKED = 3;
/** Of more rooms it is not worked out how few more rolls would do where others change their runs for it. */
const MOST_BISECTED = 100;
/** Of more corners it is not tried which two would do. */
const MOST_PAIRED = 6;
/** Of more rooms that are left a change of run in one of them hardly hangs all. */
const MOST_CORNERED = 2;

/**
 * What could be done so that all rooms hang, the cheapest first: what costs nothing, then the fewest rolls.
 *
 * Shapes: whole rolls. With one fewer of a run, as far as assignments are found, a room would be left.
 * Example: run 2214 has 8, bed 1 takes 6 and the hall 4: 2 more of run 2214, or another run with 4.
 */
export function findWaysOut(question: RunQuestion, assigned: readonly (number | null)[], watch?: Watch): readonly WayOut[] {
  const { units, runs, counter, sold } = question;
  const unhung = units.filter((_, unit) => assigned[unit] === null);
  const assign = (changed: Partial<RunQuestion>) => assignRuns({ ...question, ...changed, care: 'brief' }, watch).runs;
  const hangsAll = (changed: Partial<RunQuestion>) => assign(changed).every((run) => run !== null);
  const isLarge = units.length > MOST_BISECTED;
  const missing = leastOf(question) - runs.reduce((sum, { inHand, onOrder, offered }) => sum + inHand + onOrder + offered, 0);
  const tooFew = Math.max(0, missing - 1);
  // Where all runs together have too few, no other sharing of them hangs all.
  const isShareable = missing <= 0;
  const lacking = runs.map((run, index) => lackingOf(question, run, [...units.filter((_, unit) => assigned[unit] === index), ...unhung]));
  const cheapest = runs.map((_, index) => index).toSorted((one, other) => lacking[one]! - lacking[other]! || one - other);
  const more = cheapest.slice(0, MOST_ASKED).flatMap((index): readonly WayOut[] => {
    const withMore = (rolls: number) => runs.map((one, other) => (other === index ? { ...one, offered: one.offered + rolls } : one));
    // Where the rooms that are left may all hang from it, what it lacks for them will do; else it may not.
    const isFree = unhung.every(({ run }) => run === null || run === runs[index]!.run);
    const most = isFree ? lacking[index]! : counter.take(units).rollsByRoom + largestOf(sold);
    if (!isFree && !hangsAll({ runs: withMore(most) })) return [];
    return [{ kind: 'ask-for-more', run: runs[index]!.run, rolls: isLarge ? most : leastThat((rolls) => hangsAll({ runs: withMore(rolls) }), tooFew, most) }];
  });
  const withFurther = (rolls: number) => assign({ runs: [...runs, furtherRun(rolls)] });
  const isAnyFree = unhung.every(({ run }) => run === null);
  const most = lackingOf(question, furtherRun(0), unhung);
  const fewest = !isAnyFree ? null : isLarge ? most : leastThat((rolls) => withFurther(rolls).every((run) => run !== null), tooFew, most);
  // Not always the rooms that are left now: the further run may take a smaller one, whose run then has enough for them.
  const takers = isLarge ? unhung : units.filter((_, unit) => fewest !== null && withFurther(fewest)[unit] === runs.length);
  const another: readonly WayOut[] = fewest === null ? [] : [{ kind: 'another-run', rolls: fewest, rooms: roomsOf(takers) }];
  const byRolls = [...more, ...another].toSorted((one, other) => rollsOf(one) - rollsOf(other));
  return [...(isShareable ? [...loosened(question, hangsAll), ...(unhung.length > MOST_CORNERED ? [] : changedAtCorner(question, unhung, assign))] : []), ...byRolls];
}

/** Ties and choices that are in the way: those of one unit where that is enough, else all; all rooms hang without them. */
function loosened({ units }: RunQuestion, hangsAll: (changed: Partial<RunQuestion>) => boolean): readonly WayOut[] {
  const letGo = (some: readonly Unit[], loosen: (unit: Unit) => readonly Unit[]) =>
    [...some.map((unit) => [unit]), ...(some.length > 1 ? [some] : [])].find((group) => hangsAll({ units: units.flatMap((unit) => (group.includes(unit) ? loosen(unit) : [unit])) }));
  const tied = letGo(units.filter(({ rooms }) => rooms.length > 1), apart);
  const chosen = letGo(units.filter(({ run, isHung }) => run !== null && !isHung), (unit) => [{ ...unit, run: null }]);
  return [...(tied ? [{ kind: 'untie' as const, rooms: roomsOf(tied) }] : []), ...(chosen ? [{ kind: 'choose-otherwise' as const, rooms: roomsOf(chosen) }] : [])];
}

/** The rooms of a unit one by one; those that only went along are free. */
function apart({ hangings, run, chosen, isHung }: Unit): readonly Unit[] {
  return hangings.map((hanging) => {
    const isChosen = chosen.includes(hanging.room);
    return { rooms: [hanging.room], hangings: [hanging], run: isChosen ? run : null, chosen: isChosen ? [hanging.room] : [], isHung: isChosen && isHung };
  });
}

/** Rooms that no run can hang and that hang from two or more where the run may change: at one corner, at two, or at more. */
function changedAtCorner({ units }: RunQuestion, unhung: readonly Unit[], assign: (changed: Partial<RunQuestion>) => readonly (number | null)[]): readonly WayOut[] {
  return unhung.flatMap((unit): readonly WayOut[] => {
    const [hanging, other] = unit.hangings;
    const { inside, at } = hanging?.corners ?? {};
    if (!hanging || !inside || !at || other || unit.run !== null) return [];
    const others = units.filter((one) => one !== unit);
    const pairs = inside.length > MOST_PAIRED ? [] : inside.flatMap((one, index) => inside.slice(index + 1).map((two) => [one, two]));
    for (const walls of [...inside.map((wall) => [wall]), ...pairs, inside]) {
      const { parts, changes } = at(walls);
      if (parts.length < 2) continue;
      const runs = assign({ units: [...others, ...parts.map((part) => ({ ...unit, hangings: [{ ...hanging, parts: [part] }] }))] });
      if (runs.includes(null)) continue;
      const own = runs.slice(others.length);
      return [{ kind: 'change-at-corner', room: hanging.room, walls: changes.filter(({ from, to }) => own[from] !== own[to]).map(({ after }) => after) }];
    }
    return [];
  });
}

/** No assignment takes fewer rolls in all. */
function leastOf({ units, counter }: RunQuestion): number {
  return Math.max(0, ...counter.bounds(units).map(({ values, worth }) => ceilDivide(values.reduce((sum, value) => sum + value, 0), worth)));
}

/** The rolls that a run lacks, as they are sold, for so many units to hang from it. */
function lackingOf({ counter, sold }: RunQuestion, { inHand, onOrder, offered }: RunStock, units: readonly Unit[]): number {
  const wanted = Math.max(0, counter.take(units).rolls - inHand - onOrder);
  return Math.max(1, fewestSold(sold, wanted)(wanted) - offered);
}

function furtherRun(offered: number): RunStock {
  return { run: null, inHand: 0, onOrder: 0, offered };
}

function largestOf(sold: RunQuestion['sold']): number {
  return Math.max(...sold.map(({ rolls, atLeast }) => rolls * atLeast));
}

/** The least number of rolls that will do, between one that does not and one that does: halved down. */
function leastThat(isEnough: (rolls: number) => boolean, least: number, most: number): number {
  let [tooFew, enough] = [Math.min(least, most - 1), most];
  while (enough - tooFew > 1) {
    const middle = tooFew + (enough - tooFew - ((enough - tooFew) % 2)) / 2;
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

function roomsOf(units: readonly Unit[]): readonly string[] {
  return [...new Set(units.flatMap(({ rooms }) => rooms))];
}

function rollsOf(way: WayOut): number {
  return 'rolls' in way ? way.rolls : 0;
}
