import { expect, test } from 'vitest';
import { encodeHouse, findFaults, type House, type Room } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { drawOutline, mirrorRoom } from '../../shared-core/survey/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const houseWith = (facts: Loose): House => houseOf(documentOf({ lengths: 'metric', coverings: [wallcovering()], rooms: [facts] }));
const documentRoom = (house: House, index = 0): Loose => encodeHouse(house).rooms![index];
const mirrored = (house: House): House => ({ ...house, rooms: house.rooms.map((one) => mirrorRoom(one, house.lengths)) });

const FOUR = room(['4 m', '3 m', '4 m', '2.9 m'], { focalWall: 'B', furniture: [{ id: 'bed', wall: 'B', from: '0 m', width: '1 m', height: '1 m' }], ceiling: { covering: 'paper', along: 'D' }, rails: [{ id: 'dado', at: '0.9 m', width: '5 cm', walls: ['A', 'B'] }], bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B'], runMayChange: ['A'], layout: { start: { wall: 'A', at: '1 m' } } }] }, [
  { height: ['2.4 m', '2.5 m'], base: ['0 m', '1 cm'], plumbRight: '7 mm', openings: [{ id: 'door', kind: 'door', from: '0.5 m', width: '1 m', height: '2 m', reveal: { depth: '10 cm', sides: ['left', 'head'] } }] },
  {},
  { turn: '89' },
  { turn: '91' },
]);

test('the first wall stays the first, and what stood at its left stands at its right', () => {
  const found = documentRoom(mirrored(houseWith(FOUR)));
  expect(found.walls.map(({ id, length, turn, plumbRight }: Loose) => [id, length, turn, plumbRight])).toEqual([
    ['A', '4 m', '91', undefined],
    ['B', '2.9 m', '89', undefined],
    ['C', '4 m', 'inside', undefined],
    ['D', '3 m', 'inside', '7 mm'],
  ]);
  expect(found.walls[0]).toMatchObject({ height: ['2.5 m', '2.4 m'], base: ['1 cm', '0 m'] });
  expect(found.walls[0].openings).toMatchObject([{ id: 'door', from: '2.5 m', width: '1 m', reveal: { depth: '10 cm', sides: ['right', 'head'] } }]);
});

test('what points at walls points at the same ones, and no line is struck', () => {
  const found = documentRoom(mirrored(houseWith(FOUR)));
  expect(found).toMatchObject({ focalWall: 'D', ceiling: { along: 'B' }, rails: [{ walls: ['A', 'D'] }], furniture: [{ wall: 'D', from: '2 m' }], bands: [{ walls: ['A', 'D'], runMayChange: ['D'] }] });
  expect(found.bands[0].layout).toBeUndefined();
});

test('walls that do not go all round are turned from end to end', () => {
  const found = documentRoom(mirrored(houseWith(room(['3 m', '2 m'], {}, [{ turn: 'outside', plumbRight: '7 mm' }, { plumbRight: '5 mm' }]))));
  expect(found.walls.map(({ id, length, turn, plumbRight }: Loose) => [id, length, turn, plumbRight])).toEqual([['A', '2 m', 'outside', '7 mm'], ['B', '3 m', 'inside', undefined]]);
});

test('the demo house mirrored is good, as large, and planned; mirrored twice it is itself but for its lines', () => {
  const house = demoHouse();
  const once = mirrored(house);
  expect(findFaults(once)).toEqual([]);
  for (const [index, one] of once.rooms.entries()) {
    const before = drawOutline(house.rooms[index]!);
    expect(drawOutline(one)).toMatchObject({ isClosed: before.isClosed, perimeter: before.perimeter, closingError: before.closingError, floorArea: before.floorArea });
  }
  expect(planHouse(once, 'instant').order.length).toBeGreaterThan(0);
  const plain = (one: Room) => JSON.parse(JSON.stringify({ ...one, bands: one.bands.map((band) => ({ ...band, walls: [...band.walls].sort() })) }, (key, value) => (key === 'typed' || key === 'layout' ? undefined : value)));
  expect(mirrored(once).rooms.map(plain)).toEqual(house.rooms.map(plain));
});
