import type { AssignmentProblem } from '../../shared-core/ordering/assign-units.ts';

/** In the order of judging: rooms hung (less is better, so below zero), bought, left over, runs used. */
export type Marks = readonly [hung: number, bought: number, leftOver: number, used: number];

export interface Tried {
  readonly runs: readonly (number | null)[];
  readonly marks: Marks;
}

/** Every assignment that the rules allow, written afresh from them so as to share nothing with the search. */
export function everyAssignment(problem: AssignmentProblem): readonly Tried[] {
  const counts = new Map<string, number>();
  const count = (units: readonly number[]) => {
    const key = units.join();
    if (!counts.has(key)) counts.set(key, units.length === 0 ? 0 : problem.count(units));
    return counts.get(key)!;
  };
  const tried: Tried[] = [];
  const choose = (runs: readonly (number | null)[]) => {
    if (runs.length < problem.units.length) {
      const { run } = problem.units[runs.length]!;
      const allowed = run === undefined ? problem.runs.map((_, index) => index) : run in problem.runs ? [run] : [];
      for (const one of [null, ...allowed]) choose([...runs, one]);
      return;
    }
    const marks = marksOf(problem, runs, count);
    if (marks) tried.push({ runs, marks });
  };
  choose([]);
  return tried;
}

/** What an assignment comes to; null where it breaks a rule. */
export function marksOf(problem: AssignmentProblem, runs: readonly (number | null)[], count: (units: readonly number[]) => number = problem.count): Marks | null {
  const rooms = new Set(problem.units.flatMap((unit) => unit.rooms));
  const hangs = (room: number) => problem.units.every((unit, index) => !unit.rooms.includes(room) || runs[index] !== null);
  const hung = [...rooms].filter(hangs);
  const isIdle = (unit: (typeof problem.units)[number]) => unit.rooms.length === 0 || !unit.rooms.every((room) => hung.includes(room));
  if (problem.units.some((unit, index) => runs[index] !== null && isIdle(unit))) return null;
  if (problem.units.some((unit, index) => unit.run !== undefined && runs[index] !== null && runs[index] !== unit.run)) return null;
  let [bought, leftOver, used] = [0, 0, 0];
  for (const [run, { inHand, offered }] of problem.runs.entries()) {
    const units = runs.flatMap((chosen, unit) => (chosen === run ? [unit] : []));
    if (units.length === 0) continue;
    const rolls = count(units);
    const more = problem.bought(Math.max(0, rolls - inHand));
    if (rolls > inHand + offered || more > offered) return null;
    bought += more;
    leftOver += problem.isAdditive ? inHand + more - rolls : inHand;
    used += 1;
  }
  return [-hung.length || 0, bought, leftOver, used];
}

export function compareMarks(one: Marks, other: Marks): number {
  const at = one.findIndex((mark, index) => mark !== other[index]);
  return at < 0 ? 0 : one[at]! - other[at]!;
}

/** The best there is, and each assignment that comes to it. */
export function bestOf(problem: AssignmentProblem): { readonly marks: Marks; readonly all: readonly Tried[] } {
  const tried = everyAssignment(problem);
  const marks = tried.reduce<Marks>((best, one) => (compareMarks(one.marks, best) < 0 ? one.marks : best), [0, 0, 0, 0]);
  return { marks, all: tried.filter((one) => compareMarks(one.marks, marks) === 0) };
}

/** Rolls in packs of one size. */
export function inPacks(pack: number): (rolls: number) => number {
  return (rolls) => rolls + ((pack - (rolls % pack)) % pack);
}

/** A problem in which what units take together is what each takes alone. */
export function additive(needs: readonly number[], facts: Omit<AssignmentProblem, 'count' | 'bounds' | 'isAdditive' | 'bought' | 'units'> & Partial<AssignmentProblem>): AssignmentProblem {
  return {
    units: needs.map((_, room) => ({ rooms: [room] })),
    count: (units) => units.reduce((sum, unit) => sum + needs[unit]!, 0),
    bounds: [{ values: needs, worth: 1 }],
    isAdditive: true,
    bought: inPacks(1),
    ...facts,
  };
}

/** A problem in which what units take together is the sum of hundredths of a roll, rounded up. */
export function pooled(hundredths: readonly number[], facts: Omit<AssignmentProblem, 'count' | 'bounds' | 'isAdditive' | 'bought' | 'units'> & Partial<AssignmentProblem>): AssignmentProblem {
  return {
    units: hundredths.map((_, room) => ({ rooms: [room] })),
    count: (units) => Math.ceil(units.reduce((sum, unit) => sum + hundredths[unit]!, 0) / 100),
    bounds: [{ values: hundredths, worth: 100 }],
    isAdditive: false,
    bought: inPacks(1),
    ...facts,
  };
}
