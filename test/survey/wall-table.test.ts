import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, encodeHouse, type House } from '../../shared-core/house/index.ts';
import { readEndsTyped, readTurnTyped, readWallTable, type WallColumn, type WallsTaken } from '../../shared-core/survey/index.ts';
import { endsText, splitEnds, turnText } from '../../shared-core/survey/typed-walls.ts';
import { documentOf, houseOf, type Loose } from '../builders.ts';

const DOOR = { id: 'door', kind: 'door', entrance: true, from: '2 ft', width: '32 in', height: '80 in' };
const houseWith = (walls: readonly Loose[] = [], facts: Loose = {}, lengths = 'imperial'): House => houseOf(documentOf({ lengths, rooms: [{ id: 'hall', name: 'Hall', walls, ...facts }] }));
const FOUR = [
  { id: 'A', length: '12 ft', height: '8 ft', openings: [DOOR] },
  { id: 'B', length: '10 ft', height: '8 ft', turn: 'outside', plumbRight: '1/4 in', note: 'brick' },
  { id: 'C', length: '12 ft', height: ['8 ft', '9 ft'], base: '1 in' },
  { id: 'D', length: '10 ft', height: '8 ft', openings: [{ id: 'window', kind: 'window', from: '2 ft', width: '3 ft', sill: '3 ft', height: '3 ft' }] },
];

function wallsOf(text: string, house: House = houseWith(), how: Partial<WallsTaken> = {}): Loose[] {
  const { edit, faults, rows } = readWallTable(text, house, house.rooms[0]!, { isReplacing: false, height: "8'", ...how });
  if (!edit) throw new Error([...faults.map(({ message }) => message), ...rows.flatMap(({ line, troubles }) => troubles.map(({ words }) => `${line}: ${words}`))].join('\n'));
  const outcome = applyEdit(house, edit);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return encodeHouse(outcome.value).rooms![0]!.walls as Loose[];
}

function troublesOf(text: string, house: House = houseWith(), how: Partial<WallsTaken> = {}): readonly string[] {
  const { edit, faults, rows } = readWallTable(text, house, house.rooms[0]!, { isReplacing: false, height: null, ...how });
  expect(edit, text).toBeNull();
  return [...faults.map(({ message }) => message), ...rows.flatMap(({ line, troubles }) => troubles.map(({ words }) => `${line}: ${words}`))];
}

const short = (walls: readonly Loose[]) => walls.map(({ id, length, turn, height }: Loose) => [id, length, turn, height]);

describe('walls pasted', () => {
  test('without headings are length, corner, height, floor line, lean and note, kept as typed', () => {
    expect(wallsOf(`12' 4"\toutside\n10 2\t92.5°\t8 ft to 9 6\t1/2\t-1/4\tdamp, low\n12' 4" - 3 1/2"\n3.76 m`)).toEqual([
      { id: 'A', length: `12' 4"`, turn: 'outside', height: "8'", base: '0 in', openings: [] },
      { id: 'B', length: `10' 2"`, turn: '92.5', height: ['8 ft', `9' 6"`], base: '1/2"', plumbRight: '-1/4"', note: 'damp, low', openings: [] },
      { id: 'C', length: `12' 4" - 3 1/2"`, turn: 'inside', height: ['8 ft', `9' 6"`], base: '0 in', openings: [] },
      { id: 'D', length: '3.76 m', turn: 'inside', height: ['8 ft', `9' 6"`], base: '0 in', openings: [] },
    ]);
  });

  test('may have their names before', () => {
    expect(short(wallsOf('N\t12 4\tin\nBay left\t9\ts'))).toEqual([['N', `12' 4"`, 'inside', "8'"], ['Bay-left', '9"', 'straight', "8'"]]);
  });

  test.each([
    ['tabs', 'Wall\tLength\tCorner\nN\t3.76\tout'],
    ['semicolons, and decimal commas', 'Wall;Length;Corner\nN;3,76;out'],
    ['commas', 'Wall,Length,Corner\nN,3.76,out'],
    ['quotes', '"Wall","Length","Corner"\n"N","3,76","out"'],
    ['columns in another order', 'Corner;Length;Wall\nout;3,76;N'],
    ['other words', 'TURN;Wall length;Letter\nout;3,76;N'],
    ['a unit over the column', 'Angle (deg);Length [cm];No.\nout;376;N'],
    ['a unit over the column and in the cell', 'Angle (°);Length (ft);No.\nout;3,76 m;N'],
    ['empty rows and columns', ';;;;\nCorner;;Length;Wall;\n;;;;\nout;;3,76;N;'],
  ])('are read with %s', (_what, text) => {
    const [wall] = wallsOf(text, houseWith([], {}, 'metric'));
    expect([wall.id, wall.turn]).toEqual(['N', 'outside']);
    expect(['3.76 m', '3,76 m', '376 cm']).toContain(wall.length);
  });

  test('follow the walls that are there, under the next letters', () => {
    const walls = wallsOf('length\theight\n4 ft\t9 ft\n5 ft', houseWith(FOUR));
    expect(short(walls.slice(4))).toEqual([['E', '4 ft', 'inside', '9 ft'], ['F', '5 ft', 'inside', '9 ft']]);
    expect(walls.slice(0, 4)).toEqual(encodeHouse(houseWith(FOUR)).rooms![0]!.walls);
  });

  test('take the place of walls, which keep their openings and what no column says', () => {
    const walls = wallsOf(`12' 2"\n11 ft\n12' 3"`, houseWith(FOUR), { isReplacing: true });
    expect(walls).toMatchObject([
      { id: 'A', length: `12' 2"`, height: '8 ft', openings: [{ id: 'door' }] },
      { id: 'B', length: '11 ft', turn: 'outside', plumbRight: '1/4 in', note: 'brick' },
      { id: 'C', length: `12' 3"`, height: ['8 ft', '9 ft'], base: '1 in' },
    ]);
    expect(walls).toHaveLength(3);
  });

  test('take away what their columns leave empty', () => {
    expect(wallsOf('wall\tlength\tcorner\tfloor line\tlean\nB\t10 ft\t\t\t\nC\t12 ft\t\t\t', houseWith(FOUR), { isReplacing: true })).toMatchObject([{ id: 'B', turn: 'inside', base: '0 in' }, { id: 'C', base: '0 in', height: ['8 ft', '9 ft'] }]);
    const [bare] = wallsOf('wall\tlength\tlean\tremarks\nB\t10 ft\t\t', houseWith(FOUR), { isReplacing: true });
    expect([bare.plumbRight, bare.note]).toEqual([undefined, undefined]);
  });

  test('of the names of others stand where those stood', () => {
    expect(short(wallsOf('wall\tlength\nC\t1 ft\n\t2 ft\n\t3 ft\nB\t4 ft\n\t5 ft\n', houseWith(FOUR.map((wall) => ({ ...wall, openings: [] }))), { isReplacing: true })).map(([id]) => id)).toEqual(['C', 'E', 'F', 'B', 'G']);
  });
});

