import { describe, expect, test } from 'vitest';
import { leastBoughtOf, runsToUse } from '../../shared-core/ordering/assign-bounds.ts';
import { assignBudget, partOfBudget } from '../../shared-core/ordering/assign-budget.ts';
import { dealEvenly, improveByAsking } from '../../shared-core/ordering/assign-deal.ts';
import { fillUpTo, fullestFill } from '../../shared-core/ordering/assign-fill.ts';
import { modelOf } from '../../shared-core/ordering/assign-model.ts';
import { hangingOf, improveByPairs } from '../../shared-core/ordering/assign-pairs.ts';
import { compareJudged, type Found, judge, NOTHING_HUNG } from '../../shared-core/ordering/assign-score.ts';
import { searchAll } from '../../shared-core/ordering/assign-search.ts';
import { lightestGroups, startsOf } from '../../shared-core/ordering/assign-starts.ts';
import type { AssignmentProblem } from '../../shared-core/ordering/assign-units.ts';
import { additive, inPacks, pooled } from './assign-brute.ts';

const budget = () => assignBudget(Infinity, Infinity);
const read = (problem: AssignmentProblem) => modelOf(problem, budget());
const inHand = (...rolls: readonly number[]) => rolls.map((each) => ({ inHand: each, offered: 0 }));
const onOffer = (...rolls: readonly number[]) => rolls.map((each) => ({ inHand: 0, offered: each }));
const goal = (hung: number) => ({ hung, bought: 0, leftOver: 0, used: 0 });

describe('a budget', () => {
  test('of 10 steps is over when 10 are spent, of 3 units to cut after two cuttings of 2', () => {
    const some = assignBudget(10, 3);
    some.cut(2);
    expect(some.isOver()).toBe(false);
    some.spend(9);
    expect(some.isOver()).toBe(false);
    some.spend(1);
    expect(some.isOver()).toBe(true);
    const few = assignBudget(10, 3);
    few.cut(2);
    few.cut(2);
    expect([few.isOver(), few.isStopped()]).toEqual([true, false]);
  });

  test('a part of 3 steps of 10 leaves 7', () => {
    const whole = assignBudget(10, 3);
    const part = partOfBudget(whole, 3, Infinity);
    part.spend(3);
    expect([part.isOver(), whole.isOver()]).toEqual([true, false]);
    whole.spend(7);
    expect(whole.isOver()).toBe(true);
  });

  test('a part of 2 units is over after a cutting of 2 that the whole was told of, not before it was taken', () => {
    const whole = assignBudget(Infinity, 9);
    whole.cut(4);
    const part = partOfBudget(whole, Infinity, 2);
    expect(part.isOver()).toBe(false);
    whole.cut(2);
    expect([part.isOver(), whole.isOver(), part.cutSoFar()]).toEqual([true, false, 6]);
  });

  test('asks its watch at once, before each cutting, and now and then', () => {
    let asked = 0;
    const some = assignBudget(Infinity, Infinity, { isStopped: () => (asked += 1) > 3 });
    expect(asked).toBe(1);
    some.cut(1);
    expect(asked).toBe(2);
    for (let step = 0; step < 90_000; step += 1) some.spend(1);
    expect([asked, some.isStopped()]).toEqual([3, false]);
    for (let step = 0; step < 20_000; step += 1) some.spend(1);
    expect([some.isStopped(), some.isOver()]).toEqual([true, true]);
  });
});

test('a problem is read with its largest units first, and of an offer what can be bought', () => {
  const model = read(additive([3, 5], { runs: [{ inHand: 2, offered: 5 }, { inHand: 1, offered: 0 }], bought: inPacks(2) }));
  expect(model.typed).toEqual([1, 0]);
  expect(model.runs.map(({ most }) => most)).toEqual([6, 1]);
  // Parts and ties make one group of what shares rooms; a pinned run is like no other.
  const tied = read(additive([1, 2, 3], { units: [{ rooms: [1] }, { rooms: [1, 2] }, { rooms: [3], run: 1 }], runs: onOffer(9, 9, 9) }));
  expect(tied.groups.map(({ first, end, rooms }) => [tied.typed.slice(first, end), rooms])).toEqual([[[1, 0], 2], [[2], 1]]);
  expect(tied.runs.map(({ likeness }) => likeness)).toEqual([0, -1, 0]);
});

