import { expect, test } from 'vitest';
import { spillsOver } from '../../shared-core/units/index.ts';

test.each([
  [`9' 13"`, true],
  [`9' 12"`, true],
  ['9 ft 12 1/2 in', true],
  ['3 m 120 cm', true],
  [`9' 11 15/16"`, false],
  ['108 in', false],
  ['3 m 99 cm', false],
  [`12' 4" - 3 1/2"`, false],
  ['', false],
  ['nine feet', false],
])('of %j it is %j', (written, isOver) => {
  expect(spillsOver(written)).toBe(isOver);
});
