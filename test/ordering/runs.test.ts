import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assignRuns, findRuns, type RunStock } from '../../shared-core/ordering/index.ts';
import { exampleDocument, houseOf } from '../builders.ts';

test('a room of 6 rolls and one of 3 from runs of 8 and 3', () => {
  const need = new Map([['a', 6], ['b', 3]]);
  const rolls = (rooms: readonly string[]) => rooms.reduce((sum, room) => sum + need.get(room)!, 0);
  const runs = [{ run: '2214', inHand: 0, offered: 8 }, { run: '2207', inHand: 3, offered: 0 }];
  expect(assignRuns(['a', 'b'], runs, rolls)).toEqual([{ run: '2214', rooms: ['a'] }, { run: '2207', rooms: ['b'] }]);
});

test('rooms that no run can hang come last, under no run', () => {
  const rolls = (rooms: readonly string[]) => rooms.length * 5;
  expect(assignRuns(['a', 'b', 'c'], [{ run: '1', inHand: 0, offered: 9 }], rolls)).toEqual([{ run: '1', rooms: ['a'] }, { run: null, rooms: ['b', 'c'] }]);
});

test('most rooms hung, then fewest bought, then least left over, as trying everything does', () => {
  const runs = fc.array(fc.record({ inHand: fc.integer({ min: 0, max: 6 }), offered: fc.integer({ min: 0, max: 9 }) }), { minLength: 1, maxLength: 3 });
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 5 }), runs, fc.boolean(), (needs, stock, savesByPooling) => {
      const rooms = needs.map((_, index) => String(index));
      const known: RunStock[] = stock.map((one, index) => ({ run: `r${index}`, ...one }));
      // Cut together, two rooms may take one roll fewer.
      const rolls = (ids: readonly string[]) => ids.reduce((sum, id) => sum + needs[Number(id)]!, 0) - (savesByPooling && ids.length > 1 ? 1 : 0);
      const scoreOf = (choice: readonly (number | null)[]) => {
        const used = known.map((run, index) => ({ run, rooms: rooms.filter((_, room) => choice[room] === index) })).filter((one) => one.rooms.length > 0);
        if (used.some(({ run, rooms: inRun }) => rolls(inRun) > run.inHand + run.offered)) return null;
        return [
          -choice.filter((run) => run !== null).length,
          used.reduce((sum, { run, rooms: inRun }) => sum + Math.max(0, rolls(inRun) - run.inHand), 0),
          used.reduce((sum, { run, rooms: inRun }) => sum + Math.max(0, run.inHand - rolls(inRun)), 0),
        ];
      };
      const best = allChoices(rooms.length, known.length).map(scoreOf).filter((score) => score !== null).toSorted(compare)[0];
      const assigned = assignRuns(rooms, known, rolls);
      const choice = rooms.map((room) => {
        const run = assigned.find((one) => one.rooms.includes(room))!.run;
        return run === null ? null : known.findIndex((one) => one.run === run);
      });
      expect(assigned.flatMap((one) => one.rooms).toSorted()).toEqual(rooms.toSorted());
      expect(scoreOf(choice)).toEqual(best);
    }),
    { numRuns: 300 },
  );
});

function allChoices(rooms: number, runs: number): readonly (number | null)[][] {
  return Array.from({ length: rooms }).reduce<(number | null)[][]>((choices) => choices.flatMap((choice) => [null, ...Array.from({ length: runs }, (_, run) => run)].map((run) => [...choice, run])), [[]]);
}

function compare(one: readonly number[], other: readonly number[]): number {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at < 0 ? 0 : one[at]! - other[at]!;
}

test('what there is of a run is stock and sound deliveries under the right pattern number, and what is offered', () => {
  const document = exampleDocument();
  document.stock = [{ covering: 'fern', run: '2207', rolls: 3 }, { covering: 'ivy', run: '9', rolls: 4 }];
  document.offers = [{ covering: 'fern', run: '2214', rolls: 5 }, { covering: 'fern', run: '2207', rolls: 1 }];
  document.deliveries = [
    { covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 8, damaged: 1 },
    { covering: 'fern', patternNumber: 'K-2014', run: '2214', rolls: 6 },
  ];
  expect(findRuns(houseOf(document), 'fern')).toEqual([
    { run: '2207', inHand: 3, offered: 1 },
    { run: '2214', inHand: 7, offered: 5 },
  ]);
});

test('once stopped, what was found before stands where the runs still have enough, else the first that is met', () => {
  // Met first: all rooms from the run of 12, so that 'c' is not hung. Found at the end: 'a' from it, the others from that of 9.
  const needs: Record<string, number> = { a: 8, b: 4, c: 5 };
  const runs = [{ run: 'long', inHand: 12, offered: 0 }, { run: 'short', inHand: 9, offered: 0 }];
  let isStopped = false;
  let cuttings = 0;
  const rolls = (rooms: readonly string[]) => {
    cuttings += 1;
    return rooms.reduce((sum, room) => sum + needs[room]!, 0);
  };
  const assign = () => {
    cuttings = 0;
    return assignRuns(['a', 'b', 'c'], runs, rolls, { isStopped: () => isStopped });
  };
  const whole = assign();
  expect(whole).toEqual(assignRuns(['a', 'b', 'c'], runs, rolls));
  expect(whole.every(({ run }) => run !== null)).toBe(true);

  isStopped = true;
  expect(assign()).toEqual(whole);
  expect(cuttings).toBe(whole.length);
  // 'c' grows beyond what stood, so another is met.
  needs['c'] = 20;
  expect(assign()).toEqual([{ run: 'long', rooms: ['a', 'b'] }, { run: null, rooms: ['c'] }]);
  // Nothing that was stopped is remembered.
  needs['c'] = 5;
  expect(assign()).toEqual(whole);
});

test('a search that is stopped on its way ends with what it has met', () => {
  const rooms = Array.from({ length: 12 }, (_, index) => `room ${index}`);
  const runs = Array.from({ length: 3 }, (_, index) => ({ run: `r${index}`, inHand: 9, offered: 0 }));
  let cuttings = 0;
  const assigned = assignRuns(rooms, runs, (ids) => (cuttings += 1, ids.length * 2), { isStopped: () => cuttings > 20 });
  expect(assigned.flatMap((one) => one.rooms).toSorted()).toEqual(rooms.toSorted());
  expect(assigned.filter(({ run }) => run !== null).every((one) => one.rooms.length <= 4)).toBe(true);
  expect(cuttings).toBeLessThan(80);
});
