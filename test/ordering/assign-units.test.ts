import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Assignment, type AssignmentProblem, assignUnits } from '../../shared-core/ordering/assign-units.ts';
import { additive, bestOf, inPacks, marksOf, pooled } from './assign-brute.ts';
import cases from './cases/runs.json' with { type: 'json' };

const problemOf = ({ cut, units, runs, pack }: (typeof cases)[number]): AssignmentProblem =>
  (cut === 'apart' ? additive : pooled)(
    units.map(({ takes }) => takes),
    { units: units.map((unit) => ('run' in unit ? { rooms: unit.rooms, run: unit.run } : { rooms: unit.rooms })), runs, bought: inPacks(pack) },
  );

describe('worked by hand', () => {
  test.each(cases)('$name', (one) => {
    const problem = problemOf(one);
    const { marks, all } = bestOf(problem);
    const { hung, bought, leftOver, used } = one.best;
    expect(marks).toEqual([-hung || 0, bought, leftOver, used]);
    const assignment = assignUnits(problem);
    expect(assignment.score).toEqual({ hung, bought, leftOver });
    expect(assignment.isProven).toBe(true);
    expect(marksOf(problem, assignment.runs)).toEqual(marks);
    if (one.hangsFrom) {
      // The reasoning says that nothing else is as good.
      expect(all.map(({ runs }) => runs)).toEqual([one.hangsFrom]);
      expect(assignment.runs).toEqual(one.hangsFrom);
    } else expect(all.length).toBeGreaterThan(1);
  });

  test('the example of a room of 6 rolls and one of 3', () => {
    const assignment = assignUnits(additive([6, 3], { runs: [{ inHand: 0, offered: 8 }, { inHand: 3, offered: 0 }] }));
    expect(assignment).toEqual({ runs: [0, 1], score: { hung: 2, bought: 6, leftOver: 0 }, isProven: true });
  });
});

describe('of equals', () => {
  test('the largest rooms go to the first run, and of rooms that are alike the first does', () => {
    const alike = Array.from({ length: 2 }, () => ({ inHand: 0, offered: 10 }));
    expect(assignUnits(additive([4, 6, 9], { runs: alike })).runs).toEqual([0, 0, 1]);
    expect(assignUnits(additive([5, 5, 5, 5], { runs: alike })).runs).toEqual([0, 0, 1, 1]);
    expect(assignUnits(additive([5, 5, 5], { runs: [{ inHand: 0, offered: 10 }, { inHand: 0, offered: 5 }] })).runs).toEqual([0, 0, 1]);
  });

  test('the score is the same in whatever order the rooms are typed, and so is the run of each room of a size of its own', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 2, max: 40 }), { minLength: 2, maxLength: 14 });
    const stock = fc.array(fc.record({ inHand: fc.integer({ min: 0, max: 30 }), offered: fc.integer({ min: 0, max: 40 }) }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(sizes, stock, fc.infiniteStream(fc.nat()), fc.boolean(), (needs, runs, keys, isApart) => {
        const shuffled = needs.map((need) => ({ need, key: keys.next().value! })).sort((one, other) => one.key - other.key).map(({ need }) => need);
        const assign = (rolls: readonly number[]) => assignUnits(isApart ? additive(rolls, { runs }) : pooled(rolls.map((roll) => 100 * roll - 50), { runs }));
        const [typed, other] = [assign(needs), assign(shuffled)];
        expect(other.score).toEqual(typed.score);
        expect(other.isProven).toBe(typed.isProven);
        expect(needs.map((need) => other.runs[shuffled.indexOf(need)])).toEqual(typed.runs);
      }),
      { numRuns: 200 },
    );
  });
});

