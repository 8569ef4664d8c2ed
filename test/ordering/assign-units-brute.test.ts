import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assignUnits, type AssignmentProblem } from '../../shared-core/ordering/assign-units.ts';
import { additive, bestOf, inPacks, type Marks, marksOf, pooled } from './assign-brute.ts';

const MOST_UNITS = 6;
const MOST_RUNS = 4;

/** Rooms of one unit each, but for some that are tied to another and some that hang in parts. */
const units = fc.array(fc.record({ kind: fc.constantFrom('room', 'room', 'room', 'room', 'tied', 'part', 'both'), pin: fc.option(fc.nat(MOST_RUNS - 1), { freq: 4 }) }), { minLength: 1, maxLength: MOST_UNITS }).map((all) =>
  all.map(({ kind, pin }, index) => {
    const rooms = kind === 'tied' ? [index, index + 100] : kind === 'part' ? [Math.max(0, index - 1)] : kind === 'both' ? [index, Math.max(0, index - 1)] : [index];
    return pin === null ? { rooms } : { rooms, run: pin };
  }),
);
const runs = fc.array(fc.record({ inHand: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 12 })), packs: fc.nat(10) }), { minLength: 0, maxLength: MOST_RUNS });
const pack = fc.constantFrom(1, 1, 2, 3, 6);
const facts = fc.record({ units, runs, pack }).map(({ units: all, runs: stock, pack: size }) => ({
  units: all,
  runs: stock.map(({ inHand, packs }) => ({ inHand, offered: Math.floor(packs / size) * size })),
  bought: inPacks(size),
}));
const needs = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: MOST_UNITS, maxLength: MOST_UNITS });

function expectBest(problem: AssignmentProblem): void {
  const asked = new Set<string>();
  const assignment = assignUnits({
    ...problem,
    count(set) {
      expect(asked.has(set.join()), `${set.join()} is asked once`).toBe(false);
      asked.add(set.join());
      return problem.count(set);
    },
  });
  const marks = marksOf(problem, assignment.runs);
  expect(marks).toEqual(bestOf(problem).marks);
  const { hung, bought, leftOver } = assignment.score;
  expect([-hung || 0, bought, leftOver]).toEqual(marks!.slice(0, 3) satisfies readonly number[] as unknown as Marks);
  expect(assignment.isProven).toBe(true);
}

describe('as trying everything does', () => {
  test('where each room takes what it takes alone', () => {
    fc.assert(fc.property(facts, needs, (some, rolls) => expectBest(additive(rolls.slice(0, some.units.length), some))), { numRuns: 500 });
  });

  test('where rooms are cut together, and a set takes its hundredths rounded up', () => {
    fc.assert(fc.property(facts, fc.array(fc.integer({ min: 0, max: 900 }), { minLength: MOST_UNITS, maxLength: MOST_UNITS }), (some, parts) => expectBest(pooled(parts.slice(0, some.units.length), some))), { numRuns: 300 });
  });

  test('where a set sometimes takes more than its bound says', () => {
    fc.assert(
      fc.property(facts, fc.array(fc.integer({ min: 1, max: 900 }), { minLength: MOST_UNITS, maxLength: MOST_UNITS }), fc.nat(60), fc.boolean(), (some, parts, loose, isBlind) => {
        // By length and by number, of which the bounds know one or none: a roll gives 100 of the length or four pieces.
        const lengths = parts.slice(0, some.units.length);
        const pieces = lengths.map((length, unit) => 1 + ((length * 7 + unit) % 9));
        const sum = (of: readonly number[], set: readonly number[]) => set.reduce((total, unit) => total + of[unit]!, 0);
        const problem = pooled(lengths, { ...some, count: (set) => Math.max(Math.ceil(sum(lengths, set) / 100), Math.ceil(sum(pieces, set) / 4)), bounds: isBlind ? [] : [{ values: lengths, worth: 100 + loose }] });
        expectBest(problem);
      }),
      { numRuns: 300 },
    );
  });
});
