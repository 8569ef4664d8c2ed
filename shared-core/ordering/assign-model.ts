import { ceilDivide, floorDivide } from '../units/index.ts';
import type { Budget } from './assign-budget.ts';
import type { AssignmentProblem } from './assign-problem.ts';

/** What a unit counts for; no roll gives more than `worth`. */
export interface Scale {
  readonly values: readonly number[];
  readonly worth: number;
}

/** Units that hang together or not at all, because they share rooms: from `first` up to, not including, `end`. */
export interface Group {
  readonly first: number;
  readonly end: number;
  readonly rooms: number;
}

export interface ModelRun {
  readonly inHand: number;
  /** The most rolls that can be cut from it: in hand, and bought within the offer. */
  readonly most: number;
  /** Runs of one number have the same in hand and on offer, and nothing is pinned to them; -1 where nothing is like it. */
  readonly likeness: number;
}

/**
 * The problem in an order of its own, the largest units first, so that the order in which rooms were typed decides only
 * between rooms that are alike. Units that can never hang are left out.
 */
export interface Model {
  readonly isAdditive: boolean;
  /** The unit's number in the problem. */
  readonly typed: readonly number[];
  readonly pins: readonly (number | null)[];
  /** Units of one number are alike to every scale and hang alone; -1 where nothing is like it. */
  readonly kinds: readonly number[];
  readonly groupOf: readonly number[];
  readonly groups: readonly Group[];
  /** The first is the sharpest for all units together; where the form is additive it is exact, and the only one. */
  readonly scales: readonly Scale[];
  /** What a unit counts for where one is only guessed at: the first scale, fitted to what all units take together, or where there is none the rolls it takes alone. */
  readonly size: Scale;
  readonly runs: readonly ModelRun[];
  /** Asks for a cutting of units in rising order, once for each set. */
  readonly count: (units: readonly number[]) => number;
  /** The answer for a set that was asked about. */
  readonly known: (units: readonly number[]) => number | undefined;
  readonly bought: (rolls: number) => number;
}

/**
 * Reads a problem: which units hang together, what each run can give, and the scales.
 *
 * Example: units of 3 and 5 rolls: the second comes first; of a run with 2 in hand and 5 on offer in doubles 6 can be had.
 */
export function modelOf(problem: AssignmentProblem, budget: Budget): Model {
  const bought = remembered(problem.bought);
  const pinned = new Set(problem.units.map(({ run }) => run));
  const runs = readRuns(problem, pinned, bought);
  const scales = readScales(problem);
  const sharpest = scales[0]!;
  const groups = groupUnits(problem).filter(({ units }) => units.every((unit) => canHang(problem, runs, scales, unit)));
  const sizeOf = (units: readonly number[]) => units.reduce((sum, unit) => sum + sharpest.values[unit]!, 0);
  const bySize = (one: number, other: number) => sharpest.values[other]! - sharpest.values[one]! || (problem.units[one]!.run ?? -1) - (problem.units[other]!.run ?? -1) || one - other;
  const ordered = groups
    .map(({ units, rooms }) => ({ units: units.toSorted(bySize), rooms, size: sizeOf(units) }))
    .sort((one, other) => other.size - one.size || other.units.length - one.units.length || other.rooms - one.rooms || compareKinds(problem, scales, one.units[0]!, other.units[0]!) || one.units[0]! - other.units[0]!);
  const typed = ordered.flatMap(({ units }) => units);
  const ends = ordered.map((_, index) => ordered.slice(0, index + 1).reduce((sum, { units }) => sum + units.length, 0));
  const inOrder = scales.map(({ values, worth }) => ({ values: typed.map((unit) => values[unit]!), worth }));
  const answers = new Map<string, number>();
  const count = (units: readonly number[]): number => {
    if (units.length === 0) return 0;
    const key = units.join(' ');
    const before = answers.get(key);
    if (before !== undefined) return before;
    budget.cut(units.length);
    const rolls = problem.count(units.map((unit) => typed[unit]!).sort((one, other) => one - other));
    answers.set(key, rolls);
    return rolls;
  };
  const isBlind = sharpest.values.every((value) => value === 0);
  return {
    isAdditive: problem.isAdditive,
    typed,
    pins: typed.map((unit) => problem.units[unit]!.run ?? null),
    kinds: kindsOf(problem, scales, ordered),
    groupOf: ordered.flatMap(({ units }, group) => units.map(() => group)),
    groups: ordered.map(({ units, rooms }, index) => ({ first: ends[index]! - units.length, end: ends[index]!, rooms })),
    scales: inOrder,
    size: problem.isAdditive ? inOrder[0]! : isBlind ? { values: typed.map((_, unit) => count([unit])), worth: 1 } : fitted(inOrder[0]!, count(typed.map((_, unit) => unit))),
    runs,
    count,
    known: (units) => answers.get(units.join(' ')),
    bought,
  };
}