describe('nothing is pasted where anything is wrong', () => {
  test.each([
    ['12 fot', ['1: Length: In ‘12 fot’, ‘fot’ is not a unit of length; the units are in, ft, yd, mm, cm and m.', '1: Height: there is nothing, and no wall before it has one; it takes a length, or write one in the field above.']],
    ['12 ft\tround\t8 ft', ['1: Corner: ‘round’ is no corner. A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.']],
    ['12 ft\t400\t8 ft', ['1: Corner is "400"; it takes "inside", "outside", "straight" or an interior angle from "10" to "350" degrees.']],
    ['400 ft\t\t8 ft\n12 ft\t\t0', ['1: Length is 400 ft; the most it takes is 100 m. Check the unit.', '2: Height is 0"; it takes a length above 0.']],
    ['12 ft\t\t8 ft to 9 ft to 10 ft', [`1: Height: A height is one length, or two for the left and the right end, such as 8' to 9' 6".`]],
    ['12 ft\t\t8 ft\tup', ['1: Floor line: ‘up’ is not a unit of length; the units are in, ft, yd, mm, cm and m.']],
    ["12' - 4\"\t\t8 ft", [`1: Length: ‘12' - 4"’ can be read in two ways; write 12' 4" for one length, or 12' minus 4" to take away.`]],
    ['A!\t12 ft\t\t8 ft', ['1: Wall: ‘A!’ is no short name; it takes 1 to 40 letters, digits, dots, dashes and underscores, such as A.']],
    ['A\t12 ft\t\t8 ft\nA\t9 ft', ['2: Wall: A is a row further up already; each wall has a name of its own.']],
    ['Length (cm)\tHeight\n3 + 4\t8 ft', ['2: Length: In ‘3 + 4 cm’: ‘3’ has no unit; write for example 12 in, 12\' 4 1/2" or 3.76 m.']],
    ['12 ft\t\t8 ft\t\t\tnice\tmore', ['1: Column 7: ‘more’ stands under no heading.']],
    ['length\tcolour\n12 ft\tred', ['Line 1: ‘colour’ is no heading that is known; those that are known are wall, length, corner, height, floor line, lean, note; leave other columns out']],
    ['wall\theight\nA\t9 ft', ['Line 1: there is no column for the length; known by length, wall length, width, wall width, long, run, measure, size']],
    ['height', ['Line 1: there is no column for the length; known by length, wall length, width, wall width, long, run, measure, size']],
    ['length', ['There is no row under the headings; it takes one row for each wall, with the columns wall, length, corner, height, floor line, lean, note']],
    ['1 ft\n'.repeat(201), ['This table has 201 rows; at most 200 are taken at once']],
  ])('%j', (text, said) => {
    expect(troublesOf(text)).toEqual(said);
  });

  test('of walls whose names are there, unless they take their place', () => {
    expect(troublesOf('B\t9 ft\nE\t9 ft', houseWith(FOUR))).toEqual(['1: Wall: the room has a wall B already; leave its name out, or put these walls in their place.', '1: Height: there is nothing, and no wall before it has one; it takes a length, or write one in the field above.', '2: Height: there is nothing, and no wall before it has one; it takes a length, or write one in the field above.']);
  });

  test('and an opening that no longer fits is named at the wall it stands on', () => {
    expect(troublesOf('12 ft\n10 ft\n12 ft\n4 ft', houseWith(FOUR), { isReplacing: true })).toEqual([`4: Width is 3 ft: the window "window" would end at 5', past the end of wall D at 4 ft; from 2 ft it takes at most 2'.`]);
  });

  test('of more walls than a room takes', () => {
    const many = houseWith(Array.from({ length: 150 }, (_, index) => ({ id: `w${index}`, length: '1 ft', height: '8 ft' })));
    expect(troublesOf('1 ft\t\t8 ft\n'.repeat(51), many)).toEqual(['would be 201; a room takes 200 walls']);
  });

  test('and what the room has against it is said of the room', () => {
    const house = houseWith(FOUR, { rails: [{ id: 'picture', at: '7 ft', width: '2 in' }] });
    expect(troublesOf('length\theight\n12 ft\t7 ft', house, { isReplacing: true })).toEqual([`is 7 ft: the rail "picture" would stand above wall A, which is 7' high; leave that wall out of its walls, or set it lower`]);
  });

  test('and bare numbers between commas are asked about', () => {
    const metric = houseWith([], {}, 'metric');
    expect(troublesOf('3,76\n4,20', metric)).toEqual(['Line 1: ‘3,76’ can be read in two ways, as decimals and as cells; keep the cells apart by tabs or semicolons, or put headings above them']);
    expect(short(wallsOf('3,76;in\n4,20;in', metric))).toEqual([['A', '3,76 m', 'inside', "8'"], ['B', '4,20 m', 'inside', "8'"]]);
    expect(short(wallsOf('length,corner\n3,76', metric))).toEqual([['A', '3 m', '76', "8'"]]);
  });
});

