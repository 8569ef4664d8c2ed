import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostOfAnyRoll, mostWithinDemand } from '../../shared-core/cutting/check-most.ts';
import { layPlaces, mostFromEachPlace, type Sort, sortPieces } from '../../shared-core/cutting/check-places.ts';
import { mostOnAPlainRoll } from '../../shared-core/cutting/check-plain-roll.ts';
import { tryToCover } from '../../shared-core/cutting/check-ruled-out.ts';
import { mostWithinDemandOnPlaces } from '../../shared-core/cutting/check-within-demand.ts';
import type { CuttingProblem } from '../../shared-core/cutting/problem.ts';
import { fewestRolls } from './fewest-rolls.ts';
import { freeMatch, HALF_DROP, smallProblems } from './problems.ts';
import { mostOnARoll, wantedOf } from './simple-plans.ts';

function sortsOf(problem: CuttingProblem, duals: readonly number[]): readonly Sort[] {
  return sortPieces(problem, wantedOf(problem), duals);
}


function plenty(): { left: number } {
  return { left: 1_000_000 };
}

describe('worked examples', () => {
  it('places of a roll', () => {
    const problem: CuttingProblem = { rollLength: 1_000, repeat: 100, rollStart: 'at-repeat', pieces: [{ length: 450, phase: 0, count: 1 }, { length: 300, phase: 50, count: 1 }] };
    const { sorts, perRepeat, starts } = layPlaces(problem, sortsOf(problem, [1, 1]));
    expect(perRepeat).toBe(2);
    expect(sorts.map(({ jump }) => jump)).toEqual([9, 6]);
    expect(starts).toEqual([{ place: 0, lastTops: [10, 13] }]);
  });

  it('a start of its own for each phase, where rolls start anywhere', () => {
    const { starts } = layPlaces(HALF_DROP, sortsOf(HALF_DROP, [1, 1]));
    // 9410 - 2230 = 7180: the last top in phase is 11 repeats on, that of the other 10.5 or 11.5.
    expect(starts).toEqual([{ place: 0, lastTops: [22, 21] }, { place: 1, lastTops: [22, 23] }]);
  });

  it('a free match: 400 counts for 5 and 300 for 3', () => {
    const problem = freeMatch(1_000, [[400, 2], [300, 1]]);
    const sorts = sortsOf(problem, [5, 3]);
    expect(mostOfAnyRoll(problem, sorts, 1)).toBe(11);
    expect(mostWithinDemand(problem, sorts, 1)).toBe(10);
    expect(mostOfAnyRoll(problem, sorts, 11)).toBe(11);
    expect(mostOfAnyRoll(problem, sorts, 12)).toBe('less');
    expect(mostWithinDemand(problem, sorts, 11)).toBe('less');
  });

  it('half drop, each piece counting for 1: 4', () => {
    expect(mostOfAnyRoll(HALF_DROP, sortsOf(HALF_DROP, [1, 1]), 1)).toBe(4);
  });

  it('half drop, the second phase counting for 3: twice alike once, 2560 + 2240 + 2240 + 2230 = 9270, 10; with two of it 8, with one 6', () => {
    const withSecond = (count: number): CuttingProblem => ({ ...HALF_DROP, pieces: HALF_DROP.pieces.map((type, piece) => (piece === 1 ? { ...type, count } : type)) });
    expect(mostOfAnyRoll(HALF_DROP, sortsOf(HALF_DROP, [1, 3]), 1)).toBe(10);
    expect([3, 2, 1].map((count) => mostWithinDemand(withSecond(count), sortsOf(withSecond(count), [1, 3]), 1))).toEqual([10, 8, 6]);
  });

  it('700, 550 and 500 do not go on two rolls of 1000, but on three', () => {
    const problem = freeMatch(1_000, [[700, 1], [550, 1], [500, 1]]);
    const sorts = sortsOf(problem, [700, 550, 500]);
    expect(tryToCover(problem, sorts, 2, 1_000, plenty())).toBe('ruled-out');
    expect(tryToCover(problem, sorts, 3, 1_000, plenty())).toBe('covered');
  });

  it('what some rolls cannot hold, one more may', () => {
    const pieces = ([[15, 3, 2], [11, 7, 1], [15, 8, 1], [12, 9, 2], [4, 1, 1], [13, 9, 2]] as const).map(([length, phase, count]) => ({ length, phase, count }));
    const problem: CuttingProblem = { rollLength: 38, repeat: 10, rollStart: 'at-repeat', pieces };
    const ones = pieces.map(() => 1);
    // On the way to five rolls the same pieces are left to some rolls, in vain, and later to one more.
    expect(fewestRolls(problem)).toBe(5);
    expect(tryToCover(problem, sortsOf(problem, ones), 5, mostOnARoll(problem, ones, false), plenty())).toBe('covered');
    expect(tryToCover(problem, sortsOf(problem, ones), 4, mostOnARoll(problem, ones, false), plenty())).toBe('ruled-out');
  });

  it('types alike in length, phase and worth are one sort', () => {
    const problem = freeMatch(1_000, [[300, 2], [400, 1], [300, 3], [300, 1], [300, 0]]);
    expect(sortsOf(problem, [7, 9, 7, 8, 0]).map(({ length, count, worth }) => [length, count, worth])).toEqual([[400, 1, 9], [300, 1, 8], [300, 5, 7]]);
  });
});

