import { describe, expect, test } from 'vitest';
import { applyEdit, type Edit, type House, nameEdit } from '../../shared-core/house/index.ts';
import { inches, millimetres } from '../../shared-core/units/index.ts';
import { exampleHouse, type Loose, made } from '../builders.ts';

const wall = (house: House, id: string) => house.rooms[0]!.walls.find((one) => one.id === id);

/** The edit, what it makes of the house, and how undo calls it. */
const EDITS: readonly (readonly [Edit, (house: House) => unknown, unknown, string])[] = [
  [{ kind: 'change-house', facts: { name: 'Elm House', currency: 'EUR' } }, ({ name, currency }) => [name, currency], ['Elm House', 'EUR'], 'change name and currency of the house'],
  [{ kind: 'add-covering', covering: { id: 'oat', kind: 'wallcovering', name: 'Oat', width: '70 cm', rollLength: '10 m' } }, ({ coverings }) => coverings.at(-1)!.id, 'oat', 'add covering Oat'],
  [{ kind: 'change-covering', covering: 'fern', facts: { rollLength: '10 m' } }, ({ coverings }) => coverings[0], { rollLength: { length: millimetres(10_000), typed: '10 m' }, name: 'Fern walk' }, 'change roll length of K-2041'],
  [{ kind: 'remove-covering', covering: 'line' }, ({ coverings }) => coverings.map(({ id }) => id), ['fern', 'ivy', 'lake', 'chalk'], 'remove covering line'],
  [{ kind: 'add-room', room: { id: 'bath', name: 'Bathroom' } }, ({ rooms }) => rooms[1], { id: 'bath', walls: [], bands: [] }, 'add room Bathroom'],
  [{ kind: 'add-rooms', rooms: [{ id: 'bath', name: 'Bathroom' }, { id: 'den', name: 'Den' }] }, ({ rooms }) => rooms.map(({ id }) => id), ['bed1', 'bath', 'den'], 'add 2 rooms'],
  [{ kind: 'add-rooms', rooms: [{ id: 'bath', name: 'Bathroom' }] }, ({ rooms }) => rooms.length, 2, 'add room Bathroom'],
  [{ kind: 'change-room', room: 'bed1', facts: { name: 'Large bedroom', storey: null } }, ({ rooms }) => [rooms[0]!.name, rooms[0]!.storey], ['Large bedroom', undefined], 'change name and storey of Front bedroom'],
  [{ kind: 'remove-room', room: 'bed1' }, ({ rooms }) => rooms, [], 'remove room Front bedroom'],
  [{ kind: 'add-wall', room: 'bed1', wall: { id: 'E', length: '1 ft', height: '8 ft' } }, ({ rooms }) => rooms[0]!.walls.length, 5, 'add wall E in Front bedroom'],
  [{ kind: 'add-walls', room: 'bed1', walls: [{ id: 'E', length: '1 ft', height: '8 ft' }, { id: 'F', length: '1 ft', height: '8 ft' }] }, ({ rooms }) => rooms[0]!.walls.map(({ id }) => id), ['A', 'B', 'C', 'D', 'E', 'F'], 'add 2 walls in Front bedroom'],
  [{ kind: 'replace-walls', room: 'bed1', walls: [{ id: 'A', length: '9 ft', height: '8 ft' }, { id: 'X', length: '9 ft', height: '8 ft' }] }, ({ rooms }) => [rooms[0]!.walls.map(({ id }) => id), rooms[0]!.bands.map(({ walls }) => walls), rooms[0]!.focalWall], [['A', 'X'], [['A'], ['A']], undefined], 'replace the walls of Front bedroom'],
  [{ kind: 'change-wall', room: 'bed1', wall: 'B', facts: { length: '10 ft' } }, (house) => wall(house, 'B'), { length: { length: inches(120) } }, 'change length of wall B in Front bedroom'],
  [{ kind: 'change-walls', room: 'bed1', walls: ['A', 'C'], facts: { height: '9 ft' } }, (house) => house.rooms[0]!.walls.map(({ height }) => ('typed' in height ? height.typed : '')), ['9 ft', "8'", '9 ft', ''], 'change height of walls A, C in Front bedroom'],
  [{ kind: 'remove-wall', room: 'bed1', wall: 'D' }, (house) => [wall(house, 'D'), house.rooms[0]!.bands.map(({ walls }) => walls)], [undefined, [['A', 'B', 'C'], ['A', 'B', 'C']]], 'remove wall D in Front bedroom'],
  [{ kind: 'add-opening', room: 'bed1', wall: 'B', opening: { id: 'w', kind: 'window', from: '1 ft', width: '3 ft', sill: '3 ft', height: '4 ft' } }, (house) => wall(house, 'B')!.openings.length, 1, 'add window on wall B in Front bedroom'],
  [{ kind: 'change-opening', room: 'bed1', wall: 'A', opening: 'door', facts: { from: '3 ft' } }, (house) => wall(house, 'A')!.openings[0], { from: { typed: '3 ft' } }, 'move door in Front bedroom'],
  [{ kind: 'change-opening', room: 'bed1', wall: 'A', opening: 'door', facts: { from: '3 ft', sill: '1 in' } }, (house) => wall(house, 'A')!.openings[0], { from: { typed: '3 ft' }, sill: { typed: '1 in' } }, 'move door in Front bedroom'],
  [{ kind: 'change-opening', room: 'bed1', wall: 'A', opening: 'door', facts: { from: '3 ft', width: '30 in' } }, (house) => wall(house, 'A')!.openings[0], { from: { typed: '3 ft' }, width: { typed: '30 in' } }, 'change place and width of door on wall A in Front bedroom'],
  [{ kind: 'remove-opening', room: 'bed1', wall: 'A', opening: 'door' }, (house) => wall(house, 'A')!.openings, [], 'remove door on wall A in Front bedroom'],
  [{ kind: 'add-band', room: 'bed1', band: { id: 'low', covering: 'ivy', walls: ['A'], from: '3 ft', to: '4 ft' } }, ({ rooms }) => rooms[0]!.bands.length, 3, 'hang ivy in Front bedroom'],
  [{ kind: 'change-band', room: 'bed1', band: 'main', facts: { layout: null, position: '3 in' } }, ({ rooms }) => [rooms[0]!.bands[0]!.layout, rooms[0]!.bands[0]!.position.typed], [undefined, '3 in'], 'change layout and position of band main in Front bedroom'],
  [{ kind: 'remove-band', room: 'bed1', band: 'top' }, ({ rooms }) => rooms[0]!.bands.map(({ id }) => id), ['main'], 'take down band top in Front bedroom'],
  [{ kind: 'set-stock', stock: [{ covering: 'fern', run: '2207', rolls: 3 }] }, ({ stock }) => stock, [{ covering: 'fern', run: '2207', rolls: 3 }], 'change the rolls in hand'],
  [{ kind: 'set-offers', offers: [{ covering: 'fern', run: '2214', rolls: 8 }] }, ({ offers }) => offers, [{ covering: 'fern', run: '2214', rolls: 8 }], 'change what can still be had'],
  [{ kind: 'set-deliveries', deliveries: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 8 }] }, ({ deliveries }) => deliveries, [{ run: '2214', damaged: 0 }], 'receive 8 of K-2041, run 2214'],
  [{ kind: 'replace-house', house: { format: 'struckline-house', version: 1, name: 'Other' } }, ({ name, rooms }) => [name, rooms], ['Other', []], 'replace the whole house by Other'],
];

