import { expect, test } from 'vitest';
import { drawElevation, drawRoomPlan, subjectKey, type Drawing, type Subject } from '../../shared-core/drawing/index.ts';
import { nextSubject, type Step } from '../../src-renderer/drawing/next-subject.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const { facts, room, outline } = setOutRoom(WORKED);
const subjectsOf = (drawing: Drawing): readonly Subject[] => [...new Map(drawing.shapes.flatMap(({ subject }) => (subject ? [[subjectKey(subject), subject] as const] : []))).values()];
const subjects = subjectsOf(drawElevation(facts, 'imperial'));
const go = (from: string | null, step: Step) => {
  const next = nextSubject(subjects, from, step);
  return next && subjectKey(next);
};

test('from nowhere the keyboard comes to the first strip of an elevation, the first wall of a plan', () => {
  expect(go(null, 'right')).toBe('strip 0');
  expect(go('strip 99', 'left')).toBe('strip 0');
  expect(nextSubject(subjectsOf(drawRoomPlan(room, outline, 'imperial')), null, 'right')).toMatchObject({ kind: 'wall', id: 'A' });
});

test('left and right go from strip to strip and stop at the last', () => {
  expect(go('strip 4', 'right')).toBe('strip 5');
  expect(go('strip 4', 'left')).toBe('strip 3');
  expect(go('strip 0', 'left')).toBe('strip 0');
  expect(go('strip 26', 'right')).toBe('strip 26');
  expect([go('strip 4', 'first'), go('strip 4', 'last')]).toEqual(['strip 0', 'strip 26']);
});

test('down goes through every kind of mark once, and up back again', () => {
  const seen = ['strip 0'];
  for (let next = go('strip 0', 'down'); next !== seen.at(-1); next = go(seen.at(-1)!, 'down')) seen.push(next!);
  expect(seen.map((key) => key.split(' ')[0])).toEqual([...new Set(seen.map((key) => key.split(' ')[0]))]);
  expect(new Set(seen.map((key) => key.split(' ')[0]))).toEqual(new Set(subjects.map(({ kind }) => kind)));
  expect(go(seen[1]!, 'up')).toBe('strip 0');
});

test('where nothing is drawn no step leads anywhere', () => {
  expect(nextSubject([], null, 'right')).toBeNull();
});
