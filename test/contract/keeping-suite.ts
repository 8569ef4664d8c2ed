import { mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { HostFacts } from '../../shared-core/contract/index.ts';
import type { Edit } from '../../shared-core/house/index.ts';
import { type Connection, errorOf, valueOf } from './contract-suite.ts';

const FILE = 'Home.struckline';
const nameTo = (name: string): Edit => ({ kind: 'change-house', facts: { name } });

/** What the window may rely on where a house file is copied, backed up, damaged or taken away. */
export function describeKeeping(shell: HostFacts['shell'], connect: (folder: string) => Promise<Connection>): void {
  describe(`a house file kept over ${shell}`, () => {
    let folder: string;
    let houses: string;
    let connection: Connection;

    beforeEach(async () => {
      folder = mkdtempSync(join(tmpdir(), 'struckline-keeping-'));
      houses = join(folder, 'houses');
      connection = await connect(houses);
    });
    afterEach(async () => {
      await connection.close();
      rmSync(folder, { recursive: true });
    });

    const call: Connection['host']['call'] = (method, argument) => connection.host.call(method, argument);
    const again = async (between = () => {}) => {
      await connection.close();
      between();
      connection = await connect(houses);
    };
    const rename = async (revision: number, name: string) => valueOf(await call('edit-house', { file: FILE, revision, edit: nameTo(name) }));
    /** A house of yesterday that was worked on today, so that it has a back-up of yesterday. */
    const backedUp = async () => {
      const { revision } = valueOf(await call('create-house', { name: 'Home', lengths: 'imperial', currency: 'USD' }));
      await rename(revision, 'Yesterday');
      const yesterday = Date.now() / 1_000 - 86_400;
      await again(() => utimesSync(join(houses, FILE), yesterday, yesterday));
      const opened = valueOf(await call('open-house', { file: FILE }));
      return rename(opened.revision, 'Today');
    };
    const backUps = async () => valueOf(await call('list-back-ups', { file: FILE })).backUps;

    test('has no back-up at first', async () => {
      valueOf(await call('create-house', { name: 'Home', lengths: 'imperial', currency: 'USD' }));
      expect(valueOf(await call('list-back-ups', { file: FILE }))).toEqual({ backUps: [], folder: join(houses, 'Struckline back-ups', 'Home'), trouble: null });
    });

    test('has a back-up of what stood there before the work of another hour, and it is no house of its own', async () => {
      await backedUp();
      expect(await backUps()).toEqual([{ name: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ work\.struckline$/), made: expect.stringMatching(/Z$/), reason: 'work', holds: { house: 'Yesterday', rooms: 0, last: 'change name of the house' } }]);
      expect(valueOf(await call('list-houses', {})).map(({ name }) => name)).toEqual(['Today']);
    });

    test('is restored, can be edited at once, and what was there can be had back', async () => {
      const today = await backedUp();
      const [backUp] = await backUps();
      const restored = valueOf(await call('restore-back-up', { file: FILE, backUp: backUp!.name }));
      expect(restored).toMatchObject({ file: FILE, house: { name: 'Yesterday' }, undo: 'change name of the house', lookOnly: null });
      expect(restored.revision).toBeGreaterThan(today.revision);
      // A window that knew the house as it was is told so.
      expect(errorOf(await call('edit-house', { file: FILE, revision: today.revision, edit: nameTo('Stale') })).code).toBe('changed-elsewhere');
      expect(valueOf(await call('house-since', { file: FILE, revision: today.revision }))?.house.name).toBe('Yesterday');
      await rename(restored.revision, 'Onward');
      const replaced = (await backUps()).find(({ reason }) => reason === 'replaced');
      expect(replaced?.holds).toMatchObject({ house: 'Today' });
      expect(valueOf(await call('restore-back-up', { file: FILE, backUp: replaced!.name })).house.name).toBe('Today');
    });

    test('is restored where it was damaged beyond reading or is gone', async () => {
      await backedUp();
      const [backUp] = await backUps();
      await again(() => writeFileSync(join(houses, FILE), 'nothing of a house'));
      expect(errorOf(await call('open-house', { file: FILE })).message).toBe('Home.struckline is not a house file. Nothing was changed.');
      expect(valueOf(await call('restore-back-up', { file: FILE, backUp: backUp!.name })).house.name).toBe('Yesterday');
      await again(() => rmSync(join(houses, FILE)));
      expect(valueOf(await call('restore-back-up', { file: FILE, backUp: backUp!.name })).house.name).toBe('Yesterday');
    });

    test('is left as it is where the back-up is none', async () => {
      await backedUp();
      const before = readFileSync(join(houses, FILE));
      const [backUp] = await backUps();
      writeFileSync(join(houses, 'Struckline back-ups', 'Home', backUp!.name), 'spoilt');
      expect((await backUps())[0]?.holds).toBeNull();
      expect(errorOf(await call('restore-back-up', { file: FILE, backUp: backUp!.name }))).toMatchObject({ code: 'not-a-house', details: [{ message: expect.stringMatching(/is not a house file/) }] });
      expect(errorOf(await call('restore-back-up', { file: FILE, backUp: '2026-03-02T09-00-00Z work.struckline' })).code).toBe('not-a-house');
      expect(readFileSync(join(houses, FILE)).equals(before)).toBe(true);
      expect(valueOf(await call('open-house', { file: FILE })).house.name).toBe('Today');
    });

    test.each(['../Home.struckline', '2026-03-02T09-00-00Z work.struckline/../../x', '', '/etc/passwd', '2026-03-02T09-00-00Z work.STRUCKLINE'])('has no back-up called %j', async (backUp) => {
      await backedUp();
      expect(errorOf(await call('restore-back-up', { file: FILE, backUp })).code).toBe('bad-argument');
    });

    test('is copied with all that can be undone, under a name that is free', async () => {
      await backedUp();
      const copy = valueOf(await call('copy-house', { file: FILE }));
      expect(copy).toMatchObject({ file: 'Today.struckline', house: { name: 'Today' }, undo: 'change name of the house', lookOnly: null });
      expect(valueOf(await call('copy-house', { file: FILE })).file).toBe('Today 2.struckline');
      valueOf(await call('edit-house', { file: copy.file, revision: copy.revision, edit: nameTo('Elsewhere') }));
      expect(valueOf(await call('open-house', { file: FILE })).house.name).toBe('Today');
      expect(readdirSync(houses).sort()).toEqual(['Home.struckline', 'Struckline back-ups', 'Today 2.struckline', 'Today.struckline']);
    });

    test('is copied twice at once to two files', async () => {
      await backedUp();
      const copies = await Promise.all([call('copy-house', { file: FILE }), call('copy-house', { file: FILE })]);
      expect(copies.map((reply) => valueOf(reply).file).sort()).toEqual(['Today 2.struckline', 'Today.struckline']);
    });

    test('that was replaced while it was open takes no edit that would be lost, and is opened as it is now', async () => {
      const { revision } = await backedUp();
      valueOf(await call('create-house', { name: 'Other', lengths: 'metric', currency: 'EUR' }));
      renameSync(join(houses, 'Other.struckline'), join(houses, FILE));
      expect(errorOf(await call('edit-house', { file: FILE, revision, edit: nameTo('Lost') })).code).toBe('changed-elsewhere');
      expect(valueOf(await call('open-house', { file: FILE })).house.name).toBe('Other');
    });

    test('of an older form is listed as it is and gets the new form when it is opened', async () => {
      mkdirSync(houses, { recursive: true });
      const old = readFileSync(join(import.meta.dirname, '..', 'store', 'frozen', 'version-1.struckline'));
      writeFileSync(join(houses, FILE), old);
      expect(valueOf(await call('list-houses', {}))).toMatchObject([{ name: 'Frozen house', trouble: null }]);
      expect(readFileSync(join(houses, FILE)).equals(old)).toBe(true);
      expect(valueOf(await call('open-house', { file: FILE }))).toMatchObject({ house: { name: 'Frozen house' }, lookOnly: null });
      expect((await backUps()).map(({ reason, holds }) => [reason, holds?.house])).toEqual([['form', 'Frozen house']]);
    });
  });
}
