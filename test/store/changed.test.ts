import Database from 'better-sqlite3';
import { beforeEach, expect, test } from 'vitest';
import type { Edit } from '../../shared-core/house/index.ts';
import { HouseStore } from '../../src-main/store/index.ts';
import { exampleHouse } from '../builders.ts';
import { houseFileForEach } from './house-file.ts';

const file = houseFileForEach();
let now: Date;
beforeEach(() => {
  now = at(0);
});

const at = (minute: number) => new Date(Date.UTC(2026, 10, 27, 12, minute));
const created = () => file.kept(HouseStore.create(file.path, exampleHouse(), () => now));
const RENAMED: Edit = { kind: 'change-house', facts: { name: 'Elm' } };
const REFUSED: Edit = { kind: 'change-wall', room: 'bed1', wall: 'A', facts: { length: '3 ft' } };

async function changedOf(store: HouseStore): Promise<string | null> {
  const read = await store.read();
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value.changed;
}

function write(statement: string, ...values: readonly unknown[]): void {
  const database = new Database(file.path);
  database.prepare(statement).run(...values);
  database.close();
}

test('a house was changed last when it was made, edited, undone or redone, by the clock of the store', async () => {
  const store = await created();
  expect(await changedOf(store)).toBe('2026-11-27T12:00:00.000Z');
  now = at(30);
  expect(await store.edit(RENAMED, 0)).toMatchObject({ ok: true, value: { changed: '2026-11-27T12:30:00.000Z' } });
  now = at(31);
  expect(await store.undo(1)).toMatchObject({ ok: true, value: { changed: '2026-11-27T12:31:00.000Z' } });
  now = at(32);
  expect(await store.redo(2)).toMatchObject({ ok: true, value: { changed: '2026-11-27T12:32:00.000Z' } });
  await store.close();
  now = at(59);
  expect(await changedOf(await file.kept(HouseStore.open(file.path, () => now)))).toBe('2026-11-27T12:32:00.000Z');
  expect(await HouseStore.lookWhole(file.path)).toMatchObject({ ok: true, value: { revision: 3, changed: '2026-11-27T12:32:00.000Z' } });
});

test('what is refused leaves the time as it was', async () => {
  const store = await created();
  now = at(30);
  expect(await store.edit(REFUSED, 0)).toMatchObject({ ok: false, failure: { code: 'refused' } });
  expect(await store.undo(0)).toMatchObject({ ok: false, failure: { code: 'refused' } });
  expect(await store.edit(RENAMED, 7)).toMatchObject({ ok: false, failure: { code: 'changed-elsewhere' } });
  expect(await changedOf(store)).toBe('2026-11-27T12:00:00.000Z');
});

test('a change that would leave facts that contradict one another leaves the time as it was', async () => {
  const store = await created();
  await store.edit(RENAMED, 0);
  await store.close();
  write('update edit set changes = ?', JSON.stringify([{ table: 'house', id: '1', before: { position: 0, facts: '{}' }, after: null }]));
  const again = await file.kept(HouseStore.open(file.path, () => now));
  now = at(30);
  expect(await again.undo(1)).toMatchObject({ ok: false, failure: { message: expect.stringContaining('contradict') } });
  expect(await changedOf(again)).toBe('2026-11-27T12:00:00.000Z');
});

test('a file of version 5 does not say when, until its next change', async () => {
  await (await created()).close();
  write('alter table house drop column changed');
  write('pragma user_version = 5');
  expect(await HouseStore.look(file.path)).toMatchObject({ ok: true, value: { changed: null } });
  now = at(30);
  const store = await file.kept(HouseStore.open(file.path, () => now));
  expect(await changedOf(store)).toBeNull();
  await store.edit(REFUSED, 0);
  expect(await changedOf(store)).toBeNull();
  await store.edit(RENAMED, 0);
  expect(await changedOf(store)).toBe('2026-11-27T12:30:00.000Z');
});

test.each(['yesterday', '', '2026-13-45', 'x'.repeat(1000)])('a time that another program made %j is none', async (written) => {
  await (await created()).close();
  write('update house set changed = ?', written);
  expect(await HouseStore.look(file.path)).toMatchObject({ ok: true, value: { revision: 0, changed: null } });
});
