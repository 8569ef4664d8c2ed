import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ErrorCode, type Host, type HostFacts, LARGEST_CALL_BYTES, LARGEST_HOUSE_FILE_BYTES, METHODS, type OpenedHouse, type Reply, type ReplyError, type Settings, USUAL_SETTINGS } from '../../shared-core/contract/index.ts';
import { type Edit, LARGEST_DOCUMENT_CHARACTERS } from '../../shared-core/house/index.ts';

export interface Connection {
  readonly host: Host;
  /** Opens a house by its path, as the shell does for its user. */
  openPath(path: string): Promise<Reply<OpenedHouse>>;
  close(): Promise<void>;
}

const STUDY: Edit = {
  kind: 'add-room',
  room: {
    id: 'study',
    name: 'Study',
    walls: [
      { id: 'A', length: '12\' 4 1/2"', height: '8 ft' },
      { id: 'B', length: '3.76 m', height: '2.44 m', openings: [{ id: 'door', kind: 'door', from: '10 in', width: '32 in', height: '80 in' }] },
    ],
  },
};
const OPENING_PAST_THE_END: Edit = { kind: 'add-opening', room: 'study', wall: 'A', opening: { id: 'late', kind: 'window', from: '12 ft', width: '3 ft', height: '4 ft', sill: '3 ft' } };
const FILE = 'Home.struckline';

export function ownFolderBeside(houses: string): string {
  return join(houses, '..', 'own');
}

