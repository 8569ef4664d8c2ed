import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { type Edit, encodeHouse, writeDocument } from '../../shared-core/house/index.ts';
import { HouseStore } from '../../src-main/store/index.ts';
import { exampleDocument, houseOf, type Loose } from '../builders.ts';
import { houseFileForEach } from './house-file.ts';

const FIRST = `data:image/jpeg;base64,/9j/${'A'.repeat(50_000)}`;
const SECOND = `data:image/jpeg;base64,/9j/${'B'.repeat(50_000)}`;
const kept = (image: string) => `kept:${createHash('sha256').update(image).digest('hex')}`;
const photo = (id: string, image: string, facts: Loose = {}): Loose => ({ id, room: 'bed1', wall: 'B', image, ...facts });
const add = (...photos: readonly Loose[]): Edit => ({ kind: 'add-photos', photos: [...photos] });

const file = houseFileForEach();

async function created(...photos: readonly Loose[]): Promise<HouseStore> {
  return file.kept(HouseStore.create(file.path, houseOf({ ...exampleDocument(), photos })));
}
async function photosOf(store: HouseStore) {
  const read = await store.read();
  return read.ok ? read.value.house.photos : [];
}
async function changed(change: ReturnType<HouseStore['edit']>): Promise<number> {
  const outcome = await change;
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value.revision;
}
function look<Value>(query: string): Value[] {
  const database = new Database(file.path, { readonly: true });
  const rows = database.prepare(query).pluck().all() as Value[];
  database.close();
  return rows;
}

test('photos are put aside, each image once, and are whole again where the house is taken elsewhere', async () => {
  const store = await created(photo('photo', FIRST, { caption: 'Damp' }));
  await changed(store.edit(add(photo('photo2', SECOND), photo('photo3', FIRST, { wall: 'C' })), 0));
  expect(await photosOf(store)).toEqual([photo('photo', kept(FIRST), { caption: 'Damp' }), photo('photo2', kept(SECOND)), photo('photo3', kept(FIRST), { wall: 'C' })]);
  expect(look('select image from photo_image order by image')).toEqual([FIRST, SECOND]);
  expect(await store.readPhoto(kept(SECOND))).toBe(SECOND);
  expect(await store.readPhoto(kept('other'))).toBeNull();
  const whole = await store.readWhole();
  expect(whole.ok && whole.value.house.photos.map(({ image }) => image)).toEqual([FIRST, SECOND, FIRST]);
  await store.close();

  const again = await file.kept(HouseStore.open(file.path));
  const opened = await again.readWhole();
  expect(opened.ok && whole.ok && writeDocument(opened.value.house)).toBe(whole.ok && writeDocument(whole.value.house));
});

test('neither the facts nor what can be undone holds an image, and an edit of another thing writes no photo', async () => {
  const store = await created(photo('photo', FIRST));
  let revision = await changed(store.edit(add(photo('photo2', SECOND)), 0));
  revision = await changed(store.edit({ kind: 'change-photo', photo: 'photo', facts: { caption: 'Damp' } }, revision));
  revision = await changed(store.edit({ kind: 'change-wall', room: 'bed1', wall: 'B', facts: { note: 'damp' } }, revision));
  await changed(store.edit({ kind: 'remove-photo', photo: 'photo' }, revision));
  const changes = look<string>('select changes from edit order by number').map((text) => JSON.parse(text) as { readonly table: string }[]);
  expect(changes.map((rows) => rows.map(({ table }) => table))).toEqual([['photo'], ['photo'], ['room'], ['photo', 'photo']]);
  expect(Math.max(...look<string>('select changes from edit').map((text) => text.length))).toBeLessThan(10_000);
  expect(look<string>('select facts from photo').join('')).not.toContain('data:');
});

test('a wall, a room and a house that go take their photos along, and bring them back', async () => {
  const store = await created(photo('photo', FIRST), photo('photo2', SECOND, { wall: 'C' }));
  let revision = 0;
  const before = await photosOf(store);
  const other = encodeHouse(houseOf({ ...exampleDocument(), name: 'Other' }));
  for (const [edit, left] of [
    [{ kind: 'remove-wall', room: 'bed1', wall: 'C' }, ['photo']],
    [{ kind: 'remove-room', room: 'bed1' }, []],
    [{ kind: 'remove-photo', photo: 'photo' }, ['photo2']],
    [{ kind: 'replace-house', house: other }, []],
  ] as [Edit, string[]][]) {
    revision = await changed(store.edit(edit, revision));
    expect((await photosOf(store)).map(({ id }) => id)).toEqual(left);
    revision = await changed(store.undo(revision));
    expect(await photosOf(store)).toEqual(before);
    expect((await store.readWhole()).ok).toBe(true);
  }
});

test('an image goes when nothing in the house points at it and no edit can bring it back', async () => {
  const store = await created(photo('photo', FIRST));
  let revision = await changed(store.edit({ kind: 'remove-photo', photo: 'photo' }, 0));
  revision = await changed(store.edit(add(photo('photo', SECOND)), revision));
  revision = await changed(store.undo(revision));
  expect(look('select count(*) from photo_image')).toEqual([2]);
  await changed(store.edit({ kind: 'change-house', facts: { name: 'Elm' } }, revision));
  expect(look('select image from photo_image')).toEqual([FIRST]);
});

test('a photo that the file does not keep is refused, and nothing is changed', async () => {
  const store = await created(photo('photo', FIRST));
  expect(await store.edit(add(photo('photo2', kept(FIRST)), photo('photo3', kept(SECOND))), 0)).toMatchObject({ ok: false, failure: { code: 'refused', faults: [{ path: 'photos[2].image' }] } });
  expect(await photosOf(store)).toHaveLength(1);
  await changed(store.edit(add(photo('photo2', kept(FIRST))), 0));
  expect(await photosOf(store)).toHaveLength(2);
  await expect(HouseStore.create(`${file.path}.struckline`, houseOf({ ...exampleDocument(), photos: [photo('photo', kept(SECOND))] }))).resolves.toMatchObject({ ok: false });
});
