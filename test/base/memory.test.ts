import { expect, test } from 'vitest';
import { memoryOf } from '../../shared-core/base/index.ts';

test('a memory of two forgets the first of three answers', () => {
  const memory = memoryOf<number>(2);
  expect([memory.remember('one', 1), memory.remember('two', 2), memory.remember('three', 3)]).toEqual([1, 2, 3]);
  expect(['one', 'two', 'three'].map(memory.recall)).toEqual([undefined, 2, 3]);
});

test('or the second, where the first was asked for in between', () => {
  const memory = memoryOf<number>(2);
  memory.remember('one', 1);
  memory.remember('two', 2);
  memory.recall('one');
  memory.remember('three', 3);
  expect(['one', 'two', 'three'].map(memory.recall)).toEqual([1, undefined, 3]);
});

test('an answer given again takes the place of the one before', () => {
  const memory = memoryOf<number>(2);
  memory.remember('one', 1);
  memory.remember('one', 11);
  memory.remember('two', 2);
  expect(['one', 'two'].map(memory.recall)).toEqual([11, 2]);
});
