import { expect, test } from 'vitest';
import { isAlike } from '../../src-renderer/state/is-alike.ts';
import { decodeHouse, encodeHouse, applyEdit } from '../../shared-core/house/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';

test.each([
  [{ a: 1, b: [2] }, { b: [2], a: 1 }, true],
  [{ a: 1, b: undefined }, { a: 1 }, true],
  [{ a: 1 }, { a: 2 }, false],
  [{ a: 1 }, { a: 1, b: 1 }, false],
  [[1, 2], [1], false],
  [[], {}, false],
  [null, {}, false],
  [{}, null, false],
  ['1', 1, false],
  [[{ a: [] }], [{ a: [] }], true],
])('%j and %j: %s', (one, other, alike) => {
  expect(isAlike(one, other)).toBe(alike);
  expect(isAlike(other, one)).toBe(alike);
});

test('a house edited in the window is alike to the one that the host gives back, and not to the one before', () => {
  const house = demoHouse();
  const edited = applyEdit(house, { kind: 'change-house', facts: { lengths: 'metric' } });
  if (!edited.ok) throw new Error('a good edit');
  const back = decodeHouse(JSON.parse(JSON.stringify(encodeHouse(edited.value))));
  expect(back.ok && isAlike(back.value, edited.value)).toBe(true);
  expect(isAlike(edited.value, house)).toBe(false);
});
