import { describe, expect, test } from 'vitest';
import type { Room } from '../../shared-core/house/index.ts';
import { amountOver, bandsArea, shareOf, wallArea, woodworkArea } from '../../shared-core/prep/areas.ts';
import { type Area, areaOf, showArea, UNITS_PER_FOOT, UNITS_PER_MILLIMETRE } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';

const roomOf = (facts: Loose): Room => houseOf(documentOf({ lengths: 'metric', coverings: [wallcovering(), { id: 'white', kind: 'paint' }, { id: 'lining', kind: 'lining', width: '56 cm', rollLength: '10 m' }], rooms: [{ id: 'room', name: 'Room', ...facts }] })).rooms[0]!;
const squareMillimetres = (area: Area) => area / UNITS_PER_MILLIMETRE ** 2;
const opening = (id: string, kind: string, from: string, width: string, height: string, sill = '0 m') => ({ id, kind, from, width, height, sill });
const areas = (room: Room) => room.walls.map((wall) => squareMillimetres(wallArea(wall)));

describe('the walls of three rooms, by hand', () => {
  test('level, with a door and a window', () => {
    const room = roomOf({
      walls: [
        { id: 'A', length: '4 m', height: '2.5 m', openings: [opening('door', 'door', '1 m', '0.8 m', '2 m')] },
        { id: 'B', length: '3 m', height: '2.5 m', openings: [opening('window', 'window', '1 m', '1.2 m', '1.5 m', '0.8 m')] },
        { id: 'C', length: '4 m', height: '2.5 m' },
        { id: 'D', length: '3 m', height: '2.5 m' },
      ],
    });
    expect(areas(room)).toEqual([10e6 - 1.6e6, 7.5e6 - 1.8e6, 10e6, 7.5e6]);
  });

  test('under a roof: the mean height counts, and of an opening what is under the rake', () => {
    const room = roomOf({
      walls: [
        { id: 'A', length: '4 m', height: ['2 m', '3 m'], openings: [opening('door', 'door', '1 m', '0.8 m', '2 m')] },
        // Half of the window's width lies where the wall is between 2 m and 1.5 m high; its head is at 2 m.
        { id: 'B', length: '4 m', height: ['3 m', '1 m'], openings: [opening('window', 'window', '2 m', '1 m', '1 m', '1 m')] },
        { id: 'C', length: '3 m', height: ['1 m', '2 m'] },
        // Its head meets the rake in the middle of its width: 1.5 m² to the left of that, 1.25 m² to the right.
        { id: 'D', length: '4 m', height: ['3 m', '1 m'], openings: [opening('window', 'window', '1 m', '2 m', '1.5 m', '0.5 m')] },
      ],
      bands: [{ id: 'dado', covering: 'paper', walls: ['B', 'D'], to: '2 m' }],
    });
    // B: at 2 m it is 2 m high, at 3 m it is 1.5 m: the window takes a metre wide, on the mean 0.75 m high.
    expect(areas(room)).toEqual([10e6 - 1.6e6, 8e6 - 0.75e6, 4.5e6, 8e6 - 2.75e6]);
    // Up to 2 m the walls are 7 m² each, the windows wholly within.
    expect(room.walls.slice(1).map((wall) => squareMillimetres(bandsArea(room, wall, room.bands.filter(({ walls }) => walls.includes(wall.id)))))).toEqual([7e6 - 0.75e6, 0, 7e6 - 2.75e6]);
  });

  test('in feet, with an archway, a fireplace and a fitted cupboard taken off', () => {
    const room = roomOf({
      walls: [{ id: 'A', length: '20 ft', height: '8 ft', openings: [opening('arch', 'archway', '1 ft', '4 ft', '7 ft'), opening('fire', 'fireplace', '6 ft', '3 ft', '3 ft'), opening('cupboard', 'furniture', '10 ft', '2 ft', '8 ft')] }],
    });
    expect(wallArea(room.walls[0]!)).toBe((160 - 28 - 9 - 16) * UNITS_PER_FOOT ** 2);
    expect(showArea(wallArea(room.walls[0]!), 'imperial')).toBe('107.0 sq ft');
  });
});

describe('what bands take of a wall', () => {
  const wall = { id: 'A', length: '4 m', height: '2.5 m', openings: [opening('door', 'door', '1 m', '1 m', '2 m')] };
  const taken = (...bands: readonly Loose[]) => {
    const room = roomOf({ walls: [wall], bands: bands.map((band, index) => ({ id: `b${index}`, covering: 'paper', walls: ['A'], ...band })) });
    return squareMillimetres(bandsArea(room, room.walls[0]!, room.bands));
  };

  test('is theirs less the openings in them, once where they lie over one another', () => {
    expect(taken({})).toBe(10e6 - 2e6);
    expect(taken({ from: '1 m' })).toBe(6e6 - 1e6);
    expect(taken({ to: '1 m' }, { from: '1 m' })).toBe(8e6);
    expect(taken({ to: '1 m' }, { from: '2 m' })).toBe(4e6 - 1e6 + 2e6);
    expect(taken({}, { covering: 'lining', from: '1 m' })).toBe(8e6);
  });
});

describe('woodwork', () => {
  test('is the skirting but for what stands on the floor, and the faces of doors', () => {
    const walls = ['4 m', '3 m', '4 m', '3 m'].map((length, index) => ({ id: 'ABCD'[index], length, height: '2.5 m', openings: index === 0 ? [opening('door', 'door', '1 m', '0.8 m', '2 m')] : index === 1 ? [opening('window', 'window', '1 m', '1 m', '1 m', '1 m')] : [] }));
    const woodwork = { covering: 'white', skirting: '100 mm' };
    expect(squareMillimetres(woodworkArea(roomOf({ walls, woodwork })))).toBe(1.32e6 + 1.6e6);
    expect(squareMillimetres(woodworkArea(roomOf({ walls, woodwork: { ...woodwork, doors: false } })))).toBe(1.32e6);
    expect(woodworkArea(roomOf({ walls }))).toBe(0);
  });
});

describe('shares and amounts', () => {
  const squareMetres = (count: number) => areaOf(count * (1000 * UNITS_PER_MILLIMETRE) ** 2);

  test('are rounded up once, and exact where they come out whole', () => {
    expect(shareOf(areaOf(24 * UNITS_PER_FOOT ** 2), 25)).toBe(6 * UNITS_PER_FOOT ** 2);
    expect(shareOf(areaOf(101), 1)).toBe(2);
    expect(amountOver(squareMetres(2.5), 12)).toBe(30);
    expect(amountOver(squareMetres(2.5), 1, 2)).toBe(2);
    expect(amountOver(areaOf(squareMetres(2) + 1), 1, 2)).toBe(2);
    expect(amountOver(squareMetres(2), 1, 2)).toBe(1);
    expect(amountOver(squareMetres(80_000), 3000)).toBe(240_000_000);
  });
});
