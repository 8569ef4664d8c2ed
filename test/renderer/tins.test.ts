import { expect, test } from 'vitest';
import { readTins, tinsOf } from '../../src-renderer/places/coverings/tins.ts';
import { houseOf } from '../builders.ts';

test('tins are shown as fields and read from them again; what is no number of litres is not', () => {
  const tins = [{ litres: 2.5, price: '31.00' }, { litres: 5 }];
  const [paint] = houseOf({ format: 'struckline-house', version: 1, name: 'A', coverings: [{ id: 'chalk', kind: 'paint', name: 'Chalk', soldIn: tins }] }).coverings;
  if (paint?.kind !== 'paint') throw new Error('a paint');
  expect(tinsOf(paint)).toEqual([{ litres: '2.5', price: '31.00' }, { litres: '5', price: '' }]);
  expect(readTins(tinsOf(paint))).toEqual(tins);
  expect(readTins([{ litres: '2,5', price: ' ' }])).toEqual([{ litres: 2.5 }]);
  for (const litres of ['', '0', '-1', 'two']) expect(readTins([{ litres, price: '' }])).toBeNull();
});
