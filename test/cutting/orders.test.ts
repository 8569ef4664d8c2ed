import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fillByLeastGap, fillFullest } from '../../shared-core/cutting/fill-rolls.ts';
import { fitFirst } from '../../shared-core/cutting/first-fit.ts';
import type { CuttingProblem } from '../../shared-core/cutting/index.ts';
import { layTape, type Packing, type Tape } from '../../shared-core/cutting/tape.ts';
import { freeMatch, HALF_DROP, smallProblems } from './problems.ts';

function lengthsOf(packings: readonly Packing[]): readonly (readonly [times: number, lengths: readonly number[]])[] {
  return packings.map(({ times, kinds }) => [times, kinds.map((kind) => kind.length)]);
}

/** First-fit-decreasing as it is usually told, one piece and one roll at a time. */
function fitOneByOne(tape: Tape, { repeat }: CuttingProblem): readonly string[] {
  const rolls: { end: number; last: number; pieces: number[] }[] = [];
  for (const kind of tape.kinds) {
    for (let piece = 0; piece < kind.count; piece += 1) {
      const topOn = (roll: { end: number; last: number; pieces: number[] }): number => {
        if (roll.pieces.length === 0) return kind.lead;
        let top = roll.end;
        while (repeat > 0 && (top - roll.last - kind.phase) % repeat !== 0) top += 1;
        return top;
      };
      let roll = rolls.find((open) => topOn(open) + kind.length <= tape.capacity);
      if (roll === undefined) rolls.push((roll = { end: 0, last: 0, pieces: [] }));
      const top = topOn(roll);
      roll.end = top + kind.length;
      roll.last = top - kind.phase;
      roll.pieces.push(kind.piece);
    }
  }
  return rolls.map((roll) => roll.pieces.join(' '));
}

describe('first-fit-decreasing', () => {
  it('fills rolls to the last unit', () => {
    expect(lengthsOf(fitFirst(layTape(freeMatch(100, [[100, 1], [60, 2], [40, 2]]))))).toEqual([
      [1, [100]],
      [2, [60, 40]],
    ]);
  });

  it('parts rolls that were alike where the pieces give out', () => {
    expect(lengthsOf(fitFirst(layTape(freeMatch(100, [[60, 4], [20, 3]]))))).toEqual([
      [1, [60, 20, 20]],
      [1, [60, 20]],
      [2, [60]],
    ]);
  });

  it('gives the same rolls by runs of pieces as one by one', () => {
    fc.assert(
      fc.property(smallProblems({ rollLength: 120, repeat: 25, types: 6, count: 12 }), (problem) => {
        const tape = layTape(problem);
        const byRuns = fitFirst(tape).flatMap(({ times, kinds }) => Array<string>(times).fill(kinds.map((kind) => kind.piece).join(' ')));
        expect(byRuns).toEqual(fitOneByOne(tape, problem));
      }),
      { numRuns: 500 },
    );
  });
});

describe('filling roll by roll', () => {
  it('by least gap alternates a half-drop', () => {
    expect(fillByLeastGap(layTape(HALF_DROP)).map(({ times, kinds }) => [times, kinds.map((kind) => kind.piece)])).toEqual([[5, [0, 1, 0, 1]]]);
  });

  it('fullest goes back on its choices and takes pieces up again', () => {
    const tape = layTape(freeMatch(100, [[50, 1], [23, 1], [22, 1], [14, 2]]));
    expect(lengthsOf(fillByLeastGap(tape))[0]).toEqual([1, [50, 23, 22]]);
    expect(lengthsOf(fillFullest(tape, 100))[0]).toEqual([1, [50, 22, 14, 14]]);
  });

  it('fullest still gives every piece where no step is left to look ahead', () => {
    expect(lengthsOf(fillFullest(layTape(freeMatch(100, [[50, 2], [23, 1]])), 0))).toEqual([
      [2, [50]],
      [1, [23]],
    ]);
  });
});
