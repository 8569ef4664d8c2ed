import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Outcome } from '../../shared-core/base/index.ts';
import { failure, type HouseListing, LARGEST_HOUSE_FILE_BYTES, type OpenedHouse, type Reply } from '../../shared-core/contract/index.ts';
import { encodeHouse, type House } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { HouseStore, type StoredHouse } from '../store/index.ts';
import { HOUSE_FILE_ENDING, isHouseFile } from './house-files.ts';
import type { RememberedHouses } from './remembered-houses.ts';

/** The house files of one folder, and those elsewhere that are remembered; each is opened once and kept open. */
export class OpenHouses {
  readonly #folder: string;
  readonly #remembered: RememberedHouses;
  /** By path. */
  readonly #stores = new Map<string, Promise<Outcome<HouseStore>>>();

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
    const store = await created;
    if (!store.ok) {
      this.#stores.delete(path);
      return failure('refused', store.faults.map(({ message }) => message).join(' '));
    }
    return opened(file, await store.value.read());
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
      renameSync(draft, join(this.#folder, file));
      return await this.openHouse(file);
    } finally {
      rmSync(drafts, { recursive: true, force: true });
    }
  }

  openHouse(file: string): Promise<Reply<OpenedHouse>> {
    return this.use(file, async (store, path) => {
      const reply = opened(file, await store.read());
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

  async use<Value>(file: string, work: (store: HouseStore, path: string) => Promise<Reply<Value>>): Promise<Reply<Value>> {
    const path = this.#pathOf(file);
    if (path === null) return failure('no-such-house', say`That house is on the list no longer. Open it by its file again.`);
    if (!existsSync(path)) return failure('no-such-house', dirname(path) === this.#folder ? say`There is no ${file} in the folder of houses.` : say`${basename(path)} is no longer in ${dirname(path)}. It may have been moved or renamed.`);
    const store = await this.#open(path);
    return store.ok ? work(store.value, path) : failure('not-a-house', store.faults.map(({ message }) => message).join(' '));
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

  async #listingOf(file: string, path: string, folder: string | null): Promise<HouseListing> {
    const store = await this.#open(path);
    const read = store.ok ? await store.value.read() : store;
    const about = { file, changed: changedAt(path), folder };
    return read.ok
      ? { ...about, name: read.value.house.name, rooms: read.value.house.rooms.length, trouble: null }
      : { ...about, name: null, rooms: 0, trouble: read.faults.map(({ message }) => message).join(' ') };
  }

  async #open(path: string): Promise<Outcome<HouseStore>> {
    const opening = this.#stores.get(path) ?? HouseStore.open(path);
    this.#stores.set(path, opening);
    const store = await opening;
    if (!store.ok) this.#stores.delete(path);
    return store;
  }

  /** The house's name as a file name that is free. */
  #freeName(name: string): string {
    const plain = name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').replace(/\s+/g, ' ').replace(/^[. ]+|[. ]+$/g, '').slice(0, 80) || 'House';
    const names = new Set([...readdirSync(this.#folder), ...[...this.#stores.keys()].map((path) => basename(path))].map((file) => file.toLowerCase()));
    for (let count = 1; ; count += 1) {
      const file = `${count === 1 ? plain : `${plain} ${count}`}${HOUSE_FILE_ENDING}`;
      if (!names.has(file.toLowerCase())) return file;
    }
  }
}

export function opened(file: string, read: Outcome<StoredHouse>): Reply<OpenedHouse> {
  if (!read.ok) return failure('not-a-house', say`The house file holds facts that contradict one another; nothing was changed.`, read.faults);
  const { house, revision, undo, redo } = read.value;
  return { ok: true, value: { file, revision, house: encodeHouse(house), undo, redo } };
}

/** The file is written at every edit, undo and redo, and at nothing else. */
function changedAt(path: string): string | null {
  return statSync(path, { throwIfNoEntry: false })?.mtime.toISOString() ?? null;
}

function gone(file: string, path: string, name: string): HouseListing {
  return { file, name, rooms: 0, trouble: say`${basename(path)} is no longer there: it was moved, renamed or removed, or its disk is not connected.`, changed: null, folder: dirname(path) };
}
