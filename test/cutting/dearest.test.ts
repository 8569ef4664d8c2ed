import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dearest, Question } from '../../shared-core/cutting/dearest.ts';
import { findDearest } from '../../shared-core/cutting/find-dearest.ts';
import type { CuttingProblem } from '../../shared-core/cutting/index.ts';
import { gapBefore, layTape, type Tape } from '../../shared-core/cutting/tape.ts';
import { budgetOf } from '../../shared-core/cutting/work.ts';
import { freeMatch, smallProblems } from './problems.ts';

const NO_END = budgetOf(Infinity);

function ask(problem: CuttingProblem, duals: readonly number[], change: Partial<Question> = {}): Dearest {
  const tape = layTape(problem);
  const wanted = tape.kinds.map(({ count }) => count);
  return findDearest(tape, NO_END).within({ duals, wanted, above: 0, surely: 0, enough: 20, patience: 100_000, ...change });
}

/** Every roll that holds no more of a kind than that many, cut in every order, by what it counts for. */
function most(tape: Tape, duals: readonly number[], limits: readonly number[]): number {
  const held = limits.map(() => 0);
  const cutOn = (lane: number, end: number): number => {
    const { origin, capacity } = tape.lanes[lane]!;
    return tape.kinds.reduce((best, { rank, phase, length }) => {
      const after = end + gapBefore(phase, origin, end, tape.repeat) + length;
      if (held[rank]! >= limits[rank]! || after > capacity) return best;
      held[rank]! += 1;
      const worth = duals[rank]! + cutOn(lane, after);
      held[rank]! -= 1;
      return Math.max(best, worth);
    }, 0);
  };
  return tape.lanes.reduce((best, _, lane) => Math.max(best, cutOn(lane, 0)), 0);
}

function endOf(tape: Tape, lane: number, order: readonly number[]): number {
  const { origin } = tape.lanes[lane]!;
  return order.reduce((end, rank) => end + gapBefore(tape.kinds[rank]!.phase, origin, end, tape.repeat) + tape.kinds[rank]!.length, 0);
}

describe('worked examples', () => {
  it('a free match: 6 + 4 worth 11 beats 4 + 4 worth 10', () => {
    expect(ask(freeMatch(10, [[6, 9], [4, 9]]), [6, 5]).rolls[0]!.order).toEqual([0, 1]);
  });

  it('a free match in a measure too fine for all places is exact all the same', () => {
    // 4 x 240001 leaves 44996; 3 x 243839 leaves 273483, in which a piece of 240001 fits; 10 x 99877 leaves 6230.
    const problem = freeMatch(1_005_000, [[243_839, 3], [240_001, 4], [99_877, 2]]);
    expect(ask(problem, [240, 239, 99], { above: 958 }).rolls.map(({ order }) => order)).toEqual([[0, 0, 0, 1]]);
    expect(ask(problem, [240, 239, 99], { above: 959 })).toEqual({ rolls: [], most: 959 });
    expect(findDearest(layTape(problem), NO_END).mostOverAll([240, 239, 99])).toBe(990);
  });

  it('pieces shorter than a place of the table count in full', () => {
    const problem = freeMatch(200_000, [[150_000, 1], [3, 4], [2, 4]]);
    expect(ask(problem, [10, 3, 1], { above: 25 }).rolls.map(({ order }) => order)).toEqual([[0, 1, 1, 1, 1, 2, 2, 2, 2]]);
    expect(ask(problem, [10, 3, 1], { above: 26 })).toEqual({ rolls: [], most: 26 });
  });

  it('a free match that cannot be decided is given up', () => {
    // All worth alike for their lengths, which no measure tells apart: nothing can be left out.
    const lengths = Array.from({ length: 60 }, (_, index) => 1_000_003 + 17_389 * index + (index % 7));
    const tape = layTape(freeMatch(39_999_989, lengths.map((length) => [length, 1] as const)));
    expect(findDearest(tape, NO_END).mostOverAll(tape.kinds.map(({ length }) => length))).toBeNull();
  });

  it('a pattern: 450 + 450 worth 10, and through 300, three of them worth 9', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces: [{ length: 450, phase: 0, count: 9 }, { length: 300, phase: 0, count: 9 }] };
    expect(ask(problem, [5, 3], { above: 8 }).rolls.map(({ order }) => order)).toEqual([[0, 0], [1, 1, 1]]);
  });

  it('a pattern: kinds worth 5, 4 and 3 of which one each is wanted come to 12, where 15 would be the most', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces: [310, 305, 300].map((length) => ({ length, phase: 0, count: 1 })) };
    const longer = { ...problem, rollLength: 1_110 };
    expect(ask(longer, [5, 4, 3], { above: 12 })).toEqual({ rolls: [], most: 12 });
    expect(ask(longer, [5, 4, 3], { above: 12, patience: 0 })).toEqual({ rolls: [], most: null });
    const tape = layTape(longer);
    expect(findDearest(tape, NO_END).mostOverAll([5, 4, 3])).toBe(15);
  });
});

