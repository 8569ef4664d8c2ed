import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenAssumption } from '../../shared-core/base/index.ts';
import { checkCuts, type CuttingProblem, type Effort, planCuts, rollCounter } from '../../shared-core/cutting/index.ts';
import { fitFirst } from '../../shared-core/cutting/first-fit.ts';
import { layTape } from '../../shared-core/cutting/tape.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { falkenauerTriplets, freeMatch, HALF_DROP, johnsonsWorst, manyTypes, smallProblems } from './problems.ts';
import { simulate } from './simulate.ts';
import { shareOf } from '../share-of.ts';

const EFFORTS: readonly Effort[] = ['instant', 'usual', 'patient'];

function firstFitRolls(problem: CuttingProblem): number {
  return fitFirst(layTape(problem)).reduce((sum, { times }) => sum + times, 0);
}

describe('counting rolls alone', () => {
  const goods = { rollLength: 10, repeat: 0, rollStart: 'at-repeat' } as const;

  it('takes 3 rolls of 10 for 3 pieces of 6, and has no answer once the work is over', () => {
    expect(rollCounter(goods, 1_000)([{ length: 6, phase: 0, count: 3 }])).toBe(3);
    expect(rollCounter(goods, 0)([{ length: 6, phase: 0, count: 3 }])).toBeNull();
  });

  it('is what a plan at the instant effort takes', () => {
    const { pieces, ...half } = HALF_DROP;
    expect(rollCounter(half, 1e9)(pieces)).toBe(planCuts(HALF_DROP, 'instant').rollCount);
  });

  it('limits the work of all sets together', () => {
    const { pieces, ...half } = HALF_DROP;
    const count = rollCounter(half, 2_000);
    const answers = Array.from({ length: 100 }, (_, more) => count(pieces.map((type) => ({ ...type, count: type.count + more }))));
    const answered = answers.filter((rolls) => rolls !== null).length;
    expect(answered).toBeGreaterThan(0);
    expect(answered).toBeLessThan(100);
    expect(answers.slice(answered)).toEqual(answers.slice(answered).map(() => null));
  });
});

