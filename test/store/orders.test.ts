import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { type Edit, type House, writeDocument } from '../../shared-core/house/index.ts';
import { HouseStore, SCHEMA_VERSION } from '../../src-main/store/index.ts';
import { exampleDocument, houseOf, type Loose } from '../builders.ts';
import { houseFileForEach } from './house-file.ts';

/** The exchange example, and what an order's life records beside the offers and packages of older files. */
const OLDER = { stock: [{ covering: 'fern', run: '2207', rolls: 3 }], offers: [{ covering: 'fern', run: '2214', rolls: 8 }], deliveries: [{ covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 2, damaged: 1 }] };
const NEWER = {
  suppliers: [{ id: 'north', tax: { rate: '7.25' } }, { id: 'south' }],
  orders: [{ id: 'first', placed: '2026-03-02', lines: [{ covering: 'fern', run: '2214', rolls: 2, packs: [{ rolls: 2, count: 1 }], rooms: ['bed1'] }] }],
  returns: [{ covering: 'fern', run: '2214', rolls: 1, sent: '2026-03-09' }],
  leftovers: [{ covering: 'fern', run: '2214', length: "5' 5\"", count: 9, place: 'loft' }],
  matching: [{ rooms: ['bed1', 'hall'] }],
  runChoices: [{ covering: 'fern', room: 'bed1', run: '2214', hung: true }],
};
const TABLES_OF_ORDERS = ['supplier', 'placed_order', 'sent_back', 'leftover', 'matching', 'run_choice'];

const houseWith = (facts: Loose): House => houseOf({ ...exampleDocument(), rooms: [...exampleDocument().rooms, { id: 'hall', name: 'Hall' }], ...facts });

const file = houseFileForEach();
const { kept } = file;

async function houseIn(from: HouseStore): Promise<House> {
  const read = await from.read();
  if (!read.ok) throw new Error(read.faults.map(({ message }) => message).join(' '));
  return read.value.house;
}

async function done(change: ReturnType<HouseStore['edit']>): Promise<void> {
  expect(await change).toMatchObject({ ok: true });
}

const RECEIVED: Edit = { kind: 'set-deliveries', deliveries: [...OLDER.deliveries, { covering: 'fern', patternNumber: 'K-2041', run: '2214', rolls: 6, short: 1, received: '2026-03-05' }] };
const PLACED: Edit = { kind: 'place-order', order: { id: 'second', placed: '2026-03-12', lines: [{ covering: 'fern', run: '2214', rolls: 5 }, { covering: 'ivy', rolls: 4 }] } };

test('the life of an order is kept over closing and opening, each thing in its order', async () => {
  const house = houseWith({ ...OLDER, ...NEWER, tax: { rate: '5', included: true }, orderNote: 'Ring before noon' });
  await (await kept(HouseStore.create(file.path, house))).close();
  const database = new Database(file.path, { readonly: true });
  const ids = TABLES_OF_ORDERS.map((table) => database.prepare(`select id from ${table} order by position`).pluck().all());
  const [returned] = database.prepare('select facts from sent_back').pluck().all();
  database.close();
  expect(ids).toEqual([['north', 'south'], ['first'], ['0'], ['0'], ['0'], ['0']]);
  expect(JSON.parse(String(returned))).toEqual(NEWER.returns[0]);
  expect(writeDocument(await houseIn(await kept(HouseStore.open(file.path))))).toBe(writeDocument(house));
});

test('lists that were set one by one are kept over closing and opening', async () => {
  const first = await kept(HouseStore.create(file.path, houseWith({})));
  const edits: readonly Edit[] = [
    { kind: 'set-suppliers', suppliers: NEWER.suppliers },
    { kind: 'set-stock', stock: OLDER.stock },
    { kind: 'set-offers', offers: OLDER.offers },
    { kind: 'set-orders', orders: NEWER.orders },
    { kind: 'set-deliveries', deliveries: OLDER.deliveries },
    { kind: 'set-returns', returns: NEWER.returns },
    { kind: 'set-leftovers', leftovers: NEWER.leftovers },
    { kind: 'set-matching', matching: NEWER.matching },
    { kind: 'set-run-choices', runChoices: NEWER.runChoices },
  ];
  for (const [revision, edit] of edits.entries()) await done(first.edit(edit, revision));
  await first.close();
  const again = await kept(HouseStore.open(file.path));
  expect(writeDocument(await houseIn(again))).toBe(writeDocument(houseWith({ ...OLDER, ...NEWER })));
  for (let revision = edits.length; revision < 2 * edits.length; revision += 1) await done(again.undo(revision));
  expect(writeDocument(await houseIn(again))).toBe(writeDocument(houseWith({})));
});

