import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, encodeHouse, type House, newHouse } from '../../shared-core/house/index.ts';
import { readRoomTable, writeRoomTable } from '../../shared-core/survey/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { documentOf, houseOf, type Loose } from '../builders.ts';

const EMPTY = newHouse('Empty', 'imperial');

function added(text: string, house: House = EMPTY): House {
  const { edit, faults, rows } = readRoomTable(text, house);
  if (!edit) throw new Error([...faults.map(({ message }) => message), ...rows.flatMap(({ line, troubles }) => troubles.map(({ words }) => `${line}: ${words}`))].join('\n'));
  const outcome = applyEdit(house, edit);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return outcome.value;
}

const roomsOf = (text: string, house?: House): Loose[] => encodeHouse(added(text, house)).rooms as Loose[];

function troublesOf(text: string, house: House = EMPTY): readonly string[] {
  const { edit, faults, rows } = readRoomTable(text, house);
  expect(edit, text).toBeNull();
  return [...faults.map(({ message }) => message), ...rows.flatMap(({ line, troubles }) => troubles.map(({ words }) => `${line}: ${words}`))];
}

/** What a table of rooms keeps of them: all but what hangs there and what is done to it, and the ids that are made anew. */
function surveyed(rooms: readonly Loose[]): Loose[] {
  const withoutId = ({ id: _id, ...rest }: Loose): Loose => rest;
  const withoutSurface = ({ surface: _surface, ...wall }: Loose): Loose => wall;
  return rooms.map(({ id: _id, bands: _bands, ceiling: _ceiling, ceilingSurface: _above, woodwork: _wood, stairs: _stairs, keptUsable: _used, ...room }) => ({ ...room, walls: room.walls.map(withoutSurface), rails: room.rails.map(withoutId), furniture: room.furniture.map(withoutId) }));
}

describe('the rooms of a house', () => {
  test('are written as CSV, a row for each thing, lengths as they were typed', () => {
    const house = houseOf(documentOf({
      rooms: [
        {
          id: 'hall',
          name: 'Hall, "front"',
          storey: '=Ground',
          note: 'Cellar below,\nmind the hatch',
          focalWall: 'B',
          walls: [
            { id: 'A', length: `12' 4" - 3 1/2"`, height: ["8'", "9'"], openings: [{ id: 'door', kind: 'door', entrance: true, from: '2 ft', width: '32 in', height: '80 in', reveal: { depth: '4 in', sides: ['left', 'head'] } }] },
            { id: 'B', length: '3 m', height: "8'", base: '-1 in', turn: '92.5', plumbRight: '1/2"', note: 'damp at the foot' },
          ],
          rails: [{ id: 'dado', name: 'dado rail', walls: ['A', 'B'], at: '32 in', width: '3 in' }],
          furniture: [{ id: 'bed', wall: 'B', from: '1 ft', width: '5 ft', height: '3 ft' }],
        },
        { id: 'loft', name: 'Loft' },
      ],
    }));
    expect(writeRoomTable(house).split('\r\n')).toEqual([
      'Storey,Room,Wall,What,Name,Length,Corner,Height,Floor line,Lean,Looked at most,Entrance,From left,Width,Sill,Reveal,Covered,Note',
      `'=Ground,"Hall, ""front""",,room,,,,,,,,,,,,,,"Cellar below,
mind the hatch"`,
      `'=Ground,"Hall, ""front""",A,wall,,"12' 4"" - 3 1/2""",inside,8' to 9',0 in,,,,,,,,,`,
      `'=Ground,"Hall, ""front""",A,door,door,,,80 in,,,,yes,2 ft,32 in,0 in,4 in,left head,`,
      `'=Ground,"Hall, ""front""",B,wall,,3 m,92.5,8','-1 in,"1/2""",yes,,,,,,,damp at the foot`,
      `'=Ground,"Hall, ""front""",A B,rail,dado rail,,,3 in,,,,,,,32 in,,,`,
      `'=Ground,"Hall, ""front""",B,furniture,,,,3 ft,,,,,1 ft,5 ft,,,,`,
      ',Loft,,room,,,,,,,,,,,,,,',
      '',
    ]);
    expect(surveyed(roomsOf(writeRoomTable(house)))).toEqual(surveyed(encodeHouse(house).rooms as Loose[]));
  });

  test('of the demo house are the same when they are read in again, with ids of their own', () => {
    const house = demoHouse();
    const twice = added(writeRoomTable(house), house);
    const rooms = encodeHouse(twice).rooms as Loose[];
    expect(twice.rooms).toHaveLength(2 * house.rooms.length);
    expect(new Set(rooms.map(({ id }) => id)).size).toBe(rooms.length);
    expect(surveyed(rooms.slice(house.rooms.length))).toEqual(surveyed(rooms.slice(0, house.rooms.length)));
    expect(writeRoomTable({ ...twice, rooms: twice.rooms.slice(house.rooms.length) })).toBe(writeRoomTable(house));
  });

  test('whose length can be read in two ways are written so that they cannot', () => {
    const house = houseOf(documentOf({ rooms: [{ id: 'a', name: 'A', walls: [{ id: 'A', length: `12' - 4"`, height: '8 ft' }] }] }));
    expect(writeRoomTable(house)).toContain(`A,wall,,"12' 4"""`);
    expect(roomsOf(writeRoomTable(house))[0].walls[0].length).toBe(`12' 4"`);
  });
});

