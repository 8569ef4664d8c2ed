import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CuttingProblem, leastWhenLooking, planCuts } from '../../shared-core/cutting/index.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { freeMatch, HALF_DROP, smallProblems } from './problems.ts';

/** The fewest rolls where all of them start at the worst place, in half units so that places between whole ones are tried too. */
function worstStart({ rollLength, repeat, pieces }: CuttingProblem): number {
  const starts = Array.from({ length: 2 * repeat }, (_, start) => start);
  return starts.reduce((most, start) => {
    const shifted = pieces.map(({ length, phase, count }) => ({ length: 2 * length, phase: (2 * phase - start + 2 * repeat) % (2 * repeat), count }));
    return Math.max(most, fewestRolls({ rollLength: 2 * rollLength, repeat: 2 * repeat, rollStart: 'at-repeat', pieces: shifted }));
  }, 0);
}

describe('who looks at each roll before cutting it', () => {
  it('may do with fewer rolls than a plan that holds for any start', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'anywhere', pieces: [{ length: 460, phase: 0, count: 1 }, { length: 400, phase: 50, count: 1 }] };
    expect([planCuts(problem).rollCount, leastWhenLooking(problem), worstStart(problem)]).toEqual([2, 1, 1]);
  });

  it('needs as many where alternating is the best there is', () => {
    expect(leastWhenLooking(HALF_DROP)).toBe(5);
  });

  it('gains nothing where there is nothing to see', () => {
    expect(leastWhenLooking(freeMatch(10_050, [[2_900, 27]]))).toBe(9);
    expect(leastWhenLooking({ ...HALF_DROP, rollStart: 'at-repeat' })).toBe(planCuts({ ...HALF_DROP, rollStart: 'at-repeat' }).rollCount);
  });

  it('is bounded by the worst start that all rolls may share, and never above the plan', () => {
    const problems = smallProblems({ rollLength: 40, repeat: 10, types: 4, count: 3 })
      .filter(({ repeat }) => repeat > 0)
      .map((problem): CuttingProblem => ({ ...problem, rollStart: 'anywhere', pieces: problem.pieces.filter(({ length }) => length <= problem.rollLength - problem.repeat) }));
    let gaps = 0;
    fc.assert(
      fc.property(problems, (problem) => {
        const least = leastWhenLooking(problem);
        expect(least).toBe(worstStart(problem));
        const { rollCount } = planCuts(problem);
        expect(least).toBeLessThanOrEqual(rollCount);
        if (least < rollCount) gaps += 1;
      }),
      { numRuns: 800 },
    );
    expect(gaps).toBeGreaterThan(0);
  });
});
