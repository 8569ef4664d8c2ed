import { existsSync, mkdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import {
  type Argument,
  argumentSchemas,
  failure,
  type HostFacts,
  type Method,
  METHODS,
  type OpenedHouse,
  type Reply,
  type Replies,
  settingsSchema,
} from '../../shared-core/contract/index.ts';
import { decodeFacts, newHouse, readDocument, writeDocument } from '../../shared-core/house/index.ts';
import type { PaperForm, PaperName, PaperSize } from '../../shared-core/plan/index.ts';
import { say, spokenLanguage } from '../../shared-core/words/index.ts';
import type { HouseStore, StoredHouse, StoreFailure } from '../store/index.ts';
import { demoHouse } from './demo.ts';
import { fileNameOf } from './file-names.ts';
import { HOUSE_FILE_ENDING } from './house-files.ts';
import { opened, OpenHouses } from './open-houses.ts';
import { RememberedHouses } from './remembered-houses.ts';
import type { PaperFile } from './paper-desk.ts';
import { PaperMaker } from './paper-maker.ts';
import { savePaper } from './save-paper.ts';
import { SettingsFile } from './settings-file.ts';
import { VERSION } from './version.ts';

export interface OfficeSettings {
  readonly shell: HostFacts['shell'];
  /** Where house files are kept; made when it is not there. */
  readonly folder: string;
  /** A house that was named by its path; it lies in the folder. */
  readonly firstFile?: string | null;
  /** Where the app keeps what belongs to no house; made when something is saved in it. */
  readonly ownFolder: string;
}

/** The one implementation of the contract. It is given anything at all and never throws. */
export interface Office {
  call(method: string, argument: unknown): Promise<Reply<unknown>>;
  /** Opens the house file at a path and remembers it; not the window's to ask, which knows no paths. */
  openPath(path: string): Promise<Reply<OpenedHouse>>;
  /** Closes every house file, once what is on its way is done. */
  close(): Promise<void>;
}

type Handlers = { readonly [Name in Method]: (argument: Argument<Name>) => Promise<Reply<Replies[Name]>> };

export function openOffice(settings: OfficeSettings): Office {
  mkdirSync(settings.folder, { recursive: true });
  const folder = resolve(settings.folder);
  const remembered = new RememberedHouses(join(settings.ownFolder, 'houses-elsewhere.json'));
  const houses = new OpenHouses(folder, remembered);
  const firstFile = settings.firstFile ?? null;
  if (firstFile !== null && existsSync(join(folder, firstFile))) remembered.remember(join(folder, firstFile), firstFile);
  const underWay = new Set<Promise<unknown>>();
  const settingsFile = new SettingsFile(settings.ownFolder);
  const papers = new PaperMaker();
  const makePaper = async (file: string, paper: PaperName, form: PaperForm, size: PaperSize): Promise<Reply<PaperFile & { readonly revision: number; readonly path: string }>> => {
    const saved = await houses.use(file, async (store, path): Promise<Reply<StoredHouse & { readonly path: string }>> => {
      const read = await store.read();
      return read.ok ? { ok: true, value: { ...read.value, path } } : failure('not-a-house', say`The house file could not be read.`, read.faults);
    });
    if (!saved.ok) return saved;
    const { house, revision, changed: day, path } = saved.value;
    const made = await papers.make(file, { house, revision, changed: day }, paper, form, size);
    return made.ok ? { ok: true, value: { ...made.value, revision, path } } : made;
  };
  const handlers: Handlers = {
    'describe-host': async () => ({
      ok: true,
      value: { shell: settings.shell, folder: settings.folder, version: VERSION, language: spokenLanguage().code, firstFile },
    }),
    'list-houses': async () => ({ ok: true, value: await houses.list() }),
    'create-house': ({ name, lengths, currency }) => houses.create(newHouse(name, lengths, currency)),
    'create-demo': () => houses.create(demoHouse()),
    'import-document': async ({ text }) => {
      const read = readDocument(text);
      return read.ok ? houses.create(read.value) : failure('refused', say`The document was not taken; nothing was changed.`, read.faults);
    },
    'take-house-file': ({ name, bytes }) => houses.take(name, Buffer.from(bytes, 'base64')),
    'forget-house': async ({ file }) => {
      remembered.forget(file);
      return { ok: true, value: await houses.list() };
    },
    'open-house': ({ file }) => houses.openHouse(file),
    'house-since': ({ file, revision }) =>
      houses.use<OpenedHouse | null>(file, async (store) => {
        const read = await store.read();
        return read.ok && read.value.revision === revision ? { ok: true, value: null } : opened(file, store, read);
      }),
    'edit-house': ({ file, revision, edit }) => houses.use(file, async (store) => changed(file, store, await store.edit(edit, revision))),
    'undo': ({ file, revision }) => houses.use(file, async (store) => changed(file, store, await store.undo(revision))),
    'redo': ({ file, revision }) => houses.use(file, async (store) => changed(file, store, await store.redo(revision))),
    'copy-house': ({ file }) => houses.copy(file),
    'list-back-ups': ({ file }) => houses.backUps(file),
    'restore-back-up': ({ file, backUp }) => houses.restore(file, backUp),
    'export-document': ({ file }) =>
      houses.use(file, async (store, path) => {
        const read = await store.readWhole();
        if (!read.ok) return failure('not-a-house', say`The house file could not be read.`, read.faults);
        return { ok: true, value: { fileName: fileNameOf(basename(path, HOUSE_FILE_ENDING), '.json'), text: writeDocument(read.value.house) } };
      }),
    'write-paper': async ({ file, paper, form, size }) => {
      const made = await makePaper(file, paper, form, size);
      if (!made.ok) return made;
      const { fileName, type, bytes, unset, revision } = made.value;
      return { ok: true, value: { fileName, type, bytes: Buffer.from(bytes).toString('base64'), revision, unset } };
    },
    'save-paper': async ({ file, paper, form, size }) => {
      const made = await makePaper(file, paper, form, size);
      return made.ok ? savePaper(made.value) : made;
    },
    'stop-papers': async ({ file }) => {
      papers.stop(file);
      return { ok: true, value: null };
    },
    'read-photo': ({ file, image }) =>
      houses.use(file, async (store) => {
        const read = await store.readPhoto(image);
        return read === null ? failure('refused', say`This house file keeps no such photo.`) : { ok: true, value: { image: read } };
      }),
    'read-settings': async () => ({ ok: true, value: settingsFile.read() }),
    'save-settings': async ({ settings: chosen }) => ({ ok: true, value: settingsFile.save(settingsSchema.parse(chosen)) }),
  };
  const call: Office['call'] = async (method, argument) => {
    if (!METHODS.includes(method as Method)) return failure('bad-argument', say`The host knows no call of that name; it knows ${METHODS.join(', ')}.`);
    const name = method as Method;
    const parsed = decodeFacts(argumentSchemas[name], argument, '');
    if (!parsed.ok) return failure('bad-argument', say`The call ${name} was not understood; nothing was changed.`, parsed.faults);
    // An edit is applied in the spelling it was sent in, which its schema has just found good.
    return (handlers[name] as (argument: unknown) => Promise<Reply<unknown>>)(argument);
  };
  /** What is asked is answered, whatever goes wrong, and no file is closed under it. */
  const guard = async <Value>(work: () => Promise<Reply<Value>>): Promise<Reply<Value>> => {
    const answer = work().catch((error: unknown) => failure('host-failure', say`The host failed: ${error instanceof Error ? error.message : String(error)}. What was saved before is still in the file.`));
    underWay.add(answer);
    try {
      return await answer;
    } finally {
      underWay.delete(answer);
    }
  };
  return {
    call: (method, argument) => guard(() => call(method, argument)),
    openPath: (path) => guard(() => houses.openPath(path)),
    async close() {
      papers.close();
      await Promise.all(underWay);
      await houses.close();
    },
  };
}

function changed(file: string, store: HouseStore, outcome: { readonly ok: true; readonly value: StoredHouse } | { readonly ok: false; readonly failure: StoreFailure }): Reply<OpenedHouse> {
  if (outcome.ok) return opened(file, store, { ok: true, value: outcome.value });
  const { failure: why } = outcome;
  switch (why.code) {
    case 'refused':
      return failure('refused', why.message, why.faults);
    case 'look-only':
      return failure('refused', say`Nothing was changed: this house can only be looked at.`);
    case 'not-written':
      return failure('host-failure', why.message);
    case 'changed-elsewhere':
      return failure('changed-elsewhere', say`The house was changed in another window meanwhile; this change was not made. Look at the house as it is now and make it again.`);
  }
}
