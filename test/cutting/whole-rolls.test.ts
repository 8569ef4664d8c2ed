import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRolls } from '../../shared-core/cutting/cut-rolls.ts';
import { dive } from '../../shared-core/cutting/dive.ts';
import { fillDearest } from '../../shared-core/cutting/fill-dearest.ts';
import { ALL_STAGES, fewestRolls as fewestOf } from '../../shared-core/cutting/fewest-rolls.ts';
import { findDearest } from '../../shared-core/cutting/find-dearest.ts';
import type { CuttingProblem } from '../../shared-core/cutting/index.ts';
import { planInGroups } from '../../shared-core/cutting/plan-in-groups.ts';
import { placeCuts } from '../../shared-core/cutting/place-cuts.ts';
import { priceByCount, priced } from '../../shared-core/cutting/pricing.ts';
import { poolOf, relax, type Relaxed } from '../../shared-core/cutting/relax.ts';
import { layTape, type Tape } from '../../shared-core/cutting/tape.ts';
import { tryAll } from '../../shared-core/cutting/try-all.ts';
import { budgetOf } from '../../shared-core/cutting/work.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { freeMatch, HALF_DROP, smallProblems } from './problems.ts';

function relaxed(problem: CuttingProblem, isWithinDemand: boolean): Relaxed {
  const tape = layTape(problem);
  const work = budgetOf(Infinity);
  return relax(tape, findDearest(tape, work), poolOf([]), work, { wanted: tape.kinds.map(({ count }) => count), isWithinDemand, patience: 100_000, bound: Infinity, rolls: 0 });
}

function tried(problem: CuttingProblem, rolls: number, steps = Infinity): ReturnType<typeof tryAll> {
  const tape = layTape(problem);
  const { pricing } = relaxed(problem, false);
  const work = budgetOf(steps);
  return tryAll(tape, findDearest(tape, work), pricing!, rolls, work);
}

const small = smallProblems({ rollLength: 60, repeat: 16, types: 5, count: 3 }).filter((problem) => {
  const pieces = layTape(problem).kinds.reduce((sum, { count }) => sum + count, 0);
  return pieces > 0 && pieces <= 10;
});

