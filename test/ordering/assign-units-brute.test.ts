import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assignUnits, type AssignmentProblem } from '../../shared-core/ordering/assign-units.ts';
import { additive, bestOf, inPacks, marksOf, pooled } from './assign-brute.ts';

const MOST_UNITS = 6;

interface Facts {
  readonly units: AssignmentProblem['units'];
  readonly runs: AssignmentProblem['runs'];
  readonly bought: AssignmentProblem['bought'];
  /** What each unit takes, in hundredths. */
  readonly takes: readonly number[];
}

/** The fewest rolls in packs of 2 and 5. */
const inTwosOrFives = (rolls: number) => (rolls === 1 || rolls === 3 ? rolls + 1 : rolls);
/** A price that makes a dozen cheaper than seven: never less for more, but no pack of one size. */
const byTheDozen = (rolls: number) => (rolls > 6 && rolls < 12 ? 12 : rolls);
const SALES = [inPacks(1), inPacks(1), inPacks(2), inPacks(3), inPacks(6), inTwosOrFives, byTheDozen];

/**
 * Rooms of one unit each, but for some that are tied to another and some that hang in parts or both; some pinned, now and
 * then to a run that there is not. Of what they take the runs have 60 to 130 %, shared out at random, in hand or on offer.
 */
const facts: fc.Arbitrary<Facts> = fc
  .record({
    units: fc.array(fc.record({ kind: fc.constantFrom('room', 'room', 'room', 'room', 'tied', 'part', 'both'), pin: fc.integer({ min: 0, max: 24 }), takes: fc.integer({ min: 0, max: 900 }) }), { minLength: 3, maxLength: MOST_UNITS }),
    weights: fc.array(fc.record({ weight: fc.integer({ min: 0, max: 20 }), inHand: fc.constantFrom(0, 0, 30, 60, 100) }), { minLength: 1, maxLength: 4 }),
    percent: fc.integer({ min: 60, max: 130 }),
    // Offers that are no whole number of packs.
    odd: fc.constantFrom(0, 0, 1, 2),
    sale: fc.nat(SALES.length - 1),
  })
  .map(({ units, weights, percent, odd, sale }) => {
    const bought = SALES[sale]!;
    const all = Math.floor((units.reduce((sum, { takes }) => sum + takes, 0) * percent) / 10_000);
    const whole = Math.max(1, weights.reduce((sum, { weight }) => sum + weight, 0));
    return {
      units: units.map(({ kind, pin }, index) => {
        const before = Math.max(0, index - 1);
        const rooms = kind === 'tied' ? [index, index + 100] : kind === 'part' ? [before] : kind === 'both' ? [index, before] : [index];
        return pin < 5 ? { rooms, run: pin } : { rooms };
      }),
      takes: units.map(({ takes }) => takes),
      runs: weights.map(({ weight, inHand }) => {
        const rolls = Math.floor((all * weight) / whole);
        const stock = Math.floor((rolls * inHand) / 100);
        return { inHand: stock, offered: bought(rolls - stock) + odd };
      }),
      bought,
    };
  });

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
  expect([-hung || 0, bought, leftOver]).toEqual(marks!.slice(0, 3));
  expect(assignment.isProven).toBe(true);
}

const sum = (of: readonly number[], set: readonly number[]) => set.reduce((total, unit) => total + of[unit]!, 0);

describe('as trying everything does', () => {
  test('where each room takes what it takes alone', () => {
    fc.assert(fc.property(facts, ({ takes, ...some }) => expectBest(additive(takes.map((part) => Math.round(part / 100)), some))), { numRuns: 500 });
  });

  test('where many rooms take the same, and some are tied', () => {
    fc.assert(fc.property(facts, ({ takes, ...some }) => expectBest(additive(takes.map((part) => 1 + (part % 3)), { ...some, runs: some.runs.map(({ inHand, offered }) => ({ inHand: inHand % 4, offered: offered % 5 })) }))), { numRuns: 500 });
  });

  test('where rooms are cut together, and a set takes its hundredths rounded up', () => {
    fc.assert(fc.property(facts, ({ takes, ...some }) => expectBest(pooled(takes, some))), { numRuns: 300 });
  });

  test('where a set sometimes takes more than its bounds say', () => {
    fc.assert(
      fc.property(facts, fc.nat(60), fc.boolean(), ({ takes, ...some }, loose, isBlind) => {
        // A roll gives 100 of the length or four pieces; of the pieces no bound knows.
        const pieces = takes.map((length, unit) => 1 + ((length * 7 + unit) % 27));
        expectBest(pooled(takes, { ...some, count: (set) => Math.max(Math.ceil(sum(takes, set) / 100), Math.ceil(sum(pieces, set) / 4)), bounds: isBlind ? [] : [{ values: takes, worth: 100 + loose }] }));
      }),
      { numRuns: 300 },
    );
  });

  test('where two bounds each say what the other does not', () => {
    fc.assert(
      fc.property(facts, ({ takes, ...some }) => {
        const pieces = takes.map((length, unit) => 1 + ((length * 7 + unit) % 27));
        expectBest(pooled(takes, { ...some, count: (set) => Math.max(Math.ceil(sum(takes, set) / 100), Math.ceil(sum(pieces, set) / 4)), bounds: [{ values: takes, worth: 100 }, { values: pieces, worth: 4 }] }));
      }),
      { numRuns: 200 },
    );
  });
});
