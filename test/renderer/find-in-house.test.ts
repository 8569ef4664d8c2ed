import { describe, expect, test } from 'vitest';
import { writeDocument } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { type Findable, findableIn, findIn } from '../../src-renderer/state/find-in-house.ts';
import { houseOf } from '../builders.ts';

const PLACES = { 'survey': 'Survey', 'coverings': 'Coverings', 'set-out': 'Set out', 'order': 'Order', 'deliveries': 'Deliveries' } as const;
const demo = demoHouse();
const worked = houseOf({
  ...JSON.parse(writeDocument(demo)),
  orders: [{ id: '7', placed: '2026-02-20', supplier: 'Northgate Papers', lines: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 17, rooms: ['bed1'] }] }],
  deliveries: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 8, received: '2026-03-02' }],
  leftovers: [{ covering: 'reed', run: '118', length: '9 ft', count: 2, place: 'Loft, behind the tank' }],
});
const everything = findableIn(worked, planHouse(worked), PLACES);
const find = (typed: string, findable: Findable = everything) => findIn(findable, typed, 12).found;
const names = (typed: string, findable?: Findable) => find(typed, findable).map(({ name, what }) => `${name}: ${what}`);

test('what is called so comes first, then what begins so, then the rest', () => {
  expect(names('hall').slice(0, 2)).toEqual(['Hall: room, Ground floor', 'K-3310 in Hall: hung on walls A, B, C, D, E, F']);
  expect(names('bed').slice(0, 2)).toEqual(['Front bedroom: room, Upper floor', 'Back bedroom: room, Upper floor']);
  expect(names('order')[0]).toBe('Order: place');
});

test.each(['k2041', 'K-2041', 'k 2041', ' K 20 41 ', 'Fern wálk', 'wallpaper fern'])('%j finds the covering, however it is spelled', (typed) => {
  expect(find(typed)).toContainEqual({ key: 'covering fern', name: 'K-2041', what: 'wallcovering, Fern walk, from Northgate Papers', place: 'coverings', mark: 'covering fern' });
});

test.each(['run 2214', 'batch 2214', 'lot 2214 k2041', '2214 fern'])('%j finds the run wherever it stands', (typed) => {
  expect(find(typed).map(({ key, place }) => `${place}: ${key}`)).toEqual([
    'order: line fern 2214 false', 'order: offers 0', 'order: placed 7 0', 'deliveries: package 0',
  ]);
  expect(names(typed).slice(1)).toEqual([
    'Run 2214 of K-2041: 24 rolls on offer', 'Run 2214 of K-2041: 17 rolls in order 7', 'Run 2214 of K-2041: package 1, 8 rolls come 2 Mar 2026',
  ]);
});

describe('everything is found, and says what it is and where', () => {
  test.each([
    ['upper floor', 'Upper floor: storey of 4 rooms', { place: 'survey', room: 'bed1', mark: 'room bed1' }],
    ['weir', 'Weir & Loom: supplier', { place: 'order', mark: 'supplier Weir & Loom' }],
    ['order 7', 'Order 7: placed 20 Feb 2026 with Northgate Papers', { place: 'order', mark: 'placed 7' }],
    ['loft tank', 'Run 118 of K-3310: leftover, 2 × 9 ft, Loft, behind the tank', { place: 'deliveries', mark: 'leftover 0' }],
    ['fireplace', "Wall D of Sitting room: wall of 1500 mm, fireplace", { place: 'survey', room: 'sitting', mark: 'wall D' }],
    ['drops study', 'T-118 in Study: hung on walls A, B, C, D', { place: 'set-out', room: 'study', mark: 'band main' }],
    ['2207 in hand', 'Run 2207 of K-2041: 2 rolls in hand', { place: 'order', mark: 'stock 0' }],
    ['kill point', 'Set out: place', { place: 'set-out', mark: null }],
  ])('%j', (typed, words, goal) => {
    expect(names(typed)[0]).toBe(words);
    expect(find(typed)[0]).toMatchObject(goal);
  });
});

test('a supplier of whom nothing is to be bought is found with his covering', () => {
  expect(find('weir supplier', findableIn(demo, null, PLACES))[0]).toMatchObject({ place: 'coverings', mark: 'covering oat' });
});

test('nothing typed finds nothing, nor does what is nowhere said', () => {
  for (const typed of ['', '  ', '- &', 'hall zeppelin']) expect(findIn(everything, typed, 12)).toEqual({ found: [], left: 0 });
});

test('what is found beyond the most is counted, and each has a key of its own', () => {
  const { found, left } = findIn(everything, 'wall', 5);
  expect(found).toHaveLength(5);
  expect(left).toBeGreaterThan(20);
  const keys = findIn(everything, 'a', 10_000).found.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
});

test('two thousand rooms are found one by one', () => {
  const rooms = Array.from({ length: 2_000 }, (_, index) => ({ ...demo.rooms[index % 7]!, id: `r${index}`, name: `Room ${index}` }));
  const large = findableIn({ ...demo, rooms }, null, PLACES);
  expect(find('room 1999', large)[0]).toMatchObject({ name: 'Room 1999', room: 'r1999' });
  expect(findIn(large, 'room', 8)).toMatchObject({ left: expect.any(Number) });
});