const lengthText = fc.oneof(
  fc.integer({ min: 60, max: 4_000 }).map((size) => `${size} mm`),
  fc.integer({ min: 6, max: 200 }).map((size) => `${size / 2} in`),
  fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 11 })).map(([feet, inches]) => `${feet}' ${inches} 1/2"`),
  fc.tuple(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 1, max: 20 })).map(([feet, less]) => `${feet} ft + ${less} cm`),
);
const nameText = fc
  .oneof(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }), fc.array(fc.constantFrom('"', ',', ';', '=', "'", '-', '@', '\n', '\t', ' ', 'Bed', 'ö', '🙂', '𝒜'), { minLength: 1, maxLength: 8 }).map((all) => all.join('')), fc.constantFrom('Hall', 'Bed 1', "'=x"))
  .map((text) => text.trim())
  .filter((text) => text !== '');
const opening = fc.record({
  kind: fc.constantFrom('door', 'window', 'archway', 'fireplace', 'furniture'),
  entrance: fc.boolean(),
  from: lengthText,
  width: lengthText,
  height: lengthText,
  sill: lengthText,
  depth: fc.option(lengthText),
  sides: fc.shuffledSubarray(['left', 'right', 'head', 'sill'], { minLength: 1 }),
});
const wall = fc.record({
  more: lengthText,
  ends: fc.option(lengthText),
  base: fc.option(fc.tuple(lengthText, lengthText)),
  turn: fc.constantFrom('inside', 'outside', 'straight', '135', '92.5'),
  note: fc.option(nameText),
  plumbRight: fc.option(lengthText.map((text) => (text.includes('+') ? '1 cm' : `-${text}`))),
  openings: fc.array(opening, { maxLength: 2 }),
});
const room = fc.record({
  name: nameText,
  storey: fc.option(nameText),
  note: fc.option(nameText),
  walls: fc.array(wall, { maxLength: 4 }),
  hasFocal: fc.boolean(),
  rails: fc.array(fc.record({ name: fc.option(nameText), at: lengthText, width: lengthText, isAll: fc.boolean() }), { maxLength: 2 }),
  furniture: fc.array(fc.record({ name: fc.option(nameText), from: lengthText, width: lengthText, height: lengthText }), { maxLength: 2 }),
});