describe('an edit', () => {
  test.each(EDITS.map(([edit, look, expected, name]) => [edit.kind, edit, look, expected, name] as const))('%s does what it says and is called so', (_kind, edit, look, expected, name) => {
    const before = exampleHouse();
    const after = look(made(before, edit));
    if (typeof expected === 'object' && expected !== null) expect(after).toMatchObject(expected);
    else expect(after).toEqual(expected);
    expect(before).toEqual(exampleHouse());
    expect(nameEdit(before, edit)).toBe(name);
  });

  test('leaves what it does not change as it is, to the identity', () => {
    const before = exampleHouse();
    const after = made(before, { kind: 'change-wall', room: 'bed1', wall: 'B', facts: { length: '10 ft' } });
    expect(after.coverings).toBe(before.coverings);
    expect(after.rooms[0]!.bands).toBe(before.rooms[0]!.bands);
    expect(after.rooms[0]!.walls[0]).toBe(before.rooms[0]!.walls[0]);
    expect(after.rooms[0]!.walls[1]).not.toBe(before.rooms[0]!.walls[1]);
  });

  test('that takes a wall away opens the choices that pointed at it', () => {
    const after = made(exampleHouse(), { kind: 'remove-wall', room: 'bed1', wall: 'C' });
    expect(after.rooms[0]!.focalWall).toBeUndefined();
    expect(after.rooms[0]!.bands[0]!.layout).toBeDefined();
    expect(made(exampleHouse(), { kind: 'remove-wall', room: 'bed1', wall: 'A' }).rooms[0]!.bands[0]!.layout).toBeUndefined();
  });

  test('that takes the only wall of a band away takes the band down', () => {
    const house = made(exampleHouse(), { kind: 'change-band', room: 'bed1', band: 'top', facts: { walls: ['D'] } });
    expect(made(house, { kind: 'remove-wall', room: 'bed1', wall: 'D' }).rooms[0]!.bands.map(({ id }) => id)).toEqual(['main']);
  });
});

