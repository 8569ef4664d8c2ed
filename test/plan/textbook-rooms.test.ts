import { describe, expect, test } from 'vitest';
import { areaOfBand, countRoomsByTextbook, planHouse } from '../../shared-core/plan/index.ts';
import { inches, showArea } from '../../shared-core/units/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, exampleDocument, houseOf, type Loose, room, wallcovering } from '../builders.ts';

function textbookOf(document: Loose) {
  const house = houseOf(document);
  const plan = planHouse(house);
  return { line: plan.order[0]!, counted: countRoomsByTextbook(house, plan, plan.order[0]!) };
}

describe('the textbooks, room by room', () => {
  test("count the exchange document's bedroom: 27 strips of 8' 4\", 3 a roll, 9 rolls", () => {
    const document = exampleDocument();
    document.rooms = [document.rooms[0]];
    const { counted } = textbookOf(document);
    expect(counted?.rows).toHaveLength(1);
    expect(counted!.rows[0]).toMatchObject({ room: 'bed1', band: 'main', strips: 27, length: inches(100), wholeRepeats: { rolls: 9, chanceShort: 0 }, rollsAlone: 9 });
  });

  test('add up over the rooms, each bought by itself', () => {
    const rooms = ['one', 'other'].map((id) => room(['140 in'], { id, name: id }));
    const { line, counted } = textbookOf(documentOf({ coverings: [wallcovering()], rooms }));
    expect(counted!.rows.map(({ room: id, wholeRepeats }) => [id, wholeRepeats.rolls])).toEqual([['one', 3], ['other', 3]]);
    expect(counted!.all).toMatchObject({ strips: 14, wholeRepeats: { rolls: 6 } });
    const [one] = counted!.rows;
    expect(counted!.all.wholeRepeats.chanceShort).toBeCloseTo(1 - (1 - one!.wholeRepeats.chanceShort) ** 2, 12);
    expect(line.rooms).toEqual(['one', 'other']);
  });

  test('leave what hangs over a door to the offcuts', () => {
    const door = { id: 'door', kind: 'door', entrance: true, from: '20 in', width: '40 in', height: '80 in' };
    const layout = { start: { wall: 'A', at: '0 in', edge: 'left' }, direction: 'right', kill: 'start' };
    const bands = [{ id: 'main', covering: 'paper', walls: ['A'], layout }];
    const { counted } = textbookOf(documentOf({ coverings: [wallcovering()], rooms: [room(['100 in'], { bands }, [{ openings: [door] }])] }));
    expect(counted!.rows[0]!.strips).toBe(3);
  });

  test('reckon with where strips begin in rolls that begin at their repeat', () => {
    const { line, counted } = textbookOf(documentOf({ coverings: [wallcovering({ rollLength: '420 in', repeat: '21 in', rollStart: 'at-repeat', spareRolls: 0 })], rooms: [room(['240 in'])] }));
    // Four times 105 in is 420 in, but the first strip begins 19 in into its roll.
    expect([line.rollsNeeded, counted!.rows[0]!.wholeRepeats]).toEqual([4, { rolls: 3, chanceShort: 1 }]);
  });

  test('have nothing to say of borders, murals and rolls in their own sequence', () => {
    expect(textbookOf(documentOf({ coverings: [wallcovering({ sequence: 'required' })], rooms: [room(['80 in'])] })).counted).toBeNull();
    const house = demoHouse();
    const plan = planHouse(house);
    const kinds = plan.order.map((line) => [house.coverings.find(({ id }) => id === line.covering)!.kind, countRoomsByTextbook(house, plan, line) !== null]);
    expect(kinds.every(([kind, isCounted]) => isCounted === (kind === 'wallcovering'))).toBe(true);
    expect(new Set(kinds.map(([kind]) => kind)).size).toBeGreaterThan(1);
  });
});

test('the wall of a band is what lies between its edges, openings taken off', () => {
  const door = { id: 'door', kind: 'door', entrance: true, from: '1 m', width: '0.8 m', height: '2 m' };
  const shape = room(['4 m', '3 m'], { bands: [{ id: 'main', covering: 'paper', walls: ['A'] }, { id: 'dado', covering: 'paper', walls: ['B'], to: '1 m' }] }, [{ height: '2.5 m', openings: [door] }, { height: ['2 m', '3 m'], openings: [{ ...door, id: 'window', kind: 'window', entrance: false, sill: '0.8 m', height: '1 m' }] }]);
  const [found] = houseOf(documentOf({ coverings: [wallcovering()], rooms: [shape] })).rooms;
  const [main, dado] = found!.bands;
  expect(showArea(areaOfBand(found!, main!), 'metric')).toBe('8.40 m²');
  // 3 m by 1 m less 0.8 m by 0.2 m.
  expect(showArea(areaOfBand(found!, dado!), 'metric')).toBe('2.84 m²');
  // Between 2 m and 3 m high, so 2.5 m, less a window of 0.8 m by 1 m.
  expect(showArea(areaOfBand(found!, { ...main!, walls: ['B'] }), 'metric')).toBe('6.70 m²');
});
