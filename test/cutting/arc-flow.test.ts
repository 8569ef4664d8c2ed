import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type CuttingProblem, planCuts } from '../../shared-core/cutting/index.ts';
import { arcFlow } from '../bench/cutting/arc-flow.ts';
import { solveWithHighs } from '../bench/cutting/highs-arc-flow.ts';
import { falkenauerTriplets, freeMatch, HALF_DROP, johnsonsWorst, smallProblems } from './problems.ts';

const highs = await loadHighs();
const rollsOf = (problem: CuttingProblem) => solveWithHighs(highs, problem, 20).rolls;

describe('rolls as flows along the tape, by HiGHS', () => {
  it('has a row for each type and each place a piece can begin, a column for the rolls and for each piece that begins', () => {
    const { columns, needs } = arcFlow(freeMatch(100, [[60, 2]]));
    expect(needs).toEqual([2, 0]);
    expect(columns).toEqual([
      { cost: 1, isWhole: true, upper: Infinity, entries: [[1, 1]] },
      { cost: 0, isWhole: true, upper: 2, entries: [[0, 1], [1, -1]] },
    ]);
  });

  it.each<[string, CuttingProblem, number]>([
    ['two pieces of 60 from rolls of 100', freeMatch(100, [[60, 2]]), 2],
    ['a half-drop that alternates', HALF_DROP, 5],
    ["Johnson's worst for first-fit-decreasing", johnsonsWorst(2), 18],
    ["Falkenauer's triplets", falkenauerTriplets(20, 1), 20],
    ['16 strips of 2.40 m, repeat 0.625 m, start unknown', { rollLength: 10_050, repeat: 625, rollStart: 'anywhere', pieces: [{ length: 2_400, phase: 0, count: 16 }] }, 6],
    ['the same, rolls that begin at the repeat', { rollLength: 10_050, repeat: 625, rollStart: 'at-repeat', pieces: [{ length: 2_400, phase: 0, count: 16 }] }, 4],
    ['the same, set so low in the repeat that the lead costs a strip', { rollLength: 10_050, repeat: 625, rollStart: 'at-repeat', pieces: [{ length: 2_400, phase: 600, count: 16 }] }, 6],
  ])('takes the fewest rolls for %s', (_, problem, rolls) => {
    expect(rollsOf(problem)).toBe(rolls);
  });

  it('lies from the lower bound of a plan to its rolls', () => {
    fc.assert(
      fc.property(smallProblems({ rollLength: 60, repeat: 12, types: 4, count: 4 }), (problem) => {
        const plan = planCuts(problem);
        const pieces = problem.pieces.filter((_, piece) => !plan.impossible.includes(piece));
        fc.pre(pieces.some(({ count }) => count > 0));
        const rolls = rollsOf({ ...problem, pieces })!;
        expect(rolls).toBeGreaterThanOrEqual(plan.lowerBound);
        expect(rolls).toBeLessThanOrEqual(plan.rollCount);
      }),
      { numRuns: 60 },
    );
  });
});