/** A room that keeps to the house's rules, whatever was drawn: its walls are longer and higher than what is on them. */
function built({ name, storey, note, walls, hasFocal, rails, furniture }: Loose, index: number): Loose {
  const named = (given: string | null) => (given === null ? {} : { name: given });
  const ids = walls.map((_: Loose, place: number) => (place === 3 ? 'Bay.left' : String.fromCharCode(65 + place)));
  return {
    id: `r${index}`,
    name,
    ...(storey === null ? {} : { storey }),
    ...(note === null ? {} : { note }),
    ...(hasFocal && walls.length > 0 ? { focalWall: ids[0] } : {}),
    walls: walls.map(({ more, ends, base, turn, note: noted, plumbRight, openings }: Loose, place: number) => ({
      id: ids[place],
      length: `9 m + 1' - 1' + 2 x ${more.includes('+') ? '1 m' : more}`,
      height: ends === null ? '14 m' : ['14 m', ends],
      base: base ?? '0 in',
      turn,
      ...(noted === null ? {} : { note: noted }),
      ...(plumbRight === null ? {} : { plumbRight }),
      openings: openings.map(({ kind, entrance, from, width, height, sill, depth, sides }: Loose, at: number) => ({
        id: `o${at}`,
        kind,
        entrance,
        from: at === 0 ? '0 in' : '4.5 m',
        width: at === 0 ? width : from,
        height,
        sill,
        ...(depth === null || kind === 'furniture' ? {} : { reveal: { depth, sides } }),
      })),
    })),
    rails: rails.map(({ name: given, at, width, isAll }: Loose, place: number) => ({ id: `rail.${place}`, ...named(given), at, width, ...(isAll || ids.length === 0 ? {} : { walls: [...ids].reverse() }) })),
    furniture: ids.length === 0 ? [] : furniture.map(({ name: given, ...piece }: Loose, place: number) => ({ id: `piece.${place}`, ...named(given), wall: ids.at(-1), ...piece })),
  };
}

test('any rooms that are written and read in again are the same', () => {
  fc.assert(
    fc.property(fc.array(room, { maxLength: 4 }), fc.constantFrom('imperial', 'metric'), fc.constantFrom('imperial', 'metric'), (drawn, lengths, other) => {
      const house = houseOf(documentOf({ lengths, rooms: drawn.map(built) }));
      const text = writeRoomTable(house);
      if (house.rooms.length === 0) return;
      expect(surveyed(roomsOf(text, newHouse('Other', other)))).toEqual(surveyed(encodeHouse(house).rooms as Loose[]));
    }),
    { numRuns: 300 },
  );
});

describe('a table of rooms', () => {
  test('may be of walls alone, under other headings, its columns in any order', () => {
    const rooms = roomsOf('Ht;Wall length;Room name;Angle;Storey\n8 ft;12 4;Hall;out;Ground floor\n;10 2;Hall;92,5°;\n7 to 8;9;Den;;Ground floor\n;4 ft;Hall;;Ground floor');
    expect(rooms).toMatchObject([
      { id: 'hall', name: 'Hall', storey: 'Ground floor', walls: [{ id: 'A', length: `12' 4"`, height: '8 ft', turn: 'outside' }, { id: 'B', length: `10' 2"`, height: '8 ft', turn: '92.5' }, { id: 'C', length: '4 ft', height: '8 ft' }] },
      { id: 'den', walls: [{ id: 'A', length: '9"', height: ['7"', '8"'], turn: 'inside' }] },
    ]);
  });

  test('may have its rooms and walls only where they begin, and numbers in the unit of the heading', () => {
    const [hall, den] = roomsOf('room\twhat\twall\tlength (cm)\theight [m]\tfrom (cm)\twidth (cm)\tsill (cm)\nHall\twall\tA\t376\t2,4\n\tdoor\t\t\t2\t30\t76\n\twindow\t\t\t1.2\t150\t90,5\t80\n\twall\tB\t3 m\t\nDen\twall\t\t200\t250 cm to 260 cm');
    expect(hall).toMatchObject({ name: 'Hall', walls: [{ length: '376 cm', height: '2,4 m', openings: [{ id: 'door', entrance: true, from: '30 cm', sill: '0 in' }, { id: 'window', entrance: false, width: '90,5 cm', sill: '80 cm' }] }, { length: '3 m', height: '2,4 m' }] });
    expect(den).toMatchObject({ walls: [{ id: 'A', length: '200 cm', height: ['250 cm', '260 cm'] }] });
  });

  test('has a room for each row that says so, and one for each name', () => {
    expect(roomsOf('what,room,storey\nroom,Loft,\nroom,Loft,\nroom,Loft,Top').map(({ id, storey }) => [id, storey])).toEqual([['loft', undefined], ['loft2', undefined], ['loft3', 'Top']]);
    expect(roomsOf('room,length,height\nLoft,2 m,2 m\nDen,2 m,2 m\nLoft,3 m,2 m').map(({ walls }) => walls.length)).toEqual([2, 1]);
  });

  test('is added beside the rooms of the house, with ids that are free', () => {
    const house = added('what,room\nroom,Hall');
    expect(roomsOf('what,room\nroom,Hall\nroom,!', house).map(({ id, name }) => [id, name])).toEqual([['hall', 'Hall'], ['hall2', 'Hall'], ['room', '!']]);
  });
});

