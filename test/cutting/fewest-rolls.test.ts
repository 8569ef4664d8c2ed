import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingProblem } from '../../shared-core/cutting/problem.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { freeMatch, HALF_DROP, johnsonsWorst, smallProblems } from './problems.ts';
import { cutRoll } from './simulate.ts';

describe('worked by hand', () => {
  it('16 strips of 2.40 m in a repeat of 0.625 m: tops 2.50 apart, 3 in the 9.425 m that are sure, 4 in 10.05 m', () => {
    const strips = { rollLength: 10_050, repeat: 625, pieces: [{ length: 2_400, phase: 0, count: 16 }] };
    expect(fewestRolls({ ...strips, rollStart: 'anywhere' })).toBe(6);
    expect(fewestRolls({ ...strips, rollStart: 'at-repeat' })).toBe(4);
  });

  it('a half drop: 4 alternating in 9.41 m end at 6720 + 2230 = 8950, 5 rolls; each phase alone is 3 a roll, 4 rolls', () => {
    expect(fewestRolls(HALF_DROP)).toBe(5);
    expect(HALF_DROP.pieces.map((type) => fewestRolls({ ...HALF_DROP, pieces: [type] }))).toEqual([4, 4]);
  });

  it('a half drop of 2.50 m: alternating tops are 2880 apart, alike ones 2560; either way 3 a roll, 7 rolls', () => {
    expect(fewestRolls({ ...HALF_DROP, pieces: HALF_DROP.pieces.map((type) => ({ ...type, length: 2_500 })) })).toBe(7);
  });

  it('a half drop that just alternates four times: 2240 * 3 + 2690 = 9410, one more is too long', () => {
    const withLast = (length: number): CuttingProblem => ({
      ...HALF_DROP,
      pieces: [{ length: 2_230, phase: 0, count: 2 }, { length: 2_230, phase: 320, count: 1 }, { length, phase: 320, count: 1 }],
    });
    expect(fewestRolls(withLast(2_690))).toBe(1);
    expect(fewestRolls(withLast(2_691))).toBe(2);
  });

  it('27 strips of 2.90 m without a repeat: 3 a roll, 9 rolls', () => {
    expect(fewestRolls(freeMatch(10_050, [[2_900, 27]]))).toBe(9);
  });

  it('a family in which the longest first is far from best: 9 rolls', () => {
    expect(fewestRolls(johnsonsWorst(1))).toBe(9);
  });

  it('the order on a roll matters: phase 50 then 0 fit in 900, 0 then 50 would end at 1000', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'anywhere', pieces: [{ length: 450, phase: 0, count: 1 }, { length: 450, phase: 50, count: 1 }] };
    expect(fewestRolls(problem)).toBe(1);
    expect(fewestRolls({ ...problem, rollLength: 999 })).toBe(2);
  });

  it('a piece that no roll is sure to give is left out, and so is a type of which none is wanted', () => {
    const pieces = [{ length: 901, phase: 0, count: 2 }, { length: 900, phase: 99, count: 2 }, { length: 100, phase: 0, count: 0 }];
    expect(fewestRolls({ rollLength: 1_000, repeat: 100, rollStart: 'anywhere', pieces })).toBe(2);
    expect(fewestRolls({ rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces })).toBe(4);
    expect(fewestRolls({ rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces: [] })).toBe(0);
  });
});

/** Every order of the single pieces, each roll cut until the next piece does not fit; walks the tape unit by unit. */
function byEveryOrder({ rollLength, repeat, rollStart, pieces }: CuttingProblem): number {
  const fits = (roll: CuttingProblem['pieces']): boolean => {
    const { tops, end } = cutRoll(roll, rollStart === 'anywhere' ? (roll[0]?.phase ?? 0) : 0, repeat);
    return rollStart === 'anywhere' ? end - (tops[0] ?? 0) <= rollLength - repeat : end <= rollLength;
  };
  const singles = pieces.filter((type) => fits([type])).flatMap((type) => Array<typeof type>(type.count).fill(type));
  let fewest = singles.length;
  const extend = (left: CuttingProblem['pieces'], roll: CuttingProblem['pieces'], rolls: number): void => {
    if (left.length === 0) fewest = Math.min(fewest, rolls);
    left.forEach((piece, index) => {
      const others = left.filter((_, other) => other !== index);
      if (rolls > 0 && fits([...roll, piece])) extend(others, [...roll, piece], rolls);
      else extend(others, [piece], rolls + 1);
    });
  };
  extend(singles, [], 0);
  return fewest;
}

describe('of any small problem', () => {
  it('as many rolls as the best of all orders takes', () => {
    fc.assert(
      fc.property(smallProblems({ rollLength: 60, repeat: 14, types: 3, count: 2 }), (problem) => {
        expect(fewestRolls(problem)).toBe(byEveryOrder(problem));
      }),
      { numRuns: 400 },
    );
  });
});
