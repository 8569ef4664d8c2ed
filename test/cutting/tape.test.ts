import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CuttingProblem } from '../../shared-core/cutting/index.ts';
import { mergeKinds, placeNodes } from '../../shared-core/cutting/nodes.ts';
import { ceilDivide, floorDivide, gapBefore, layTape, within } from '../../shared-core/cutting/tape.ts';
import { budgetOf, partOf } from '../../shared-core/cutting/work.ts';
import { smallProblems } from './problems.ts';

const TWO_PHASES: CuttingProblem = {
  rollLength: 1_000,
  repeat: 100,
  rollStart: 'anywhere',
  pieces: [
    { length: 300, phase: 30, count: 2 },
    { length: 450, phase: 0, count: 1 },
    { length: 300, phase: 30, count: 3 },
    { length: 901, phase: 0, count: 1 },
    { length: 200, phase: 50, count: 0 },
  ],
};

describe('a tape', () => {
  it('has one lane where rolls start at a repeat, else one for each phase, a repeat shorter', () => {
    expect(layTape({ ...TWO_PHASES, rollStart: 'at-repeat' }).lanes).toEqual([{ origin: 0, capacity: 1_000 }]);
    expect(layTape(TWO_PHASES).lanes).toEqual([
      { origin: 0, capacity: 900 },
      { origin: 30, capacity: 900 },
    ]);
  });

  it('takes piece types that are alike for one kind, longest first, and leaves out what no roll is sure to give', () => {
    const { kinds, impossible } = layTape(TWO_PHASES);
    expect(kinds).toEqual([
      { length: 450, phase: 0, count: 1, types: [1], rank: 0 },
      { length: 300, phase: 30, count: 5, types: [0, 2], rank: 1 },
    ]);
    expect(impossible).toEqual([3]);
  });

  it('leaves no gap in a free match, and else what the pattern asks for', () => {
    expect([gapBefore(0, 0, 123, 0), gapBefore(30, 0, 450, 100), gapBefore(0, 30, 470, 100), gapBefore(30, 30, 400, 100)]).toEqual([0, 80, 0, 0]);
  });

  it('keeps of a roll what is still wanted', () => {
    expect(within([0, 1, 1, 0, 2], [1, 5, 0])).toEqual([0, 1, 1]);
  });

  it('divides whole numbers without a float taking part', () => {
    expect([floorDivide(21_000, 3_500), floorDivide(20_999, 3_500), ceilDivide(21_000, 3_500), ceilDivide(21_001, 3_500)]).toEqual([6, 5, 6, 7]);
  });
});

describe('the places at which a piece may begin', () => {
  const halfDrop: CuttingProblem = {
    rollLength: 10_050,
    repeat: 640,
    rollStart: 'at-repeat',
    pieces: [
      { length: 2_230, phase: 0, count: 1 },
      { length: 2_230, phase: 320, count: 1 },
    ],
  };

  it('a piece of 2230 passes seven places of a half-drop of 640', () => {
    const { phases, jumpOf, lanes } = placeNodes(layTape(halfDrop));
    expect([phases, [...jumpOf]]).toEqual([2, [7, 7]]);
    expect([2_230, 2_240, 2_241].map((end) => lanes[0]!.placeAt(end))).toEqual([7, 7, 8]);
  });

  it('any piece passes as many as the tape shows, and fits up to its last one', () => {
    fc.assert(
      fc.property(smallProblems({ rollLength: 90, repeat: 20, types: 4, count: 2 }).filter(({ repeat }) => repeat > 0), ({ ...problem }) => {
        const tape = layTape(problem);
        if (tape.kinds.length === 0) return;
        const nodes = placeNodes(tape);
        const phases = new Set(tape.kinds.map(({ phase }) => phase));
        tape.lanes.forEach(({ origin, capacity }, lane) => {
          const places = Array.from({ length: 2 * capacity + problem.repeat }, (_, position) => position).filter((position) => phases.has((origin + position) % problem.repeat));
          for (const { rank, phase, length } of tape.kinds) {
            const fitting = places.flatMap((position, place) => ((origin + position) % problem.repeat === phase && position + length <= capacity ? [place] : []));
            expect(nodes.lanes[lane]!.lastOf[rank]).toBe(fitting.at(-1) ?? -1);
            for (const place of fitting) expect(places.findIndex((position) => position >= places[place]! + length)).toBe(place + nodes.jumpOf[rank]!);
          }
        });
      }),
      { numRuns: 300 },
    );
  });

  it('takes kinds that no roll can tell apart for one, as long as the longest', () => {
    const alike = { ...halfDrop, pieces: [2_401, 2_540, 2_561].map((length) => ({ length, phase: 0, count: 2 })) };
    expect(mergeKinds(layTape(alike)).kinds.map(({ length, count, types }) => [length, count, types])).toEqual([
      [2_561, 2, [2]],
      [2_540, 4, [1, 0]],
    ]);
  });
});

describe('a budget of steps', () => {
  it('is over when they are spent, or when somebody says so', () => {
    const work = budgetOf(10);
    work.spend(9);
    expect(work.isOver()).toBe(false);
    work.spend(1);
    expect(work.isOver()).toBe(true);

    const stopped = budgetOf(10, () => true);
    stopped.spend(1);
    expect(stopped.isOver()).toBe(true);
  });

  it('a part is over after its own steps or with the whole, and its steps are spent from the whole', () => {
    const whole = budgetOf(10);
    const part = partOf(whole, 3);
    part.spend(3);
    expect([part.isOver(), whole.isOver()]).toEqual([true, false]);
    const other = partOf(whole, 100);
    other.spend(7);
    expect([other.isOver(), whole.isOver()]).toEqual([true, true]);
  });
});
