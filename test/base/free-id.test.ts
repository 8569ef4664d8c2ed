import { expect, test } from 'vitest';
import { freeId, idFor } from '../../shared-core/base/index.ts';

test('an id says what the thing is and is not taken', () => {
  expect(idFor('Picture rail', 'rail', ['picture-rail'])).toBe('picture-rail2');
  expect(idFor('!', 'rail', [])).toBe('rail');
  expect(freeId('door', ['door', 'door2'])).toBe('door3');
});

test('a long name is cut between two letters', () => {
  expect(idFor('𝒜'.repeat(40), 'room', [])).toBe('𝒜'.repeat(30));
});
