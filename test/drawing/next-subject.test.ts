import { expect, test } from 'vitest';
import { drawElevation, drawRoomPlan, subjectKey, type Drawing, type Subject } from '../../shared-core/drawing/index.ts';
import { nextSubject } from '../../src-renderer/drawing/next-subject.ts';
import { setOutRoom, WORKED } from './rooms.ts';

const { facts, room, outline } = setOutRoom(WORKED);
const subjectsOf = (drawing: Drawing): readonly Subject[] => [...new Map(drawing.shapes.flatMap(({ subject }) => (subject ? [[subjectKey(subject), subject] as const] : []))).values()];
const subjects = subjectsOf(drawElevation(facts, 'imperial'));
const go = (from: string | null, key: string) => {
  const next = nextSubject(subjects, from, key);
  return next && subjectKey(next);
};

test('from nowhere the keyboard comes to the first strip of an elevation, the first wall of a plan', () => {
  expect(go(null, 'ArrowRight')).toBe('strip 0');
  expect(go('strip 99', 'ArrowLeft')).toBe('strip 0');
  expect(nextSubject(subjectsOf(drawRoomPlan(room, outline, 'imperial')), null, 'ArrowRight')).toMatchObject({ kind: 'wall', id: 'A' });
});

test('left and right go from strip to strip and stop at the last', () => {
  expect(go('strip 4', 'ArrowRight')).toBe('strip 5');
  expect(go('strip 4', 'ArrowLeft')).toBe('strip 3');
  expect(go('strip 0', 'ArrowLeft')).toBe('strip 0');
  expect(go('strip 26', 'ArrowRight')).toBe('strip 26');
  expect([go('strip 4', 'Home'), go('strip 4', 'End')]).toEqual(['strip 0', 'strip 26']);
});

test('down goes through every kind of mark once, and up back again', () => {
  const seen = ['strip 0'];
  for (let next = go('strip 0', 'ArrowDown'); next !== seen.at(-1); next = go(seen.at(-1)!, 'ArrowDown')) seen.push(next!);
  expect(seen.map((key) => key.split(' ')[0])).toEqual([...new Set(seen.map((key) => key.split(' ')[0]))]);
  expect(new Set(seen.map((key) => key.split(' ')[0]))).toEqual(new Set(subjects.map(({ kind }) => kind)));
  expect(go(seen[1]!, 'ArrowUp')).toBe('strip 0');
});

test('other keys lead nowhere', () => {
  expect(go('strip 4', 'a')).toBeNull();
  expect(nextSubject([], null, 'ArrowRight')).toBeNull();
});