describe('what takes too many steps is left unsettled', () => {
  const sorts = sortsOf(HALF_DROP, [1, 1]);
  const places = layPlaces(HALF_DROP, sorts);

  it('over the places of a roll', () => {
    const [start] = places.starts;
    expect(start && mostFromEachPlace(places, start, { left: 10 })).toBeNull();
  });
  it('over a plain roll', () => expect(mostOnAPlainRoll(1_000, [{ length: 300, phase: 0, count: 9, worth: 3 }, { length: 170, phase: 0, count: 9, worth: 2 }], false, 1, { left: 3 })).toBe('unsettled'));
  it('over a roll within demand', () => {
    expect(mostWithinDemandOnPlaces(places, 1, { left: 10 }, { left: 1_000 })).toBe('unsettled');
    expect(mostWithinDemandOnPlaces(places, 1, { left: 1_000 }, { left: 10 })).toBe('unsettled');
    expect(mostWithinDemandOnPlaces(places, 1, { left: 1_000 }, { left: 1_000 })).toBe(4);
  });
  it('over the fillings of all rolls', () => {
    expect(tryToCover(HALF_DROP, sorts, 5, 4, { left: 10 })).toBe('unsettled');
    expect(tryToCover(HALF_DROP, sorts, 5, 4, plenty())).toBe('covered');
  });
});

const worths = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 5, maxLength: 5 });
const cases = fc
  .tuple(smallProblems({ rollLength: 60, repeat: 14, types: 5, count: 3 }), worths)
  .map(([problem, all]) => ({ problem, duals: wantedOf(problem).map((count, piece) => (count > 0 ? (all[piece] ?? 0) : 0)) }))
  .filter(({ duals }) => duals.some((dual) => dual > 0));

describe('of any small problem', () => {
  it('the most on a roll is what every order of cuts gives', () => {
    fc.assert(
      fc.property(cases, fc.nat(9), ({ problem, duals }, slack) => {
        const sorts = sortsOf(problem, duals).filter(({ worth }) => worth > 0);
        for (const isWithinDemand of [false, true]) {
          const most = mostOnARoll(problem, duals, isWithinDemand);
          const check = isWithinDemand ? mostWithinDemand : mostOfAnyRoll;
          expect(check(problem, sorts, Math.max(most - slack, 1))).toBe(most);
          expect(check(problem, sorts, most + 1 + slack)).toBe('less');
        }
      }),
      { seed: 1, numRuns: 1_500 },
    );
  });

  it('so many rolls cover the pieces if they are the fewest or more', () => {
    fc.assert(
      fc.property(cases, fc.boolean(), ({ problem, duals }, isWithinDemand) => {
        const fewest = fewestRolls(problem);
        const most = mostOnARoll(problem, duals, isWithinDemand);
        expect(tryToCover(problem, sortsOf(problem, duals), fewest - 1, most, plenty())).toBe('ruled-out');
        expect(tryToCover(problem, sortsOf(problem, duals), fewest, most, plenty())).toBe('covered');
      }),
      { seed: 1, numRuns: 1_500 },
    );
  });
});

it('a roll of 10.05 m in units of 1/320 mm, many lengths prime to each other, stays exact', () => {
  // Twice 1004999 and once 1206002 fill 3216000 exactly; any other lengths are worth less.
  const problem = freeMatch(3_216_000, [[1_004_999, 3], [1_206_002, 1], [1_206_001, 4], [1_072_001, 4]]);
  const sorts = sortsOf(problem, [1_004_999, 1_206_002, 1_206_001, 1_072_001]);
  expect(mostOfAnyRoll(problem, sorts, 1)).toBe(3_216_000);
  expect(mostOfAnyRoll(problem, sorts.filter(({ length }) => length !== 1_206_002), 1)).toBe(3_215_999);
});