/** What the window may rely on, whatever lies between it and the office. */
export function describeContract(shell: HostFacts['shell'], connect: (folder: string) => Promise<Connection>): void {
  describe(`the contract over ${shell}`, () => {
    let folder: string;
    let connection: Connection;
    let host: Host;

    beforeEach(async () => {
      folder = mkdtempSync(join(tmpdir(), 'struckline-contract-'));
      connection = await connect(join(folder, 'houses'));
      host = connection.host;
    });
    afterEach(async () => {
      await connection.close();
      rmSync(folder, { recursive: true });
    });

    const create = async () => valueOf(await host.call('create-house', { name: 'Home', lengths: 'imperial', currency: 'USD' }));
    const open = async (file = FILE) => valueOf(await host.call('open-house', { file }));
    const edit = (revision: number, change: Edit) => host.call('edit-house', { file: FILE, revision, edit: change });
    const withStudy = async () => valueOf(await edit((await create()).revision, STUDY));
    /** Calls as no honest window would. */
    const callBadly = (method: string, argument: unknown) => host.call(method as 'open-house', argument as { file: string });

    test('describes its host', async () => {
      expect(valueOf(await host.call('describe-host', {}))).toEqual({ shell, folder: join(folder, 'houses'), version: expect.stringMatching(/^\d+\.\d+\.\d+/), language: 'en', firstFile: null });
    });

    test('a folder with nothing in it lists no houses', async () => {
      expect(valueOf(await host.call('list-houses', {}))).toEqual([]);
    });

    test('a house that is created is opened, listed and on disk', async () => {
      const created = await create();
      expect(created).toMatchObject({ file: FILE, house: { format: 'struckline-house', version: 1, name: 'Home', lengths: 'imperial', currency: 'USD' }, undo: null, redo: null });
      expect(await open()).toEqual(created);
      expect(valueOf(await host.call('list-houses', {}))).toEqual([{ file: FILE, name: 'Home', rooms: 0, trouble: null, changed: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/), folder: null }]);
      expect(existsSync(join(folder, 'houses', FILE))).toBe(true);
    });

    test('two houses of one name become two files', async () => {
      const files = [(await create()).file, (await create()).file];
      expect(new Set(files).size).toBe(2);
      expect(valueOf(await host.call('list-houses', {})).map(({ file }) => file).sort()).toEqual(files.sort());
    });

    test('an edit is there when the house is opened again, lengths as they were typed', async () => {
      const created = await create();
      const edited = valueOf(await edit(created.revision, STUDY));
      expect(edited.revision).toBeGreaterThan(created.revision);
      expect(edited.house.rooms?.[0]).toMatchObject({ id: 'study', walls: [{ length: '12\' 4 1/2"' }, { length: '3.76 m', openings: [{ id: 'door', width: '32 in' }] }] });
      expect(await open()).toEqual(edited);
      await connection.close();
      connection = await connect(join(folder, 'houses'));
      host = connection.host;
      expect(await open()).toEqual(edited);
      expect(valueOf(await host.call('list-houses', {}))).toMatchObject([{ name: 'Home', rooms: 1 }]);
    });

    test('an edit of a revision that is no longer the newest is not made', async () => {
      const { revision } = await create();
      const edited = valueOf(await edit(revision, STUDY));
      for (const old of [revision, edited.revision + 1]) {
        expect(errorOf(await edit(old, { kind: 'change-house', facts: { name: 'Other' } }))).toMatchObject({ code: 'changed-elsewhere', details: [] });
      }
      expect(errorOf(await host.call('undo', { file: FILE, revision }))).toMatchObject({ code: 'changed-elsewhere' });
      expect(await open()).toEqual(edited);
    });

    test('of two edits at once one is made and the other is told so', async () => {
      const { revision } = await withStudy();
      const replies = await Promise.all(['One', 'Two'].map((name) => edit(revision, { kind: 'change-house', facts: { name } })));
      const made = replies.filter((reply) => reply.ok);
      expect(made).toHaveLength(1);
      expect(replies.filter((reply) => !reply.ok).map((reply) => errorOf(reply).code)).toEqual(['changed-elsewhere']);
      expect(await open()).toEqual(valueOf(made[0]!));
    });

    test('facts that contradict one another are refused with the place and the reason, and nothing is changed', async () => {
      const before = await withStudy();
      const error = errorOf(await edit(before.revision, OPENING_PAST_THE_END));
      expect(error.code).toBe('refused');
      expect(error.details).toEqual([{ path: 'rooms[0].walls[0].openings[0].width', message: expect.stringMatching(/past the end of wall A/) }]);
      expect(errorOf(await edit(before.revision, { kind: 'remove-room', room: 'attic' }))).toMatchObject({ code: 'refused', details: [{ message: expect.stringContaining('attic') }] });
      expect(await open()).toEqual(before);
    });

    test('undo and redo say what they would do, and do it', async () => {
      const created = await create();
      const withRoom = valueOf(await edit(created.revision, STUDY));
      expect([withRoom.undo, withRoom.redo]).toEqual(['add room Study', null]);
      const undone = valueOf(await host.call('undo', { file: FILE, revision: withRoom.revision }));
      expect(undone.house).toEqual(created.house);
      expect([undone.undo, undone.redo]).toEqual([null, 'add room Study']);
      expect(undone.revision).toBeGreaterThan(withRoom.revision);
      const redone = valueOf(await host.call('redo', { file: FILE, revision: undone.revision }));
      expect(redone.house).toEqual(withRoom.house);
      expect([redone.undo, redone.redo]).toEqual(['add room Study', null]);
      expect(errorOf(await host.call('redo', { file: FILE, revision: redone.revision }))).toMatchObject({ code: 'refused' });
      expect(await open()).toEqual(redone);
    });

    test('a new edit takes the place of what was undone', async () => {
      const { revision } = await withStudy();
      const undone = valueOf(await host.call('undo', { file: FILE, revision }));
      expect(valueOf(await edit(undone.revision, { kind: 'change-house', facts: { name: 'Other' } })).redo).toBeNull();
    });

    test.each(['', 'no-such-method', 'constructor', '__proto__', 'toString', 'open-house ', 'OPEN-HOUSE', '../open-house', 'open-house?x=1', 'ünïcode', '%00', '%', 'x'.repeat(5000)])('the method %j is not understood', async (method) => {
      expect(errorOf(await callBadly(method, { file: FILE })).code).toBe('bad-argument');
    });

    test.each(METHODS)('%s does not understand an argument that is none of its own', async (method) => {
      const before = await withStudy();
      const deep = JSON.parse('['.repeat(2_000) + ']'.repeat(2_000)) as unknown;
      const garbage: unknown[] = [null, 0, 1.5, true, '', 'text', [], [{}], { nonsense: 1 }, { file: FILE, nonsense: 1 }, { file: 7 }, { file: [FILE] }, { file: { $gt: '' } }, deep, { file: FILE, revision: deep, edit: deep }];
      for (const argument of garbage) expect(errorOf(await callBadly(method, argument)).code).toBe('bad-argument');
      expect(await open()).toEqual(before);
    });

    test.each<[string, unknown]>([
      ['an edit of no kind', { file: FILE, revision: 1, edit: {} }],
      ['an edit of an unknown kind', { file: FILE, revision: 1, edit: { kind: 'explode' } }],
      ['a length without its unit', { file: FILE, revision: 1, edit: { kind: 'add-room', room: { id: 'a', name: 'A', walls: [{ id: 'A', length: '12', height: '8 ft' }] } } }],
      ['a fact that is nested without end', { file: FILE, revision: 1, edit: { kind: 'change-house', facts: { name: JSON.parse('['.repeat(2_000) + ']'.repeat(2_000)) } } }],
      ['a negative revision', { file: FILE, revision: -1, edit: STUDY }],
      ['half a revision', { file: FILE, revision: 0.5, edit: STUDY }],
      ['a revision beyond the integers', { file: FILE, revision: 1e300, edit: STUDY }],
      ['no revision', { file: FILE, edit: STUDY }],
    ])('%s is not understood', async (_what, argument) => {
      const before = await create();
      const error = errorOf(await callBadly('edit-house', argument));
      expect(error.code).toBe('bad-argument');
      expect(error.details.length).toBeGreaterThan(0);
      expect(await open()).toEqual(before);
    });

    test.each([
      '../Home.struckline',
      '..\\Home.struckline',
      'houses/Home.struckline',
      '/etc/Home.struckline',
      'C:\\Home.struckline',
      'C:Home.struckline',
      '..',
      '.',
      '...struckline',
      '.struckline',
      '.hidden.struckline',
      'Home.struckline/',
      'Home.struckline\u0000',
      'Home\u0000.struckline',
      'Home\n.struckline',
      'Home.json',
      'Home',
      `${'x'.repeat(300)}.struckline`,
      'file:///Home.struckline',
    ])('%j is no name of a house file', async (file) => {
      const { revision } = await create();
      writeFileSync(join(folder, FILE), 'outside');
      const calls = [
        host.call('open-house', { file }),
        host.call('export-document', { file }),
        host.call('edit-house', { file, revision, edit: STUDY }),
        host.call('undo', { file, revision }),
        host.call('redo', { file, revision }),
      ];
      expect((await Promise.all(calls)).map((reply) => errorOf<unknown>(reply).code)).toEqual(calls.map(() => 'bad-argument'));
      expect(readdirSync(folder).sort()).toEqual([FILE, 'houses']);
    });

    test('a house that is not there is said to be so, and is not made', async () => {
      await create();
      const file = 'Other.struckline';
      const calls = [host.call('open-house', { file }), host.call('export-document', { file }), host.call('edit-house', { file, revision: 1, edit: STUDY }), host.call('undo', { file, revision: 1 })];
      expect((await Promise.all(calls)).map((reply) => errorOf<unknown>(reply).code)).toEqual(calls.map(() => 'no-such-house'));
      expect(readdirSync(join(folder, 'houses')).filter((name) => name.endsWith('.struckline'))).toEqual([FILE]);
    });

    test('a file that is no house is listed with its trouble and opened as none', async () => {
      await create();
      writeFileSync(join(folder, 'houses', 'Noise.struckline'), 'no house');
      const listed = valueOf(await host.call('list-houses', {}));
      expect(listed.toSorted((one, other) => one.file.localeCompare(other.file))).toMatchObject([
        { file: FILE, name: 'Home', trouble: null },
        { file: 'Noise.struckline', name: null, trouble: expect.stringMatching(/./) },
      ]);
      expect(errorOf(await host.call('open-house', { file: 'Noise.struckline' })).code).toBe('not-a-house');
    });

    test('a house goes out as a document and comes in as an equal house', async () => {
      await withStudy();
      const exported = valueOf(await host.call('export-document', { file: FILE }));
      expect(exported.fileName).toBe('Home.json');
      const imported = valueOf(await host.call('import-document', { text: exported.text }));
      expect(imported.file).not.toBe(FILE);
      expect(imported).toMatchObject({ undo: null, redo: null, house: { name: 'Home' } });
      expect(valueOf(await host.call('export-document', { file: imported.file })).text).toBe(exported.text);
    });

    test('a photo is put aside: facts point at it, it is read by itself, and goes out with the document', async () => {
      const { revision } = await withStudy();
      const image = `data:image/jpeg;base64,/9j/${'A'.repeat(40_000)}`;
      const added = valueOf(await edit(revision, { kind: 'add-photos', photos: [{ id: 'photo', room: 'study', wall: 'B', caption: 'Damp', image }] }));
      expect(JSON.stringify(added).length).toBeLessThan(10_000);
      const kept = added.house.photos![0]!.image;
      expect(valueOf(await host.call('read-photo', { file: FILE, image: kept }))).toEqual({ image });
      expect(errorOf(await host.call('read-photo', { file: FILE, image: `kept:${'0'.repeat(64)}` })).code).toBe('refused');
      expect(errorOf(await host.call('read-photo', { file: FILE, image: '../photo' })).code).toBe('bad-argument');
      expect(valueOf(await host.call('undo', { file: FILE, revision: added.revision })).undo).toBe('add room Study');
      const redone = valueOf(await host.call('redo', { file: FILE, revision: added.revision + 1 }));
      expect(redone.undo).toBe('add a photo of wall B in Study');
      const exported = valueOf(await host.call('export-document', { file: FILE }));
      expect(exported.text).toContain(image);
      const imported = valueOf(await host.call('import-document', { text: exported.text }));
      expect(imported.house.photos).toEqual(redone.house.photos);
      expect(valueOf(await host.call('export-document', { file: imported.file })).text).toBe(exported.text);
    });

    test.each([
      '',
      'noise',
      '{',
      '[]',
      'null',
      '{"format":"struckline-house","version":2,"name":"Home"}',
      '{"format":"struckline-house","version":1,"name":"Home","rooms":[{"id":"a","name":"A","walls":[{"id":"A","length":"-1 m","height":"8 ft"}]}]}',
      '{"format":"struckline-house","version":1,"name":"Home","__proto__":{"isAdmin":true}}',
      '['.repeat(20_000),
      '['.repeat(20_000) + ']'.repeat(20_000),
      '\u0089PNG\r\n\u001a\n',
      '\ud800',
      'x'.repeat(LARGEST_DOCUMENT_CHARACTERS + 1),
    ])('document %# of noise is not taken, and every fault is told', async (text) => {
      const error = errorOf(await host.call('import-document', { text }));
      expect(error.code).toBe('refused');
      expect(error.details.length).toBeGreaterThan(0);
      for (const { message } of error.details) expect(message).toMatch(/\w/);
      expect(readdirSync(join(folder, 'houses'))).toEqual([]);
    });

    test('a call that is too large is said to be so, and the next one is answered', async () => {
      expect(errorOf(await host.call('import-document', { text: 'x'.repeat(LARGEST_CALL_BYTES) })).code).toBe('too-large');
      expect(await create()).toMatchObject({ file: FILE });
    });

    test('settings are the usual ones until others are saved, and these are there after a start', async () => {
      expect(valueOf(await host.call('read-settings', {}))).toEqual({ settings: USUAL_SETTINGS, trouble: null });
      const settings: Settings = { language: 'de', scheme: 'dark', contrast: 'more', textSize: 150, paper: 'letter', motion: 'none' };
      expect(valueOf(await host.call('save-settings', { settings }))).toEqual({ settings, trouble: null });
      expect(errorOf(await callBadly('save-settings', { settings: { ...settings, textSize: 1000 } }))).toMatchObject({ code: 'bad-argument', details: [{ path: 'settings.textSize' }] });
      await connection.close();
      connection = await connect(join(folder, 'houses'));
      host = connection.host;
      expect(valueOf(await host.call('read-settings', {}))).toEqual({ settings, trouble: null });
    });

    test('settings that can not be read stop nothing', async () => {
      mkdirSync(ownFolderBeside(join(folder, 'houses')));
      writeFileSync(join(ownFolderBeside(join(folder, 'houses')), 'settings.json'), 'noise');
      expect(valueOf(await host.call('read-settings', {}))).toEqual({ settings: USUAL_SETTINGS, trouble: expect.stringContaining('The usual ones hold') });
    });

    test('the house that was worked on last is listed first', async () => {
      const names = ['One', 'Two', 'Three'];
      for (const name of names) valueOf(await host.call('create-house', { name, lengths: 'metric', currency: 'EUR' }));
      for (const [index, name] of names.entries()) utimesSync(join(folder, 'houses', `${name}.struckline`), 0, 1_000 * (index + 1));
      const listed = async () => valueOf(await host.call('list-houses', {})).map(({ name }) => name);
      expect(await listed()).toEqual(['Three', 'Two', 'One']);
      valueOf(await host.call('edit-house', { file: 'One.struckline', revision: 0, edit: STUDY }));
      expect(await listed()).toEqual(['One', 'Three', 'Two']);
      valueOf(await host.call('open-house', { file: 'Two.struckline' }));
      expect(await listed()).toEqual(['One', 'Three', 'Two']);
    });

    test('what changed since a revision is told, and where nothing did, that', async () => {
      const { revision } = await create();
      expect(valueOf(await host.call('house-since', { file: FILE, revision }))).toBeNull();
      const edited = valueOf(await edit(revision, STUDY));
      expect(valueOf(await host.call('house-since', { file: FILE, revision }))).toEqual(edited);
      expect(errorOf(await host.call('house-since', { file: 'Other.struckline', revision })).code).toBe('no-such-house');
    });

    describe('a house elsewhere', () => {
      const path = () => join(folder, FILE);
      const elsewhere = async () => {
        await withStudy();
        renameSync(join(folder, 'houses', FILE), path());
        await connection.close();
        connection = await connect(join(folder, 'houses'));
        host = connection.host;
        return valueOf(await connection.openPath(path()));
      };

      test('is opened by its path, edited, and remembered over the runs', async () => {
        const { file, revision } = await elsewhere();
        expect(file).toMatch(/^elsewhere:[0-9a-f]{16}$/);
        const edited = valueOf(await host.call('edit-house', { file, revision, edit: { kind: 'change-house', facts: { name: 'Away' } } }));
        await connection.close();
        connection = await connect(join(folder, 'houses'));
        host = connection.host;
        expect(valueOf(await host.call('list-houses', {}))).toEqual([{ file, name: 'Away', rooms: 1, trouble: null, changed: expect.any(String), folder }]);
        expect(await open(file)).toEqual(edited);
        expect(valueOf(await host.call('export-document', { file })).fileName).toBe('Home.json');
      });

      test('that is gone is said to be, and is taken off the list', async () => {
        const { file } = await elsewhere();
        rmSync(path());
        expect(valueOf(await host.call('list-houses', {}))).toEqual([{ file, name: 'Home', rooms: 0, trouble: expect.stringMatching(/^Home\.struckline is no longer there/), changed: null, folder }]);
        expect(errorOf(await host.call('open-house', { file }))).toMatchObject({ code: 'no-such-house', message: `Home.struckline is no longer in ${folder}. It may have been moved or renamed.` });
        expect(valueOf(await host.call('forget-house', { file }))).toEqual([]);
        expect(valueOf(await host.call('list-houses', {}))).toEqual([]);
        expect(errorOf(await host.call('open-house', { file })).code).toBe('no-such-house');
      });

      test('that lies in the folder is the same house', async () => {
        await create();
        expect(valueOf(await connection.openPath(join(folder, 'houses', FILE))).file).toBe(FILE);
        expect(valueOf(await host.call('list-houses', {}))).toHaveLength(1);
      });

      test.each(['Home.json', 'None.struckline', 'Noise.struckline'])('%s is refused and not remembered', async (name) => {
        writeFileSync(join(folder, 'Home.json'), '{}');
        writeFileSync(join(folder, 'Noise.struckline'), 'noise');
        expect(errorOf(await connection.openPath(join(folder, name))).message).toContain(name);
        expect(valueOf(await host.call('list-houses', {}))).toEqual([]);
      });

      test.each(['elsewhere:0123456789abcdef', 'elsewhere:', 'elsewhere:../../../etc/x', 'elsewhere:0123456789ABCDEF', '/etc/passwd', FILE])('the made-up word %j opens nothing', async (file) => {
        await elsewhere();
        expect(['no-such-house', 'bad-argument']).toContain(errorOf(await host.call('open-house', { file })).code);
      });
    });

    describe('the bytes of a house file', () => {
      const take = (name: string, bytes: Buffer) => host.call('take-house-file', { name, bytes: bytes.toString('base64') });
      const files = () => readdirSync(join(folder, 'houses')).sort();

      test('are taken in as a copy under a free name, with all that can be undone', async () => {
        const before = await withStudy();
        const taken = valueOf(await take(FILE, readFileSync(join(folder, 'houses', FILE))));
        expect(taken).toEqual({ ...before, file: 'Home 2.struckline' });
        expect(valueOf(await host.call('undo', { file: taken.file, revision: taken.revision })).redo).toBe('add room Study');
        expect(await open()).toEqual(before);
        expect(files()).toEqual(['Home 2.struckline', FILE]);
      });

      test('are refused with a reason where they are no whole house file, and nothing is left behind', async () => {
        await withStudy();
        const good = readFileSync(join(folder, 'houses', FILE));
        const bent = Buffer.from(good);
        bent.fill(0xff, 4096 + 8, 4096 + 2048);
        const [foreign, newer] = [Buffer.from(good), Buffer.from(good)];
        foreign.writeUInt32BE(0x1234, 68);
        newer.writeUInt32BE(999, 60);
        const bad: readonly (readonly [string, Buffer])[] = [['empty', Buffer.alloc(0)], ['noise', Buffer.from('no house')], ['cut short', good.subarray(0, good.length / 2)], ['bent', bent], ['foreign', foreign], ['newer', newer]];
        for (const [what, bytes] of bad) {
          const error = errorOf(await take('Sent.struckline', bytes));
          expect([what, error.code]).toEqual([what, 'not-a-house']);
          expect(error.message).toMatch(/^Sent\.struckline was not taken in; nothing was changed\./);
        }
        expect(files()).toEqual([FILE]);
      });

      test('are refused where the file does more than hold a house', async () => {
        await withStudy();
        const path = join(folder, 'Sent.struckline');
        copyFileSync(join(folder, 'houses', FILE), path);
        const database = new Database(path);
        database.exec('create trigger later after update on house begin delete from room; end');
        database.close();
        expect(errorOf(await take('Sent.struckline', readFileSync(path))).details[0]?.message).toMatch(/another program has changed its form/);
        expect(files()).toEqual([FILE]);
      });

      test('are refused above the limit, in words that say what to do', async () => {
        expect(errorOf(await take('Large.struckline', Buffer.alloc(LARGEST_HOUSE_FILE_BYTES + 1)))).toMatchObject({ code: 'too-large', message: expect.stringMatching(/17 MB.*Copy it into/) });
        expect(files()).toEqual([]);
      });

      test.each([['a/Home.struckline', 'AAAA'], ['Home.json', 'AAAA'], [FILE, 'not base64'], [FILE, 'AA=A']])('named %j as %j are not understood', async (name, bytes) => {
        expect(errorOf(await host.call('take-house-file', { name, bytes }))).toMatchObject({ code: 'bad-argument', details: [{ message: expect.stringMatching(/is not (the name of a house file|base64)/) }] });
      });
    });

    test('the demo is a whole house', async () => {
      const demo = valueOf(await host.call('create-demo', {}));
      expect(demo.house.rooms?.length).toBeGreaterThanOrEqual(6);
      expect(demo).toMatchObject({ undo: null, redo: null });
      expect(await open(demo.file)).toEqual(demo);
    });
  });
}

export function valueOf<Value>(reply: Reply<Value>): Value {
  if (!reply.ok) throw new Error(`${reply.error.code}: ${reply.error.message} ${JSON.stringify(reply.error.details)}`);
  return reply.value;
}

/** The error of a reply that is one in every part. */
export function errorOf<Value>(reply: Reply<Value>): ReplyError & { readonly code: ErrorCode } {
  if (reply.ok) throw new Error(`was answered: ${JSON.stringify(reply.value).slice(0, 200)}`);
  expect(reply).toEqual({ ok: false, error: { code: expect.any(String), message: expect.stringMatching(/\w/), details: expect.any(Array) } });
  return reply.error;
}

