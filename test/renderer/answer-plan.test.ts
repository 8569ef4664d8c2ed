import { describe, expect, test } from 'vitest';
import type { House } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { answerPlan, type PlanAnswer, type PlanRequest, SOON_MILLISECONDS } from '../../src-renderer/state/answer-plan.ts';
import { dropUpTo, isDropped, isStopped, newStopFlag, stopUpTo } from '../../src-renderer/state/stop-flag.ts';
import { documentOf, houseOf, room, wallcovering } from '../builders.ts';

let fresh = 0;
/** A house of two patterns that no test has planned before. */
function newHouse(): House {
  fresh += 1;
  const of = (id: string) => room(['100 in', '90 in', '100 in', `${90 + fresh} in`], { id, name: id, bands: [{ id: 'main', covering: id, walls: ['A', 'B', 'C', 'D'] }] });
  return houseOf(documentOf({ coverings: ['one', 'other'].map((id) => wallcovering({ id, patternNumber: id })), rooms: [of('one'), of('other')] }));
}

/** All answers to a request on a clock that moves by so much at each look. */
function answersTo(asked: Partial<PlanRequest> & { readonly house: House }, step: number, onanswer: (answer: PlanAnswer) => void = () => {}): readonly PlanAnswer[] {
  const answers: PlanAnswer[] = [];
  let clock = 0;
  answerPlan({ number: 1, effort: 'usual', stops: null, ...asked }, () => (clock += step), (answer) => {
    answers.push(answer);
    onanswer(answer);
  });
  return answers;
}
const SLOW = 2 * SOON_MILLISECONDS;

describe('a plan that is asked for', () => {
  test('is answered once where it comes soon', () => {
    const house = newHouse();
    expect(answersTo({ house }, 0)).toEqual([{ kind: 'plan', number: 1, plan: planHouse(house), isLast: true, isCutShort: false }]);
  });

  test('is preceded by a quick one where it would not, and says how far it is', () => {
    const house = newHouse();
    const quick = planHouse(house, 'instant');
    expect(answersTo({ house }, SLOW)).toEqual([
      { kind: 'plan', number: 1, plan: quick, isLast: false, isCutShort: false },
      { kind: 'progress', number: 1, done: 1, of: 2 },
      { kind: 'progress', number: 1, done: 2, of: 2 },
      { kind: 'plan', number: 1, plan: planHouse(house), isLast: true, isCutShort: false },
    ]);
  });

  test('has no quick answer where the usual one is on screen already', () => {
    expect(answersTo({ house: newHouse(), effort: 'patient' }, SLOW).map(({ kind }) => kind)).toEqual(['progress', 'progress', 'plan']);
  });
});

describe('a plan that is told to stop', () => {
  test('before it began is the quick one, and the last', () => {
    const [house, stops] = [newHouse(), newStopFlag(true)!];
    stopUpTo(stops, 1);
    expect(answersTo({ house, stops }, 0)).toEqual([{ kind: 'plan', number: 1, plan: planHouse(house, 'instant'), isLast: true, isCutShort: true }]);
  });

  test('after its quick answer ends with what is known by then', () => {
    const [house, stops] = [newHouse(), newStopFlag(true)!];
    const answers = answersTo({ house, stops }, SLOW, () => stopUpTo(stops, 1));
    expect(answers.at(-1)).toEqual({ kind: 'plan', number: 1, plan: planHouse(house, 'instant'), isLast: true, isCutShort: true });
    expect(answersTo({ house, stops, number: 2 }, 0)).toMatchObject([{ isLast: true, isCutShort: false, plan: planHouse(house) }]);
  });

  test('because another house waits gives no plan', () => {
    const stops = newStopFlag(true)!;
    dropUpTo(stops, 1);
    expect(answersTo({ house: newHouse(), stops }, 0)).toEqual([{ kind: 'dropped', number: 1 }]);
    expect(answersTo({ house: newHouse(), stops, effort: 'patient' }, 0).at(-1)).toEqual({ kind: 'dropped', number: 1 });
  });
});

test('a flag holds for a request and those before it, and there is none where no memory is shared', () => {
  const stops = newStopFlag(true)!;
  stopUpTo(stops, 3);
  expect([2, 3, 4].map((number) => isStopped(stops, number))).toEqual([true, true, false]);
  expect(isDropped(stops, 3)).toBe(false);
  dropUpTo(stops, 4);
  expect([isStopped(stops, 4), isDropped(stops, 4), isDropped(stops, 5)]).toEqual([true, true, false]);
  expect([newStopFlag(false), isStopped(null, 1), isDropped(null, 1)]).toEqual([null, false, false]);
});