/** A scale by which all units together count for as many rolls as they take, half a roll of the last one left over. */
function fitted({ values, worth }: Scale, rolls: number): Scale {
  const all = values.reduce((sum, value) => sum + value, 0);
  return rolls <= ceilDivide(all, worth) || all === 0 ? { values, worth } : { values, worth: Math.max(1, floorDivide(2 * all, 2 * rolls - 1)) };
}

function remembered(ask: (rolls: number) => number): (rolls: number) => number {
  const known = new Map<number, number>();
  return (rolls) => {
    if (rolls <= 0) return 0;
    const before = known.get(rolls);
    if (before !== undefined) return before;
    const answer = ask(rolls);
    known.set(rolls, answer);
    return answer;
  };
}

function readRuns({ runs }: AssignmentProblem, pinned: ReadonlySet<number | undefined>, bought: (rolls: number) => number): readonly ModelRun[] {
  const likenesses = new Map<string, number>();
  return runs.map((run, index) => {
    const inHand = Math.max(0, run.inHand);
    const offered = Math.max(0, run.offered);
    let [least, most] = [0, offered];
    while (least < most) {
      const middle = ceilDivide(least + most, 2);
      if (bought(middle) <= offered) least = middle;
      else most = middle - 1;
    }
    const key = `${inHand} ${least}`;
    if (!likenesses.has(key)) likenesses.set(key, likenesses.size);
    return { inHand, most: inHand + least, likeness: pinned.has(index) ? -1 : likenesses.get(key)! };
  });
}

/** The scales that are whole, the sharpest for all units together first; one that says nothing where there is none. */
function readScales({ units, bounds, isAdditive, count }: AssignmentProblem): readonly Scale[] {
  const whole = bounds.filter(({ values, worth }) => values.length === units.length && Number.isSafeInteger(worth) && worth > 0 && values.every((value) => Number.isSafeInteger(value) && value >= 0));
  if (isAdditive) {
    // Each is a bound and one of them exact, so the greatest for each unit is.
    const exact = whole.filter(({ worth }) => worth === 1);
    return [{ values: units.map((_, unit) => (exact.length > 0 ? Math.max(...exact.map(({ values }) => values[unit]!)) : count([unit]))), worth: 1 }];
  }
  const rolls = ({ values, worth }: Scale) => ceilDivide(values.reduce((sum, value) => sum + value, 0), worth);
  const sharpestFirst = whole.toSorted((one, other) => rolls(other) - rolls(one));
  return sharpestFirst.length > 0 ? sharpestFirst : [{ values: units.map(() => 0), worth: 1 }];
}

/** Units that share a room hang together. A unit without a room hangs nothing and is left out. */
function groupUnits({ units }: AssignmentProblem): readonly { readonly units: readonly number[]; readonly rooms: number }[] {
  const leader = units.map((_, unit) => unit);
  const find = (unit: number): number => (leader[unit] === unit ? unit : (leader[unit] = find(leader[unit]!)));
  const firstOf = new Map<number, number>();
  units.forEach(({ rooms }, unit) => {
    for (const room of rooms) {
      const first = firstOf.get(room);
      if (first === undefined) firstOf.set(room, unit);
      else leader[find(unit)] = find(first);
    }
  });
  const members = new Map<number, { readonly units: number[]; readonly rooms: Set<number> }>();
  units.forEach(({ rooms }, unit) => {
    if (rooms.length === 0) return;
    const group = members.get(find(unit)) ?? { units: [], rooms: new Set() };
    members.set(find(unit), group);
    group.units.push(unit);
    for (const room of rooms) group.rooms.add(room);
  });
  return [...members.values()].map((group) => ({ units: group.units, rooms: group.rooms.size }));
}

function canHang({ units }: AssignmentProblem, runs: readonly ModelRun[], scales: readonly Scale[], unit: number): boolean {
  const least = Math.max(...scales.map(({ values, worth }) => ceilDivide(values[unit]!, worth)));
  const { run } = units[unit]!;
  return run === undefined ? runs.some(({ most }) => least <= most) : run in runs && least <= runs[run]!.most;
}

function compareKinds({ units }: AssignmentProblem, scales: readonly Scale[], one: number, other: number): number {
  for (const { values } of scales) if (values[one] !== values[other]) return values[other]! - values[one]!;
  return (units[one]!.run ?? -1) - (units[other]!.run ?? -1);
}

function kindsOf({ units: typed }: AssignmentProblem, scales: readonly Scale[], groups: readonly { readonly units: readonly number[]; readonly rooms: number }[]): readonly number[] {
  const kinds = new Map<string, number>();
  return groups.flatMap(({ units, rooms }) => {
    if (units.length > 1) return units.map(() => -1);
    const key = [rooms, typed[units[0]!]!.run ?? 'any', ...scales.map(({ values }) => values[units[0]!]!)].join(' ');
    if (!kinds.has(key)) kinds.set(key, kinds.size);
    return [kinds.get(key)!];
  });
}
