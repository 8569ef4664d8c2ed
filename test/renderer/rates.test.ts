import { expect, test } from 'vitest';
import { WORK_RATES } from '../../shared-core/calendar/index.ts';
import { RULES } from '../../shared-core/prep/index.ts';
import { ratesIn } from '../../src-renderer/places/calendar/rates.ts';

test('what takes time is told with our figure: all that hangs, and what the tasks of the house ask for', () => {
  const hung = Object.keys(WORK_RATES);
  expect(ratesIn([]).map(({ of }) => of)).toEqual(hung);
  const rule = RULES.find(({ per, minutes }) => per === 'square-metre' && minutes > 0)!;
  const told = ratesIn([{ rule: rule.id }, { rule: rule.id }]);
  expect(told.slice(hung.length)).toEqual([{ of: rule.id, words: rule.words('a square metre'), minutes: rule.minutes }]);
  const all = ratesIn(RULES.map(({ id }) => ({ rule: id })));
  expect(new Set(all.map(({ of }) => of)).size).toBe(all.length);
});