describe('worked examples', () => {
  it.each(EFFORTS)('alternates a half-drop four to a roll, 5 rolls, proved (%s)', (effort) => {
    const plan = planCuts(HALF_DROP, effort);
    expect(plan).toMatchObject({ rollCount: 5, lowerBound: 5, isProven: true, impossible: [] });
    expect(checkCuts(HALF_DROP, plan)).toEqual([]);
    const [first, second] = plan.rolls[0]!.cuts.map(({ piece }) => piece);
    expect(new Set([first, second])).toEqual(new Set([0, 1]));
    expect(plan.rolls).toEqual([{ times: 5, cuts: [first, second, first, second].map((piece, index) => ({ piece, from: 2_240 * index })) }]);
  });

  it('takes 8 rolls for the half-drop when each roll keeps to one phase, 7 when the left-overs are mixed', () => {
    const alone = HALF_DROP.pieces.map((type) => planCuts({ ...HALF_DROP, pieces: [type] }).rollCount);
    expect(alone).toEqual([4, 4]);
    expect(firstFitRolls(HALF_DROP)).toBe(7);
  });

  it('does not alternate where alternating is worse', () => {
    const pieces = HALF_DROP.pieces.map((type) => ({ ...type, length: 2_500 }));
    const plan = planCuts({ ...HALF_DROP, pieces });
    expect(plan).toMatchObject({ rollCount: 7, isProven: true });
    expect(plan.rolls[0]?.cuts.map((cut) => cut.piece)).toEqual([0, 0, 0]);
  });

  it('takes 6 rolls for 16 strips where the textbook takes 4, and 4 where the start is known', () => {
    const strips = { rollLength: 10_050, repeat: 625, pieces: [{ length: 2_400, phase: 0, count: 16 }] };
    expect(planCuts({ ...strips, rollStart: 'anywhere' })).toMatchObject({ rollCount: 6, lowerBound: 6, isProven: true });
    expect(planCuts({ ...strips, rollStart: 'at-repeat' })).toMatchObject({ rollCount: 4, lowerBound: 4, isProven: true });
  });

  it('proves 9 rolls by count where length says 8', () => {
    const plan = planCuts(freeMatch(10_050, [[2_900, 27]]));
    expect(plan).toMatchObject({ rollCount: 9, lowerBound: 9, certificate: { duals: [1], total: 27, mostPerRoll: 3 } });
  });

  // Rooms worked by hand in handbooks and magazines, rolls of 10.05 m (read).
  it.each([
    [3_000, 34, 12],
    [2_950, 31, 11],
    [3_200, 17, 6],
  ])('plain strips of %i mm: %i strips take %i rolls', (length, strips, rolls) => {
    expect(planCuts(freeMatch(10_050, [[length, strips]]))).toMatchObject({ rollCount: rolls, isProven: true });
  });

  it('names the pieces no roll can be relied on to give, and plans the others', () => {
    const pieces = [
      { length: 901, phase: 0, count: 2 },
      { length: 900, phase: 99, count: 2 },
      { length: 902, phase: 99, count: 2 },
    ];
    const roll = { rollLength: 1_000, repeat: 100, pieces };
    expect(planCuts({ ...roll, rollStart: 'anywhere' })).toMatchObject({ impossible: [0, 2], rollCount: 2, isProven: true });
    expect(planCuts({ ...roll, rollStart: 'at-repeat' })).toMatchObject({ impossible: [2], rollCount: 4, isProven: true });
  });

  it('takes the whole length that is sure and not one unit more', () => {
    const roll = { rollLength: 1_000, repeat: 100, rollStart: 'anywhere' } as const;
    expect(planCuts({ ...roll, pieces: [{ length: 450, phase: 50, count: 1 }, { length: 450, phase: 0, count: 1 }] }).rollCount).toBe(1);
    expect(planCuts({ ...roll, pieces: [{ length: 450, phase: 50, count: 1 }, { length: 451, phase: 0, count: 1 }] }).rollCount).toBe(2);
  });

  it('needs no roll where nothing is wanted', () => {
    expect(planCuts({ ...HALF_DROP, pieces: [] })).toEqual({
      rolls: [],
      rollCount: 0,
      lowerBound: 0,
      isProven: true,
      certificate: { duals: [], total: 0, mostPerRoll: 0, isWithinDemand: false, ruledOut: null },
      impossible: [],
    });
  });

  it('reckons thirty thousand pieces by their types, not one by one', () => {
    const plan = planCuts({ ...HALF_DROP, pieces: HALF_DROP.pieces.map((type) => ({ ...type, count: 15_000 })) });
    expect(plan).toMatchObject({ rollCount: 7_500, isProven: true });
    expect(plan.rolls).toHaveLength(1);
  });

  it('does not run out of stack on a roll of very many short pieces', () => {
    const problem = freeMatch(200_000, [[3, 60_000], [2, 60_000]]);
    expect(checkCuts(problem, planCuts(problem, 'patient'))).toEqual([]);
  });
});

// Johnson's family and Martello and Toth's items recomputed; Falkenauer's (1996) recipe from memory, recomputed.
describe('packing problems from the literature', () => {
  it.each([1, 2, 3])("Johnson's worst family for first-fit-decreasing, m = %i: 11m by it, 9m at best", (m) => {
    const problem = johnsonsWorst(m);
    expect(firstFitRolls(problem)).toBe(11 * m);
    const plan = planCuts(problem);
    expect(plan).toMatchObject({ rollCount: 9 * m, lowerBound: 9 * m });
    expect(checkCuts(problem, plan)).toEqual([]);
  });

  it('Martello and Toth: 3 by length, 4 is the optimum, and proved', () => {
    const problem = freeMatch(100, [[70, 1], [60, 1], [50, 1], [33, 3], [11, 1], [7, 1], [3, 1]]);
    const plan = planCuts(problem);
    expect(plan).toMatchObject({ rollCount: 4, lowerBound: 4, isProven: true });
    expect(checkCuts(problem, plan)).toEqual([]);
  });

  it.each([
    [20, 1],
    [40, 2],
    [83, 3],
    [167, 4],
  ])('Falkenauer: %i triplets (seed %i) take as many rolls, proved', (triplets, seed) => {
    const problem = falkenauerTriplets(triplets, seed);
    const plan = planCuts(problem);
    expect(plan).toMatchObject({ rollCount: triplets, lowerBound: triplets });
    expect(firstFitRolls(problem)).toBeGreaterThan(triplets);
    expect(checkCuts(problem, plan)).toEqual([]);
  });
});

