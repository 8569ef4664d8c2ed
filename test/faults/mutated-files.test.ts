import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HouseListing, OpenedHouse } from '../../shared-core/contract/index.ts';
import { decodeHouse, encodeHouse, type House, readDocument } from '../../shared-core/house/index.ts';
import { demoHouse, type Office, openOffice } from '../../src-main/office/index.ts';
import { HouseStore } from '../../src-main/store/index.ts';
import { houseOf, type Loose } from '../builders.ts';
import { damaged } from './mutate-bytes.ts';
import { chanceOf, seedsOf } from './seeded.ts';
import { badlySaid } from './words-of-a-failure.ts';
import { shareOf } from '../share-of.ts';

/** Of each kind of file the seeds under which one failed once: the bytes they make are the same for ever. */
const SEEDS_THAT_FAILED: Readonly<Record<string, readonly number[]>> = {
  demo: [53, 242],
  edited: [3, 8],
  pictured: [6, 21],
  older: [0, 18, 53, 934],
};
const KINDS = Object.keys(SEEDS_THAT_FAILED);
const COUNT = Math.ceil(shareOf(10_000, 100) / KINDS.length);
const BATCH = 25;

let folder: string;
const files: Record<string, Buffer> = {};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-faults-'));
  files['demo'] = await fileOf('demo', demoHouse(), async () => undefined);
  files['edited'] = await fileOf('edited', demoHouse(), editOften);
  files['pictured'] = await fileOf('pictured', pictured(), async () => undefined);
  files['older'] = older(files['demo']);
});

afterAll(() => rmSync(folder, { recursive: true }));

async function fileOf(name: string, house: House, work: (store: HouseStore) => Promise<void>): Promise<Buffer> {
  const path = join(folder, `${name}.struckline`);
  const store = await HouseStore.create(path, house);
  if (!store.ok) throw new Error(store.faults.map(({ message }) => message).join(' '));
  await work(store.value);
  await store.value.close();
  return readFileSync(path);
}

/** Sixty edits, some taken back, and a room that is gone, so that there are free pages too. */
async function editOften(store: HouseStore): Promise<void> {
  const room = demoHouse().rooms[0]!;
  let revision = 0;
  const say = async (change: ReturnType<HouseStore['edit']>) => {
    const outcome = await change;
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    revision = outcome.value.revision;
  };
  const rooms = Array.from({ length: 40 }, (_, index): Loose => ({ id: `more${index}`, name: `Room ${index}`, walls: [{ id: 'A', length: '3 m', height: '2.4 m', note: 'x'.repeat(900) }] }));
  await say(store.edit({ kind: 'add-rooms', rooms }, revision));
  for (let count = 0; count < 55; count += 1) await say(store.edit({ kind: 'change-room', room: room.id, facts: { name: `${room.name} ${count}` } }, revision));
  await say(store.undo(revision));
  await say(store.undo(revision));
  for (let count = 0; count < 4; count += 1) await say(store.edit({ kind: 'remove-room', room: `more${count}` }, revision));
}

function pictured(): House {
  const document = encodeHouse(demoHouse()) as Loose;
  const [room] = document.rooms;
  const png = (letter: string, size: number) => `data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJ${letter.repeat(size)}`;
  document.photos = [0, 1, 2].map((index) => ({ id: `photo${index}`, room: room.id, wall: room.walls[0].id, image: png('P', 4 * (index + 1) * 2000) }));
  document.pictures = [{ covering: document.coverings.find(({ kind }: Loose) => kind === 'wallcovering').id, image: png('A', 8000) }];
  return houseOf(document);
}

/** The file as the version before this one wrote it. */
function older(file: Buffer): Buffer {
  const path = join(folder, 'older.struckline');
  writeFileSync(path, file);
  const database = new Database(path);
  database.exec('drop table task_choice; drop table own_material; drop table expense; alter table house drop column changed; vacuum');
  database.pragma('user_version = 4');
  database.close();
  return readFileSync(path);
}

const hashOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

interface Trial {
  readonly name: string;
  readonly bytes: Buffer;
  /** Which one it is, for whoever has to look at it again. */
  readonly which: string;
}

