import { type BigIntStats, existsSync, rmSync, statSync } from 'node:fs';
import { join, dirname, basename } from 'node:path';
import { randomUUID } from 'node:crypto';
import Database from 'better-sqlite3';
import { Kysely, sql, type Transaction } from 'kysely';
import { type Fault, fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { applyEdit, type Edit, type House, nameEdit } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { isBackUpDue, keepBackUp, listBackUps, moveToDisk } from './back-ups.ts';
import { HouseDialect } from './house-dialect.ts';
import { APPLICATION_ID, migrate } from './migrations.ts';
import { configure, openDatabase, type OpenedDatabase } from './open-database.ts';
import { dropLostPhotoImages, findPhotoImage, keepPhotoImages, withPhotoImages } from './photo-images.ts';
import { changesBetween, fromRows, readChanges, type RowChange, toRows } from './rows.ts';
import { saySqliteError } from './say-sqlite-error.ts';
import { FACT_TABLES, type FactTable, type Tables } from './tables.ts';

export type StoreFailure =
  | { readonly code: 'changed-elsewhere' }
  /** The file may be looked at alone. */
  | { readonly code: 'look-only'; readonly message: string }
  /** The disk or another program stands in the way. */
  | { readonly code: 'not-written'; readonly message: string }
  | { readonly code: 'refused'; readonly message: string; readonly faults: readonly Fault[] };

export interface StoredHouse {
  readonly house: House;
  readonly revision: number;
  /** When it was changed last, undo and redo included, as an ISO date and time in UTC; null where the file does not say. */
  readonly changed: string | null;
  readonly undo: string | null;
  readonly redo: string | null;
}

type Work = (transaction: Transaction<Tables>, stored: StoredHouse) => Promise<StoreFailure | null>;
type Changed = { readonly ok: true; readonly value: StoredHouse } | { readonly ok: false; readonly failure: StoreFailure };

/** A house file that is open. Every edit is one transaction with its undo entry, on disk before it is answered. */
export class HouseStore {
  readonly #kysely: Kysely<Tables>;
  readonly #path: string;
  readonly #now: () => Date;
  /** The file as it was when it was opened: which one it is, and when it had been written last. */
  readonly #file: BigIntStats;
  /** Why the house can be looked at but not changed, in words; null where it can be changed. */
  readonly lookOnly: string | null;
  readonly #isDamaged: boolean;
  /** Why the last back-up could not be made, in words; null where it could, or none was due. */
  backUpTrouble: string | null = null;

  private constructor({ database, lookOnly, isDamaged }: OpenedDatabase, path: string, now: () => Date) {
    this.#kysely = new Kysely<Tables>({ dialect: new HouseDialect(database) });
    this.#path = path;
    this.#now = now;
    this.#file = statSync(path, { bigint: true });
    this.lookOnly = lookOnly;
    this.#isDamaged = isDamaged;
  }

  /** Makes a house file; it appears under its name only when it is whole, and never in place of another one. */
  static async create(path: string, house: House, now = theClock): Promise<Outcome<HouseStore>> {
    const name = basename(path);
    if (existsSync(path)) return isThere(name);
    const draft = join(dirname(path), `.${randomUUID()}.draft`);
    try {
      const database = new Database(draft);
      configure(database);
      database.pragma(`application_id = ${APPLICATION_ID}`);
      migrate(database);
      const store = new HouseStore({ database, lookOnly: null, isDamaged: false }, draft, now);
      const written = await store.#kysely.transaction().execute(async (transaction) => {
        const kept = await keepPhotoImages(transaction, house, []);
        if (!kept.ok) return kept;
        await writeChanges(transaction, changesBetween(new Map(), toRows(kept.value)), 'after');
        await store.#markChanged(transaction);
        return kept;
      });
      await store.close();
      if (!written.ok) return written;
      if (existsSync(path)) return isThere(name);
      moveToDisk(draft, path);
    } catch (error) {
      const trouble = saySqliteError(error, name);
      if (trouble === null) throw error;
      return fault('', trouble);
    } finally {
      rmSync(draft, { force: true });
    }
    return HouseStore.open(path, now);
  }

  /** Opens a house file; a file that is none is told by its own words and never touched. */
  static async open(path: string, now = theClock): Promise<Outcome<HouseStore>> {
    const opened = await openDatabase(path, { now: now(), isLook: false, isRead: async (database) => (await new HouseStore({ database, lookOnly: '', isDamaged: false }, path, now).read()).ok });
    if (!opened.ok) return opened;
    const store = new HouseStore(opened.value, path, now);
    const read = await store.read();
    if (!read.ok) await store.close();
    return read.ok ? good(store) : read;
  }

  /** The house in a file, which stays as it is even where it is of an older form. */
  static look(path: string): Promise<Outcome<StoredHouse>> {
    return HouseStore.#looking(path, (store) => store.read());
  }

  /** The same with its photos in it. */
  static lookWhole(path: string): Promise<Outcome<StoredHouse>> {
    return HouseStore.#looking(path, (store) => store.readWhole());
  }

  static async #looking<Value>(path: string, look: (store: HouseStore) => Promise<Outcome<Value>>): Promise<Outcome<Value>> {
    const opened = await openDatabase(path, { now: theClock(), isLook: true, isRead: async () => true });
    if (!opened.ok) return opened;
    const store = new HouseStore(opened.value, path, theClock);
    try {
      return await look(store);
    } finally {
      await store.close();
    }
  }

  read(): Promise<Outcome<StoredHouse>> {
    return this.#reading(readStored);
  }

  /** The house with its photos in it, to be taken elsewhere. */
  async readWhole(): Promise<Outcome<StoredHouse>> {
    return this.#reading(async (transaction) => {
      const stored = await readStored(transaction);
      if (!stored.ok) return stored;
      const house = await withPhotoImages(transaction, stored.value.house);
      return house.ok ? good({ ...stored.value, house: house.value }) : house;
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
      const changes = readChanges(entry.changes);
      if (!changes) return refused(say`This can't be undone, as the record of it is damaged; nothing was changed.`, []);
      await writeChanges(transaction, changes, 'before');
      await transaction.updateTable('edit').set({ is_undone: 1 }).where('number', '=', entry.number).execute();
      return null;
    });
  }

  async redo(revision: number): Promise<Changed> {
    return this.#change(revision, async (transaction) => {
      const entry = await transaction.selectFrom('edit').selectAll().where('is_undone', '=', 1).orderBy('number', 'asc').limit(1).executeTakeFirst();
      if (!entry) return refused(say`There is nothing to redo.`, []);
      const changes = readChanges(entry.changes);
      if (!changes) return refused(say`This can't be done again, as the record of it is damaged; nothing was changed.`, []);
      await writeChanges(transaction, changes, 'after');
      await transaction.updateTable('edit').set({ is_undone: 0 }).where('number', '=', entry.number).execute();
      return null;
    });
  }

  /** Looks through the whole file, where opening looks for what is plainly wrong: what is damaged, or null. For a file that somebody else sends. */
  async findDamage(): Promise<string | null> {
    const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check(1)`.execute(this.#kysely);
    return rows[0]?.integrity_check === 'ok' ? null : say`It is damaged in places that the house itself does not show.`;
  }

  /** Whether another file has its name by now, or none: what would be written into this one is lost. */
  isElsewhere(): boolean {
    const there = statSync(this.#path, { bigint: true, throwIfNoEntry: false });
    return there?.ino !== this.#file.ino || there.dev !== this.#file.dev;
  }

  /** A copy of the file at a path at which there is nothing yet: the whole of it, or of a damaged one the house alone. */
  async copyTo(path: string): Promise<readonly Fault[]> {
    if (!this.#isDamaged) {
      await sql`vacuum into ${path}`.execute(this.#kysely);
      return [];
    }
    const whole = await this.readWhole();
    const made = whole.ok ? await HouseStore.create(path, whole.value.house) : whole;
    if (!made.ok) return made.faults;
    await made.value.close();
    return [];
  }

  async close(): Promise<void> {
    await this.#kysely.destroy();
  }

  async #reading<Value>(work: (transaction: Transaction<Tables>) => Promise<Outcome<Value>>): Promise<Outcome<Value>> {
    try {
      return await this.#kysely.transaction().execute(work);
    } catch (error) {
      const trouble = saySqliteError(error, basename(this.#path));
      if (trouble === null) throw error;
      return fault('', trouble);
    }
  }

  async #change(revision: number, work: Work): Promise<Changed> {
    if (this.lookOnly !== null) return failed({ code: 'look-only', message: this.lookOnly });
    if (this.isElsewhere()) return failed({ code: 'not-written', message: say`${basename(this.#path)} was moved, replaced or removed while it was open; this change was not made. Open the house again.` });
    await this.#backUpWhereDue();
    try {
      return await this.#changeAtOnce(revision, work);
    } catch (error) {
      if (error instanceof Contradiction) return failed(refused(say`This change would leave facts that contradict one another; nothing was changed.`, error.faults));
      const message = saySqliteError(error, basename(this.#path));
      if (message === null) throw error;
      return failed({ code: 'not-written', message });
    }
  }

  /** Before a change, so that what stood there before the work of an hour is kept. That none can be made hinders no work. */
  async #backUpWhereDue(): Promise<void> {
    const now = this.#now();
    const [last] = listBackUps(this.#path).filter(({ reason }) => reason !== 'replaced');
    if (!isBackUpDue(last ? new Date(last.made) : this.#file.mtime, now)) return;
    try {
      await keepBackUp(this.#path, 'work', now, async (draft) => void (await this.copyTo(draft)));
      this.backUpTrouble = null;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.backUpTrouble = say`The last back-up could not be made: ${why}. It is tried again at the next change.`;
    }
  }

  async #markChanged(transaction: Transaction<Tables>): Promise<void> {
    await transaction.updateTable('house').set({ changed: this.#now().toISOString() }).execute();
  }

  #changeAtOnce(revision: number, work: Work): Promise<Changed> {
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
      await this.#markChanged(transaction);
      const changed = await readStored(transaction);
      if (!changed.ok) throw new Contradiction(changed.faults);
      return { ok: true, value: changed.value };
    });
  }
}

/** Thrown within a transaction, so that what was written in it is taken back. */
class Contradiction extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    super();
    this.faults = faults;
  }
}

function theClock(): Date {
  return new Date();
}

function isThere(name: string): Outcome<never> {
  return fault('', say`${name} is there already; it was left as it is. Choose another name.`);
}

function failed(failure: StoreFailure): Changed {
  return { ok: false, failure };
}

function refused(message: string, faults: readonly Fault[]): StoreFailure {
  return { code: 'refused', message, faults };
}

async function readStored(transaction: Transaction<Tables>): Promise<Outcome<StoredHouse>> {
  const own = await transaction.selectFrom('house').select(['facts', 'revision', 'changed']).executeTakeFirst();
  if (!own) return fault('', say`The house file holds no house. Nothing was changed. A back-up may still have it.`);
  const lists = {} as Record<FactTable, { position: number; facts: string }[]>;
  for (const table of FACT_TABLES) lists[table] = await transaction.selectFrom(table).select(['position', 'facts']).orderBy('position').execute();
  const house = fromRows(own.facts, lists);
  if (!house.ok) return house;
  const undo = await transaction.selectFrom('edit').select('name').where('is_undone', '=', 0).orderBy('number', 'desc').limit(1).executeTakeFirst();
  const redo = await transaction.selectFrom('edit').select('name').where('is_undone', '=', 1).orderBy('number', 'asc').limit(1).executeTakeFirst();
  return good({ house: house.value, revision: own.revision, changed: readInstant(own.changed), undo: undo?.name ?? null, redo: redo?.name ?? null });
}

/** A time that can't be read is none. */
function readInstant(written: string | null): string | null {
  const at = Date.parse(written ?? '');
  return Number.isNaN(at) ? null : new Date(at).toISOString();
}

/** Writes rows as they were or as they became; deletions first, so that a moved id meets no old one. */
async function writeChanges(transaction: Transaction<Tables>, changes: readonly RowChange[], side: 'before' | 'after'): Promise<void> {
  for (const change of changes) {
    if (change.table !== 'house' && change[side] === null) await transaction.deleteFrom(change.table).where('id', '=', change.id).execute();
  }
  for (const { table, id, [side]: row } of changes) {
    if (!row) continue;
    if (table === 'house') {
      await transaction.insertInto('house').values({ id: 1, facts: row.facts, revision: 0, changed: null }).onConflict((conflict) => conflict.column('id').doUpdateSet({ facts: row.facts })).execute();
    } else {
      await transaction.insertInto(table).values({ id, ...row }).onConflict((conflict) => conflict.column('id').doUpdateSet(row)).execute();
    }
  }
}
