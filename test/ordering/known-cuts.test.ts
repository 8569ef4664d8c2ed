import { beforeEach, describe, expect, test, vi } from 'vitest';
import * as cutting from '../../shared-core/cutting/index.ts';
import type { CuttingPlan, CuttingProblem, Effort } from '../../shared-core/cutting/index.ts';
import { knownCuts, type Watch } from '../../shared-core/ordering/index.ts';
import { knownArrangement } from '../../shared-core/ordering/known-cuts.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { UNITS_PER_INCH } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

vi.mock('../../shared-core/cutting/index.ts', async (original) => {
  const real = await original<typeof cutting>();
  return { ...real, planCuts: vi.fn(real.planCuts), arrangeCuts: vi.fn(real.arrangeCuts) };
});
const asked = vi.mocked(cutting.planCuts);

let fresh = 10_000;
/** A problem that no test has asked before. */
const problem = (count = 7): CuttingProblem => ({ rollLength: (fresh += 1), repeat: 640, rollStart: 'anywhere', pieces: [{ length: 2_400, phase: 0, count }] });
const never: Watch = { isStopped: () => false };
const stopped: Watch = { isStopped: () => true };
const efforts = () => asked.mock.calls.map(([, effort]) => effort);
beforeEach(() => {
  asked.mockClear();
});

describe('rolls arranged along the walls', () => {
  const arranging = vi.mocked(cutting.arrangeCuts);

  test('are arranged once for the same plan and stretches', () => {
    arranging.mockClear();
    const one = problem();
    const plan = knownCuts(one, 'usual');
    const rolls = knownArrangement(one, plan, [Array<number>(7).fill(0)]);
    expect(knownArrangement(structuredClone(one), knownCuts(structuredClone(one), 'usual'), [Array<number>(7).fill(0)])).toBe(rolls);
    expect(arranging).toHaveBeenCalledTimes(1);
    expect(knownArrangement(one, plan, [[0, 0, 0], [0, 0, 0, 0]]).rolls.flatMap(({ cuts }) => cuts)).toHaveLength(7);
    expect(arranging).toHaveBeenCalledTimes(2);
  });

  test('are not remembered where the watch was stopped', () => {
    arranging.mockClear();
    const one = problem(40);
    const plan = knownCuts(one, 'usual');
    const stretches = [Array<number>(40).fill(0)];
    expect(knownArrangement(one, plan, stretches, stopped).rolls).toHaveLength(plan.rollCount);
    expect(knownArrangement(one, plan, stretches, never).rolls).toHaveLength(plan.rollCount);
    expect(arranging).toHaveBeenCalledTimes(2);
  });
});

describe('without a watch', () => {
  test('the same problem is cut once for each effort, and gives what planCuts gives', async () => {
    const { planCuts } = await vi.importActual<typeof cutting>('../../shared-core/cutting/index.ts');
    const one = problem();
    for (const effort of ['instant', 'usual', 'patient', 'usual'] as const) expect(knownCuts(structuredClone(one), effort)).toEqual(planCuts(one, effort));
    expect(efforts()).toEqual(['instant', 'usual', 'patient']);
  });

  test('a more patient answer that is known changes nothing', () => {
    const one = problem();
    knownCuts(one, 'patient');
    knownCuts(one, 'instant');
    expect(efforts()).toEqual(['patient', 'instant']);
  });
});

