import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { writeDocument } from '../../shared-core/house/index.ts';
import { HouseStore, SCHEMA_VERSION } from '../../src-main/store/index.ts';
import { exampleDocument, exampleHouse, houseOf } from '../builders.ts';
import { houseFileForEach } from './house-file.ts';

const FERN = 'data:image/jpeg;base64,/9j/4AAQ';
const IVY = 'data:image/png;base64,iVBORw0KGgo=';

const file = houseFileForEach();
const { kept } = file;

async function picturesOf(from: HouseStore) {
  const read = await from.read();
  return read.ok ? read.value.house.pictures : [];
}

test('pictures are kept over closing and opening, and undone and redone by their names', async () => {
  const first = await kept(HouseStore.create(file.path, houseOf({ ...exampleDocument(), pictures: [{ covering: 'ivy', image: IVY }] })));
  await first.edit({ kind: 'set-picture', covering: 'fern', image: FERN }, 0);
  await first.edit({ kind: 'set-picture', covering: 'ivy', image: null }, 1);
  await first.close();

  const again = await kept(HouseStore.open(file.path));
  expect(await picturesOf(again)).toEqual([{ covering: 'fern', image: FERN }]);
  expect(await again.undo(2)).toMatchObject({ ok: true, value: { undo: 'hang the picture of K-2041', redo: 'take away the picture of K-2099' } });
  expect(await picturesOf(again)).toEqual([{ covering: 'ivy', image: IVY }, { covering: 'fern', image: FERN }]);
  expect(await again.undo(3)).toMatchObject({ ok: true });
  expect(await picturesOf(again)).toEqual([{ covering: 'ivy', image: IVY }]);
  expect(await again.redo(4)).toMatchObject({ ok: true });
  expect(await picturesOf(again)).toEqual([{ covering: 'ivy', image: IVY }, { covering: 'fern', image: FERN }]);
});

test('each is a row of its own, by its covering', async () => {
  await (await kept(HouseStore.create(file.path, houseOf({ ...exampleDocument(), pictures: [{ covering: 'ivy', image: IVY }] })))).close();
  const database = new Database(file.path, { readonly: true });
  expect(database.prepare('select * from picture').all()).toEqual([{ id: 'ivy', position: 0, facts: JSON.stringify({ covering: 'ivy', image: IVY }) }]);
  expect(String(database.prepare('select facts from house').pluck().get())).not.toContain('picture');
  database.close();
});

test('a house file from before there were pictures is brought forward with all that is in it', async () => {
  await (await kept(HouseStore.create(file.path, exampleHouse()))).close();
  const database = new Database(file.path);
  for (const later of ['picture', 'supplier', 'placed_order', 'sent_back', 'leftover', 'matching', 'run_choice', 'photo', 'photo_image', 'task_choice', 'own_material', 'expense']) database.exec(`drop table ${later}`);
  database.exec('alter table house drop column changed');
  database.pragma('user_version = 1');
  database.close();

  const brought = await kept(HouseStore.open(file.path));
  const read = await brought.read();
  expect(read.ok && writeDocument(read.value.house)).toBe(writeDocument(exampleHouse()));
  expect(await brought.edit({ kind: 'set-picture', covering: 'fern', image: FERN }, 0)).toMatchObject({ ok: true, value: { house: { pictures: [{ covering: 'fern' }] } } });
  await brought.close();
  const after = new Database(file.path, { readonly: true });
  expect(after.pragma('user_version', { simple: true })).toBe(SCHEMA_VERSION);
  after.close();
});
