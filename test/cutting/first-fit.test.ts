import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitFirst } from '../../shared-core/cutting/first-fit.ts';
import type { CuttingProblem } from '../../shared-core/cutting/index.ts';
import { layTape, type Tape } from '../../shared-core/cutting/tape.ts';
import { freeMatch, smallProblems } from './problems.ts';
import { nextTop } from './simulate.ts';

function rollsOf(problem: CuttingProblem): readonly (readonly [times: number, lengths: readonly number[]])[] {
  const tape = layTape(problem);
  return fitFirst(tape).map(({ times, roll }) => [times, roll.order.map((rank) => tape.kinds[rank]!.length)]);
}

/** First-fit-decreasing as it is usually told, one piece and one roll at a time. */
function fitOneByOne(tape: Tape, { rollLength, repeat, rollStart }: CuttingProblem): readonly string[] {
  const rolls: { startPhase: number; end: number; ranks: number[] }[] = [];
  for (const { phase, length, count, rank } of tape.kinds) {
    for (let piece = 0; piece < count; piece += 1) {
      const limit = rollStart === 'anywhere' ? rollLength - repeat : rollLength;
      let roll = rolls.find((open) => nextTop(open.end, open.startPhase, phase, repeat) + length <= limit);
      if (roll === undefined) rolls.push((roll = { startPhase: rollStart === 'anywhere' ? phase : 0, end: 0, ranks: [] }));
      roll.end = nextTop(roll.end, roll.startPhase, phase, repeat) + length;
      roll.ranks.push(rank);
    }
  }
  return rolls.map(({ ranks }) => ranks.join(' '));
}

describe('first-fit-decreasing', () => {
  it('fills rolls to the last unit', () => {
    expect(rollsOf(freeMatch(100, [[100, 1], [60, 2], [40, 2]]))).toEqual([
      [1, [100]],
      [2, [60, 40]],
    ]);
  });

  it('parts rolls that were alike where the pieces give out', () => {
    expect(rollsOf(freeMatch(100, [[60, 4], [20, 3]]))).toEqual([
      [1, [60, 20, 20]],
      [1, [60, 20]],
      [2, [60]],
    ]);
  });

  it('gives the same rolls by runs of pieces as one by one', () => {
    fc.assert(
      fc.property(smallProblems({ rollLength: 120, repeat: 25, types: 6, count: 12 }), (problem) => {
        const tape = layTape(problem);
        const byRuns = fitFirst(tape).flatMap(({ times, roll }) => Array<string>(times).fill(roll.order.join(' ')));
        expect(byRuns).toEqual(fitOneByOne(tape, problem));
      }),
      { numRuns: 500 },
    );
  });
});
