import { existsSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { randomUUID } from 'node:crypto';
import type { Fault, Outcome } from '../../shared-core/base/index.ts';
import { type BackUps, failure, type HouseListing, LARGEST_HOUSE_FILE_BYTES, type OpenedHouse, type Reply } from '../../shared-core/contract/index.ts';
import { encodeHouse, type House } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { HouseStore, moveToDisk, restoreBackUp, saySqliteError, type StoredHouse } from '../store/index.ts';
import { backUpsOf, pathOfBackUp } from './back-ups-of.ts';
import { fileNameOf } from './file-names.ts';
import { HOUSE_FILE_ENDING, isHouseFile } from './house-files.ts';
import type { RememberedHouses } from './remembered-houses.ts';

/** The house files of one folder, and those elsewhere that are remembered; each is opened once and kept open. */
export class OpenHouses {
  readonly #folder: string;
  readonly #remembered: RememberedHouses;
  /** By path. */
  readonly #stores = new Map<string, Promise<Outcome<HouseStore>>>();
  /** By path: what was seen of a file in a state of it. */
  readonly #seen = new Map<string, { readonly state: string; readonly looked: Promise<Seen> }>();

  constructor(folder: string, remembered: RememberedHouses) {
    this.#folder = folder;
    this.#remembered = remembered;
  }

  /** The last one worked on first; those that are gone last. */
  async list(): Promise<readonly HouseListing[]> {
    const files = readdirSync(this.#folder).filter((name) => name.endsWith(HOUSE_FILE_ENDING) && !name.startsWith('.'));
    const own = files.map((file) => this.#listingOf(file, join(this.#folder, file), null));
    const elsewhere = this.#remembered
      .list()
      .filter(({ path }) => dirname(path) !== this.#folder)
      .map(({ key, path, name }) => (existsSync(path) ? this.#listingOf(key, path, dirname(path)) : gone(key, path, name)));
    const listed = await Promise.all([...own, ...elsewhere]);
    return listed.toSorted((one, other) => (other.changed ?? '').localeCompare(one.changed ?? '') || one.file.localeCompare(other.file));
  }

  async create(house: House): Promise<Reply<OpenedHouse>> {
    const file = this.#freeName(house.name);
    const path = join(this.#folder, file);
    const created = HouseStore.create(path, house);
    this.#stores.set(path, created);
    const isMade = await created.then((store) => store.ok, () => false);
    if (!isMade) this.#stores.delete(path);
    const store = await created;
    if (!store.ok) {
      return failure('refused', store.faults.map(({ message }) => message).join(' '));
    }
    return opened(file, store.value, await store.value.read());
  }

  /** Takes in the bytes of a house file as a copy under a name that is free; it is looked through before it is put there. */
  async take(name: string, bytes: Buffer): Promise<Reply<OpenedHouse>> {
    if (bytes.length > LARGEST_HOUSE_FILE_BYTES) return failure('too-large', say`${name} is larger than the ${LARGEST_HOUSE_FILE_BYTES / 1_000_000} MB that can be taken in so. Copy it into ${this.#folder} instead.`);
    const drafts = mkdtempSync(join(this.#folder, '.taken-'));
    try {
      const draft = join(drafts, name);
      writeFileSync(draft, bytes);
      const store = await HouseStore.open(draft);
      if (!store.ok) return failure('not-a-house', say`${name} was not taken in; nothing was changed.`, store.faults);
      const damage = await store.value.findDamage();
      await store.value.close();
      if (damage !== null) return failure('not-a-house', `${say`${name} was not taken in; nothing was changed.`} ${damage}`);
      const file = this.#freeName(name.slice(0, -HOUSE_FILE_ENDING.length));
      moveToDisk(draft, join(this.#folder, file));
      return await this.openHouse(file);
    } finally {
      rmSync(drafts, { recursive: true, force: true });
    }
  }

  openHouse(file: string): Promise<Reply<OpenedHouse>> {
    return this.use(file, async (store, path) => {
      const reply = opened(file, store, await store.read());
      if (reply.ok && this.#remembered.list().some((one) => one.path === path)) this.#remembered.remember(path, reply.value.house.name);
      return reply;
    });
  }

  /** Opens the house file at a path and remembers it, where it does not lie in the folder. */
  async openPath(named: string): Promise<Reply<OpenedHouse>> {
    const path = resolve(named);
    const name = basename(path);
    if (!isHouseFile(path)) return failure('refused', say`${name} is not the name of a house file, which ends in ${HOUSE_FILE_ENDING}.`);
    if (dirname(path) === this.#folder) return this.openHouse(name);
    const isKnown = this.#remembered.list().some((one) => one.path === path);
    const key = this.#remembered.remember(path, name);
    const reply = await this.openHouse(key);
    if (!reply.ok && !isKnown) this.#remembered.forget(key);
    return reply;
  }

  /** Copies a house file into the folder under a name that is free: the house can be changed there, whatever stands in its way here. */
  copy(file: string): Promise<Reply<OpenedHouse>> {
    return this.use(file, async (store, path) => {
      const read = await store.read();
      if (!read.ok) return opened(file, store, read);
      let copy: string;
      const draft = join(this.#folder, `.${randomUUID()}.draft`);
      try {
        const faults = await store.copyTo(draft);
        if (faults.length > 0) return failure('not-a-house', COPY_NOT_MADE, faults);
        // Nothing comes between finding the name and giving it.
        copy = this.#freeName(read.value.house.name);
        moveToDisk(draft, join(this.#folder, copy));
      } catch (error) {
        return notDone(COPY_NOT_MADE, error, basename(path));
      } finally {
        rmSync(draft, { force: true });
      }
      return this.openHouse(copy);
    });
  }

  /** The back-ups of a house file, which may itself be damaged or gone. */
  async backUps(file: string): Promise<Reply<BackUps>> {
    const path = this.#pathOf(file);
    if (path === null) return offTheList();
    const store = await this.#stores.get(path);
    return { ok: true, value: await backUpsOf(path, store?.ok ? store.value.backUpTrouble : null) };
  }

  /** Puts a back-up in a house file's place; what stood there becomes a back-up. Whoever asks for the house meanwhile waits. */
  async restore(file: string, backUp: string): Promise<Reply<OpenedHouse>> {
    const path = this.#pathOf(file);
    if (path === null) return offTheList();
    const good = await HouseStore.look(pathOfBackUp(path, backUp));
    if (!good.ok) return failure('not-a-house', say`This back-up can't be restored; nothing was changed.`, good.faults);
    const before = this.#stores.get(path);
    const restored = (async () => {
      const store = await before;
      if (store?.ok) await store.value.close();
      const there = await HouseStore.look(path);
      await restoreBackUp(path, backUp, { now: new Date(), revision: there.ok ? there.value.revision : 0 });
      return HouseStore.open(path);
    })();
    this.#stores.set(path, restored);
    try {
      await restored;
    } catch (error) {
      this.#stores.delete(path);
      return notDone(say`The back-up was not restored; the house stands as it did.`, error, basename(path));
    }
    return this.openHouse(file);
  }

  async use<Value>(file: string, work: (store: HouseStore, path: string) => Promise<Reply<Value>>): Promise<Reply<Value>> {
    const path = this.#pathOf(file);
    if (path === null) return offTheList();
    if (!existsSync(path)) return failure('no-such-house', dirname(path) === this.#folder ? say`There is no ${file} in the folder of houses.` : say`${basename(path)} is no longer in ${dirname(path)}. It may have been moved or renamed.`);
    const store = await this.#open(path);
    return store.ok ? work(store.value, path) : unreadable(basename(path), store.faults);
  }

  async close(): Promise<void> {
    const stores = await Promise.all(this.#stores.values());
    this.#stores.clear();
    await Promise.all(stores.map((store) => (store.ok ? store.value.close() : undefined)));
  }

  #pathOf(file: string): string | null {
    if (!file.includes(':')) return join(this.#folder, file);
    return this.#remembered.list().find(({ key }) => key === file)?.path ?? null;
  }

  /** A house is looked at once for the same file, and stays as it is even where it is of an older form. */
  async #listingOf(file: string, path: string, folder: string | null): Promise<HouseListing> {
    const about = { file, changed: changedAt(path), folder };
    const there = statSync(path, { bigint: true, throwIfNoEntry: false });
    const state = `${there?.mtimeNs} ${there?.size}`;
    const seen = this.#seen.get(path);
    const looked = seen?.state === state ? seen.looked : lookedAt(path);
    this.#seen.set(path, { state, looked });
    return { ...about, ...(await looked) };
  }

  async #open(path: string): Promise<Outcome<HouseStore>> {
    const before = this.#stores.get(path);
    const known = await before;
    if (known?.ok && known.value.isElsewhere() && this.#stores.get(path) === before) {
      this.#stores.delete(path);
      await known.value.close();
    }
    const opening = this.#stores.get(path) ?? HouseStore.open(path);
    this.#stores.set(path, opening);
    // What failed is tried again when the house is asked for again.
    const isOpen = await opening.then((store) => store.ok, () => false);
    if (!isOpen) this.#stores.delete(path);
    return opening;
  }

  /** The house's name as a file name that is free. */
  #freeName(name: string): string {
    const names = new Set([...readdirSync(this.#folder), ...[...this.#stores.keys()].map((path) => basename(path))].map((file) => file.toLowerCase()));
    for (let count = 1; ; count += 1) {
      const file = fileNameOf(name, `${count === 1 ? '' : ` ${count}`}${HOUSE_FILE_ENDING}`);
      if (!names.has(file.toLowerCase())) return file;
    }
  }
}

const COPY_NOT_MADE = say`The copy could not be made; write the house out as a document instead.`;

type Seen = Pick<HouseListing, 'name' | 'rooms' | 'trouble'>;

/** No file keeps the others from being listed, whatever is wrong with it. */
async function lookedAt(path: string): Promise<Seen> {
  const name = basename(path);
  const trouble = (words: string): Seen => ({ name: null, rooms: 0, trouble: words });
  try {
    const read = await HouseStore.look(path);
    if (!read.ok) return trouble(unreadable(name, read.faults).error.message);
    return { name: read.value.house.name, rooms: read.value.house.rooms.length, trouble: null };
  } catch (error) {
    return trouble(saySqliteError(error, name) ?? say`${name} can't be read: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`);
  }
}

/** A file that is told by its own words; where its facts are wrong, that they are and which. */
function unreadable(name: string, faults: readonly Fault[]): ReturnType<typeof failure> {
  if (faults.every(({ path }) => path === '')) return failure('not-a-house', faults.map(({ message }) => message).join(' '));
  return failure('not-a-house', say`${name} holds facts that can't be read or contradict one another. Nothing was changed. A back-up may still have the house.`, faults);
}

function notDone(what: string, error: unknown, name: string): Reply<never> {
  return failure('host-failure', what, [{ path: '', message: saySqliteError(error, name) ?? (error instanceof Error ? error.message : String(error)) }]);
}

function offTheList(): Reply<never> {
  return failure('no-such-house', say`That house is on the list no longer. Open it by its file again.`);
}

export function opened(file: string, { lookOnly }: Pick<HouseStore, 'lookOnly'>, read: Outcome<StoredHouse>): Reply<OpenedHouse> {
  if (!read.ok) return failure('not-a-house', say`The house file holds facts that contradict one another; nothing was changed.`, read.faults);
  const { house, revision, undo, redo } = read.value;
  return { ok: true, value: { file, revision, house: encodeHouse(house), undo, redo, lookOnly } };
}

/** The file is written at every edit, undo and redo, and at nothing else. */
function changedAt(path: string): string | null {
  return statSync(path, { throwIfNoEntry: false })?.mtime.toISOString() ?? null;
}

function gone(file: string, path: string, name: string): HouseListing {
  return { file, name, rooms: 0, trouble: say`${basename(path)} is no longer there: it was moved, renamed or removed, or its disk is not connected.`, changed: null, folder: dirname(path) };
}
