import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { HouseStore, listBackUps, SCHEMA_VERSION } from '../../src-main/store/index.ts';
import { schemaAt, schemaOf } from '../../src-main/store/migrations.ts';

/** One file as each schema version wrote it: the demo house of its time, renamed, with a pantry added, renamed again and that undone. */
const FROZEN = join(import.meta.dirname, 'frozen');
const VERSIONS = Array.from({ length: SCHEMA_VERSION }, (_, index) => index + 1);
/** The first version whose file keeps when its house was changed last. */
const CHANGED_SINCE = 6;
const NOW = new Date('2026-11-27T09:30:15Z');

let folder: string;
let path: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-frozen-'));
  path = join(folder, 'Old.struckline');
});
afterEach(() => rmSync(folder, { recursive: true }));

const frozen = (version: number) => join(FROZEN, `version-${version}.struckline`);
const versionOf = (file: string) => {
  const database = new Database(file, { readonly: true });
  const version = database.pragma('user_version', { simple: true });
  database.close();
  return version;
};

test('there is a frozen file of every schema version and no other', () => {
  expect(readdirSync(FROZEN).sort()).toEqual(VERSIONS.map((version) => `version-${version}.struckline`));
  expect(VERSIONS.map((version) => versionOf(frozen(version)))).toEqual(VERSIONS);
});

test('the schema of this version is the committed one: a change of it is a further step', async () => {
  await expect(schemaAt(SCHEMA_VERSION)).toMatchFileSnapshot('schema.sql');
});

describe.each(VERSIONS)('a file of version %i', (version) => {
  test('opens with its house, its names and what can be undone, after a back-up of what it was', async () => {
    copyFileSync(frozen(version), path);
    const store = await HouseStore.open(path, () => NOW);
    if (!store.ok) throw new Error(JSON.stringify(store.faults));
    const read = await store.value.read();
    expect(read).toMatchObject({ ok: true, value: { house: { name: 'Frozen house' }, revision: 4, undo: 'add room Pantry', redo: 'change name of the house' } });
    expect(await store.value.redo(4)).toMatchObject({ ok: true, value: { house: { name: 'Undone' } } });
    expect(await store.value.undo(5)).toMatchObject({ ok: true });
    expect(await store.value.undo(6)).toMatchObject({ ok: true });
    expect(await store.value.undo(7)).toMatchObject({ ok: true, value: { undo: null } });
    await store.value.close();
    const database = new Database(path, { readonly: true });
    expect(schemaOf(database)).toBe(schemaAt(SCHEMA_VERSION));
    database.close();
    const kept = listBackUps(path).filter(({ reason }) => reason === 'form').map(({ name }) => name);
    expect(kept).toEqual(version === SCHEMA_VERSION ? [] : ['2026-11-27T09-30-15Z form.struckline']);
    for (const name of kept) expect(versionOf(join(folder, 'Struckline back-ups', 'Old', name))).toBe(version);
  });

  test('is looked at as it is, and nothing is written', async () => {
    copyFileSync(frozen(version), path);
    const looked = await HouseStore.look(path);
    expect(looked).toMatchObject({ ok: true, value: { house: { name: 'Frozen house' }, undo: 'add room Pantry', changed: version < CHANGED_SINCE ? null : '2026-11-27T12:30:00.000Z' } });
    expect(readFileSync(path).equals(readFileSync(frozen(version)))).toBe(true);
    expect(readdirSync(folder)).toEqual(['Old.struckline']);
  });

  test('where no back-up can be made is looked at in its new form and stays as it was', async () => {
    copyFileSync(frozen(version), path);
    copyFileSync(frozen(1), join(folder, 'Struckline back-ups'));
    const store = await HouseStore.open(path, () => NOW);
    if (!store.ok) throw new Error(JSON.stringify(store.faults));
    const isOld = version < SCHEMA_VERSION;
    expect(store.value.lookOnly === null).toBe(!isOld);
    if (isOld) expect(store.value.lookOnly).toMatch(/^Old\.struckline was written by an older Struckline, and no back-up of it could be made.*\(.*EEXIST|ENOTDIR.*\)/);
    expect((await store.value.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 4)).ok).toBe(!isOld);
    await store.value.close();
    expect(readFileSync(path).equals(readFileSync(frozen(version)))).toBe(isOld);
    expect(existsSync(`${path}-journal`)).toBe(false);
  });
});