describe('where nothing can hang', () => {
  const nothing: Omit<Assignment, 'runs'> = { score: { hung: 0, bought: 0, leftOver: 0 }, isProven: true };

  test('no runs, no units, runs of nothing, and units without a room', () => {
    expect(assignUnits(additive([], { runs: [] }))).toEqual({ ...nothing, runs: [] });
    expect(assignUnits(additive([3, 2], { runs: [] }))).toEqual({ ...nothing, runs: [null, null] });
    expect(assignUnits(additive([], { runs: [{ inHand: 2, offered: 3 }] }))).toEqual({ ...nothing, runs: [] });
    expect(assignUnits(additive([3], { runs: [{ inHand: 0, offered: 0 }] }))).toEqual({ ...nothing, runs: [null] });
    expect(assignUnits(additive([3], { units: [{ rooms: [] }], runs: [{ inHand: 4, offered: 0 }] }))).toEqual({ ...nothing, runs: [null] });
    expect(assignUnits(pooled([], { runs: [] }))).toEqual({ ...nothing, runs: [] });
    expect(assignUnits(pooled([300], { runs: [], bounds: [] }))).toEqual({ ...nothing, runs: [null] });
    expect(assignUnits(pooled([300], { runs: [{ inHand: 0, offered: 0 }], bounds: [] }))).toEqual({ ...nothing, runs: [null] });
  });

  test('a run that there is not', () => {
    expect(assignUnits(additive([3, 2], { units: [{ rooms: [0], run: 7 }, { rooms: [1] }], runs: [{ inHand: 9, offered: 0 }] })).runs).toEqual([null, 0]);
  });

  test('a room that takes nothing hangs from any run, and from none where there is none', () => {
    expect(assignUnits(additive([0], { runs: [{ inHand: 0, offered: 0 }] }))).toEqual({ runs: [0], score: { hung: 1, bought: 0, leftOver: 0 }, isProven: true });
    expect(assignUnits(additive([0], { runs: [] })).runs).toEqual([null]);
  });

  test('bounds that are no bounds are left out', () => {
    const bounds = [{ values: [1], worth: 1 }, { values: [0.5, 2], worth: 1 }, { values: [1, 1], worth: 0 }, { values: [-1, 3], worth: 2 }];
    expect(assignUnits(pooled([150, 250], { runs: [{ inHand: 0, offered: 4 }], bounds }))).toMatchObject({ runs: [0, 0], isProven: true });
    expect(assignUnits(additive([2, 3], { runs: [{ inHand: 0, offered: 5 }], bounds }))).toMatchObject({ runs: [0, 0], isProven: true });
  });
});

describe('a watch', () => {
  const needs = Array.from({ length: 40 }, (_, room) => 200 + ((room * 137) % 1_200));
  const runs = Array.from({ length: 6 }, (_, run) => ({ inHand: 7 * run, offered: 60 - 7 * run }));

  test('that is stopped already gets an assignment that the runs have enough for, not proved', () => {
    for (const problem of [additive(needs.map((need) => Math.ceil(need / 100)), { runs }), pooled(needs, { runs }), pooled(needs, { runs, bounds: [] })]) {
      const assignment = assignUnits(problem, { isStopped: () => true });
      const marks = marksOf(problem, assignment.runs);
      expect(marks?.slice(0, 3)).toEqual([-assignment.score.hung, assignment.score.bought, assignment.score.leftOver]);
      expect(assignment.score.hung).toBeGreaterThan(20);
      expect(assignment.isProven).toBe(false);
    }
  });

  test('that is stopped on the way gets the best so far after few further cuttings', () => {
    let [cuttings, whenStopped] = [0, 0];
    const problem = pooled(needs, { runs, count: (units) => (cuttings += 1, 1 + Math.ceil(units.reduce((sum, unit) => sum + needs[unit]!, 0) / 96)) });
    const isStopped = () => {
      if (cuttings < 20) return false;
      whenStopped ||= cuttings;
      return true;
    };
    const assignment = assignUnits(problem, { isStopped });
    expect(whenStopped).toBe(20);
    expect(cuttings).toBeLessThan(60);
    expect(assignment.isProven).toBe(false);
    expect(marksOf(problem, assignment.runs)?.[0]).toBe(-assignment.score.hung);
  });

  test('that never stops changes nothing', () => {
    const problem = pooled(needs, { runs });
    expect(assignUnits(problem, { isStopped: () => false })).toEqual(assignUnits(problem));
  });
});

