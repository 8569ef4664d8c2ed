import { accessSync, closeSync, constants, existsSync, openSync, readSync, rmSync, statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import Database from 'better-sqlite3';
import { fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { keepBackUp } from './back-ups.ts';
import { APPLICATION_ID, migrate, schemaAt, schemaOf, SCHEMA_VERSION, SQLITE_HEADER } from './migrations.ts';
import { saySqliteError } from './say-sqlite-error.ts';

/** Where the header says how the file is written and read; 1 stands for a rollback journal, the only way a house file is kept. */
const FORMAT_BYTES = [18, 19];
const HEADER_BYTES = 20;
/** SQLite's primary result code for what the disk does, in its lowest byte (https://sqlite.org/rescode.html). */
const SQLITE_IOERR = 10;
const BUSY_TIMEOUT_MILLISECONDS = 4_000;

export interface OpenedDatabase {
  readonly database: Database.Database;
  /** Why the house can be looked at but not changed, in words; null where it can be changed. */
  readonly lookOnly: string | null;
  readonly isDamaged: boolean;
}

/**
 * Opens the database of a house file, in the form of this program.
 *
 * A file that is none or that holds more than a house is told by its own words and never touched. One of an older form
 * is brought to this one after a back-up; where that can't be, where its house can't be read, or `isLook` says that nothing
 * may be written, a copy of it in memory is. One that is damaged can be looked at as far as it can be read.
 */
export async function openDatabase(path: string, { now, isLook, isRead }: { readonly now: Date; readonly isLook: boolean; readonly isRead: (database: Database.Database) => Promise<boolean> }): Promise<Outcome<OpenedDatabase>> {
  const name = basename(path);
  let database: Database.Database | undefined;
  try {
    const strange = lookAt(path, name);
    if (strange) return fault('', strange);
    const isProtected = !mayWrite(path) || !mayWrite(dirname(path));
    database = new Database(path, { fileMustExist: true, readonly: isProtected });
    configure(database);
    const trouble = findTrouble(database, name);
    if (trouble) {
      database.close();
      return fault('', trouble);
    }
    if (!isProtected && !isLook) clearJournal(database, path);
    const check = String(database.pragma('quick_check(1)', { simple: true }));
    if (isOfTheDisk(check)) throw Object.assign(new Error(check), { code: 'SQLITE_IOERR' });
    if (check !== 'ok') return good({ database, lookOnly: say`${name} is damaged in places. What can still be read of the house is shown; it can't be changed. Restore a back-up, or save a copy: what can be read goes into it, without what could be undone.`, isDamaged: true });
    const lookOnly = isProtected ? say`${name} or its folder is protected: the house can be looked at, not changed. Save a copy to work on it.` : null;
    if (database.pragma('user_version', { simple: true }) === SCHEMA_VERSION) return good({ database, lookOnly, isDamaged: false });
    const inMemory = new Database(database.serialize());
    migrate(inMemory);
    const hindrance = lookOnly ?? (isLook || !(await isRead(inMemory)) ? '' : await backUpForm(database, path, now));
    if (hindrance === null) {
      inMemory.close();
      migrate(database);
      return good({ database, lookOnly: null, isDamaged: false });
    }
    database.close();
    return good({ database: inMemory, lookOnly: hindrance, isDamaged: false });
  } catch (error) {
    database?.close();
    return fault('', saySqliteError(error, name) ?? say`${name} can't be read: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`);
  }
}

/** How a house file is kept: nothing that was answered is lost, whenever the power fails. */
export function configure(database: Database.Database): void {
  database.pragma(`busy_timeout = ${BUSY_TIMEOUT_MILLISECONDS}`);
  // What a file made by somebody else brings along is not to be run.
  database.pragma('trusted_schema = off');
  database.pragma('cell_size_check = on');
  if (!database.readonly) database.pragma('journal_mode = delete');
  // 'full' leaves the journal's removal unsynced: after a power cut it would take back an edit that was answered.
  database.pragma('synchronous = extra');
  database.pragma('foreign_keys = on');
}

/**
 * Removes a journal with nothing in it, which a program that was ended before its first change leaves: SQLite would keep
 * it until the next one. While the file is locked for us alone no journal can be in use.
 */
function clearJournal(database: Database.Database, path: string): void {
  const journal = `${path}-journal`;
  if (!existsSync(journal)) return;
  database.transaction(() => rmSync(journal, { force: true })).exclusive();
}

/** Whether a check found no damage but a disk that does not read: it says so in words alone, with SQLite's code. */
function isOfTheDisk(check: string): boolean {
  const [, code] = /error code=(\d+)/.exec(check) ?? [];
  return (Number(code ?? 0) & 0xff) === SQLITE_IOERR;
}

async function backUpForm(database: Database.Database, path: string, now: Date): Promise<string | null> {
  try {
    await keepBackUp(path, 'form', now, async (draft) => void database.prepare('vacuum into ?').run(draft));
    return null;
  } catch (error) {
    const name = basename(path);
    const why = error instanceof Error ? error.message : String(error);
    return say`${name} was written by an older Struckline, and no back-up of it could be made before it is brought to the new form (${why}). The house can be looked at, not changed; save a copy to work on it.`;
  }
}

function mayWrite(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

/** What is wrong with a file before SQLite is asked, so that SQLite never makes one out of it. */
function lookAt(path: string, name: string): string | null {
  if (!existsSync(path)) return say`${name} is not there.`;
  const about = statSync(path);
  if (!about.isFile()) return say`${name} is not a house file. Nothing was changed.`;
  if (about.size === 0) return say`${name} is empty; it holds no house. Nothing was changed. A back-up may still have it.`;
  const head = Buffer.alloc(HEADER_BYTES);
  const descriptor = openSync(path, 'r');
  try {
    readSync(descriptor, head, 0, head.length, 0);
  } finally {
    closeSync(descriptor);
  }
  if (!head.toString('latin1').startsWith(SQLITE_HEADER)) return say`${name} is not a house file. Nothing was changed.`;
  return FORMAT_BYTES.every((at) => head[at] === 1) ? null : moreThanAHouse(name);
}

function findTrouble(database: Database.Database, name: string): string | null {
  if (database.pragma('application_id', { simple: true }) !== APPLICATION_ID) return say`${name} is a database of another program, not a house file. Nothing was changed.`;
  const version = database.pragma('user_version', { simple: true }) as number;
  if (version > SCHEMA_VERSION) return say`${name} was written by a newer Struckline (file version ${version}, this one reads up to ${SCHEMA_VERSION}). Nothing was changed; open it with the newer one.`;
  return schemaOf(database) === schemaAt(version) ? null : moreThanAHouse(name);
}

function moreThanAHouse(name: string): string {
  return say`${name} is not as Struckline wrote it: another program has changed its form. Nothing was changed. A back-up may still have the house.`;
}