/** What is tried, where it is said to be wrong, and words of what is said. */
const REFUSED: readonly (readonly [Loose, string, RegExp])[] = [
  [{ kind: 'explode' }, 'kind', /is not an edit/],
  [{ kind: 'change-wall', room: 'attic', wall: 'A', facts: {} }, 'room', /is "attic", which is not there; there are bed1/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'Z', facts: {} }, 'wall', /is "Z", which is not there; there are A, B, C, D/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: '4 ft' } }, 'rooms[0].walls[0].openings[0].width', /past the end of wall A at 4 ft/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: 'long' } }, 'wall.length', /long/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: null } }, 'wall.length', /is missing/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { colour: 'red' } }, 'wall.colour', /is not a key of a wall/],
  [{ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { id: 'Q' } }, 'wall.id', /what other facts point at/],
  [{ kind: 'change-walls', room: 'bed1', walls: ['A', 'B'], facts: { height: '5 ft' } }, 'rooms[0].walls[0].openings[0].height', /above wall A/],
  [{ kind: 'add-wall', room: 'bed1', wall: { id: 'A', length: '3 ft', height: '8 ft' } }, 'rooms[0].walls[4].id', /already/],
  [{ kind: 'remove-covering', covering: 'fern' }, 'covering', /^is still used by Front bedroom; take it away there first$/],
  [{ kind: 'change-house', facts: { currency: 'JPY' } }, 'coverings[0].soldIn[0].price', /84\.00/],
  [{ kind: 'change-house', facts: { rooms: [] } }, 'rooms', /is not a key/],
];

test.each(REFUSED.map(([edit, path, words]) => [JSON.stringify(edit), edit, path, words] as const))('%s is refused and changes nothing', (_text, edit, path, words) => {
  const house = exampleHouse();
  const outcome = applyEdit(house, edit as Edit);
  const faults = outcome.ok ? [] : outcome.faults;
  expect(faults.map((fault) => fault.path)).toContain(path);
  expect(faults.find((fault) => fault.path === path)!.message).toMatch(words);
  expect(house).toEqual(exampleHouse());
});
