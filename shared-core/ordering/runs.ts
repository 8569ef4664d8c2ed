import { memoryOf } from '../base/index.ts';
import type { House } from '../house/index.ts';
import type { Watch } from './known-cuts.ts';

/** What there is of one run of a pattern. */
export interface RunStock {
  readonly run: string;
  /** Stock and what was delivered sound. */
  readonly inHand: number;
  /** What can still be had. */
  readonly offered: number;
}

/** A room's rolls from one run, so that no room shows two shades. */
export interface RunAssignment {
  readonly run: string | null;
  readonly rooms: readonly string[];
}

/**
 * The runs of a covering: stock, plus deliveries under its own pattern number less what was damaged, plus offers.
 *
 * In the order in which the facts name them. Example: 3 rolls of 2207 in stock and a delivery of 8 of 2214 with
 * 1 damaged are 2207 with 3 and 2214 with 7 in hand.
 */
export function findRuns(house: House, covering: string): readonly RunStock[] {
  const runs = new Map<string, { inHand: number; offered: number }>();
  const at = (run: string) => {
    const entry = runs.get(run) ?? { inHand: 0, offered: 0 };
    runs.set(run, entry);
    return entry;
  };
  const patternNumber = house.coverings.find(({ id }) => id === covering)?.patternNumber;
  for (const entry of house.stock) if (entry.covering === covering) at(entry.run).inHand += entry.rolls;
  for (const entry of house.deliveries) {
    if (entry.covering === covering && (patternNumber === undefined || entry.patternNumber === patternNumber)) {
      at(entry.run).inHand += entry.rolls - entry.damaged;
    }
  }
  for (const entry of house.offers) if (entry.covering === covering) at(entry.run).offered += entry.rolls;
  return [...runs].map(([run, { inHand, offered }]) => ({ run, inHand, offered }));
}

/** More rooms and runs than this many distinct cuttings tell apart are assigned as well as that many allow. */
const MOST_CUTTINGS = 3_000;

interface Score {
  readonly hung: number;
  readonly bought: number;
  readonly leftOver: number;
}

/** The assignments that were searched to their end. */
const searched = memoryOf<readonly RunAssignment[]>(400);

/**
 * Assigns rooms to runs: as many rooms as possible, then the fewest rolls bought, then the least left over.
 *
 * Shapes: `rooms` are ids, `countRolls` gives the rolls that a set of rooms needs when cut together. The search goes
 * through the rooms from the largest, every run for each, and stops after a fixed number of cuttings, so that the same
 * facts always give the same answer. Rooms that no run can hang come in a last assignment with `run: null`.
 * Once a watch is stopped, what was found before for the same rooms and runs stands where the runs still have enough,
 * else the first assignment that is met.
 * Example: rooms of 6 and 3 rolls, run 2214 with 8 and run 2207 with 3: the first from 2214, the second from 2207.
 */
export function assignRuns(rooms: readonly string[], runs: readonly RunStock[], countRolls: (rooms: readonly string[]) => number, watch?: Watch): readonly RunAssignment[] {
  const asked = JSON.stringify([rooms, runs]);
  const known = new Map<string, number>();
  const count = (indexes: readonly number[]): number => {
    const key = indexes.join(' ');
    const before = known.get(key);
    if (before !== undefined) return before;
    const rolls = countRolls(indexes.map((index) => rooms[index]!));
    known.set(key, rolls);
    return rolls;
  };
  const stoodBefore = (): readonly RunAssignment[] | undefined => {
    const before = watch?.isStopped() ? searched.recall(asked) : undefined;
    const hasEnough = (assignment: RunAssignment) => runs.every(({ run, inHand, offered }) => run !== assignment.run || count(assignment.rooms.map((room) => rooms.indexOf(room))) <= inHand + offered);
    return before?.every(hasEnough) ? before : undefined;
  };
  const atOnce = stoodBefore();
  if (atOnce) return atOnce;
  const alone = rooms.map((_, index) => count([index]));
  const order = rooms.map((_, index) => index).sort((one, other) => alone[other]! - alone[one]! || one - other);

  let best: { readonly choice: readonly (number | null)[]; readonly score: Score } | null = null;
  const choice: (number | null)[] = rooms.map(() => null);
  const members = (run: number) => choice.flatMap((chosen, index) => (chosen === run ? [index] : []));
  const judge = (hung: number) => {
    const used = runs.map((run, index) => ({ run, rooms: members(index) })).filter((entry) => entry.rooms.length > 0);
    const bought = used.reduce((sum, { run, rooms: inRun }) => sum + Math.max(0, count(inRun) - run.inHand), 0);
    const leftOver = used.reduce((sum, { run, rooms: inRun }) => sum + Math.max(0, run.inHand - count(inRun)), 0);
    const score = { hung, bought, leftOver };
    if (!best || isBetter(score, best.score)) best = { choice: [...choice], score };
  };
  const visit = (depth: number, hung: number): void => {
    if (best && hung + (order.length - depth) < best.score.hung) return;
    if (best && (known.size > MOST_CUTTINGS || watch?.isStopped())) return;
    const index = order[depth];
    if (index === undefined) {
      judge(hung);
      return;
    }
    runs.forEach((run, runIndex) => {
      choice[index] = runIndex;
      if (count(members(runIndex)) <= run.inHand + run.offered) visit(depth + 1, hung + 1);
    });
    choice[index] = null;
    visit(depth + 1, hung);
  };
  visit(0, 0);

  const chosen = (best as { readonly choice: readonly (number | null)[] } | null)?.choice ?? choice;
  const inRun = (wanted: number | null) => rooms.filter((_, index) => chosen[index] === wanted);
  const assignments = [...runs.map(({ run }, index) => ({ run, rooms: inRun(index) })), { run: null, rooms: inRun(null) }].filter((assignment) => assignment.rooms.length > 0);
  if (watch?.isStopped()) return stoodBefore() ?? assignments;
  if (watch) searched.remember(asked, assignments);
  return assignments;
}

function isBetter(one: Score, other: Score): boolean {
  return one.hung !== other.hung ? one.hung > other.hung : one.bought !== other.bought ? one.bought < other.bought : one.leftOver < other.leftOver;
}
