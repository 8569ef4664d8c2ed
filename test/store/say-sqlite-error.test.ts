import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { HouseStore } from '../../src-main/store/index.ts';
import { saySqliteError } from '../../src-main/store/say-sqlite-error.ts';
import { exampleHouse } from '../builders.ts';

let folder: string;
let path: string;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-store-'));
  path = join(folder, 'Alder.struckline');
  const store = await HouseStore.create(path, exampleHouse());
  if (!store.ok) throw new Error(store.faults.map(({ message }) => message).join(' '));
  await store.value.close();
});

afterEach(() => rmSync(folder, { recursive: true }));

/** What is said of what the work throws, with the code that was thrown. */
function said(work: () => void): readonly [string, string | null] {
  try {
    work();
  } catch (error) {
    return [(error as { code: string }).code, saySqliteError(error, 'Alder.struckline')];
  }
  throw new Error('nothing was thrown');
}

function onFile(work: (database: Database.Database) => void, options: Database.Options = {}): readonly [string, string | null] {
  return said(() => {
    const database = new Database(path, options);
    try {
      work(database);
    } finally {
      database.close();
    }
  });
}

const revise = 'update house set revision = revision + 1';

describe('what SQLite throws is said in words', () => {
  const DAMAGED = 'Alder.struckline is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.';

  it('of a file that was cut', () => {
    truncateSync(path, 12_288);
    expect(onFile((database) => database.prepare('select * from edit').all())).toEqual(['SQLITE_CORRUPT', DAMAGED]);
  });

  it('of a file that is none', () => {
    writeFileSync(path, Buffer.concat([Buffer.from('no database at all'), readFileSync(path)]));
    expect(onFile((database) => database.prepare('select 1 from house').all())).toEqual(['SQLITE_NOTADB', DAMAGED]);
  });

  it('of a file without its tables, and of a row that it may not hold', () => {
    expect(onFile((database) => database.prepare('select 1 from rooms').all())).toEqual(['SQLITE_ERROR', DAMAGED]);
    expect(onFile((database) => database.exec(`insert into room values ('x', 1, 'no json')`))).toEqual(['SQLITE_CONSTRAINT_CHECK', DAMAGED]);
  });

  it('of a disk that is full', () => {
    const [code, words] = onFile((database) => {
      database.pragma(`max_page_count = ${database.pragma('page_count', { simple: true }) as number}`);
      database.prepare('insert into photo_image values (?, ?)').run('kept:x', 'x'.repeat(1_000_000));
    });
    expect([code, words]).toEqual(['SQLITE_FULL', 'The disk on which Alder.struckline lies is full. Nothing was changed. Make room on it, then try again.']);
  });

  it('of a file that may not be written', () => {
    const words = 'Alder.struckline or its folder is protected. Nothing was changed. Allow yourself to read and write both, or copy the file to where you may.';
    expect(onFile((database) => database.exec(revise), { readonly: true })).toEqual(['SQLITE_READONLY', words]);
  });

  it('of a file that another program writes', () => {
    const other = new Database(path);
    other.exec('begin exclusive');
    const heard = onFile((database) => database.exec(revise), { timeout: 0 });
    other.close();
    expect(heard).toEqual(['SQLITE_BUSY', 'Alder.struckline is in use by another program. Nothing was changed. Try again once that is done with it.']);
  });

  it('of a folder in its place, by SQLite and by the system', () => {
    const words = "Alder.struckline can't be opened where it lies. Nothing was changed. Check that it is a file, that its disk is connected and that you may read its folder.";
    path = folder;
    expect(onFile(() => undefined)).toEqual(['SQLITE_CANTOPEN', words]);
    expect(said(() => readFileSync(folder))).toEqual(['EISDIR', words]);
  });

  it('of a disk that fails, whatever it failed at', () => {
    const words = 'The disk on which Alder.struckline lies does not read or write as it should. Nothing was changed. Check that it is connected, then try again.';
    expect(['SQLITE_IOERR', 'SQLITE_IOERR_FSYNC', 'SQLITE_IOERR_SHORT_READ'].map((code) => saySqliteError(new Database.SqliteError('disk I/O error', code), 'Alder.struckline'))).toEqual([words, words, words]);
  });

  it('and of anything else is not', () => {
    expect([new Error('a fault of the program'), new Database.SqliteError('bad parameter', 'SQLITE_MISUSE'), Object.assign(new Error('x'), { code: 'toString' }), 'SQLITE_FULL', null].map((error) => saySqliteError(error, 'Alder.struckline'))).toEqual([null, null, null, null, null]);
  });
});
