import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Argument,
  argumentSchemas,
  failure,
  type HostFacts,
  type HouseListing,
  type Method,
  METHODS,
  type OpenedHouse,
  type Reply,
  type Replies,
  settingsSchema,
} from '../../shared-core/contract/index.ts';
import type { Outcome } from '../../shared-core/base/index.ts';
import { decodeFacts, encodeHouse, type House, newHouse, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import { HouseStore, type StoredHouse, type StoreFailure } from '../store/index.ts';
import { demoHouse } from './demo.ts';
import { SettingsFile } from './settings-file.ts';
import { VERSION } from './version.ts';

export interface OfficeSettings {
  readonly shell: HostFacts['shell'];
  /** Where house files are kept; made when it is not there. */
  readonly folder: string;
  readonly firstFile?: string | null;
  /** Where the app keeps what belongs to no house; made when something is saved in it. */
  readonly ownFolder: string;
}

/** The one implementation of the contract. It is given anything at all and never throws. */
export interface Office {
  call(method: string, argument: unknown): Promise<Reply<unknown>>;
  /** Closes every house file. */
  close(): Promise<void>;
}

type Handlers = { readonly [Name in Method]: (argument: Argument<Name>) => Promise<Reply<Replies[Name]>> };

const HOUSE_FILE_ENDING = '.struckline';

export function openOffice(settings: OfficeSettings): Office {
  mkdirSync(settings.folder, { recursive: true });
  const houses = new OpenHouses(settings.folder);
  const settingsFile = new SettingsFile(settings.ownFolder);
  const handlers: Handlers = {
    'describe-host': async () => ({
      ok: true,
      value: { shell: settings.shell, folder: settings.folder, version: VERSION, firstFile: settings.firstFile ?? null },
    }),
    'list-houses': async () => ({ ok: true, value: await houses.list() }),
    'create-house': ({ name, lengths, currency }) => houses.create(newHouse(name, lengths, currency)),
    'create-demo': () => houses.create(demoHouse()),
    'import-document': async ({ text }) => {
      const read = readDocument(text);
      return read.ok ? houses.create(read.value) : failure('refused', 'The document was not taken; nothing was changed.', read.faults);
    },
    'open-house': async ({ file }) => houses.use(file, async (store) => opened(file, await store.read())),
    'edit-house': ({ file, revision, edit }) => houses.use(file, async (store) => changed(file, await store.edit(edit, revision))),
    'undo': ({ file, revision }) => houses.use(file, async (store) => changed(file, await store.undo(revision))),
    'redo': ({ file, revision }) => houses.use(file, async (store) => changed(file, await store.redo(revision))),
    'export-document': ({ file }) =>
      houses.use(file, async (store) => {
        const read = await store.readWhole();
        if (!read.ok) return failure('not-a-house', 'The house file could not be read.', read.faults);
        return { ok: true, value: { fileName: `${file.slice(0, -HOUSE_FILE_ENDING.length)}.json`, text: writeDocument(read.value) } };
      }),
    'read-photo': ({ file, image }) =>
      houses.use(file, async (store) => {
        const read = await store.readPhoto(image);
        return read === null ? failure('refused', 'This house file keeps no such photo.') : { ok: true, value: { image: read } };
      }),
    'read-settings': async () => ({ ok: true, value: settingsFile.read() }),
    'save-settings': async ({ settings: chosen }) => ({ ok: true, value: settingsFile.save(settingsSchema.parse(chosen)) }),
  };
  return {
    async call(method, argument) {
      if (!METHODS.includes(method as Method)) return failure('bad-argument', `The host knows no call of that name; it knows ${METHODS.join(', ')}.`);
      const name = method as Method;
      try {
        const parsed = decodeFacts(argumentSchemas[name], argument, '');
        if (!parsed.ok) return failure('bad-argument', `The call ${name} was not understood; nothing was changed.`, parsed.faults);
        // An edit is applied in the spelling it was sent in, which its schema has just found good.
        return await (handlers[name] as (argument: unknown) => Promise<Reply<unknown>>)(argument);
      } catch (error) {
        return failure('host-failure', `The host failed: ${error instanceof Error ? error.message : String(error)}. What was saved before is still in the file.`);
      }
    },
    close: () => houses.close(),
  };
}

/** The house files of one folder; each is opened once and kept open. */
class OpenHouses {
  readonly #folder: string;
  readonly #stores = new Map<string, Promise<Outcome<HouseStore>>>();

  constructor(folder: string) {
    this.#folder = folder;
  }

  async list(): Promise<readonly HouseListing[]> {
    const files = readdirSync(this.#folder).filter((name) => name.endsWith(HOUSE_FILE_ENDING) && !name.startsWith('.')).sort();
    return Promise.all(
      files.map(async (file): Promise<HouseListing> => {
        const store = await this.#open(file);
        const read = store.ok ? await store.value.read() : store;
        return read.ok
          ? { file, name: read.value.house.name, rooms: read.value.house.rooms.length, trouble: null }
          : { file, name: null, rooms: 0, trouble: read.faults.map(({ message }) => message).join(' ') };
      }),
    );
  }

  async create(house: House): Promise<Reply<OpenedHouse>> {
    const file = this.#freeName(house.name);
    const created = HouseStore.create(join(this.#folder, file), house);
    this.#stores.set(file, created);
    const store = await created;
    if (!store.ok) {
      this.#stores.delete(file);
      return failure('refused', store.faults.map(({ message }) => message).join(' '));
    }
    return opened(file, await store.value.read());
  }

  async use<Value>(file: string, work: (store: HouseStore) => Promise<Reply<Value>>): Promise<Reply<Value>> {
    if (!existsSync(join(this.#folder, file))) return failure('no-such-house', `There is no ${file} in the folder of houses.`);
    const store = await this.#open(file);
    return store.ok ? work(store.value) : failure('not-a-house', store.faults.map(({ message }) => message).join(' '));
  }

  async close(): Promise<void> {
    const stores = await Promise.all(this.#stores.values());
    this.#stores.clear();
    await Promise.all(stores.map((store) => (store.ok ? store.value.close() : undefined)));
  }

  async #open(file: string): Promise<Outcome<HouseStore>> {
    const opening = this.#stores.get(file) ?? HouseStore.open(join(this.#folder, file));
    this.#stores.set(file, opening);
    const store = await opening;
    if (!store.ok) this.#stores.delete(file);
    return store;
  }

  /** The house's name as a file name that is free. */
  #freeName(name: string): string {
    const plain = name.replace(/[^\p{L}\p{N} ._-]+/gu, ' ').replace(/\s+/g, ' ').replace(/^[. ]+|[. ]+$/g, '').slice(0, 80) || 'House';
    const names = new Set([...readdirSync(this.#folder), ...this.#stores.keys()].map((file) => file.toLowerCase()));
    for (let count = 1; ; count += 1) {
      const file = `${count === 1 ? plain : `${plain} ${count}`}${HOUSE_FILE_ENDING}`;
      if (!names.has(file.toLowerCase())) return file;
    }
  }
}

function opened(file: string, read: Outcome<StoredHouse>): Reply<OpenedHouse> {
  if (!read.ok) return failure('not-a-house', 'The house file holds facts that contradict one another; nothing was changed.', read.faults);
  const { house, revision, undo, redo } = read.value;
  return { ok: true, value: { file, revision, house: encodeHouse(house), undo, redo } };
}

function changed(file: string, outcome: { readonly ok: true; readonly value: StoredHouse } | { readonly ok: false; readonly failure: StoreFailure }): Reply<OpenedHouse> {
  if (outcome.ok) return opened(file, { ok: true, value: outcome.value });
  return outcome.failure.code === 'refused'
    ? failure('refused', outcome.failure.message, outcome.failure.faults)
    : failure('changed-elsewhere', 'The house was changed in another window meanwhile; this change was not made. Look at the house as it is now and make it again.');
}