describe('rolls in parts', () => {
  it('3 pieces of 6 and 2 of 4 from rolls of 10: three rolls, and at least three', () => {
    const { rolls, pricing, isOptimal } = relaxed(freeMatch(10, [[6, 3], [4, 2]]), true);
    expect(rolls).toBeCloseTo(3, 9);
    expect([pricing!.bound, isOptimal]).toEqual([3, true]);
  });

  it('where more pieces fit into a roll than are wanted, heeding the demand proves more', () => {
    // Two of 15 or three of 10 would fill a roll; there are not so many.
    const problem = freeMatch(30, [[16, 2], [15, 1], [10, 2], [7, 3]]);
    expect(relaxed(problem, false).pricing).toMatchObject({ bound: 3, isWithinDemand: false });
    expect(relaxed(problem, true).pricing).toMatchObject({ bound: 4, isWithinDemand: true });
    expect(relaxed(problem, true).rolls).toBeCloseTo(3.2, 6);
  });

  it('never bound above the fewest whole rolls, and parts are no more than these', () => {
    fc.assert(
      fc.property(small, fc.boolean(), (problem, isWithinDemand) => {
        const { rolls, pricing } = relaxed(problem, isWithinDemand);
        const fewest = fewestRolls(problem);
        expect(pricing!.bound).toBeLessThanOrEqual(fewest);
        expect(pricing!.bound).toBeGreaterThanOrEqual(Math.ceil(rolls - 1e-6));
        expect(rolls).toBeLessThan(fewest + 1e-6);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a bound by how many pieces a roll gives', () => {
  it('7 of 4 and one of 6 from rolls of 10 are at least 4 rolls', () => {
    const { duals, total, most, bound } = priceByCount(layTape(freeMatch(10, [[4, 7], [6, 1]])));
    expect({ duals, total, most, bound }).toEqual({ duals: [1, 1], total: 8, most: 2, bound: 4 });
  });

  it('proves nothing of a pattern, and nothing where nothing is wanted', () => {
    expect(priceByCount(layTape(HALF_DROP)).bound).toBe(0);
    expect(priceByCount(layTape(freeMatch(10, []))).bound).toBe(0);
  });

  it('holds of any free match', () => {
    fc.assert(
      fc.property(small.filter(({ repeat }) => repeat === 0), (problem) => {
        expect(priceByCount(layTape(problem)).bound).toBeLessThanOrEqual(fewestRolls(problem));
      }),
    );
  });
});

describe('whole rolls from parts', () => {
  const dived = (problem: CuttingProblem, rolls: number, isStraying: boolean): ReturnType<typeof dive> => {
    const tape = layTape(problem);
    const work = budgetOf(Infinity);
    let state = 1;
    const draw = (below: number): number => (state = (state * 48_271) % 2_147_483_647) % below;
    return dive(tape, findDearest(tape, work), poolOf([]), work, { aim: rolls, atMost: rolls, patience: 100_000, draw: isStraying ? draw : null });
  };

  it('five pieces of 4 and one of 2 from rolls of 10 take three', () => {
    expect(dived(freeMatch(10, [[4, 5], [2, 1]]), 3, false)!.reduce((sum, { times }) => sum + times, 0)).toBe(3);
    expect(dived(freeMatch(10, [[4, 5], [2, 1]]), 2, false)).toBeNull();
  });

  it('give every piece once, in no more rolls than asked', () => {
    fc.assert(
      fc.property(small, fc.boolean(), fc.integer({ min: 0, max: 2 }), (problem, isStraying, more) => {
        const rolls = fewestRolls(problem) + more;
        const packings = dived(problem, rolls, isStraying);
        if (packings === null) return;
        const tape = layTape(problem);
        const given = tape.kinds.map(({ rank }) => packings.reduce((sum, { times, roll }) => sum + times * roll.order.filter((other) => other === rank).length, 0));
        expect(given).toEqual(tape.kinds.map(({ count }) => count));
        expect(packings.reduce((sum, { times }) => sum + times, 0)).toBeLessThanOrEqual(rolls);
      }),
      { numRuns: 500 },
    );
  });
});

describe('rolls filled one after the other', () => {
  it('of 6, 5, 4, 3 and 2 from rolls of 10, long ones favoured: 6 + 4, then 5 + 3 + 2', () => {
    const tape = layTape(freeMatch(10, [[6, 1], [5, 1], [4, 1], [3, 1], [2, 1]]));
    const work = budgetOf(Infinity);
    expect(fillDearest(tape, findDearest(tape, work), work, 0.1)!.map(({ roll }) => roll.order)).toEqual([[0, 2], [1, 3, 4]]);
    const over = budgetOf(0);
    expect(fillDearest(tape, findDearest(tape, over), over, 0.1)).toBeNull();
  });

  it('are cut as often as their pieces are wanted, and give every piece once', () => {
    const cutting = cutRolls(layTape(freeMatch(10, [[5, 5]])));
    expect([cutting.cut({ lane: 0, order: [0, 0] }, 9), cutting.isAnyWanted(), cutting.cut({ lane: 0, order: [0, 0] }, 9), cutting.isAnyWanted(), cutting.cut({ lane: 0, order: [0] }, 9)]).toEqual([2, true, 1, false, 0]);
    fc.assert(
      fc.property(small, (problem) => {
        const tape = layTape(problem);
        const work = budgetOf(Infinity);
        const packings = fillDearest(tape, findDearest(tape, work), work, 0.3)!;
        expect(tape.kinds.map(({ rank }) => packings.reduce((sum, { times, roll }) => sum + times * roll.order.filter((other) => other === rank).length, 0))).toEqual(tape.kinds.map(({ count }) => count));
      }),
      { numRuns: 300 },
    );
  });
});

describe('rolls cut anew some at a time', () => {
  const drawing = (): ((below: number) => number) => {
    let state = 1;
    return (below) => (state = (state * 48_271) % 2_147_483_647) % below;
  };
  const anew = (group: Tape) => fewestOf(group, budgetOf(Infinity), { stages: ALL_STAGES, stepsInParts: Infinity }).packings;

  it('6, 6, 4 and 4 on a roll of 10 each become two rolls', () => {
    const tape = layTape(freeMatch(10, [[6, 2], [4, 2]]));
    const packings = [0, 0, 1, 1].map((rank) => ({ times: 1, roll: { lane: 0, order: [rank] } }));
    expect(planInGroups(tape, packings, budgetOf(1_000_000), drawing(), anew).map(({ roll }) => roll.order)).toEqual([[0, 1], [0, 1]]);
    expect(planInGroups(tape, packings, budgetOf(0), drawing(), anew)).toHaveLength(4);
  });

  it('of thousands of rolls stay as they are, cut alike as they were', () => {
    const tape = layTape(freeMatch(10, [[6, 5_000], [4, 5_000]]));
    const packings = [0, 1].map((rank) => ({ times: 5_000, roll: { lane: 0, order: [rank] } }));
    expect(planInGroups(tape, packings, budgetOf(Infinity), drawing(), anew)).toBe(packings);
  });

  it('give every piece once, from as few rolls as all of them together where that is one group', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const tape = layTape(problem);
        const apart = tape.kinds.flatMap(({ rank, count, phase }) => Array.from({ length: count }, () => ({ times: 1, roll: { lane: Math.max(0, tape.lanes.findIndex(({ origin }) => origin === phase)), order: [rank] } })));
        const rolls = planInGroups(tape, apart, budgetOf(Infinity), drawing(), anew);
        expect(rolls.length).toBe(fewestRolls(problem));
        expect(placeCuts(problem, tape, rolls).flatMap(({ times, cuts }) => Array(times).fill(cuts).flat())).toHaveLength(apart.length);
      }),
      { numRuns: 200 },
    );
  });
});

describe('trying every way', () => {
  const lengths = (problem: CuttingProblem) => {
    const tape = layTape(problem);
    return priced(tape.kinds.map(({ length }) => length), tape.kinds.map(({ count }) => count), problem.rollLength, false);
  };
  const triedByLength = (problem: CuttingProblem, rolls: number): ReturnType<typeof tryAll> => {
    const work = budgetOf(Infinity);
    return tryAll(layTape(problem), findDearest(layTape(problem), work), lengths(problem), rolls, work);
  };

  it('2 of 6, 3 of 4 and one of 5 come from 3 rolls of 10; 2 of 6 and 3 of 5 do not', () => {
    expect(triedByLength(freeMatch(10, [[6, 2], [4, 3], [5, 1]]), 3)).toHaveLength(3);
    expect(triedByLength(freeMatch(10, [[6, 2], [5, 3]]), 3)).toBe('there is none');
  });

  it('knows at once where the prices rule it out', () => {
    expect(triedByLength(freeMatch(10, [[6, 2], [5, 3]]), 2)).toBe('there is none');
  });

  it('says where it takes too long', () => {
    expect(tried(HALF_DROP, 5, 50)).toBeNull();
  });

  it('finds a plan where there is one and else is sure that there is none', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: -1, max: 1 }), (problem, more) => {
        const fewest = fewestRolls(problem);
        const answer = tried(problem, fewest + more);
        if (more < 0) expect(answer).toBe('there is none');
        else expect(answer).toBeInstanceOf(Array);
      }),
      { numRuns: 800 },
    );
  });

  it('goes by names of lots that do not fit into a number too', () => {
    const problem = freeMatch(1_000, Array.from({ length: 60 }, (_, index) => [300 + index, 1] as const));
    expect(tried(problem, 19)).toBe('there is none');
  });
});

describe('piece types of one kind', () => {
  it('are handed out in turn, rolls alike kept together', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces: [{ length: 440, phase: 0, count: 2 }, { length: 440, phase: 0, count: 4 }] };
    const packings = [{ times: 3, roll: { lane: 0, order: [0, 0] } }];
    expect(placeCuts(problem, layTape(problem), packings)).toEqual([
      { times: 1, cuts: [{ piece: 0, from: 0 }, { piece: 0, from: 500 }] },
      { times: 2, cuts: [{ piece: 1, from: 0 }, { piece: 1, from: 500 }] },
    ]);
  });
});