test('packages that came and an order that was placed are undone and redone over closing and opening, offers and all', async () => {
  const before = houseWith({ ...OLDER, ...NEWER });
  const first = await kept(HouseStore.create(file.path, before));
  await done(first.edit(RECEIVED, 0));
  const received = writeDocument(await houseIn(first));
  await done(first.edit(PLACED, 1));
  const placed = await houseIn(first);
  expect([placed.offers, placed.orders.map(({ id }) => id)]).toEqual([[{ covering: 'fern', run: '2214', rolls: 3 }], ['first', 'second']]);
  await first.close();

  const again = await kept(HouseStore.open(file.path));
  expect(await again.undo(2)).toMatchObject({ ok: true, value: { undo: 'receive 6 of K-2041, run 2214', redo: 'place order second', house: { offers: [{ rolls: 8 }], orders: [{ id: 'first' }] } } });
  expect(writeDocument(await houseIn(again))).toBe(received);
  expect(await again.undo(3)).toMatchObject({ ok: true, value: { undo: null, redo: 'receive 6 of K-2041, run 2214' } });
  expect(writeDocument(await houseIn(again))).toBe(writeDocument(before));
  await again.close();

  const last = await kept(HouseStore.open(file.path));
  await done(last.redo(4));
  expect(writeDocument(await houseIn(last))).toBe(received);
  await done(last.redo(5));
  expect(writeDocument(await houseIn(last))).toBe(writeDocument(placed));
});

test('a room taken away comes back by undo with its ties and choices', async () => {
  const before = houseWith({ ...OLDER, ...NEWER });
  const first = await kept(HouseStore.create(file.path, before));
  await done(first.edit({ kind: 'remove-room', room: 'bed1' }, 0));
  expect(await houseIn(first)).toMatchObject({ matching: [], runChoices: [], orders: [{ lines: [{ rooms: ['bed1'] }] }] });
  await done(first.undo(1));
  expect(writeDocument(await houseIn(first))).toBe(writeDocument(before));
});

test('an edit of an order writes its own rows and those of the offers, and no other', async () => {
  const first = await kept(HouseStore.create(file.path, houseWith({ ...OLDER, ...NEWER })));
  await done(first.edit(PLACED, 0));
  await first.close();
  const database = new Database(file.path, { readonly: true });
  const changes = JSON.parse(String(database.prepare('select changes from edit').pluck().get())) as readonly { readonly table: string; readonly id: string }[];
  database.close();
  expect(changes.map(({ table, id }) => `${table} ${id}`).toSorted()).toEqual(['offer 0', 'placed_order second']);
});

test('a house file of version 2 is brought forward with all that is in it', async () => {
  const house = houseWith({ ...OLDER, pictures: [{ covering: 'ivy', image: 'data:image/png;base64,iVBORw0KGgo=' }] });
  const older = await kept(HouseStore.create(file.path, house));
  await done(older.edit({ kind: 'set-stock', stock: [] }, 0));
  await older.close();
  const database = new Database(file.path);
  for (const table of [...TABLES_OF_ORDERS, 'photo', 'photo_image', 'task_choice', 'own_material', 'expense']) database.exec(`drop table ${table}`);
  database.exec('alter table house drop column changed');
  database.pragma('user_version = 2');
  database.close();

  const brought = await kept(HouseStore.open(file.path));
  expect(await brought.read()).toMatchObject({ ok: true, value: { revision: 1, undo: 'change the rolls in hand', house: { stock: [], offers: OLDER.offers, deliveries: OLDER.deliveries, orders: [], suppliers: [], pictures: [{ covering: 'ivy' }] } } });
  await done(brought.undo(1));
  expect(writeDocument(await houseIn(brought))).toBe(writeDocument(house));
  await done(brought.edit(PLACED, 2));
  await brought.close();

  const after = new Database(file.path, { readonly: true });
  expect(after.pragma('user_version', { simple: true })).toBe(SCHEMA_VERSION);
  expect(after.prepare('select id from placed_order').pluck().all()).toEqual(['second']);
  const tables = after.pragma('table_list') as readonly { readonly name: string; readonly strict: number }[];
  expect(TABLES_OF_ORDERS.map((name) => tables.find((table) => table.name === name)?.strict)).toEqual(TABLES_OF_ORDERS.map(() => 1));
  after.close();
});
