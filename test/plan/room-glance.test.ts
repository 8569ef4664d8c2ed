import { describe, expect, test } from 'vitest';
import { explainRoomCost, glanceAtRooms, planHouse, type RoomGlance } from '../../shared-core/plan/index.ts';
import { moneyOf } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const PAPER = wallcovering({ soldIn: [{ rolls: 1, price: '42.00' }], spareRolls: 1 });
const BED = room(['12 ft', '10 ft', '12 ft', '10 ft'], { id: 'bed', name: 'Bed 1' });
const HALL = room(['6 ft', '6 ft', '6 ft', '6 ft'], { id: 'hall', name: 'Hall' });

const glance = (facts: Loose): readonly RoomGlance[] => {
  const house = houseOf(documentOf({ coverings: [PAPER], rooms: [BED, HALL], ...facts }));
  return glanceAtRooms(house, planHouse(house));
};
const states = ({ steps }: RoomGlance) => Object.fromEntries(steps.map(({ step, state }) => [step, state]));
const came = (rolls: number) => [{ covering: 'paper', patternNumber: 'P-1', run: '2214', rolls }];
const hung = (id: string) => [{ covering: 'paper', room: id, run: '2214', hung: true }];
const all = (glances: readonly RoomGlance[]) => glances.reduce((sum, { takes }) => sum + takes[0]!.rolls, 0);

describe('where a room stands', () => {
  test('goes from its survey to what hangs', () => {
    const bare = glance({ rooms: [room([], { bands: [] }), { ...HALL, bands: [] }] });
    expect(bare.map(states)).toEqual([
      { surveyed: 'open', 'set-out': 'open', ordered: 'open', 'in-hand': 'open', hung: 'open' },
      { surveyed: 'done', 'set-out': 'open', ordered: 'open', 'in-hand': 'open', hung: 'open' },
    ]);
    const [bed, hall] = glance({});
    expect(states(bed!)).toEqual({ surveyed: 'done', 'set-out': 'done', ordered: 'open', 'in-hand': 'open', hung: 'open' });
    const order = [{ id: '1', placed: '2026-03-02', lines: [{ covering: 'paper', run: '2214', rolls: all([bed!, hall!]), rooms: ['bed', 'hall'] }] }];
    expect(glance({ orders: order }).map(states).map(({ ordered, 'in-hand': inHand }) => [ordered, inHand])).toEqual([['done', 'open'], ['done', 'open']]);
    expect(glance({ orders: order, deliveries: came(bed!.takes[0]!.rolls) }).map(states).map((one) => one['in-hand'])).toEqual(['done', 'open']);
    expect(states(glance({ orders: order, deliveries: came(20), runChoices: hung('bed') })[0]!)).toEqual({ surveyed: 'done', 'set-out': 'done', ordered: 'done', 'in-hand': 'done', hung: 'done' });
  });

  test('is surveyed in part while its walls do not go round or do not meet', () => {
    expect(glance({ rooms: [room(['12 ft', '10 ft'])] }).map(states)[0]!['surveyed']).toBe('part');
    expect(glance({ rooms: [room(['12 ft', '10 ft', '11 ft', '10 ft'])] }).map(states)[0]!['surveyed']).toBe('part');
  });

  test('is set out in part where a piece is longer than a roll gives', () => {
    const [tower] = glance({ rooms: [room(['6 ft', '6 ft', '6 ft', '6 ft'], { id: 'tower' }, Array(4).fill({ height: '40 ft' }))] });
    expect(states(tower!)['set-out']).toBe('part');
  });

  test('is in part where one of two coverings is there, or hangs', () => {
    const two = { coverings: [PAPER, wallcovering({ id: 'dado', patternNumber: 'D-1' })], rooms: [{ ...BED, bands: [{ id: 'low', covering: 'dado', walls: ['A'], to: '3 ft' }, { id: 'up', covering: 'paper', walls: ['A'], from: '3 ft' }] }] };
    expect(states(glance({ ...two, stock: [{ covering: 'paper', run: '2214', rolls: 20 }] })[0]!)).toMatchObject({ ordered: 'part', 'in-hand': 'part', hung: 'open' });
    expect(states(glance({ ...two, stock: [{ covering: 'paper', run: '2214', rolls: 20 }], runChoices: [{ covering: 'paper', room: 'bed', run: '2214', hung: true }] })[0]!)['hung']).toBe('part');
  });

  test('is prepared once all that its surfaces ask for is ticked off; what asks for nothing has no such step', () => {
    const papered = { ...BED, walls: BED.walls.map((wall: Loose) => ({ ...wall, surface: { kind: 'paper-strippable', states: ['holes'] } })) };
    const prepared = (tasks: readonly Loose[]) => states(glance({ rooms: [papered], tasks })[0]!)['prepared'];
    const house = houseOf(documentOf({ coverings: [PAPER], rooms: [papered] }));
    const tasks = planHouse(house).prep.tasks.map(({ id }) => ({ task: id, done: true }));
    expect(tasks.length).toBeGreaterThan(2);
    expect([prepared([]), prepared(tasks.slice(1)), prepared(tasks), prepared([{ task: tasks[0]!.task, isOthers: true }])]).toEqual(['open', 'part', 'done', 'open']);
    expect(states(glance({})[0]!)['prepared']).toBe(undefined);
  });

  test('knows only its survey where it is painted', () => {
    const painted = glance({ coverings: [{ id: 'white', kind: 'paint', name: 'White' }], rooms: [{ ...BED, bands: [{ id: 'all', covering: 'white', walls: ['A'] }] }] });
    expect(painted.map(states)).toEqual([{ surveyed: 'done' }]);
    expect(painted[0]).toMatchObject({ takes: [], cost: null });
  });
});

