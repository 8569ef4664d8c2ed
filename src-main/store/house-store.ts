import { closeSync, existsSync, openSync, readSync, renameSync, rmSync, statSync } from 'node:fs';
import { join, dirname, basename } from 'node:path';
import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { Kysely, sql, SqliteDialect, type Transaction } from 'kysely';
import { type Fault, fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { applyEdit, type Edit, type House, nameEdit } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { APPLICATION_ID, migrate, SCHEMA_VERSION, SQLITE_HEADER } from './migrations.ts';
import { dropLostPhotoImages, findPhotoImage, keepPhotoImages, withPhotoImages } from './photo-images.ts';
import { changesBetween, fromRows, type RowChange, toRows } from './rows.ts';
import { FACT_TABLES, type FactTable, type Tables } from './tables.ts';

export type StoreFailure =
  | { readonly code: 'changed-elsewhere' }
  | { readonly code: 'refused'; readonly message: string; readonly faults: readonly Fault[] };

export interface StoredHouse {
  readonly house: House;
  readonly revision: number;
  readonly undo: string | null;
  readonly redo: string | null;
}

type Changed = { readonly ok: true; readonly value: StoredHouse } | { readonly ok: false; readonly failure: StoreFailure };

const BUSY_TIMEOUT_MILLISECONDS = 4_000;

/** A house file that is open. Every edit is one transaction with its undo entry, on disk before it is answered. */
export class HouseStore {
  readonly #kysely: Kysely<Tables>;

  private constructor(database: Database.Database) {
    this.#kysely = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
  }

  /** Makes a house file; it appears under its name only when it is whole, and never in place of another one. */
  static async create(path: string, house: House): Promise<Outcome<HouseStore>> {
    if (existsSync(path)) return fault('', say`${basename(path)} is there already; it was left as it is. Choose another name.`);
    const draft = join(dirname(path), `.${randomUUID()}.draft`);
    try {
      const database = new Database(draft);
      configure(database);
      database.pragma(`application_id = ${APPLICATION_ID}`);
      migrate(database);
      const store = new HouseStore(database);
      const written = await store.#kysely.transaction().execute(async (transaction) => {
        const kept = await keepPhotoImages(transaction, house, []);
        if (kept.ok) await writeChanges(transaction, changesBetween(new Map(), toRows(kept.value)), 'after');
        return kept;
      });
      await store.close();
      if (!written.ok) return written;
      if (existsSync(path)) return fault('', say`${basename(path)} is there already; it was left as it is. Choose another name.`);
      renameSync(draft, path);
    } finally {
      rmSync(draft, { force: true });
    }
    return HouseStore.open(path);
  }

  /** Opens a house file; a file that is none is told by its own words and never touched. */
  static async open(path: string): Promise<Outcome<HouseStore>> {
    const trouble = lookAt(path);
    if (trouble) return fault('', trouble);
    let database: Database.Database | undefined;
    try {
      database = new Database(path, { fileMustExist: true });
      configure(database);
      if (database.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
        database.close();
        return fault('', say`${basename(path)} is a database of another program, not a house file. Nothing was changed.`);
      }
      const version = database.pragma('user_version', { simple: true }) as number;
      if (version > SCHEMA_VERSION) {
        database.close();
        return fault('', say`${basename(path)} was written by a newer Struckline (file version ${version}, this one reads up to ${SCHEMA_VERSION}). Nothing was changed; open it with the newer one.`);
      }
      migrate(database);
      const store = new HouseStore(database);
      const read = await store.read();
      if (!read.ok) await store.close();
      return read.ok ? good(store) : read;
    } catch (error) {
      database?.close();
      return fault('', say`${basename(path)} can't be read: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`);
    }
  }

  async read(): Promise<Outcome<StoredHouse>> {
    return this.#kysely.transaction().execute(readStored);
  }

  /** The house with its photos in it, to be taken elsewhere. */
  async readWhole(): Promise<Outcome<House>> {
    return this.#kysely.transaction().execute(async (transaction) => {
      const stored = await readStored(transaction);
      return stored.ok ? withPhotoImages(transaction, stored.value.house) : stored;
    });
  }

  /** The photo that a photo's facts point at; null where the file keeps none of that name. */
  async readPhoto(image: string): Promise<string | null> {
    return this.#kysely.transaction().execute((transaction) => findPhotoImage(transaction, image));
  }

  /** Makes one edit, or says why not; nothing is written then. `revision` is what the caller saw last. */
  async edit(edit: Edit, revision: number): Promise<Changed> {
    return this.#change(revision, async (transaction, stored) => {
      const edited = applyEdit(stored.house, edit);
      if (!edited.ok) return refused(say`The edit was refused; nothing was changed.`, edited.faults);
      const kept = await keepPhotoImages(transaction, edited.value, stored.house.photos);
      if (!kept.ok) return refused(say`The edit was refused; nothing was changed.`, kept.faults);
      const changes = changesBetween(toRows(stored.house), toRows(kept.value));
      if (changes.length === 0) return null;
      const dropped = await transaction.deleteFrom('edit').where('is_undone', '=', 1).executeTakeFirst();
      await transaction.insertInto('edit').values((expression) => ({
        number: expression.selectFrom('edit').select((inner) => inner(inner.fn.coalesce(inner.fn.max('number'), inner.lit(0)), '+', 1).as('next')),
        name: nameEdit(stored.house, edit),
        changes: JSON.stringify(changes),
        is_undone: 0,
      })).execute();
      await writeChanges(transaction, changes, 'after');
      if (dropped.numDeletedRows > 0n) await dropLostPhotoImages(transaction);
      return null;
    });
  }

  async undo(revision: number): Promise<Changed> {
    return this.#change(revision, async (transaction) => {
      const entry = await transaction.selectFrom('edit').selectAll().where('is_undone', '=', 0).orderBy('number', 'desc').limit(1).executeTakeFirst();
      if (!entry) return refused(say`There is nothing to undo.`, []);
      await writeChanges(transaction, JSON.parse(entry.changes) as RowChange[], 'before');
      await transaction.updateTable('edit').set({ is_undone: 1 }).where('number', '=', entry.number).execute();
      return null;
    });
  }

  async redo(revision: number): Promise<Changed> {
    return this.#change(revision, async (transaction) => {
      const entry = await transaction.selectFrom('edit').selectAll().where('is_undone', '=', 1).orderBy('number', 'asc').limit(1).executeTakeFirst();
      if (!entry) return refused(say`There is nothing to redo.`, []);
      await writeChanges(transaction, JSON.parse(entry.changes) as RowChange[], 'after');
      await transaction.updateTable('edit').set({ is_undone: 0 }).where('number', '=', entry.number).execute();
      return null;
    });
  }

  /** Looks through the whole file, which opening does not: what is wrong with it, or null. For a file that somebody else sends. */
  async findDamage(): Promise<string | null> {
    const { rows: more } = await sql`select 1 from sqlite_schema where type in ('trigger', 'view') limit 1`.execute(this.#kysely);
    if (more.length > 0) return say`It holds more than a house; another program has changed it.`;
    const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check(1)`.execute(this.#kysely);
    return rows[0]?.integrity_check === 'ok' ? null : say`It is damaged in places that the house itself does not show.`;
  }

  async close(): Promise<void> {
    await this.#kysely.destroy();
  }

  async #change(revision: number, work: (transaction: Transaction<Tables>, stored: StoredHouse) => Promise<StoreFailure | null>): Promise<Changed> {
    return this.#kysely.transaction().execute(async (transaction) => {
      // Counting up first takes the write lock, so that nothing read afterwards is stale.
      const counted = await transaction.updateTable('house').set((expression) => ({ revision: expression('revision', '+', 1) })).where('revision', '=', revision).executeTakeFirst();
      if (counted.numUpdatedRows === 0n) return failed({ code: 'changed-elsewhere' });
      const stored = await readStored(transaction);
      const failure = stored.ok ? await work(transaction, stored.value) : refused(say`The house file holds facts that contradict one another.`, stored.faults);
      if (failure) {
        await transaction.updateTable('house').set({ revision }).execute();
        return failed(failure);
      }
      const changed = await readStored(transaction);
      if (!changed.ok) throw new Error(`an edit left facts that can't be read: ${changed.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`);
      return { ok: true, value: changed.value };
    });
  }
}

