import { expect, test } from 'vitest';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { readRate } from '../../src-renderer/parts/read-rate.ts';
import { sayLacking, sayNoMatch, sayPriceHead, saySaving } from '../../src-renderer/places/order/say-order.ts';

const house = demoHouse();
const { order } = planHouse(house);
const needing = (figures: Readonly<Record<string, readonly [number, number]>>) =>
  Object.entries(figures).map(([covering, [rollsNeeded, rollsByRoom]]) => ({ ...order.find((line) => line.covering === covering)!, rollsNeeded, rollsByRoom }));

test('what cutting together saves is counted in rolls and in spools apart', () => {
  const lines = needing({ fern: [21, 25], reed: [28, 33], ivy: [10, 10] });
  expect(saySaving(house, lines)).toBe('Cut together the house takes 49 rolls and 10 spools; room by room it would take 58 rolls and 10 spools. That saves 9 rolls.');
  expect(saySaving(house, needing({ fern: [21, 22], ivy: [1, 2] }))).toBe('Cut together the house takes 21 rolls and 1 spool; room by room it would take 22 rolls and 2 spools. That saves 1 roll and 1 spool.');
  expect(saySaving(house, needing({ fern: [21, 21], ivy: [1, 1] }))).toBe('Cut together or room by room, the house takes 21 rolls and 1 spool.');
  expect(saySaving(house, needing({ ivy: [3, 4] }))).toBe('Cut together the house takes 3 spools; room by room it would take 4 spools. That saves 1 spool.');
  expect(saySaving({ ...house, rules: { ...house.rules, pooling: 'room' } }, lines)).toBe("Each room is cut on its own, by the house's rule: 49 rolls and 10 spools.");
  expect(saySaving(house, lines.map((line) => ({ ...line, problems: [] })))).toBeNull();
});

test('the prices say that they are before tax where that comes on top of all of them', () => {
  const added = { rate: { rate: '6.5', included: false } };
  const held = { rate: { rate: '20', included: true } };
  expect(sayPriceHead(house, [added, { rate: null }])).toBe('Price before tax, USD');
  for (const suppliers of [[held], [added, held], [{ rate: null }], []]) expect(sayPriceHead(house, suppliers)).toBe('Price, USD');
});

test('what is lacking of the spare and what is not found are said', () => {
  expect(sayLacking({ spareLacking: 1 })).toBe('1 of the spare is lacking: the run has no more.');
  expect(sayLacking({ spareLacking: 2 })).toBe('2 of the spare are lacking: the run has no more.');
  expect(sayNoMatch(' zzz ')).toBe('Nothing here matches ‘zzz’.');
});

test('a tax is a rate from 0 to 100, with or without its mark', () => {
  for (const [typed, rate] of [['7.25', '7.25'], [' 7,25 % ', '7,25'], ['0', '0'], ['100', '100'], ['100.0', '100.0']] as const) expect(readRate(typed)).toBe(rate);
  for (const typed of ['', 'seven', '-1', '100.1', '101', '7.2555', '7%%']) expect(readRate(typed)).toBeNull();
});
