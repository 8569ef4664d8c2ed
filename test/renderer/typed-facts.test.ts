import { describe, expect, test } from 'vitest';
import { sayFault, sayFaults } from '../../src-renderer/parts/say-fault.ts';
import { floorLineText, readFloorLineTyped, readHeightTyped, readWallsTyped, wallsText, writeFacts } from '../../src-renderer/places/survey/typed-facts.ts';
import { idFor } from '../../shared-core/base/index.ts';
import { applyEdit } from '../../shared-core/house/index.ts';
import { heightText, readTurnTyped } from '../../shared-core/survey/index.ts';
import { parseMeasure } from '../../shared-core/units/index.ts';
import { documentOf, houseOf, room, wallcovering } from '../builders.ts';

test.each([
  ['inside', 'inside'],
  ['i', 'inside'],
  ['Out', 'outside'],
  [' s ', 'straight'],
  ['135', '135'],
  ['135°', '135'],
  ['91,5 deg', '91.5'],
])('a corner typed %j is %s', (typed, turn) => {
  expect(readTurnTyped(typed)).toBe(turn);
});

test.each(['', 'left', '1000', '12 34', '-90'])('a corner typed %j is none', (typed) => {
  expect(readTurnTyped(typed)).toBeNull();
});

describe('a height typed', () => {
  test('is one length, in the way of the house where it has no unit', () => {
    expect(readHeightTyped("8' 2", 'imperial')).toEqual({ height: `8' 2"` });
    expect(readHeightTyped('2,44', 'metric')).toEqual({ height: '2,44 m' });
  });

  test('is two lengths where the ceiling slopes', () => {
    expect(readHeightTyped("5' to 8' 6\"", 'imperial')).toEqual({ height: ["5'", `8' 6"`] });
  });

  test('that is none says what was not understood', () => {
    expect(readHeightTyped('tall', 'metric')).toEqual({ trouble: expect.stringMatching(/tall.*Nothing was changed\.$/) as string });
    expect(readHeightTyped('1 m to 2 m to 3 m', 'metric')).toEqual({ trouble: expect.stringContaining('one length, or two') as string });
  });

  test('is shown again as it was typed', () => {
    const [left, right] = ["5'", '2.6 m'].map((typed) => {
      const parsed = parseMeasure(typed);
      if (!parsed.ok) throw new Error(typed);
      return parsed.value;
    });
    expect(heightText(left!)).toBe("5'");
    expect(heightText([left!, right!])).toBe("5' to 2.6 m");
  });
});

describe('a floor line typed', () => {
  test('is one length, two, or none', () => {
    expect(readFloorLineTyped('2', 'imperial')).toEqual({ base: '2"' });
    expect(readFloorLineTyped('-1 cm to 2 cm', 'metric')).toEqual({ base: ['-1 cm', '2 cm'] });
    expect(readFloorLineTyped(' ', 'metric')).toEqual({ base: null });
  });

  test('that is none is called by its name', () => {
    expect(readFloorLineTyped('1 m to 2 m to 3 m', 'metric')).toEqual({ trouble: expect.stringMatching(/^A floor line is one length, or two/) as string });
  });

  test('is empty where the floor is level, and shown as typed where it is not', () => {
    const [wall] = houseOf(documentOf({ coverings: [wallcovering()], rooms: [room(['3 m', '3 m'], {}, [{ base: ['0 in', '0 cm'] }, { base: ['0 in', '1 cm'] }])] })).rooms[0]!.walls;
    expect(floorLineText(wall!.base)).toBe('');
    expect(floorLineText([wall!.length, wall!.height as never])).toBe('3 m to 8 ft');
  });
});

test.each([
  ['all', null],
  ['', null],
  [' ALL ', null],
  ['c, A', ['A', 'C']],
  ['b and b', ['B']],
  ['A;b C', ['A', 'B', 'C']],
])('walls typed %j are %j', (typed, walls) => {
  expect(readWallsTyped(typed, ['A', 'B', 'C'])).toEqual({ walls });
});

test.each(['Q', 'A, Q', ','])('walls typed %j are said not to be there', (typed) => {
  expect(readWallsTyped(typed, ['A', 'B'])).toEqual({ trouble: expect.stringContaining('some of A, B. Nothing was changed.') as string });
});

test('walls are shown as they can be typed', () => {
  expect(wallsText(undefined)).toBe('all');
  expect(wallsText(['A', 'C'])).toBe('A, C');
});

test.each([
  ['Picture rail', 'picture-rail'],
  ['  ', 'rail'],
  ['Dado', 'dado2'],
  ['Façade, 2 m!', 'façade-2-m'],
  ['x'.repeat(29) + ' yz', 'x'.repeat(29)],
])('the rail %j gets the id %s', (name, id) => {
  expect(idFor(name, 'rail', ['dado'])).toBe(id);
});

test('a list written out and read again is the same list, each length as it was typed', () => {
  const rails = [{ id: 'dado', name: 'dado rail', at: '32 in', width: '7.5 cm', walls: ['A'] }, { id: 'picture', at: '6\' 8"', width: '2 in' }];
  const furniture = [{ id: 'bed', name: 'headboard', wall: 'B', from: '1 ft', width: '50 in', height: '1.2 m' }];
  const house = houseOf(documentOf({ coverings: [wallcovering()], rooms: [room(['100 in', '90 in', '100 in', '90 in'], { rails, furniture })] }));
  const [found] = house.rooms;
  const written = { rails: found!.rails.map(writeFacts), furniture: found!.furniture.map(writeFacts) };
  expect(written).toEqual({ rails, furniture });
  const again = applyEdit(house, { kind: 'change-room', room: 'room', facts: written });
  expect(again.ok && again.value.rooms[0]).toEqual(found);
});

test.each([
  ['rooms[0].walls[1].length', 'is -3 m; it takes a length above 0', 'Length is -3 m; it takes a length above 0.'],
  ['coverings[0].rollLength', 'is missing', 'Roll length is missing.'],
  ['rooms[0].bands[2]', 'overlaps the band "main"', 'Band overlaps the band "main".'],
  ['rooms[0].bands[0].layout.start.at', 'is 99 ft', 'The place is 99 ft.'],
  ['', 'There is nothing to undo.', 'There is nothing to undo.'],
])('the fault at %j is said as a sentence', (path, message, sentence) => {
  expect(sayFault({ path, message })).toBe(sentence);
});

test('no fault says nothing', () => {
  expect(sayFaults([])).toBeNull();
});