test('5 rooms with 9 rolls bought are better than 4 with none; a room of 5 in doubles with 2 in hand buys 4 and leaves 1', () => {
  expect(compareJudged({ hung: 5, bought: 9, leftOver: 0, used: 1 }, { hung: 4, bought: 0, leftOver: 0, used: 1 })).toBeLessThan(0);
  const model = read(additive([5], { runs: [{ inHand: 2, offered: 8 }], bought: inPacks(2) }));
  expect(judge(model, [0])).toEqual({ hung: 1, bought: 4, leftOver: 1, used: 1 });
  expect(judge(read(additive([5, 4], { runs: inHand(6) })), [0, 0])).toBeNull();
});

describe('what bounds every assignment', () => {
  test('rooms of 6 and 3, runs with 8 on offer and with 3 in hand: both used, 6 are bought', () => {
    const model = read(additive([6, 3], { runs: [{ inHand: 0, offered: 8 }, { inHand: 3, offered: 0 }] }));
    const [first] = runsToUse(model, leastBoughtOf(model));
    expect([first?.runs, first?.bound]).toEqual([[0, 1], { hung: 2, bought: 6, leftOver: 0, used: 2 }]);
    expect(first?.boundFor(1)).toEqual({ hung: 1, bought: 0, leftOver: 0, used: 2 });
  });

  test('of runs that are alike the first are used', () => {
    const model = read(additive([2, 2], { runs: onOffer(2, 2, 2) }));
    expect(runsToUse(model, leastBoughtOf(model)).map(({ runs }) => runs)).toEqual([[0, 1], [0]]);
  });

  test('the fewest rolls bought: 7 in sixes are 12; in twos and fives 3 are 4; where a dozen costs less than seven 7 are bought apart', () => {
    const bought = (rule: (rolls: number) => number) => leastBoughtOf(read(additive([4], { runs: onOffer(24), bought: rule })));
    expect([1, 6, 7].map(bought(inPacks(6)))).toEqual([6, 6, 12]);
    expect([1, 3, 5, 8].map(bought((rolls) => (rolls === 1 || rolls === 3 ? rolls + 1 : rolls)))).toEqual([2, 4, 5, 8]);
    expect([6, 7, 13].map(bought((rolls) => (rolls > 6 && rolls < 12 ? 12 : rolls)))).toEqual([6, 7, 13]);
    expect(leastBoughtOf(read(additive([4], { runs: inHand(9) })))(1)).toBe(Infinity);
  });
});

test('sizes 7 and 8 fill 8 of 14 and all of 15; 8, 7, 5 and 3 fill 11 with the 8 and the 3', () => {
  const fullest = fullestFill([7, 8], 20);
  expect([6, 7, 14, 15, 20].map(fullest)).toEqual([0, 7, 8, 15, 15]);
  expect(fillUpTo([8, 7, 5, 3], 11)).toEqual(expect.arrayContaining([0, 3]));
  expect(fillUpTo([8, 7, 5, 3], 11)).toHaveLength(2);
  expect(fillUpTo([8, 7], 3)).toEqual([]);
});

describe('good starts', () => {
  test('units of 5, 4 and 3 on runs of 7 and 5: the 5 moves so that the 3 hangs', () => {
    const model = read(additive([5, 4, 3], { runs: inHand(7, 5) }));
    const hanging = hangingOf(model, [0, 1, -1]);
    improveByPairs(model, [0, 1], hanging, goal(3), budget());
    expect(hanging.runOf).toEqual([1, 0, 0]);
  });

  test('two runs share out their units so that least is bought, then least is left, then what is left is in one place', () => {
    const improved = (needs: readonly number[], runs: AssignmentProblem['runs'], choice: readonly number[]) => {
      const model = read(additive(needs, { runs }));
      const hanging = hangingOf(model, choice);
      improveByPairs(model, runs.map((_, run) => run), hanging, goal(99), budget());
      return hanging.loads;
    };
    expect(improved([4, 3], [{ inHand: 4, offered: 4 }, { inHand: 3, offered: 4 }], [1, 0])).toEqual([4, 3]);
    expect(improved([4, 3], inHand(7, 8), [0, 1])).toEqual([7, 0]);
    expect(improved([4, 3, 3, 2], onOffer(8, 8), [0, 1, 1, 0])).toEqual(expect.arrayContaining([8, 4]));
  });

  test('rooms of 6, 5 and 4 on runs with 9 and 6 in hand', () => {
    const model = read(additive([6, 5, 4], { runs: inHand(9, 6) }));
    const [first] = startsOf(model, [0, 1], { hung: 3, bought: 0, leftOver: 0, used: 2 }, budget());
    expect(first).toEqual([1, 0, 0]);
    expect(lightestGroups(read(additive([5, 3, 4], { runs: inHand(9) })), [0], 2)).toEqual([2, 1]);
  });

  test('of rooms of 4, 4, 5 and 7 two that leave least of 9 in hand', () => {
    const model = read(additive([4, 4, 5, 7], { runs: inHand(9) }));
    const [first] = startsOf(model, [0], { hung: 2, bought: 0, leftOver: 0, used: 1 }, budget());
    expect(judge(model, first!)).toEqual({ hung: 2, bought: 0, leftOver: 0, used: 1 });
  });
});

