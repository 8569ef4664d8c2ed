import { expect, it } from 'vitest';
import { fixedDecimal, shortDecimal } from '../../shared-core/units/decimal.ts';
import { FOOT, unitNamed } from '../../shared-core/units/length-unit.ts';

it('decimals keep or drop the zeros at their end', () => {
  expect([fixedDecimal(8400, 2), fixedDecimal(7, 0), fixedDecimal(5, 3)]).toEqual(['84.00', '7', '0.005']);
  expect([shortDecimal(37_600, 4), shortDecimal(20_000, 4), shortDecimal(0, 4)]).toEqual(['3.76', '2', '0']);
  expect(shortDecimal(10, 0)).toBe('10');
});

it('units are known by their words', () => {
  expect(unitNamed('Feet')).toBe(FOOT);
  expect(unitNamed('constructor')).toBeUndefined();
});