test('each cell is shown as it would be taken, and as it was typed where it is wrong', () => {
  const house = houseWith(FOUR);
  const { rows } = readWallTable('12 4\t\n9\tsideways', house, house.rooms[0]!, { isReplacing: true, height: null });
  expect(rows).toEqual([
    { line: 1, cells: { wall: 'A', length: `12' 4"`, corner: 'inside', height: '8 ft' }, troubles: [] },
    { line: 2, cells: { wall: 'B', length: '9"', corner: 'sideways', height: '8 ft' }, troubles: [{ column: 'corner' satisfies WallColumn, words: expect.stringMatching(/^Corner: ‘sideways’ is no corner/) as string }] },
  ]);
});

test('how ends and turns are typed', () => {
  expect(readEndsTyped('8 ft to 9 6', 'imperial')).toEqual({ ok: true, value: ['8 ft', `9' 6"`] });
  expect([readTurnTyped('Out'), readTurnTyped('92,5°'), readTurnTyped('round')]).toEqual(['outside', '92.5', null]);
  expect([turnText('outside'), turnText('92.5')]).toEqual(['outside', '92.5']);
  expect(endsText(["8'", "9'"])).toBe("8' to 9'");
  expect(splitEnds("8' to 9'")).toEqual(["8'", "9'"]);
});

test('whatever is pasted is answered', () => {
  const pieces = fc.array(fc.oneof(fc.constantFrom('"', ',', '\t', ';', '\n', '\r\n', 'Wall', 'Length (cm)', 'Corner', 'height', 'A', '9 ft', '12 4', 'in', ' to ', '8', '=', "'"), fc.string({ unit: 'binary', maxLength: 3 })), { maxLength: 40 }).map((all) => all.join(''));
  fc.assert(
    fc.property(pieces, fc.boolean(), (text, isReplacing) => {
      const house = houseWith(FOUR);
      const { edit, faults, rows } = readWallTable(text, house, house.rooms[0]!, { isReplacing, height: null });
      const said = [...faults.map(({ message }) => message), ...rows.flatMap(({ troubles }) => troubles.map(({ words }) => words))];
      expect(said.length > 0).toBe(edit === null);
      if (edit) expect(applyEdit(house, edit).ok).toBe(true);
    }),
    { numRuns: 1000 },
  );
});
