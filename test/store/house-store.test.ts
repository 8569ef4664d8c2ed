import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Edit, writeDocument } from '../../shared-core/house/index.ts';
import { APPLICATION_ID, HouseStore, SCHEMA_VERSION } from '../../src-main/store/index.ts';
import { exampleDocument, exampleHouse } from '../builders.ts';

let folder: string;
let path: string;
const open: HouseStore[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-store-'));
  path = join(folder, 'Alder.struckline');
});

afterEach(async () => {
  await Promise.all(open.splice(0).map((store) => store.close()));
  rmSync(folder, { recursive: true });
});

async function created(): Promise<HouseStore> {
  return kept(await HouseStore.create(path, exampleHouse()));
}

async function opened(at = path): Promise<HouseStore> {
  return kept(await HouseStore.open(at));
}

function kept(outcome: Awaited<ReturnType<typeof HouseStore.open>>): HouseStore {
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join(' '));
  open.push(outcome.value);
  return outcome.value;
}

async function readOf(store: HouseStore) {
  const read = await store.read();
  if (!read.ok) throw new Error(read.faults.map(({ message }) => message).join(' '));
  return read.value;
}

async function messageOfOpening(at: string): Promise<string> {
  const outcome = await HouseStore.open(at);
  if (outcome.ok) {
    open.push(outcome.value);
    return 'it opened';
  }
  return outcome.faults.map(({ message }) => message).join(' ');
}

const lengthOfB = (length: string): Edit => ({ kind: 'change-wall', room: 'bed1', wall: 'B', facts: { length } });

