import { expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import type { PlanAnswer } from '../../src-renderer/state/answer-plan.ts';
import { answerReceiver, answerSender } from '../../src-renderer/state/sent-answer.ts';
import { documentOf, houseOf, room, wallcovering } from '../builders.ts';

const ROOMS = ['one', 'two', 'three'];
const house = (lengths: Readonly<Record<string, string>> = {}, rooms = ROOMS) =>
  houseOf(documentOf({
    coverings: [wallcovering({ id: 'paper' })],
    rooms: rooms.map((id) => room(['100 in', '90 in', '100 in', lengths[id] ?? '90 in'], { id, name: id, bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B', 'C', 'D'] }] })),
  }));
const answer = (of: ReturnType<typeof house>): PlanAnswer => ({ kind: 'plan', number: 1, plan: planHouse(of), isLast: true, isCutShort: false });

test('of an answer only the rooms that are new go on the way, and it arrives whole', () => {
  const [send, receive] = [answerSender(), answerReceiver()];
  const answers = [answer(house()), answer(house({ two: '93 in' })), { kind: 'progress', number: 1, done: 1, of: 2 } as const, answer(house({ two: '93 in' }, ['three', 'two'])), answer(house({ one: '95 in' }))];
  const sent = answers.map((one) => structuredClone(send(one)));
  expect(sent.map((one) => one.kind === 'plan' && one.plan.rooms.map((of) => (typeof of === 'number' ? of : of.id)))).toEqual([ROOMS, [0, 'two', 2], false, [2, 1], ['one', 'two', 0]]);
  expect(sent.map(receive)).toEqual(answers);
});
