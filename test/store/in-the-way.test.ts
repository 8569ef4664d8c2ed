import { execFileSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { HouseStore } from '../../src-main/store/index.ts';
import { exampleHouse } from '../builders.ts';

let folder: string;
let path: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-way-'));
  path = join(folder, 'Alder.struckline');
});
afterEach(() => {
  chmodSync(folder, 0o700);
  rmSync(folder, { recursive: true });
});

async function made(): Promise<void> {
  const store = await HouseStore.create(path, exampleHouse());
  if (!store.ok) throw new Error(JSON.stringify(store.faults));
  await store.value.close();
}

const lookAsNobody = () => JSON.parse(execFileSync(process.execPath, [join(import.meta.dirname, 'look-as-nobody.ts'), path], { encoding: 'utf8' })) as Record<string, unknown>;

describe.skipIf(process.platform === 'win32')('a house file that may not be written', () => {
  const PROTECTED = 'Alder.struckline or its folder is protected: the house can be looked at, not changed. Save a copy to work on it.';

  test.each([
    ['in a folder that may not be written', 0o644, 0o555],
    ['by itself', 0o444, 0o777],
  ])('%s is looked at, and a change is refused in words', async (_what, ofFile, ofFolder) => {
    await made();
    const bytes = readFileSync(path);
    chmodSync(path, ofFile);
    chmodSync(folder, ofFolder);
    expect(lookAsNobody()).toEqual({ lookOnly: PROTECTED, name: '7 Alder Court', changed: { ok: false, failure: { code: 'look-only', message: PROTECTED } } });
    chmodSync(folder, 0o755);
    expect(readFileSync(path).equals(bytes)).toBe(true);
    expect(readdirSync(folder)).toEqual(['Alder.struckline']);
  });

  test('is looked at even where it is of an older form, in its new one', async () => {
    copyFileSync(join(import.meta.dirname, 'frozen', 'version-1.struckline'), path);
    const bytes = readFileSync(path);
    chmodSync(folder, 0o555);
    expect(lookAsNobody()).toMatchObject({ lookOnly: PROTECTED, name: 'Frozen house', changed: { ok: false } });
    chmodSync(folder, 0o755);
    expect(readFileSync(path).equals(bytes)).toBe(true);
  });

  test('nor read is said to be protected', async () => {
    await made();
    chmodSync(path, 0o000);
    chmodSync(folder, 0o755);
    expect(lookAsNobody()).toEqual({ ok: false, faults: [{ path: '', message: 'Alder.struckline or its folder is protected. Nothing was changed. Allow yourself to read and write both, or copy the file to where you may.' }] });
  });
});

describe('a house file that another program has locked', () => {
  const IN_USE = 'Alder.struckline is in use by another program. Nothing was changed. Try again once that is done with it.';

  test('for itself is said to be in use, and opens once it is let go', async () => {
    await made();
    const other = new Database(path);
    other.exec('begin exclusive');
    expect(await HouseStore.open(path)).toEqual({ ok: false, faults: [{ path: '', message: IN_USE }] });
    other.exec('commit');
    other.close();
    const opened = await HouseStore.open(path);
    expect(opened.ok).toBe(true);
    if (opened.ok) await opened.value.close();
  });

  test('for writing is read, and a change that was not made is said and can be made later', async () => {
    await made();
    const opened = await HouseStore.open(path);
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    const store = opened.value;
    const other = new Database(path);
    other.exec('begin immediate');
    expect(await store.read()).toMatchObject({ ok: true, value: { revision: 0 } });
    expect(await store.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 0)).toEqual({ ok: false, failure: { code: 'not-written', message: IN_USE } });
    other.exec('commit');
    other.close();
    expect(await store.edit({ kind: 'change-house', facts: { name: 'Elm' } }, 0)).toMatchObject({ ok: true, value: { revision: 1, house: { name: 'Elm' } } });
    await store.close();
    expect(readdirSync(folder)).toEqual(['Alder.struckline']);
  });
});