function failed(failure: StoreFailure): Changed {
  return { ok: false, failure };
}

function refused(message: string, faults: readonly Fault[]): StoreFailure {
  return { code: 'refused', message, faults };
}

function configure(database: Database.Database): void {
  database.pragma(`busy_timeout = ${BUSY_TIMEOUT_MILLISECONDS}`);
  database.pragma('journal_mode = delete');
  database.pragma('synchronous = full');
  database.pragma('foreign_keys = on');
}

/** What is wrong with a file before SQLite is asked, so that SQLite never makes one out of it. */
function lookAt(path: string): string | null {
  const name = basename(path);
  if (!existsSync(path)) return say`${name} is not there.`;
  const { size } = statSync(path);
  if (size === 0) return say`${name} is empty; it holds no house. Nothing was changed. A back-up may still have it.`;
  const head = Buffer.alloc(SQLITE_HEADER.length);
  const descriptor = openSync(path, 'r');
  try {
    readSync(descriptor, head, 0, head.length, 0);
  } finally {
    closeSync(descriptor);
  }
  return head.toString('latin1') === SQLITE_HEADER ? null : say`${name} is not a house file. Nothing was changed.`;
}

async function readStored(transaction: Transaction<Tables>): Promise<Outcome<StoredHouse>> {
  const own = await transaction.selectFrom('house').select(['facts', 'revision']).executeTakeFirst();
  if (!own) return fault('', say`The file holds no house.`);
  const lists = {} as Record<FactTable, { position: number; facts: string }[]>;
  for (const table of FACT_TABLES) lists[table] = await transaction.selectFrom(table).select(['position', 'facts']).orderBy('position').execute();
  const house = fromRows(own.facts, lists);
  if (!house.ok) return house;
  const undo = await transaction.selectFrom('edit').select('name').where('is_undone', '=', 0).orderBy('number', 'desc').limit(1).executeTakeFirst();
  const redo = await transaction.selectFrom('edit').select('name').where('is_undone', '=', 1).orderBy('number', 'asc').limit(1).executeTakeFirst();
  return good({ house: house.value, revision: own.revision, undo: undo?.name ?? null, redo: redo?.name ?? null });
}

/** Writes rows as they were or as they became; deletions first, so that a moved id meets no old one. */
async function writeChanges(transaction: Transaction<Tables>, changes: readonly RowChange[], side: 'before' | 'after'): Promise<void> {
  for (const change of changes) {
    if (change.table !== 'house' && change[side] === null) await transaction.deleteFrom(change.table).where('id', '=', change.id).execute();
  }
  for (const { table, id, [side]: row } of changes) {
    if (!row) continue;
    if (table === 'house') {
      await transaction.insertInto('house').values({ id: 1, facts: row.facts, revision: 0 }).onConflict((conflict) => conflict.column('id').doUpdateSet({ facts: row.facts })).execute();
    } else {
      await transaction.insertInto(table).values({ id, ...row }).onConflict((conflict) => conflict.column('id').doUpdateSet(row)).execute();
    }
  }
}