describe('rooms that are cut together', () => {
  test('six of one kind and three of another are dealt 4 and 2, 2 and 1', () => {
    const model = read(pooled([200, 200, 200, 200, 200, 200, 100, 100, 100], { runs: onOffer(10, 5) }));
    const choice = dealEvenly(model, [0, 1], goal(9));
    const counts = [0, 1].map((run) => [200, 100].map((value) => choice.filter((chosen, unit) => chosen === run && model.size.values[unit] === value).length));
    expect(counts).toEqual([[4, 2], [2, 1]]);
  });

  test('a room of 0.6 moves so that each run gives 3 rolls', () => {
    const model = read(pooled([260, 140, 90, 60], { runs: onOffer(9, 9) }));
    expect(improveByAsking(model, [0, 1], [0, 1, 1, 0], { hung: 4, bought: 6, leftOver: 0, used: 2 }, budget())).toEqual({ choice: [0, 1, 1, 1], judged: { hung: 4, bought: 6, leftOver: 0, used: 2 } });
  });

  test('a room is given up where its run has not enough, and hung where another has', () => {
    const model = read(pooled([260, 240, 140], { runs: onOffer(5, 2) }));
    const spent = assignBudget(0, 0);
    expect(improveByAsking(model, [0, 1], [0, 0, 0], goal(3), spent)).toEqual({ choice: [0, 0, 1], judged: { hung: 3, bought: 7, leftOver: 0, used: 2 } });
  });
});

test('the search hangs rooms of 4, 4 and 3 from runs of 7 and 4, and says whether all was tried', () => {
  const model = read(additive([4, 4, 3], { runs: inHand(7, 4) }));
  const nothing: Found = { choice: [-1, -1, -1], judged: NOTHING_HUNG };
  const found: Found[] = [];
  const search = (steps: number) => searchAll(model, nothing, { hung: 3, bought: 0, leftOver: 0, used: 1 }, leastBoughtOf(model), assignBudget(steps, Infinity), (better) => found.push(better));
  expect(search(Infinity)).toBe(true);
  expect(found.at(-1)).toEqual({ choice: [0, 1, 0], judged: { hung: 3, bought: 0, leftOver: 0, used: 2 } });
  expect(search(10)).toBe(false);
});

describe('the search', () => {
  const searched = (problem: AssignmentProblem) => {
    const model = read(problem);
    const found: Found[] = [{ choice: model.typed.map(() => -1), judged: NOTHING_HUNG }];
    const floor = { hung: 99, bought: 0, leftOver: 0, used: 0 };
    expect(searchAll(model, found[0]!, floor, leastBoughtOf(model), budget(), (better) => found.push(better))).toBe(true);
    return found.at(-1)!.judged;
  };

  test('goes on from rooms of 3 and 2 though a room of 5 took as much of the run', () => {
    expect(searched(additive([5, 3, 2, 1], { runs: inHand(6) }))).toEqual({ hung: 3, bought: 0, leftOver: 0, used: 1 });
  });

  test('tells rooms apart that are alike to a bound and not to a cutting', () => {
    // The first and the last share rolls, and so do the two between.
    const count = (units: readonly number[]) => (units.length < 3 ? [0, 2, 3 + (['0,3', '1,2'].includes(units.join()) ? 0 : 1)][units.length]! : 2 * units.length);
    expect(searched(pooled([100, 100, 100, 100], { runs: onOffer(3, 3), count }))).toEqual({ hung: 4, bought: 6, leftOver: 0, used: 2 });
  });
});