describe('any problem', () => {
  const problems = smallProblems({ rollLength: 120, repeat: 25, types: 8, count: 30 });
  /** A dozen pieces at most, so that every way can be tried. */
  const small = smallProblems({ rollLength: 60, repeat: 16, types: 6, count: 4 }).filter(({ pieces }) => pieces.reduce((sum, { count }) => sum + count, 0) <= 12);

  it('gets a plan that the checker accepts, at every effort', () => {
    fc.assert(
      fc.property(problems, fc.constantFrom(...EFFORTS), (problem, effort) => {
        const plan = planCuts(problem, effort);
        expect(checkCuts(problem, plan)).toEqual([]);
        expect(plan.lowerBound).toBeLessThanOrEqual(plan.rollCount);
      }),
      { numRuns: shareOf(1_000, 200) },
    );
  });

  it('is cut as planned from every start phase', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        expect(simulate(problem, planCuts(problem))).toEqual([]);
      }),
      { numRuns: shareOf(500, 100) },
    );
  });

  it('takes the fewest rolls there are, and proves it', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const plan = planCuts(problem);
        const fewest = fewestRolls(problem);
        expect([plan.rollCount, plan.lowerBound]).toEqual([fewest, fewest]);
        expect(checkCuts(problem, plan)).toEqual([]);
      }),
      { numRuns: shareOf(5_000, 1_000) },
    );
  });

  it('is bounded at the quick effort too, and by no more than it takes', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const plan = planCuts(problem, 'instant');
        const fewest = fewestRolls(problem);
        expect(plan.lowerBound).toBeLessThanOrEqual(fewest);
        expect(plan.rollCount).toBeGreaterThanOrEqual(fewest);
      }),
      { numRuns: shareOf(1_500, 300) },
    );
  });

  it('that is stopped gets the best found so far, with a bound that holds', () => {
    fc.assert(
      fc.property(problems, fc.integer({ min: 0, max: 3 }), (problem, questions) => {
        let asked = 0;
        const plan = planCuts(problem, 'patient', () => (asked += 1) > questions);
        expect(checkCuts(problem, plan)).toEqual([]);
        expect(plan.lowerBound).toBeLessThanOrEqual(plan.rollCount);
        expect(planCuts(problem, 'patient').rollCount).toBeLessThanOrEqual(plan.rollCount);
      }),
      { numRuns: shareOf(300, 60) },
    );
  });

  it('changed in one number is refused by the checker', () => {
    fc.assert(
      fc.property(problems, fc.nat(), fc.constantFrom(1, -1), (problem, place, by) => {
        const plan = planCuts(problem);
        fc.pre(plan.rollCount > 0);
        const { certificate } = plan;
        const type = place % problem.pieces.length;
        const roll = place % plan.rolls.length;
        const { cuts, times } = plan.rolls[roll]!;
        const withRoll = (change: Partial<(typeof plan.rolls)[number]>) => ({ ...plan, rolls: plan.rolls.map((one, index) => (index === roll ? { ...one, ...change } : one)) });
        const changed = [
          { ...plan, rollCount: plan.rollCount + by },
          { ...plan, lowerBound: plan.lowerBound + by },
          { ...plan, isProven: !plan.isProven },
          { ...plan, impossible: plan.impossible.includes(type) ? plan.impossible.filter((other) => other !== type) : [...plan.impossible, type] },
          { ...plan, certificate: { ...certificate, total: certificate.total + by } },
          { ...plan, certificate: { ...certificate, mostPerRoll: certificate.mostPerRoll + by } },
          { ...plan, certificate: { ...certificate, duals: certificate.duals.map((dual, index) => dual + (index === type ? by : 0)) } },
          withRoll({ times: times + by }),
          withRoll({ cuts: cuts.slice(1) }),
          withRoll({ cuts: cuts.map(({ piece, from }, index) => ({ piece: index === 0 ? (piece + 1) % (problem.pieces.length + 1) : piece, from })) }),
          ...(problem.repeat > 1 ? [withRoll({ cuts: cuts.map(({ piece, from }, index) => ({ piece, from: from + (index === cuts.length - 1 ? by : 0) })) })] : []),
        ];
        expect(checkCuts(problem, plan)).toEqual([]);
        expect(changed.flatMap((wrong, index) => (checkCuts(problem, wrong).length > 0 ? [] : [index]))).toEqual([]);
      }),
      { numRuns: shareOf(500, 100) },
    );
  });

  it('takes no more rolls with more effort', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const [instant, usual, patient] = EFFORTS.map((effort) => planCuts(problem, effort).rollCount);
        expect(usual).toBeLessThanOrEqual(instant ?? 0);
        expect(patient).toBeLessThanOrEqual(usual ?? 0);
      }),
      { numRuns: shareOf(200, 40) },
    );
  });

  it('gets the same plan again, and as many rolls when the piece types come in another order', () => {
    fc.assert(
      fc.property(
        problems.chain((problem) => fc.tuple(fc.constant(problem), fc.shuffledSubarray([...problem.pieces], { minLength: problem.pieces.length }))),
        ([problem, shuffled]) => {
          const plan = planCuts(problem);
          expect(planCuts(structuredClone(problem))).toEqual(plan);
          const other = planCuts({ ...problem, pieces: shuffled });
          expect([other.rollCount, other.lowerBound]).toEqual([plan.rollCount, plan.lowerBound]);
        },
      ),
      { numRuns: shareOf(300, 60) },
    );
  });

  it('gives every piece wanted exactly once', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const plan = planCuts(problem);
        const given = problem.pieces.map((_, piece) => plan.rolls.reduce((sum, roll) => sum + roll.times * roll.cuts.filter((cut) => cut.piece === piece).length, 0));
        expect(given).toEqual(problem.pieces.map(({ count }, piece) => (plan.impossible.includes(piece) ? 0 : count)));
      }),
    );
  });

  it.each([
    [0, 'anywhere'],
    [640, 'anywhere'],
    [640, 'at-repeat'],
  ] as const)('of a hundred types and 1,200 pieces takes the fewest rolls there are (repeat %i, %s)', (repeat, rollStart) => {
    const problem = manyTypes(repeat, rollStart);
    const plan = planCuts(problem);
    expect(checkCuts(problem, plan)).toEqual([]);
    expect(simulate(problem, plan)).toEqual([]);
    expect(plan.isProven).toBe(true);
  });
});