/** Looks at a file as the app does; what is wrong with how that went, or null. */
async function lookedAt(office: Office, { name }: Trial, index: number): Promise<{ readonly opened: boolean; readonly trouble: string | null }> {
  const reply = await office.call('open-house', { file: name });
  if (!reply.ok) return { opened: false, trouble: badlySaid(reply) ?? (reply.error.message.includes(name) || /house file/i.test(reply.error.message) ? null : `names no file: ${reply.error.message}`) };
  const { house } = reply.value as OpenedHouse;
  const read = decodeHouse(house);
  if (!read.ok) return { opened: true, trouble: `a house that its schema refuses: ${JSON.stringify(read.faults)}` };
  if (JSON.stringify(encodeHouse(read.value)) !== JSON.stringify(house)) return { opened: true, trouble: 'a house that is read otherwise than it is written' };
  const exported = await office.call('export-document', { file: name });
  if (!exported.ok) return { opened: true, trouble: badlySaid(exported) };
  const document = readDocument((exported.value as { text: string }).text);
  if (!document.ok) return { opened: true, trouble: `a document that is not read again: ${JSON.stringify(document.faults)}` };
  return { opened: true, trouble: index % 20 === 0 ? badlySaid(await office.call('write-paper', { file: name, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' })) : null };
}

async function tryAll(trials: readonly Trial[], mayBecomeNewer: boolean): Promise<{ readonly opened: number; readonly troubles: readonly string[] }> {
  const place = mkdtempSync(join(folder, 'batch-'));
  const houses = join(place, 'houses');
  mkdirSync(houses);
  for (const { name, bytes } of trials) writeFileSync(join(houses, name), bytes);
  const office = openOffice({ shell: 'loopback', folder: houses, ownFolder: join(place, 'own') });
  const troubles: string[] = [];
  const opened = new Set<string>();
  for (const [index, trial] of trials.entries()) {
    const looked = await lookedAt(office, trial, index);
    if (looked.opened) opened.add(trial.name);
    if (looked.trouble !== null) troubles.push(`${trial.which}: ${looked.trouble}`);
  }
  const listed = await office.call('list-houses', {});
  if (!listed.ok || (listed.value as readonly unknown[]).length !== trials.length) troubles.push(`of ${trials.map(({ which }) => which).join(' / ')}: not all are listed, ${JSON.stringify(listed)}`);
  await office.close();
  for (const { name, bytes, which } of trials) {
    const isSame = hashOf(readFileSync(join(houses, name))) === hashOf(bytes);
    if (!isSame && !(mayBecomeNewer && opened.has(name))) troubles.push(`${which}: the file was changed`);
  }
  const beside = readdirSync(houses).filter((name) => !trials.some((trial) => trial.name === name) && !(mayBecomeNewer && name === 'Struckline back-ups'));
  if (beside.length > 0) troubles.push(`of ${trials.map(({ which }) => which).join(' / ')}: left behind ${beside.join(', ')}`);
  rmSync(place, { recursive: true });
  return { opened: opened.size, troubles };
}

describe('a house file that is damaged anywhere', () => {
  it.each(KINDS)('never ends the app, is never changed and is always told in words: %s', async (kind) => {
    const others = Object.values(files);
    const seeds = seedsOf(SEEDS_THAT_FAILED[kind]!, COUNT);
    const troubles: string[] = [];
    let opened = 0;
    for (let from = 0; from < seeds.length; from += BATCH) {
      const trials = seeds.slice(from, from + BATCH).map((seed, index): Trial => {
        const { bytes, how } = damaged(files[kind]!, others, chanceOf(seed));
        return { name: `House ${from + index}.struckline`, bytes, which: `${kind}, seed ${seed} (${how})` };
      });
      const tried = await tryAll(trials, kind === 'older');
      opened += tried.opened;
      troubles.push(...tried.troubles);
    }
    expect(troubles).toEqual([]);
    // Else the damage is so great, or so small, that nothing is tried.
    expect(opened).toBeGreaterThan(0);
    expect(opened).toBeLessThan(seeds.length);
  });

  it('and one that is not is opened and stays as it is', async () => {
    const trials = ['demo', 'edited', 'pictured'].map((kind): Trial => ({ name: `${kind}.struckline`, bytes: files[kind]!, which: kind }));
    expect(await tryAll(trials, false)).toEqual({ opened: 3, troubles: [] });
  });

  it('keeps no other house from the list, nor does what is no file at all', async () => {
    const place = mkdtempSync(join(folder, 'listed-'));
    writeFileSync(join(place, 'Good.struckline'), files['demo']!);
    writeFileSync(join(place, 'Cut.struckline'), files['demo']!.subarray(0, 20_000));
    writeFileSync(join(place, 'Empty.struckline'), '');
    mkdirSync(join(place, 'Folder.struckline'));
    symlinkSync(join(place, 'nowhere'), join(place, 'Gone.struckline'));
    const office = openOffice({ shell: 'loopback', folder: place, ownFolder: join(place, 'own') });
    const reply = await office.call('list-houses', {});
    const listed = (reply.ok ? reply.value : []) as readonly HouseListing[];
    await office.close();
    expect(listed.map(({ file, name, trouble }) => [file, name, trouble]).toSorted()).toEqual([
      ['Cut.struckline', null, 'Cut.struckline is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.'],
      ['Empty.struckline', null, 'Empty.struckline is empty; it holds no house. Nothing was changed. A back-up may still have it.'],
      ['Folder.struckline', null, 'Folder.struckline is not a house file. Nothing was changed.'],
      ['Gone.struckline', null, 'Gone.struckline is not there.'],
      ['Good.struckline', demoHouse().name, null],
    ]);
  });

  it.each(['null', '{}', '[1]', '[null]', '[{"table":"edit","id":"1","before":null,"after":null}]', '[{"table":"room","id":1,"before":null,"after":null}]', '[{"table":"room","id":"x","before":"","after":null}]', '[{"table":"room","id":"x","before":{"position":"0","facts":1},"after":null}]'])('by a record of an edit that says %s is neither undone nor done again by it', async (changes) => {
    const place = mkdtempSync(join(folder, 'undone-'));
    const path = join(place, 'House.struckline');
    writeFileSync(path, files['edited']!);
    const database = new Database(path);
    database.prepare('update edit set changes = ?').run(changes);
    const revision = database.prepare('select revision from house').pluck().get() as number;
    database.exec('insert into edit select max(number) + 1, name, changes, 1 from edit');
    database.close();
    const office = openOffice({ shell: 'loopback', folder: place, ownFolder: join(place, 'own') });
    const replies = [await office.call('undo', { file: 'House.struckline', revision }), await office.call('redo', { file: 'House.struckline', revision })];
    const after = await office.call('open-house', { file: 'House.struckline' });
    await office.close();
    expect(replies.map((reply) => !reply.ok && reply.error.message)).toEqual(["This can't be undone, as the record of it is damaged; nothing was changed.", "This can't be done again, as the record of it is damaged; nothing was changed."]);
    expect(after).toMatchObject({ ok: true, value: { revision } });
  });

  it('by a photo that is another than was put there shows none in its place and says which', async () => {
    const place = mkdtempSync(join(folder, 'photos-'));
    writeFileSync(join(place, 'House.struckline'), files['pictured']!);
    const database = new Database(join(place, 'House.struckline'));
    database.exec("update photo_image set image = replace(image, 'PPPP', 'QQQQ') where length(image) < 10000");
    database.close();
    const office = openOffice({ shell: 'loopback', folder: place, ownFolder: join(place, 'own') });
    const whole = await office.call('export-document', { file: 'House.struckline' });
    const opened = await office.call('open-house', { file: 'House.struckline' });
    const images = opened.ok ? (opened.value as OpenedHouse).house.photos!.map(({ image }) => image) : [];
    const shown = await Promise.all(images.map((image) => office.call('read-photo', { file: 'House.struckline', image })));
    await office.close();
    expect(whole).toMatchObject({ ok: false, error: { code: 'not-a-house', details: [{ path: expect.stringMatching(/^photos\[\d\]\.image$/), message: 'is missing from the house file, or damaged in it' }] } });
    expect(shown.filter(({ ok }) => ok)).toHaveLength(2);
    expect(shown.find(({ ok }) => !ok)).toMatchObject({ error: { message: 'This house file keeps no such photo.' } });
  });
});