describe('with a watch', () => {
  test('a more patient answer that is known is taken', () => {
    const one = problem();
    const patient = knownCuts(one, 'patient', never);
    expect(knownCuts(one, 'usual', never)).toBe(patient);
    expect(efforts()).toEqual(['patient']);
  });

  test('that is stopped already, the best that is known is taken, else the quick answer', () => {
    const one = problem();
    const usual = knownCuts(one, 'usual');
    expect(knownCuts(one, 'patient', stopped)).toBe(usual);
    expect(knownCuts(problem(), 'patient', stopped).rollCount).toBeGreaterThan(0);
    expect(efforts()).toEqual(['usual', 'instant']);
  });

  test('that is stopped meanwhile, what was found so far is given and not remembered', () => {
    const one = problem();
    const soFar: CuttingPlan = { ...knownCuts(one, 'instant'), rollCount: 99, lowerBound: 1, isProven: false };
    asked.mockImplementationOnce((_problem: CuttingProblem, _effort?: Effort, stop?: () => boolean) => ({ ...soFar, rollCount: stop?.() ? 1 : 0 }));
    let looks = 0;
    const watch: Watch = { isStopped: () => (looks += 1) > 1 };
    expect(knownCuts(one, 'usual', watch).rollCount).toBe(1);
    expect(knownCuts(one, 'usual', never).rollCount).toBe(knownCuts(one, 'usual').rollCount);
    expect(efforts()).toEqual(['instant', 'usual', 'usual']);
  });

  test('that is stopped meanwhile, a quick answer that is better than what was found is given', () => {
    const one = problem();
    const instant = knownCuts(one, 'instant');
    asked.mockImplementationOnce((_problem: CuttingProblem, _effort?: Effort, stop?: () => boolean) => ({ ...instant, rollCount: instant.rollCount + (stop?.() ? 1 : 0) }));
    let looks = 0;
    expect(knownCuts(one, 'usual', { isStopped: () => (looks += 1) > 1 })).toBe(instant);
  });
});

describe('an edit', () => {
  const papers = ['one', 'two', 'three'].map((id, index) => wallcovering({ id, patternNumber: id, repeat: `${18 + index} in` }));
  const hung = (covering: string, id: string, height: string): Loose => room(['100 in', '90 in', '100 in', '90 in'], { id, name: id, bands: [{ id: 'main', covering, walls: ['A', 'B', 'C', 'D'] }] }, Array<Loose>(4).fill({ height }));
  const house = (height: string) => houseOf(documentOf({ coverings: papers, rooms: [...papers.map(({ id }) => hung(id, `${id}-a`, '96 in')), hung('one', 'one-b', height), ...papers.map(({ id }) => hung(id, `${id}-c`, '97 in'))] }));
  /** The usual plan asks the search about single rooms at the quick effort; the order asks at the effort of the plan. */
  const cutAtUsual = () => asked.mock.calls.filter(([, effort]) => effort === 'usual').map(([{ repeat }]) => repeat / UNITS_PER_INCH);

  test('cuts only the patterns it touches again', () => {
    planHouse(house('95 in'), 'usual', never);
    expect(new Set(cutAtUsual())).toEqual(new Set([18, 19, 20]));
    asked.mockClear();
    planHouse(house('94 in'), 'usual', never);
    // The room that changed alone, and its pattern over the house.
    expect(cutAtUsual()).toEqual([18, 18]);
    asked.mockClear();
    planHouse(house('95 in'), 'usual', never);
    expect(asked).not.toHaveBeenCalled();
  });

  test('says how many patterns are cut, of how many', () => {
    const told: (readonly [number, number])[] = [];
    planHouse(house('93 in'), 'usual', { ...never, progress: (done, of) => told.push([done, of]) });
    expect(told).toEqual([[1, 3], [2, 3], [3, 3]]);
  });

  test('watched by somebody who has stopped it is planned from what is known, and quickly where nothing is', () => {
    const before = planHouse(house('92 in'), 'usual', never);
    expect(planHouse(house('92 in'), 'usual', stopped)).toEqual(before);
    asked.mockClear();
    const edited = planHouse(house('91 in'), 'usual', stopped);
    expect(new Set(efforts())).toEqual(new Set(['instant']));
    expect(edited.rooms.map(({ bands }) => bands[0]!.stretches.map((stretch) => 'options' in stretch && stretch.options.length > 0))).toEqual(before.rooms.map(({ id }) => [id !== 'one-b']));
    expect(edited.order.slice(1)).toEqual(before.order.slice(1));
  });
});