describe('a room’s part of the cost', () => {
  test('is as large as the rolls it takes alone, and all parts are the price', () => {
    const [bed, hall] = glance({});
    const [forBed] = bed!.costs;
    expect(forBed).toMatchObject({ covering: 'paper', run: null, order: null, rolls: bed!.takes[0]!.rolls, rollsOfAll: all([bed!, hall!]) });
    expect(bed!.cost! + hall!.cost!).toBe(forBed!.price);
    expect(Math.abs(bed!.cost! * forBed!.rollsOfAll - forBed!.price! * forBed!.rolls)).toBeLessThan(forBed!.rollsOfAll);
  });

  test('counts what was ordered too, and is not known without a price', () => {
    const orders = [{ id: '1', placed: '2026-03-02', lines: [{ covering: 'paper', run: '2214', rolls: 40, price: '10.01', rooms: ['bed', 'hall', 'gone'] }] }];
    const [bed, hall] = glance({ orders });
    expect(bed!.costs.map(({ order }) => order)).toEqual(['1']);
    expect(bed!.cost! + hall!.cost!).toBe(1001);
    expect(glance({ coverings: [wallcovering()] }).map(({ cost }) => cost)).toEqual([null, null]);
    expect(glance({ stock: [{ covering: 'paper', run: '2214', rolls: 40 }] }).map(({ cost, costs }) => [cost, costs])).toEqual([[null, []], [null, []]]);
  });

  test('is worked out line by line', () => {
    const house = houseOf(documentOf({ coverings: [PAPER] }));
    const cost = { covering: 'paper', run: '7', order: null, price: moneyOf(420_00), rolls: 9, rollsOfAll: 14, part: moneyOf(270_00) };
    const lines = (glance: Parameters<typeof explainRoomCost>[1]) => explainRoomCost(house, glance).map(({ text }) => text);
    expect(lines({ costs: [cost], cost: moneyOf(270_00) })).toEqual(['P-1, run 7, to buy: 420.00 USD × 9 of 14 rolls = 270.00 USD.', 'Together 270.00 USD.']);
    expect(lines({ costs: [{ ...cost, rolls: 0, rollsOfAll: 0, part: moneyOf(210_00) }], cost: moneyOf(210_00) })[0]).toBe('P-1, run 7, to buy: 420.00 USD shared alike = 210.00 USD.');
    expect(lines({ costs: [{ ...cost, run: null, order: '1', rolls: 14, part: moneyOf(420_00) }, { ...cost, price: null, part: null }], cost: null })).toEqual(['P-1, order 1: 420.00 USD.', 'P-1, run 7, to buy: no price.', 'Not all of it has a price.']);
  });
});
