import { expect, test } from 'vitest';
import { languageOf, speak } from '../../shared-core/words/index.ts';

speak(languageOf('de'));
// What says something is loaded only now.
const { writeDocument } = await import('../../shared-core/house/index.ts');
const { planHouse } = await import('../../shared-core/plan/index.ts');
const { demoHouse } = await import('../../src-main/office/index.ts');
const { sayFault } = await import('../../src-renderer/parts/say-fault.ts');
const { sayKeys } = await import('../../src-renderer/parts/shortcuts.ts');
const { findableIn, findIn } = await import('../../src-renderer/state/find-in-house.ts');
const { houseOf } = await import('../builders.ts');

const house = houseOf({
  ...JSON.parse(writeDocument(demoHouse())),
  orders: [{ id: '7', placed: '2026-02-20', supplier: 'Northgate Papers', lines: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 17, rooms: ['bed1'] }] }],
});
const findable = findableIn(house, planHouse(house), { 'survey': 'Aufmaß', 'set-out': 'Einteilung', 'order': 'Bestellung' });
const found = (typed: string) => findIn(findable, typed, 12).found.map(({ name, what }) => `${name}: ${what}`);

test.each([
  ['tapete fern', 'K-2041: Tapete, Fern walk, von Northgate Papers'],
  ['kamin', 'Wand D von Sitting room: Wand, 1500 mm lang, Kamin'],
  ['bestellung 7', 'Bestellung 7: aufgegeben am 20. Februar 2026 bei Northgate Papers'],
  ['2026-02-20', 'Bestellung 7: aufgegeben am 20. Februar 2026 bei Northgate Papers'],
  ['charge 2214 lieferbar', 'Anfertigung 2214 von K-2041: 24 Rollen lieferbar'],
])('%j is found as German says it', (typed, words) => {
  expect(found(typed)[0]).toBe(words);
});

test.each([
  ['wallpaper fern', 'tapete fern'],
  ['kill point', 'schlussnaht'],
  ['fireplace wall', 'kamin wand'],
  ['order 2026-02-20', 'bestellung 20. februar'],
])('%j still finds what %j finds', (english, german) => {
  expect(found(english)[0]).toBe(found(german)[0]);
});

test('a fault and keys are said in German', () => {
  expect(sayFault({ path: 'rooms[0].bands[2]', message: 'ist nicht da' })).toBe('Feld ist nicht da.');
  expect(sayFault({ path: 'coverings[0].rollLength', message: 'fehlt' })).toBe('Rollenlänge fehlt.');
  expect(sayKeys('Ctrl+Shift+Digit')).toEqual(['Strg', 'Umschalt', '1 bis 9']);
});
