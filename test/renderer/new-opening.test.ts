import { expect, test } from 'vitest';
import { alikeOpenings, kindDrawn, openingLike } from '../../src-renderer/places/survey/new-opening.ts';
import { documentOf, houseOf, room } from '../builders.ts';

const WINDOW = { id: 'window', kind: 'window', from: '1 m', width: '90 cm', sill: `2' 10"`, height: '1.2 m', reveal: { depth: '10 cm', sides: ['left', 'right'] } };
const DOOR = { id: 'door', kind: 'door', from: '0 m', width: '80 cm', height: '2 m' };
const house = houseOf(
  documentOf({
    rooms: [
      room(['4 m', '3 m'], { id: 'bed', name: 'Bed 1', bands: [] }, [{ openings: [DOOR, WINDOW] }]),
      room(['4 m', '3 m'], { id: 'hall', name: 'Hall', bands: [] }, [{}, { openings: [{ ...DOOR, from: '2 m' }, { ...DOOR, id: 'door2', width: '70 cm' }] }]),
    ],
  }),
);

test('the next opening can be like one of each size, those of its room first', () => {
  expect(alikeOpenings(house, 'hall').map(({ words }) => words)).toEqual([
    'door of wall B, Hall: 80 cm × 2 m',
    'door2 of wall B, Hall: 70 cm × 2 m',
    `window of wall A, Bed 1: 90 cm × 1.2 m, sill 2' 10", reveal 10 cm`,
  ]);
  expect(alikeOpenings(house, 'bed').map(({ words }) => words)[0]).toBe('door of wall A, Bed 1: 80 cm × 2 m');
});

test('one that is like another has everything of it but its place', () => {
  const window = alikeOpenings(house, 'hall')[2]!;
  expect(openingLike(window, '3 ft')).toEqual({ kind: 'window', from: '3 ft', width: '90 cm', height: '1.2 m', sill: `2' 10"`, like: window.key, reveal: { depth: '10 cm', sides: ['left', 'right'] } });
});

test.each([
  ['door', true, 'door'],
  ['door', false, 'window'],
  ['window', true, 'window'],
  ['archway', false, 'archway'],
] as const)('with %s in the row, what is drawn on the floor (%s) is a %s', (chosen, isOnFloor, kind) => {
  expect(kindDrawn(chosen, isOnFloor)).toBe(kind);
});
