import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Host, HostFacts } from '../../shared-core/contract/index.ts';
import type { PaperForm, PaperKind } from '../../shared-core/plan/index.ts';
import { type Connection, errorOf, valueOf } from './contract-suite.ts';

/** What the window may rely on where papers are made of a house. */
export function describePapers(shell: HostFacts['shell'], connect: (folder: string) => Promise<Connection>): void {
  describe(`papers over ${shell}`, () => {
    let folder: string;
    let connection: Connection;
    let host: Host;

    beforeEach(async () => {
      folder = mkdtempSync(join(tmpdir(), 'struckline-papers-'));
      connection = await connect(join(folder, 'houses'));
      host = connection.host;
    });
    afterEach(async () => {
      await connection.close();
      rmSync(folder, { recursive: true });
    });

    /** Calls as no honest window would. */
    const callBadly = (argument: unknown) => host.call('write-paper', argument as Parameters<typeof host.call<'write-paper'>>[1]);

    test('papers go out as bytes that are the same again, and none where nothing is to write or of another name', async () => {
      const { file, house, revision } = valueOf(await host.call('create-demo', {}));
      const write = (kind: PaperKind, form: PaperForm, of: string | null = null) => host.call('write-paper', { file, paper: { kind, of }, form, size: 'a4' });
      const sheets = valueOf(await write('job-sheets', 'pdf'));
      expect(sheets).toMatchObject({ fileName: expect.stringMatching(/\.pdf$/), type: 'application/pdf', revision, unset: [] });
      expect(Buffer.from(sheets.bytes, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
      expect(valueOf(await write('job-sheets', 'pdf'))).toEqual(sheets);
      expect(valueOf(await host.call('write-paper', { file, paper: { kind: 'job-sheets', of: null }, form: 'pdf', size: 'letter' })).bytes).not.toBe(sheets.bytes);
      expect(errorOf(await write('job-sheets', 'csv'))).toMatchObject({ code: 'refused', message: 'There is nothing to write on this paper yet.' });
      expect(errorOf(await write('job-sheet', 'pdf', 'no such room')).code).toBe('refused');
      const supplier = house.coverings!.find((one) => one.supplier !== undefined)!.supplier!;
      expect(Buffer.from(valueOf(await write('order', 'text', supplier)).bytes, 'base64').toString()).toContain(house.name);
      for (const bad of [{ kind: 'poster', of: null }, { kind: 'order' }, { kind: 'quote', of: '../x'.repeat(40) }]) expect(errorOf(await callBadly({ file, paper: bad, form: 'pdf', size: 'a4' })).code).toBe('bad-argument');
      expect(errorOf(await callBadly({ file, paper: { kind: 'quote', of: null }, form: 'docx', size: 'a4' })).code).toBe('bad-argument');
      expect(errorOf(await callBadly({ file, paper: { kind: 'quote', of: null }, form: 'pdf', size: 'a3' })).code).toBe('bad-argument');
    });

    test('a paper is put into a folder beside the house file, in place of the one before', async () => {
      const { file } = valueOf(await host.call('create-demo', {}));
      const argument = { file, paper: { kind: 'quote', of: null }, form: 'pdf', size: 'letter' } as const;
      const { bytes, fileName } = valueOf(await host.call('write-paper', argument));
      const saved = valueOf(await host.call('save-paper', argument));
      expect(saved).toEqual({ folder: join(folder, 'houses', file.replace('.struckline', ', papers')), fileName });
      expect(readFileSync(join(saved.folder, fileName)).toString('base64')).toBe(bytes);
      writeFileSync(join(saved.folder, fileName), 'old');
      expect(valueOf(await host.call('save-paper', argument))).toEqual(saved);
      expect(readFileSync(join(saved.folder, fileName)).toString('base64')).toBe(bytes);
      expect(readdirSync(saved.folder)).toEqual([fileName]);
      expect(errorOf(await host.call('save-paper', { ...argument, form: 'csv' })).code).toBe('refused');
      rmSync(saved.folder, { recursive: true });
      writeFileSync(saved.folder, 'in the way');
      expect(errorOf(await host.call('save-paper', argument))).toMatchObject({ code: 'host-failure', message: expect.stringContaining(`could not be put into ${saved.folder}`) });
      expect(readFileSync(saved.folder, 'utf8')).toBe('in the way');
      expect(valueOf(await host.call('list-houses', {})).map((one) => one.file)).toEqual([file]);
    });

    test('papers of two houses that are asked for at once are each of their own, and of the house as it is by then', async () => {
      const one = valueOf(await host.call('create-demo', {}));
      const other = valueOf(await host.call('create-demo', {}));
      const renamed = valueOf(await host.call('edit-house', { file: other.file, revision: other.revision, edit: { kind: 'change-house', facts: { name: 'Elsewhere' } } }));
      const write = (file: string) => host.call('write-paper', { file, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' });
      const [first, second, third] = (await Promise.all([write(one.file), write(other.file), write(one.file)])).map(valueOf);
      expect([first!.fileName, second!.fileName]).toEqual([`House record, ${one.house.name}.pdf`, 'House record, Elsewhere.pdf']);
      expect([first!.revision, second!.revision]).toEqual([one.revision, renamed.revision]);
      expect(third).toEqual(first);
      valueOf(await host.call('undo', { file: other.file, revision: renamed.revision }));
      expect(valueOf(await write(other.file)).fileName).toBe(first!.fileName);
    });

    test('papers that are given up are said to be, and the next is made', async () => {
      const { file } = valueOf(await host.call('create-demo', {}));
      const argument = { file, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' } as const;
      const waiting = host.call('write-paper', argument);
      let isAnswered = false;
      void waiting.then(() => (isAnswered = true));
      // The call has to be there before it can be given up; to plan a house takes longer than any of these.
      while (!isAnswered) valueOf(await host.call('stop-papers', { file }));
      expect(errorOf(await waiting)).toMatchObject({ code: 'stopped', message: expect.stringContaining('given up') });
      expect(valueOf(await host.call('stop-papers', { file }))).toBeNull();
      expect(valueOf(await host.call('write-paper', argument)).type).toBe('application/pdf');
    });
  });
}
