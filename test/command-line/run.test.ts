import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runCommandLine } from '../../src-main/command-line/run.ts';
import { exampleDocument, type Loose } from '../builders.ts';

let folder: string;
const at = (name: string) => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-command-'));
});

afterEach(() => rmSync(folder, { recursive: true }));

function written(name: string, change: (document: Loose) => void = () => {}): string {
  const document = exampleDocument();
  change(document);
  writeFileSync(at(name), JSON.stringify(document));
  return at(name);
}

async function planOf(file: string): Promise<Loose> {
  const { status, output } = await runCommandLine(['plan', file, '--json']);
  return { status, ...JSON.parse(output) };
}

describe('plan', () => {
  test("of the exchange document's example prints its stated figures", async () => {
    const plan = await planOf(written('a.json'));
    expect(plan.status).toBe(0);
    expect(plan.rooms[0].bands[0]).toMatchObject({ id: 'main', covering: 'fern', strips: 27, pieces: 27, start: { wall: 'A', at: '0 in' }, kill: { wall: 'A', at: '0 in' }, mismatch: '7 3/8 in', slivers: 0, rollsAlone: 9 });
    expect(plan.order[0]).toEqual({ covering: 'fern', patternNumber: 'K-2041', run: null, rooms: ['bed1'], rollsNeeded: 9, provenMinimum: true, lowerBound: 9, rollsByRoom: 9, spare: 1, inHand: 0, toBuy: 10, packs: [{ rolls: 2, count: 5 }], price: '420.00' });
    expect(plan.cuts[0].rolls[0]).toMatchObject({ number: 1, pieces: [{ room: 'bed1', band: 'main', piece: 'A1', from: '0 in', length: `8' 4"` }, {}, {}] });
    expect(plan.cuts[0].rolls.flatMap(({ pieces }: Loose) => pieces)).toHaveLength(27);
  });

  test('of a house file is the plan of the document that it was made from', async () => {
    const document = written('a.json');
    expect(await runCommandLine(['new', at('a.struckline'), '--from', document])).toEqual({ status: 0, output: '', errors: '' });
    expect(await planOf(at('a.struckline'))).toEqual(await planOf(document));
  });

  test('in words names rooms and order', async () => {
    const { output } = await runCommandLine(['plan', written('a.json')]);
    expect(output).toContain('K-2041: 27 strips, 27 pieces, 9 rolls alone, from wall A at 0 in, 7 3/8 in mismatch at the kill point');
    expect(output).toContain('K-2041, run not known yet: buy 10 rolls (= 20 singles) as 5 × 2, 420.00 USD');
    expect(output).not.toContain('not in the plan');
  });

  test('that cannot be met is printed all the same, with status 3', async () => {
    const long = written('long.json', (document) => (document.coverings[0].rollLength = '9 ft'));
    const plan = await planOf(long);
    expect(plan.status).toBe(3);
    expect(plan.problems[0].message).toMatch(/Piece A1 in Front bedroom is 8' 4" long; a roll of K-2041 surely gives 7' 3"/);
    const short = written('short.json', (document) => (document.offers = [{ covering: 'fern', run: '2214', rolls: 8 }]));
    const result = await runCommandLine(['plan', short, '--json']);
    expect(result.status).toBe(3);
    expect(result.errors).toMatch(/^struckline: No run of K-2041 can hang Front bedroom: 9 rolls of one run wanted; as it is sold, run 2214 has 8/);
    expect(JSON.parse(result.output).order[0]).toMatchObject({ run: null, rooms: ['bed1'], shortfall: 9 });
  });
});

describe('bad input exits with 1, says what and where, and changes nothing:', () => {
  const cases: readonly (readonly [string, (document: Loose) => void, string])[] = [
    ['a missing field', (d) => delete d.rooms[0].walls[0].length, 'struckline: rooms[0].walls[0].length is missing; it takes a length with its unit'],
    ['a negative length', (d) => (d.rooms[0].walls[0].length = '-3 ft'), 'struckline: rooms[0].walls[0].length is -3 ft; it takes a length above 0'],
    ["an opening past the wall's end", (d) => (d.rooms[0].walls[0].openings[0].from = '11 ft'), `struckline: rooms[0].walls[0].openings[0].width is 2' 8": the door "door" would end at 13' 8"`],
    ['an unknown covering', (d) => (d.rooms[0].bands[0].covering = 'moss'), 'struckline: rooms[0].bands[0].covering is "moss", which is not a covering of this house; its coverings are fern'],
    ['an unknown key', (d) => (d.rooms[0].colour = 'red'), 'struckline: rooms[0].colour is not a key of a room; its keys are id, name'],
  ];

  test.each(cases)('%s', async (_what, change, words) => {
    const bad = written('bad.json', change);
    await runCommandLine(['new', at('a.struckline'), '--from', written('a.json')]);
    const before = readFileSync(at('a.struckline'));
    for (const command of [['plan', bad], ['order', bad], ['check', bad], ['import', at('a.struckline'), bad], ['new', at('b.struckline'), '--from', bad]]) {
      const { status, output, errors } = await runCommandLine(command);
      expect(status).toBe(1);
      expect(output).toBe('');
      expect(errors).toContain(words);
    }
    expect(readFileSync(at('a.struckline'))).toEqual(before);
    expect(readdirSync(folder).toSorted()).toEqual(['a.json', 'a.struckline', 'bad.json']);
  });

  test.each([
    ['10 MB of noise', Buffer.from(Uint8Array.from({ length: 10_000_000 }, (_, index) => (index * 2_654_435_761) >>> 24)), /not text in UTF-8; a house document is JSON text/],
    ['22 MB of letters', Buffer.alloc(22_000_000, 'x'), /larger than 21 million characters/],
    ['100 MB', Buffer.alloc(100_000_000), /far larger than a house document/],
    ['a picture', Buffer.from('\u0089PNG\r\n\u001a\n', 'latin1'), /not text in UTF-8/],
    ['nothing', Buffer.alloc(0), /is not JSON text; a house document is JSON that begins with/],
  ])('%s', async (_what, bytes, words) => {
    writeFileSync(at('noise.json'), bytes);
    const { status, output, errors } = await runCommandLine(['plan', at('noise.json')]);
    expect([status, output]).toEqual([1, '']);
    expect(errors).toMatch(words);
    writeFileSync(at('noise.struckline'), bytes);
    expect((await runCommandLine(['plan', at('noise.struckline')])).errors).toMatch(/is not a house file|is empty/);
  });

  test('a file that is not there, a folder, a wrong ending', async () => {
    expect(await runCommandLine(['plan', at('none.json')])).toMatchObject({ status: 1, errors: expect.stringContaining('none.json') as string });
    expect(await runCommandLine(['plan', folder])).toMatchObject({ status: 1 });
    expect(await runCommandLine(['new', at('house.txt')])).toMatchObject({ status: 1, errors: expect.stringContaining('it takes a name that ends in .struckline') as string });
  });

  test('a house file that is there already is not made again', async () => {
    await runCommandLine(['new', at('a.struckline')]);
    const before = readFileSync(at('a.struckline'));
    expect(await runCommandLine(['new', at('a.struckline')])).toMatchObject({ status: 1, errors: expect.stringContaining('is there already') as string });
    expect(readFileSync(at('a.struckline'))).toEqual(before);
  });

  test.each([[[]], [['fly']], [['plan']], [['plan', 'a', 'b']], [['plan', 'a', '--csv', 'x']], [['schema', 'a']], [['plan', 'a', '--fast']]])('the words %j', async (words) => {
    const { status, output, errors } = await runCommandLine(words);
    expect([status, output]).toEqual([1, '']);
    expect(errors).toContain('struckline plan FILE');
  });
});

test('export gives the document that import takes', async () => {
  await runCommandLine(['new', at('a.struckline'), '--from', written('a.json')]);
  const exported = await runCommandLine(['export', at('a.struckline')]);
  writeFileSync(at('b.json'), exported.output);
  await runCommandLine(['new', at('b.struckline')]);
  expect(await runCommandLine(['import', at('b.struckline'), at('b.json')])).toEqual({ status: 0, output: '', errors: '' });
  expect(await runCommandLine(['export', at('b.struckline')])).toEqual(exported);
});

test('a file of an older form is read as it is, and gets the new form once it is written into', async () => {
  const path = join(folder, 'Old.struckline');
  const old = readFileSync(join(import.meta.dirname, '..', 'store', 'frozen', 'version-1.struckline'));
  writeFileSync(path, old);
  const read = await Promise.all([['plan', path], ['export', path], ['rooms', path], ['check', path]].map((words) => runCommandLine(words)));
  expect(read.map(({ output }) => output).join('')).toContain('Frozen house');
  expect(readFileSync(path).equals(old)).toBe(true);
  expect(readdirSync(folder)).toEqual(['Old.struckline']);
  const document = join(folder, 'house.json');
  writeFileSync(document, JSON.stringify(exampleDocument()));
  expect(await runCommandLine(['import', path, document])).toEqual({ status: 0, output: '', errors: '' });
  expect(readdirSync(folder).sort()).toEqual(['Old.struckline', 'Struckline back-ups', 'house.json']);
  expect((await runCommandLine(['export', path])).output).toContain('7 Alder Court');
});

test('schema prints a JSON schema, help the commands', async () => {
  expect(JSON.parse((await runCommandLine(['schema'])).output)).toMatchObject({ type: 'object', required: ['format', 'version', 'name'] });
  expect((await runCommandLine(['--help'])).output).toContain('struckline import FILE house.json');
});

test('check says that there is nothing to look at, or what', async () => {
  const plain = written('plain.json', (document) => {
    delete document.rooms[0].ceiling;
    document.rooms[0].bands.pop();
    document.coverings[0].material = 'non-woven';
  });
  expect(await runCommandLine(['check', plain])).toEqual({ status: 0, output: 'The facts are good and there is nothing to look at.\n', errors: '' });
  const gaping = written('gaping.json', (document) => (document.rooms[0].walls[3].length = '9 ft'));
  expect((await runCommandLine(['check', gaping])).output).toContain(`Look: The walls of Front bedroom miss each other by 1' 2"`);
});

describe('the rooms of a house', () => {
  const TABLE = 'Room,What,Wall,Length,Height,From left,Width,Sill\nHall,,A,12 4,8 ft\nHall,window,A,,4 ft,1 ft,3 ft,3 ft\n';

  test('are written as CSV and added to another', async () => {
    const rooms = (await runCommandLine(['rooms', written('a.json')])).output;
    expect(await runCommandLine(['rooms', at('a.json'), '--csv', at('rooms.csv')])).toEqual({ status: 0, output: `The rooms were written to ${at('rooms.csv')}.\n`, errors: '' });
    expect(readFileSync(at('rooms.csv'), 'utf8')).toBe(rooms);
    await runCommandLine(['new', at('b.struckline')]);
    expect(await runCommandLine(['add-rooms', at('b.struckline'), at('rooms.csv')])).toEqual({ status: 0, output: '', errors: '' });
    expect((await runCommandLine(['rooms', at('b.struckline')])).output).toBe(rooms);
    writeFileSync(at('more.csv'), TABLE);
    await runCommandLine(['add-rooms', at('b.struckline'), at('more.csv')]);
    expect((await runCommandLine(['rooms', at('b.struckline')])).output).toBe(`${rooms},Hall,,room,,,,,,,,,,,,,,\r\n,Hall,A,wall,,"12' 4""",inside,8 ft,0 in,,,,,,,,,\r\n,Hall,A,window,window,,,4 ft,,,,,1 ft,3 ft,3 ft,,,\r\n`);
  });

  test.each([
    ['rows that are wrong', TABLE.replace('12 4', 'twelve'), 'struckline: Line 2: Length: ‘twelve’ is not a unit of length; the units are in, ft, yd, mm, cm and m.'],
    ['no table', '', 'struckline: There is no table here; it takes a row of headings'],
    ['letters of another encoding', Buffer.from('Room\nK\u00fcche\n', 'latin1'), 'is not text in UTF-8; a table of rooms is CSV text.'],
    ['far too much', Buffer.alloc(9_000_000, 'x'), 'far larger than a table of rooms'],
  ])('%s are refused, and nothing is changed', async (_what, text, words) => {
    await runCommandLine(['new', at('a.struckline'), '--from', written('a.json')]);
    const before = readFileSync(at('a.struckline'));
    writeFileSync(at('rooms.csv'), text);
    expect(await runCommandLine(['add-rooms', at('a.struckline'), at('rooms.csv')])).toEqual({ status: 1, output: '', errors: expect.stringContaining(words) as string });
    expect(readFileSync(at('a.struckline'))).toEqual(before);
  });

  test('are added to a house file, and written to a new file only', async () => {
    writeFileSync(at('rooms.csv'), TABLE);
    expect(await runCommandLine(['add-rooms', written('a.json'), at('rooms.csv')])).toMatchObject({ status: 1, errors: expect.stringContaining('is not a house file') as string });
    expect(await runCommandLine(['rooms', at('a.json'), '--csv', at('rooms.csv')])).toMatchObject({ status: 1, errors: expect.stringContaining('The rooms were not written') as string });
    expect(readFileSync(at('rooms.csv'), 'utf8')).toBe(TABLE);
  });
});

describe('order', () => {
  test('as CSV keeps to RFC 4180 (from memory), and no cell runs as a formula', async () => {
    const file = written('a.json', (document) => {
      document.coverings[0].patternNumber = '=1+1';
      document.coverings[0].name = 'Fern, "walk"';
    });
    const { output } = await runCommandLine(['order', file, '--csv', '-']);
    const [head, first, second, end] = output.split('\r\n');
    expect(head).toMatch(/^Pattern number,Run number,Name/);
    expect(first).toMatch(/^'=1\+1,,"Fern, ""walk""",north,Front bedroom,9,1,0,0,10,5 x 2,420\.00,USD,0,$/);
    expect(second).toMatch(/^K-2099,,,,Front bedroom,4,1,0,0,5,5 x 1,90\.00,USD,0,$/);
    expect(end).toBe('');
  });

  test('is written to a new file only', async () => {
    const file = written('a.json');
    expect(await runCommandLine(['order', file, '--csv', at('order.csv')])).toMatchObject({ status: 0 });
    const before = readFileSync(at('order.csv'), 'utf8');
    expect(before).toContain('K-2041');
    expect(await runCommandLine(['order', file, '--csv', at('order.csv')])).toMatchObject({ status: 1, errors: expect.stringContaining('The order was not written') as string });
    expect(readFileSync(at('order.csv'), 'utf8')).toBe(before);
  });
});

describe('the calendar of a house', () => {
  test('is printed or written to a file that is not there yet, and is refused where no day is known', async () => {
    const named = (name: string, work: object | undefined) => written(name, (document) => (document.work = work));
    expect(await runCommandLine(['calendar', named('no-days.json', undefined)])).toEqual({ status: 1, output: '', errors: expect.stringMatching(/^struckline: There is no day to write yet/) });
    const file = named('days.json', { starts: '2026-03-02' });
    const [, printed] = [await runCommandLine(['calendar', file, '--ics', at('days.ics')]), await runCommandLine(['calendar', file])];
    expect(printed.output).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(readFileSync(at('days.ics'), 'utf8')).toBe(printed.output);
    expect(await runCommandLine(['calendar', file, '--ics', at('days.ics')])).toMatchObject({ status: 1, errors: expect.stringMatching(/The paper was not written/) });
  });
});