describe('a house file', () => {
  test('keeps a house, what was typed and nothing else over closing and opening', async () => {
    const store = await created();
    await store.edit(lengthOfB('3,05 m'), 0);
    await store.close();
    expect(readdirSync(folder)).toEqual(['Alder.struckline']);
    const { house, revision } = await readOf(await opened());
    expect(house.rooms[0]!.walls[1]!.length.typed).toBe('3,05 m');
    expect(revision).toBe(1);
    expect(writeDocument({ ...house, rooms: [] })).toBe(writeDocument({ ...exampleHouse(), rooms: [] }));
  });

  test('undoes and redoes over closing and opening, each by its name', async () => {
    const store = await created();
    await store.edit(lengthOfB('10 ft'), 0);
    await store.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 1);
    await store.close();

    const again = await opened();
    expect(await readOf(again)).toMatchObject({ undo: 'change name of the house', redo: null });
    expect(await again.undo(2)).toMatchObject({ ok: true, value: { revision: 3, undo: 'change length of wall B in Front bedroom', redo: 'change name of the house' } });
    expect(await again.undo(3)).toMatchObject({ ok: true, value: { revision: 4, undo: null } });
    const { house } = await readOf(again);
    expect(writeDocument(house)).toBe(writeDocument(exampleHouse()));
    await again.close();

    const last = await opened();
    expect(await last.redo(4)).toMatchObject({ ok: true, value: { house: { rooms: [{ walls: [{}, { length: { typed: '10 ft' } }, {}, {}] }] } } });
    expect(await last.redo(5)).toMatchObject({ ok: true, value: { house: { name: 'Elm' }, redo: null } });
    expect(await last.redo(6)).toMatchObject({ ok: false, failure: { code: 'refused', message: 'There is nothing to redo.' } });
  });

  test('forgets what was undone once something else is done', async () => {
    const store = await created();
    await store.edit(lengthOfB('10 ft'), 0);
    await store.undo(1);
    await store.edit(lengthOfB('9 ft'), 2);
    expect(await readOf(store)).toMatchObject({ redo: null, undo: 'change length of wall B in Front bedroom' });
    expect(await store.redo(3)).toMatchObject({ ok: false });
    expect((await readOf(store)).house.rooms[0]!.walls[1]!.length.typed).toBe('9 ft');
  });

  test('keeps the order of rooms and coverings through removal and undo', async () => {
    const store = await created();
    await store.edit({ kind: 'add-room', room: { id: 'attic', name: 'Attic' } }, 0);
    await store.edit({ kind: 'remove-covering', covering: 'lake' }, 1);
    await store.edit({ kind: 'remove-room', room: 'attic' }, 2);
    await store.undo(3);
    await store.undo(4);
    const { house } = await readOf(store);
    expect(house.coverings.map(({ id }) => id)).toEqual(['fern', 'ivy', 'line', 'lake', 'chalk']);
    expect(house.rooms.map(({ id }) => id)).toEqual(['bed1', 'attic']);
  });

  test('takes a whole other house in one edit that can be undone', async () => {
    const store = await created();
    await store.edit({ kind: 'replace-house', house: { format: 'struckline-house', version: 1, name: 'Other', stock: [], rooms: [] } }, 0);
    expect((await readOf(store)).house).toMatchObject({ name: 'Other', coverings: [], rooms: [] });
    await store.undo(1);
    expect(writeDocument((await readOf(store)).house)).toBe(writeDocument(exampleHouse()));
  });

  test('refuses an edit that contradicts its facts and stays as it was', async () => {
    const store = await created();
    const before = await readOf(store);
    const refused = await store.edit({ kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: '3 ft' } }, 0);
    expect(refused).toMatchObject({ ok: false, failure: { code: 'refused', faults: [{ path: 'rooms[0].walls[0].openings[0].width' }] } });
    expect(await readOf(store)).toEqual(before);
  });

  test('refuses to undo what would leave facts that contradict one another, with their places', async () => {
    const store = await created();
    await store.edit(lengthOfB('10 ft'), 0);
    await store.close();
    const before = exampleDocument().rooms[0];
    before.walls[0].length = '3 ft';
    const database = new Database(path);
    database.prepare('update edit set changes = ?').run(JSON.stringify([{ table: 'room', id: 'bed1', before: { position: 0, facts: JSON.stringify(before) }, after: null }]));
    database.close();
    const again = await opened();
    const facts = await readOf(again);
    expect(await again.undo(1)).toMatchObject({ ok: false, failure: { code: 'refused', message: 'This change would leave facts that contradict one another; nothing was changed.', faults: [{ path: 'rooms[0].walls[0].openings[0].width' }] } });
    expect(await readOf(again)).toEqual(facts);
  });

  test('open twice, lets the slower one know that it was changed', async () => {
    const one = await created();
    const other = await opened();
    expect(await one.edit(lengthOfB('10 ft'), 0)).toMatchObject({ ok: true });
    expect(await other.edit(lengthOfB('9 ft'), 0)).toEqual({ ok: false, failure: { code: 'changed-elsewhere' } });
    expect(await other.undo(0)).toEqual({ ok: false, failure: { code: 'changed-elsewhere' } });
    expect((await readOf(other)).house.rooms[0]!.walls[1]!.length.typed).toBe('10 ft');
    expect(await other.edit(lengthOfB('9 ft'), 1)).toMatchObject({ ok: true, value: { revision: 2 } });
  });

  test('is never made in place of one that is there, and leaves no draft behind', async () => {
    await created();
    const bytes = readFileSync(path);
    const again = await HouseStore.create(path, exampleHouse());
    expect(again.ok ? '' : again.faults[0]!.message).toBe('Alder.struckline is there already; it was left as it is. Choose another name.');
    expect(readFileSync(path)).toEqual(bytes);
    expect(readdirSync(folder)).toEqual(['Alder.struckline']);
  });

  test('says what it is by its application id and schema version, in strict tables', async () => {
    await (await created()).close();
    const database = new Database(path, { readonly: true });
    expect(database.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(database.pragma('user_version', { simple: true })).toBe(SCHEMA_VERSION);
    const tables = database.pragma('table_list') as readonly { readonly name: string; readonly strict: number }[];
    expect(tables.filter(({ name }) => !name.startsWith('sqlite_')).every(({ strict }) => strict === 1)).toBe(true);
    database.close();
  });
});