describe('nothing is added of a table with a fault', () => {
  const HEAD = 'Room,What,Wall,Length,Corner,Height,From,Width,Sill,Reveal,Covered,Entrance,Name,Looked at most';

  test.each([
    ['a length that is none', 'Hall,wall,A,12 fot,,8 ft', ['2: Length: In ‘12 fot’, ‘fot’ is not a unit of length; the units are in, ft, yd, mm, cm and m.']],
    ['a wall without length or height', 'Hall,wall,A', ['2: Length: there is nothing; it takes a length.', '2: Height: there is nothing, and no wall of the room before it has one; it takes a length.']],
    ['a corner that is none', 'Hall,wall,A,9 ft,round,8 ft', ['2: Corner: ‘round’ is no corner. A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.']],
    ['an angle beyond reason', 'Hall,wall,A,9 ft,5,8 ft', ['2: Corner is "5"; it takes "inside", "outside", "straight" or an interior angle from "10" to "350" degrees.']],
    ['a wall of that name already', 'Hall,wall,A,9 ft,,8 ft\nHall,wall,A,9 ft', ['3: Wall: Hall has a wall A in a row above already; each wall has a name of its own.']],
    ['a thing that is none', 'Hall,hatch,A', ['2: What: ‘hatch’ is nothing that a row is of; it takes room, wall, door, window, archway, fireplace, fitted furniture, rail, furniture.']],
    ['no room', ',wall,A,9 ft,,8 ft', ['2: Room: there is nothing, and no room in a row above; it takes the name of the room.']],
    ['an opening without its wall', 'Hall,door,,,,80 in,1 ft,3 ft', ['2: Wall: there is nothing, and no wall in a row above; a door stands on one.']],
    ['an opening on a wall that comes later', 'Hall,door,Q,,,80 in,1 ft,3 ft', ['2: Wall: Q is no wall of Hall in a row above; its walls are none yet.']],
    ['an opening past the end of its wall', 'Hall,wall,A,9 ft,,8 ft\nHall,door,A,,,80 in,8 ft,3 ft', [`3: Width is 3 ft: the door "door" would end at 11', past the end of wall A at 9 ft; from 8 ft it takes at most 1'.`]],
    ['a window without its sill', 'Hall,wall,A,9 ft,,8 ft\nHall,window,A,,,4 ft,1 ft,3 ft', ['3: Sill: there is nothing; it takes the height of its sill.']],
    ['what its row does not take', 'Hall,wall,A,9 ft,,8 ft,,3 ft', ['2: Width: a wall takes none, and there stands ‘3 ft’.']],
    ['a cell beyond the headings', `Hall,wall,A,9 ft,,8 ft${','.repeat(9)}note`, ['2: Column 15: ‘note’ stands under no heading.']],
    ['sides that are none', 'Hall,wall,A,9 ft,,8 ft\nHall,door,A,,,80 in,1 ft,3 ft,,4 in,left foot', ['3: Covered: ‘left foot’ names more than the sides of a reveal; it takes some of left, right, head, sill.']],
    ['sides without a depth', 'Hall,wall,A,9 ft,,8 ft\nHall,door,A,,,80 in,1 ft,3 ft,,,left', ['3: Reveal: there is nothing; what is covered in it wants its depth.']],
    ['an entrance that is neither', 'Hall,wall,A,9 ft,,8 ft\nHall,door,A,,,80 in,1 ft,3 ft,,,,perhaps', ['3: Entrance: ‘perhaps’ is neither yes nor no; it takes yes, or nothing.']],
    ['two walls looked at most', 'Hall,wall,A,9 ft,,8 ft,,,,,,,,yes\nHall,wall,B,9 ft,,8 ft,,,,,,,,yes', ['3: Looked at most: wall A is it already; a room takes one.']],
    ['a rail on a wall that is not there', 'Hall,wall,A,9 ft,,8 ft\nHall,rail,A C,,,3 in,,,32 in', ['3: Wall is "C", which is not a wall of Hall; its walls are A.']],
    ['a rail above its walls', 'Hall,wall,A,9 ft,,8 ft\nHall,rail,,,,3 in,,,9 ft', [`3: Sill is 9 ft: the rail "rail" would stand above wall A, which is 8' high; leave that wall out of its walls, or set it lower.`]],
    ['a name that is too long', `${'H'.repeat(81)},room`, ['2: Room is 81 characters long; it takes the name of the room of at most 80.']],
  ])('%s', (_what, rows, said) => {
    expect(troublesOf(`${HEAD}\n${rows}`)).toEqual(said);
  });

  test('and each is said where it stands, whatever else is wrong', () => {
    expect(troublesOf(`${HEAD}\nHall,wall,A,long,,8 ft\nDen,wall,A,9 ft,,8 ft\nDen,door,A,,,90 ft,1 ft,3 ft`)).toEqual([
      '2: Length: ‘long’ is not a unit of length; the units are in, ft, yd, mm, cm and m.',
      `4: Height is 90 ft: the door "door" would reach 90', above wall A, which is 8' high.`,
    ]);
  });

  test.each([
    ['', 'There is no table here; it takes a row of headings and one row for each wall and each opening; the headings are storey, room, '],
    ['room,colour\nHall,red', 'Line 1: ‘colour’ is no heading that is known; those that are known are storey, room, '],
    ['wall,length\nA,9 ft', 'Line 1: there is no column for the room; known by room, room name, name of the room'],
    ['room,length', 'There is no row under the headings; '],
    [`room,what\n${'Hall,room\n'.repeat(10_001)}`, 'This table has 10001 rows; at most 10000 are taken at once'],
    ['room\n"Hall', 'Line 2: the quote before ‘Hall’ is not closed'],
  ])('%#', (text, said) => {
    expect(troublesOf(text)[0]).toContain(said);
  });

  test('of more rooms than a house takes', () => {
    const rooms = (count: number) => `room,what\n${Array.from({ length: count }, (_, index) => `Room ${index},room\n`).join('')}`;
    expect(troublesOf(rooms(2001))).toEqual(['2002: Room: the house would have more rooms than the 2000 that it takes.']);
    const many = added(rooms(1999));
    expect(troublesOf('room,what\nDen,room\nDen,room', many)).toEqual(['3: Room: the house would have more rooms than the 2000 that it takes.']);
  });
});

test('whatever is read in is answered', () => {
  const pieces = fc.array(fc.oneof(fc.constantFrom('"', ',', '\t', ';', '\n', '\r\n', 'Room', 'What', 'Wall', 'Length (cm)', 'Hall', 'room', 'door', 'rail', 'A', '9 ft', 'inside', ' to ', '=', "'"), fc.string({ unit: 'binary', maxLength: 3 })), { maxLength: 50 }).map((all) => all.join(''));
  fc.assert(
    fc.property(pieces, (text) => {
      const { edit, faults, rows } = readRoomTable(text, EMPTY);
      const said = [...faults.map(({ message }) => message), ...rows.flatMap(({ troubles }) => troubles.map(({ words }) => words))];
      expect(said.length > 0).toBe(edit === null);
      if (edit) expect(applyEdit(EMPTY, edit).ok).toBe(true);
    }),
    { numRuns: 1000 },
  );
});