describe('very many pieces', () => {
  it('of lengths without a common measure are proved too', () => {
    const problem = freeMatch(3_216_001, [[831_997, 4_000], [768_043, 3_000], [611_953, 5_000], [402_601, 900], [96_769, 2_500]]);
    const plan = planCuts(problem);
    expect(plan.isProven).toBe(true);
    expect(checkCuts(problem, plan)).toEqual([]);
  });

  it('do not run out of stack where plan and bound do not meet', () => {
    const problem = freeMatch(160_000, [[149_440, 12], [96_960, 1_000_000], [82_720, 400], [61_920, 1_000_000], [54_719, 1], [39_840, 2], [35_679, 457], [33_120, 302], [31_680, 9], [19_040, 131], [2_880, 24]]);
    expect(checkCuts(problem, planCuts(problem))).toEqual([]);
  });
});

describe('very many kinds', () => {
  it('are cut within the budget, though not proved, from fewer rolls than first-fit-decreasing takes', () => {
    const pieces = Array.from({ length: 320 }, (_, index) => ({ length: 110_000 + ((index * 7_919) % 900) * 1_000, phase: (index * 5_119) % 166_400, count: 1 }));
    const problem: CuttingProblem = { rollLength: 1_600_000, repeat: 166_400, rollStart: 'anywhere', pieces };
    const plan = planCuts(problem);
    expect(checkCuts(problem, plan)).toEqual([]);
    expect(plan.rollCount).toBeLessThan(firstFitRolls(problem));
  });
});

describe('a problem that breaks the rules is a bug of the caller', () => {
  const [piece] = HALF_DROP.pieces;
  it.each<[string, object]>([
    ['a roll length of 0', { rollLength: 0 }],
    ['a roll length in part units', { rollLength: 10_050.5 }],
    ['a roll length beyond exact numbers', { rollLength: Number.MAX_SAFE_INTEGER }],
    ['a negative repeat', { repeat: -1 }],
    ['a piece of length 0', { pieces: [{ ...piece, length: 0 }] }],
    ['a negative length', { pieces: [{ ...piece, length: -2_230 }] }],
    ['a length that is no number', { pieces: [{ ...piece, length: Number.NaN }] }],
    ['a phase of a whole repeat', { pieces: [{ ...piece, phase: 640 }] }],
    ['a negative phase', { pieces: [{ ...piece, phase: -1 }] }],
    ['a phase in a free match', { repeat: 0, pieces: [{ ...piece, phase: 1 }] }],
    ['half a piece', { pieces: [{ ...piece, count: 0.5 }] }],
    ['a negative count', { pieces: [{ ...piece, count: -1 }] }],
    ['a total beyond exact numbers', { pieces: [{ ...piece, count: 2 ** 50 }] }],
  ])('%s', (_, change) => {
    const problem = { ...HALF_DROP, ...change };
    expect(() => planCuts(problem)).toThrow(BrokenAssumption);
    expect(() => checkCuts(problem, planCuts(HALF_DROP))).toThrow(BrokenAssumption);
  });
});