describe('a file that is no house file is told by its own words and left as it is:', () => {
  const at = () => join(folder, 'x.struckline');

  test.each([
    ['empty', Buffer.alloc(0), /x\.struckline is empty; it holds no house\. Nothing was changed/],
    ['a picture', Buffer.from('\u0089PNG\r\n\u001a\n and more', 'latin1'), /is not a house file\. Nothing was changed/],
    ['noise', Buffer.from(Array.from({ length: 5_000 }, (_, index) => (index * 7919) % 256)), /is not a house file/],
    ['only a header', Buffer.from('SQLite format 3\u0000'), /can't be read|another program|not a house file/],
  ])('%s', async (_what, bytes, words) => {
    writeFileSync(at(), bytes);
    expect(await messageOfOpening(at())).toMatch(words);
    expect(readFileSync(at())).toEqual(bytes);
  });

  test('not there', async () => {
    expect(await messageOfOpening(at())).toBe('x.struckline is not there.');
    expect(readdirSync(folder)).toEqual([]);
  });

  test("another program's database", async () => {
    const database = new Database(at());
    database.exec('create table house (id integer)');
    database.close();
    const bytes = readFileSync(at());
    expect(await messageOfOpening(at())).toBe('x.struckline is a database of another program, not a house file. Nothing was changed.');
    expect(readFileSync(at())).toEqual(bytes);
  });

  test.each([
    ['a view', 'create view rooms as select * from room'],
    ['a trigger', "create trigger seize after update on house begin delete from room; end"],
    ['a table', 'create table more (id integer)'],
    ['a table that is not as it was', 'drop table stock; create table stock (id text)'],
  ])('with %s that another program put into it', async (_what, statement) => {
    await (await created()).close();
    copyFileSync(path, at());
    const database = new Database(at());
    database.exec(statement);
    database.close();
    const bytes = readFileSync(at());
    expect(await messageOfOpening(at())).toMatch(/^x\.struckline is not as Struckline wrote it: another program has changed its form/);
    expect(readFileSync(at())).toEqual(bytes);
  });

  test('kept by a write-ahead log, which is more than one file', async () => {
    await (await created()).close();
    copyFileSync(path, at());
    const database = new Database(at());
    database.pragma('journal_mode = wal');
    database.close();
    const bytes = readFileSync(at());
    expect(await messageOfOpening(at())).toMatch(/another program has changed its form/);
    expect(readFileSync(at())).toEqual(bytes);
    expect(readdirSync(folder)).toEqual(['Alder.struckline', 'x.struckline']);
  });

  test('of a newer version', async () => {
    await (await created()).close();
    copyFileSync(path, at());
    const database = new Database(at());
    database.pragma(`user_version = ${SCHEMA_VERSION + 1}`);
    database.close();
    const bytes = readFileSync(at());
    expect(await messageOfOpening(at())).toContain(`written by a newer Struckline (file version ${SCHEMA_VERSION + 1}, this one reads up to ${SCHEMA_VERSION}). Nothing was changed; open it with the newer one`);
    expect(readFileSync(at())).toEqual(bytes);
  });

  test('cut off in the middle', async () => {
    await (await created()).close();
    copyFileSync(path, at());
    truncateSync(at(), 6_000);
    const bytes = readFileSync(at());
    expect(await messageOfOpening(at())).toBe('x.struckline is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.');
    expect(readFileSync(at())).toEqual(bytes);
  });

  test('with facts that contradict one another', async () => {
    await (await created()).close();
    const database = new Database(path);
    const facts = exampleDocument().rooms[0];
    facts.walls[0].length = '3 ft';
    database.prepare("update room set facts = ? where id = 'bed1'").run(JSON.stringify(facts));
    database.close();
    expect(await messageOfOpening(path)).toMatch(/would end at 4' 8", past the end of wall A/);
  });
});

describe('a file that somebody else sends is looked through', () => {
  test('and nothing is found in one of ours', async () => {
    const store = await created();
    await store.edit(lengthOfB('10 ft'), 0);
    expect(await store.findDamage()).toBeNull();
  });

  test('where only what can be undone is damaged the house is shown but not changed', async () => {
    const store = await created();
    const rooms = Array.from({ length: 40 }, (_, index) => ({ id: `r${index}`, name: `Room ${index}` }));
    await store.edit({ kind: 'replace-house', house: { format: 'struckline-house', version: 1, name: 'Other', rooms } }, 0);
    await store.close();
    const database = new Database(path);
    const [page] = database.prepare("select pageno from dbstat where name = 'edit' and pagetype = 'overflow'").pluck().all() as number[];
    database.close();
    const bytes = readFileSync(path);
    bytes.fill(0xff, (page! - 1) * 4096, page! * 4096);
    writeFileSync(path, bytes);
    const damaged = await opened();
    expect((await readOf(damaged)).house.name).toBe('Other');
    expect(await damaged.findDamage()).toMatch(/damaged in places that the house itself does not show/);
    expect(await damaged.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 1)).toEqual({ ok: false, failure: { code: 'look-only', message: damaged.lookOnly } });
    expect(damaged.lookOnly).toMatch(/damaged in places.*it can't be changed\. Restore a back-up/);
    expect(readFileSync(path)).toEqual(bytes);
  });
});
