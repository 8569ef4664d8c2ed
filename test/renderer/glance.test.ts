import { describe, expect, test } from 'vitest';
import { glanceAtRooms, planHouse } from '../../shared-core/plan/index.ts';
import { drawRoomPlan } from '../../shared-core/drawing/index.ts';
import { drawOutline } from '../../shared-core/survey/index.ts';
import { byStorey, countSteps, nextStep, sayTake, sayToBuy, toOneScale } from '../../src-renderer/places/house/glance.ts';
import { openPoints, openQuestions } from '../../src-renderer/state/open-points.ts';
import { documentOf, houseOf, type Loose, room, wallcovering } from '../builders.ts';

const SQUARE = ['8 ft', '8 ft', '8 ft', '8 ft'];
const PAPER = wallcovering({ soldIn: [{ rolls: 1, price: '42.00' }] });
const look = (facts: Loose) => {
  const house = houseOf(documentOf({ coverings: [PAPER], rooms: [room(SQUARE)], ...facts }));
  const plan = planHouse(house);
  return { house, plan, glances: glanceAtRooms(house, plan), questions: openQuestions(house, plan) };
};

describe('what comes next in a room', () => {
  const next = (facts: Loose) => nextStep(look(facts).glances[0]!)?.place ?? null;
  test('is the first thing that is not done; a room is prepared while its order is on the way', () => {
    expect(next({ rooms: [room([], { bands: [] })] })).toBe('survey');
    expect(next({ rooms: [room(SQUARE, { bands: [] })] })).toBe('coverings');
    expect(next({})).toBe('order');
    expect(next({ orders: [{ id: '1', placed: '2026-03-02', lines: [{ covering: 'paper', run: '7', rolls: 20, rooms: ['room'] }] }] })).toBe('deliveries');
    const hung = { stock: [{ covering: 'paper', run: '7', rolls: 20 }], runChoices: [{ covering: 'paper', room: 'room', run: '7', hung: true }] };
    expect(next(hung)).toBeNull();
    const told = { rooms: [room(SQUARE, {}, Array(4).fill({ surface: { kind: 'paper-strippable', states: [] } }))] };
    expect([next(told), next({ ...told, stock: hung.stock }), next({ ...told, ...hung })]).toEqual(['order', 'prep', null]);
  });

  test('is not held up by walls that do not go round, but by what cannot be cut', () => {
    expect(next({ rooms: [room(['8 ft'])] })).toBe('order');
    expect(nextStep(look({ rooms: [room(SQUARE, {}, Array(4).fill({ height: '40 ft' }))] }).glances[0]!)!.words).toBe('See what can’t be met');
  });
});

test('questions name what is missing and where it is answered, what stops the work first', () => {
  const { questions } = look({
    coverings: [wallcovering()],
    rooms: [room(SQUARE), room([], { id: 'loft', name: 'Loft', bands: [] }), room(SQUARE, { id: 'den', name: 'Den', bands: [] }), room(SQUARE, { id: 'tower', name: 'Tower' }, Array(4).fill({ height: '40 ft' }))],
  });
  expect(questions[0]).toMatchObject({ stops: true, room: 'tower' });
  expect(questions.filter(({ stops }) => !stops).slice(0, 4)).toEqual([
    { place: 'survey', room: 'loft', words: 'Loft has no walls yet.', stops: false },
    { place: 'coverings', room: 'den', words: 'Nothing hangs in Den yet.', stops: false },
    { place: 'coverings', room: null, words: 'P-1 has no price.', stops: false },
    { place: 'order', room: null, words: 'The run of P-1 is not known. Ask the supplier which runs there are.', stops: false },
  ]);
  expect(look({ coverings: [], rooms: [room(SQUARE, { bands: [] })] }).questions.map(({ words }) => words)).toEqual(['No covering is chosen yet.']);
});

test('advice for who hangs is no question', () => {
  const { plan, questions } = look({ coverings: [wallcovering({ soldIn: [{ rolls: 1, price: '42.00' }], repeat: undefined, reverseAlternate: true })], stock: [{ covering: 'paper', run: '7', rolls: 20 }] });
  expect(plan.warnings.some(({ message }) => message.includes('upside down'))).toBe(true);
  expect(questions).toEqual([]);
});

test('the rail counts the same things', () => {
  const { house, plan } = look({ coverings: [wallcovering()], rooms: [room(SQUARE), room([], { id: 'loft', name: 'Loft', bands: [] })] });
  expect(openPoints(house, plan)).toMatchObject({ house: null, survey: { words: '1 room without walls' }, coverings: null, order: { words: '1 line without price' } });
});

test('figures are said in the trade’s words', () => {
  const border = { id: 'edge', kind: 'border', patternNumber: 'B-1', width: '6 in', rollLength: '15 ft', repeat: '10 in' };
  const rooms = [room(SQUARE, { bands: [{ id: 'main', covering: 'paper', walls: ['A', 'B'] }, { id: 'top', covering: 'edge', walls: ['C'], from: '5 ft', to: 'ceiling' }] })];
  const { house, plan, glances } = look({ coverings: [PAPER, border], rooms, stock: [{ covering: 'paper', run: '7', rolls: 1 }], offers: [{ covering: 'paper', run: '7', rolls: 40 }] });
  expect(glances[0]!.takes.map((take) => sayTake(house, take))).toEqual([expect.stringMatching(/^\d rolls of P-1, run 7$/), expect.stringMatching(/^\d spools? of B-1$/)]);
  expect(sayToBuy(house, plan.order)).toMatch(/^\d rolls? and \d spools?$/);
  expect(sayToBuy(house, [])).toBeNull();
  expect(countSteps(glances).map(({ rooms: count }) => count)).toEqual([1, 0, 1, 0, 0, 0]);
  expect(byStorey(houseOf(documentOf({ rooms: [room([], { id: 'a', storey: 'Up', bands: [] }), room([], { id: 'b', bands: [] }), room([], { id: 'c', storey: 'Up', bands: [] })] })).rooms).map(({ storey, rooms: own }) => [storey, own.map(({ id }) => id)])).toEqual([['Up', ['a', 'c']], [null, ['b']]]);
});

test('plans are drawn to one scale', () => {
  const { house } = look({ rooms: [room(SQUARE), room(['4 ft', '12 ft', '4 ft', '12 ft'], { id: 'b' })] });
  const [wide, tall] = toOneScale(house.rooms.map((one) => drawRoomPlan(one, drawOutline(one), 'imperial', { detail: 'thumb' })));
  const size = ({ bounds }: typeof wide & {}) => [bounds.right - bounds.left, bounds.bottom - bounds.top];
  expect(size(wide!)).toEqual(size(tall!));
});
