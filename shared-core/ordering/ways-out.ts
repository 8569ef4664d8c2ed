import type { Watch } from './known-cuts.ts';
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

/**
 * What could be done so that all rooms hang, the cheapest first: what costs nothing, then the fewest rolls.
 *
 * Shapes: whole rolls. How many more of a run would do is exact for the runs as they are: one fewer would leave a room.
 * Example: run 2214 has 8, bed 1 takes 6 and the hall 4: 2 more of run 2214, or another run with 4.
 */
export function findWaysOut(question: RunQuestion, assigned: readonly (number | null)[], watch?: Watch): readonly WayOut[] {
  const { units, runs } = question;
  const unhung = units.filter((_, unit) => assigned[unit] === null);
  const assign = (changed: Partial<RunQuestion>) => assignRuns({ ...question, ...changed }, watch).runs;
  const hangsAll = (changed: Partial<RunQuestion>) => assign(changed).every((run) => run !== null);
  const most = question.counter.take(units).rollsByRoom + Math.max(...question.sold.map(({ rolls }) => rolls));
  const more = runs.flatMap((run, index): readonly WayOut[] => {
    const withMore = (rolls: number) => runs.map((one, other) => (other === index ? { ...one, offered: one.offered + rolls } : one));
    if (!hangsAll({ runs: withMore(most) })) return [];
    return [{ kind: 'ask-for-more', run: run.run, rolls: leastThat((rolls) => hangsAll({ runs: withMore(rolls) }), most) }];
  });
  const withFurther = (rolls: number) => assign({ runs: [...runs, { run: null, inHand: 0, onOrder: 0, offered: rolls }] });
  const hangsAllWith = (rolls: number) => withFurther(rolls).every((run) => run !== null);
  const fewest = hangsAllWith(most) ? leastThat(hangsAllWith, most) : null;
  // Not always the rooms that are left now: the further run may take a smaller one, whose run then has enough for them.
  const another: readonly WayOut[] = fewest === null ? [] : [{ kind: 'another-run', rolls: fewest, rooms: roomsOf(units.filter((_, unit) => withFurther(fewest)[unit] === runs.length)) }];
  const byRolls = [...more, ...another].toSorted((one, other) => rollsOf(one) - rollsOf(other));
  return [...loosened(question, hangsAll), ...changedAtCorner(question, unhung, assign), ...byRolls];
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

/** Rooms that no run can hang and that hang from two or more where the run may change in a corner. */
function changedAtCorner({ units }: RunQuestion, unhung: readonly Unit[], assign: (changed: Partial<RunQuestion>) => readonly (number | null)[]): readonly WayOut[] {
  return unhung.flatMap((unit): readonly WayOut[] => {
    const [hanging, other] = unit.hangings;
    if (!hanging?.atCorners || other || unit.run !== null) return [];
    const { parts, changes } = hanging.atCorners();
    if (parts.length < 2) return [];
    const others = units.filter((one) => one !== unit);
    const runs = assign({ units: [...others, ...parts.map((part) => ({ ...unit, hangings: [{ ...hanging, parts: [part] }] }))] });
    if (runs.includes(null)) return [];
    const own = runs.slice(others.length);
    return [{ kind: 'change-at-corner', room: hanging.room, walls: changes.filter(({ from, to }) => own[from] !== own[to]).map(({ after }) => after) }];
  });
}

/** The least number of rolls that will do, where `most` does: halved down. */
function leastThat(isEnough: (rolls: number) => boolean, most: number): number {
  let [tooFew, enough] = [0, most];
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