describe('any tape', () => {
  const questions = smallProblems({ rollLength: 40, repeat: 12, types: 4, count: 3 })
    .map((problem) => ({ ...problem, pieces: problem.pieces.map((type) => ({ ...type, length: Math.max(type.length, Math.ceil(problem.rollLength / 6)) })) }))
    .chain((problem) => {
      const tape = layTape(problem);
      return fc.record({ tape: fc.constant(tape), duals: fc.array(fc.integer({ min: 0, max: 20 }), { minLength: tape.kinds.length, maxLength: tape.kinds.length }), above: fc.integer({ min: 0, max: 40 }) });
    })
    .filter(({ tape }) => tape.kinds.length > 0);

  it('the most that a roll counts for is that of every order, within demand and without', () => {
    fc.assert(
      fc.property(questions, ({ tape, duals, above }) => {
        const find = findDearest(tape, NO_END);
        const wanted = tape.kinds.map(({ count }) => count);
        expect(find.mostOverAll(duals)).toBe(most(tape, duals, wanted.map(() => Infinity)));
        const truly = most(tape, duals, wanted);
        const { rolls, most: said } = find.within({ duals, wanted, above, surely: 0, enough: 20, patience: 100_000 });
        if (truly > above) expect(rolls.length).toBeGreaterThan(0);
        else expect([rolls, said]).toEqual([[], truly]);
      }),
      { numRuns: 1_000 },
    );
  });

  it('every roll found is wanted, fits and counts for more than was asked', () => {
    fc.assert(
      fc.property(questions, fc.boolean(), ({ tape, duals, above }, isPatient) => {
        const wanted = tape.kinds.map(({ count }) => count);
        const { rolls } = findDearest(tape, NO_END).within({ duals, wanted, above, surely: 0, enough: 20, patience: isPatient ? 100_000 : 0 });
        for (const { lane, order } of rolls) {
          expect(order.reduce((sum, rank) => sum + duals[rank]!, 0)).toBeGreaterThan(above);
          expect(endOf(tape, lane, order)).toBeLessThanOrEqual(tape.lanes[lane]!.capacity);
          for (const { rank, count } of tape.kinds) expect(order.filter((other) => other === rank).length).toBeLessThanOrEqual(count);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('what is left of a roll counts for no more than the rest says, from any end on', () => {
    fc.assert(
      fc.property(questions, fc.nat({ max: 40 }), ({ tape, duals }, end) => {
        const rest = findDearest(tape, NO_END).rest(duals);
        tape.lanes.forEach(({ origin, capacity }, lane) => {
          if (end > capacity) return;
          const shorter = { ...tape, lanes: [{ origin: tape.repeat === 0 ? 0 : (origin + end) % tape.repeat, capacity: capacity - end }] };
          expect(rest(lane, end)).toBeGreaterThanOrEqual(most(shorter, duals, duals.map(() => Infinity)));
        });
      }),
      { numRuns: 300 },
    );
  });
});
