import { expect, test } from 'vitest';
import { usualHouse } from '../../src-renderer/places/start/usual-house.ts';

test.each([
  ['en-US', 'en', 'imperial', 'USD'],
  ['en', 'en', 'imperial', 'USD'],
  ['en-GB', 'en', 'metric', 'GBP'],
  ['en-CA', 'en', 'imperial', 'CAD'],
  ['de-AT', 'de', 'metric', 'EUR'],
  ['de-CH', 'de', 'metric', 'CHF'],
  ['DE', 'de', 'metric', 'EUR'],
  ['en-US', 'de', 'metric', 'EUR'],
  ['fr-FR', 'en', 'metric', 'EUR'],
])('on a machine of %s, spoken to in %s, a house has %s lengths and %s', (machine, spoken, lengths, currency) => {
  expect(usualHouse(machine, spoken)).toEqual({ lengths, currency });
});
