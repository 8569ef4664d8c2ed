import { mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeDocument } from '../../shared-core/house/index.ts';
import { readHouse, readStamped } from '../../src-main/office/index.ts';
import { HouseStore } from '../../src-main/store/index.ts';
import { exampleHouse } from '../builders.ts';

const EDITED = new Date('2026-11-27T12:30:00Z');

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-files-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

test('a house file says how often its house was changed, and when last', async () => {
  const path = join(folder, 'Alder.struckline');
  const store = await HouseStore.create(path, exampleHouse(), () => EDITED);
  if (!store.ok) throw new Error(JSON.stringify(store.faults));
  await store.value.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 0);
  await store.value.close();
  utimesSync(path, EDITED, new Date('2027-01-01T00:00:00Z'));
  expect(await readStamped(path)).toMatchObject({ ok: true, value: { house: { name: 'Elm' }, revision: 1, changed: '2026-11-27T12:30:00.000Z' } });
  expect(await readHouse(path)).toMatchObject({ ok: true, value: { name: 'Elm' } });
});

test('an exchange document counts no changes, and was changed when its file was written', async () => {
  const path = join(folder, 'alder.json');
  writeFileSync(path, writeDocument(exampleHouse()));
  utimesSync(path, new Date(), EDITED);
  expect(await readStamped(path)).toMatchObject({ ok: true, value: { house: { name: exampleHouse().name }, revision: null, changed: '2026-11-27T12:30:00.000Z' } });
  const house = await readHouse(path);
  expect(house.ok && writeDocument(house.value)).toBe(writeDocument(exampleHouse()));
});

test.each([
  ['Elm.struckline', /^Elm\.struckline is not there\.$/],
  ['elm.json', /elm\.json can't be read: /],
])('of %s, which is not there, that is said', async (name, words) => {
  const stamped = await readStamped(join(folder, name));
  expect(stamped.ok ? [] : stamped.faults).toEqual([{ path: '', message: expect.stringMatching(words) }]);
});

test('of a document that is no house its faults are told, with their places', async () => {
  const path = join(folder, 'alder.json');
  writeFileSync(path, JSON.stringify({ format: 'struckline-house', version: 1 }));
  const stamped = await readStamped(path);
  expect(stamped.ok ? [] : stamped.faults.map((one) => one.path)).toEqual(['name']);
});