describe('what is large', () => {
  /** The same numbers each time, spread like drawn ones. */
  const spread = (index: number, salt: number) => (Math.imul(index + 1, 2_654_435_761) + Math.imul(salt, 40_503)) >>> 8;

  test.each([[40, 6, 95], [40, 6, 100], [40, 6, 105], [1_000, 10, 95], [1_000, 10, 100], [1_000, 10, 105]])('%i rooms on %i runs that have %i rolls for each 100 needed are assigned and proved', (rooms, count, percent) => {
    const needs = Array.from({ length: rooms }, (_, room) => 2 + (spread(room, percent) % 13));
    const need = needs.reduce((sum, rolls) => sum + rolls, 0);
    const all = Math.floor((need * percent) / 100);
    const even = Math.floor(all / count);
    const runs = Array.from({ length: count }, (_, run) => ({ inHand: 4 * run, offered: (run === 0 ? all - (count - 1) * even : even) - 4 * run }));
    const problem = additive(needs, { runs });
    const assignment = assignUnits(problem);
    expect(assignment.isProven).toBe(true);
    expect(marksOf(problem, assignment.runs)?.slice(0, 3)).toEqual([-assignment.score.hung, assignment.score.bought, assignment.score.leftOver]);
    if (percent >= 100) expect(assignment.score).toMatchObject({ hung: rooms, bought: need - 2 * count * (count - 1), leftOver: 0 });
    // The lightest rooms, as many as there are rolls for: the bound of a child's sum.
    let left = all;
    expect(assignment.score.hung).toBe(needs.toSorted((one, other) => one - other).filter((rolls) => (left -= rolls) >= 0).length);
  });

  test('in packs, where not all rooms hang, those that leave least are hung, proved', () => {
    for (const percent of [90, 93, 96, 99]) {
      for (const pack of [2, 6]) {
        const needs = Array.from({ length: 400 }, (_, room) => [2, 3, 5, 6, 8, 9, 11, 12, 14][spread(room, percent + pack) % 9]!);
        const offered = Math.floor((needs.reduce((sum, rolls) => sum + rolls, 0) * percent) / 800);
        const runs = Array.from({ length: 8 }, (_, run) => ({ inHand: 5 * run, offered: Math.floor((offered - 5 * run) / pack) * pack }));
        const { score, isProven } = assignUnits(additive(needs, { runs, bought: inPacks(pack) }));
        expect([isProven, score.leftOver <= 1]).toEqual([true, true]);
      }
    }
  });

  test('where each run takes 0.7 of a roll more than the bound says, as many rooms are dealt anew as the runs can hang', () => {
    const hung = [0, 1, 2, 3].map((salt) => {
      const needs = Array.from({ length: 40 }, (_, room) => 200 + (spread(room, salt) % 1_200));
      const need = Math.ceil(needs.reduce((sum, part) => sum + part, 0) / 100);
      const runs = Array.from({ length: 6 }, () => ({ inHand: 0, offered: Math.floor((need * 93) / 600) }));
      const problem = pooled(needs, { runs, count: (units) => Math.ceil((units.reduce((sum, unit) => sum + needs[unit]!, 0) + 70) / 100) });
      // The lightest rooms in all that the runs have, were each room cut from as many of them as it likes.
      let left = runs.reduce((sum, { offered }) => sum + 100 * offered - 70, 0);
      const most = needs.toSorted((one, other) => one - other).filter((part) => (left -= part) >= 0).length;
      return most - assignUnits(problem).score.hung;
    });
    expect(hung).toEqual([0, 0, 0, 0]);
  });

  test('a few dozen cuttings are asked for, each once, where rooms are cut together', () => {
    const needs = Array.from({ length: 40 }, (_, room) => 200 + (spread(room, 5) % 1_200));
    const need = Math.ceil(needs.reduce((sum, part) => sum + part, 0) / 100);
    const runs = Array.from({ length: 6 }, () => ({ inHand: 0, offered: Math.ceil((need * 102) / 600) }));
    const asked = new Set<string>();
    const problem = pooled(needs, { runs });
    const assignment = assignUnits({
      ...problem,
      count(units) {
        expect(asked.has(units.join())).toBe(false);
        asked.add(units.join());
        return problem.count(units);
      },
    });
    expect(assignment).toMatchObject({ score: { hung: 40, bought: need }, isProven: true });
    expect(asked.size).toBeLessThan(60);
  });
});
