import { execFile } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { extractAll, listPackage } from '@electron/asar';
import { validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import configuration from '../../build-resources/electron-builder.ts';
import { IS_LONG } from '../share-of.ts';
import { EXPECTED_FUSES, makeProgram, readFuses } from './fuses.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const run = promisify(execFile);

const NO_LOG = { isEnabled: false } as Parameters<typeof validateConfiguration>[1];
const validate = async (changes: object) => validateConfiguration(structuredClone({ ...configuration, ...changes }), NO_LOG);

describe('how the app is packed', () => {
  test('is written as the schema of electron-builder has it', async () => {
    await expect(validate({})).resolves.toBeUndefined();
  });

  test.each<[string, object]>([
    ['a fuse of another name', { electronFuses: { runAsNod: false } }],
    ['a fuse that is no yes or no', { electronFuses: { runAsNode: 'off' } }],
    ['a key that there is not', { autoUpdate: false }],
    ['a processor that there is not', { linux: { target: [{ target: 'deb', arch: 'x65' }] } }],
  ])('would be refused with %s, so the schema is looked at', async (_what, changes) => {
    await expect(validate(changes)).rejects.toThrow(/configuration/i);
  });

  test('updates nothing by itself', () => {
    const { dependencies, devDependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { dependencies: object; devDependencies: object };
    expect(configuration.publish).toBeNull();
    expect(Object.keys({ ...dependencies, ...devDependencies })).not.toContain('electron-updater');
    expect([configuration.nsis?.differentialPackage, configuration.dmg?.writeUpdateInfo]).toEqual([false, false]);
  });

  test('takes the ending of house files on every system', () => {
    expect(configuration.fileAssociations).toMatchObject([{ ext: 'struckline', mimeType: 'application/vnd.struckline.house', role: 'Editor' }]);
    expect(configuration.nsis?.perMachine).toBe(true);
  });

  test('names no identity to sign with, and gives up nothing of the hardened runtime but what V8 needs', () => {
    expect(JSON.stringify(configuration)).not.toMatch(/"(identity|certificate\w*|cscLink|sign|notarize)":/i);
    expect(configuration.mac).toMatchObject({ hardenedRuntime: true });
    for (const path of [configuration.mac?.entitlements, configuration.mac?.entitlementsInherit]) {
      expect(readFileSync(join(ROOT, path ?? ''), 'utf8').match(/(?<=<key>).*(?=<\/key>)/g)).toEqual(['com.apple.security.cs.allow-jit']);
    }
  });
});

// The packing itself, over a stand-in for Electron's runtime, which can be fetched from outside alone.
describe.skipIf(!IS_LONG)('a packed app (packed by test:long)', () => {
  let project: string;
  /** Elsewhere, so that no package of the checkout is found from it. */
  let elsewhere: string;
  let packed: string;
  const prebuild = `node_modules/better-sqlite3/prebuilds/linux-${process.arch}.node`;

  beforeAll(async () => {
    project = mkdtempSync(join(tmpdir(), 'struckline-packed-'));
    elsewhere = mkdtempSync(join(tmpdir(), 'struckline-unpacked-'));
    for (const name of ['package.json', 'package-lock.json', 'LICENSE']) copyFileSync(join(ROOT, name), join(project, name));
    for (const name of ['node_modules', 'build-resources']) symlinkSync(join(ROOT, name), join(project, name));
    const program = (name: string, ...argv: readonly string[]) => run(process.execPath, [join(ROOT, 'node_modules', name), ...argv], { cwd: ROOT });
    await program('electron-vite/bin/electron-vite.js', 'build', '--config', 'test/desktop/main-alone.vite.config.ts', '--ignoreConfigWarning', '--outDir', join(project, 'out'), '--logLevel', 'error');
    mkdirSync(join(project, 'out', 'renderer'));
    writeFileSync(join(project, 'out', 'renderer', 'index.html'), '<!doctype html><title>window</title>');
    mkdirSync(join(project, 'runtime', 'resources'), { recursive: true });
    makeProgram(join(project, 'runtime', 'electron'));
    const config = ['--config', join(ROOT, 'build-resources', 'electron-builder.ts'), '-c.electronDist', join(project, 'runtime'), '--publish', 'never'];
    await program('electron-builder/out/cli/cli.js', '--linux', '--dir', `--${process.arch}`, '--projectDir', project, ...config);
    packed = join(project, 'out', 'packed', `linux${process.arch === 'x64' ? '' : `-${process.arch}`}-unpacked`);
  });
  afterAll(() => [project, elsewhere].forEach((folder) => rmSync(folder, { recursive: true })));

  test('has every fuse as it should be, which the runtime had not', async () => {
    const before = await readFuses(join(project, 'runtime', 'electron'));
    expect(before).toMatchObject({ RunAsNode: 'on', OnlyLoadAppFromAsar: 'off', GrantFileProtocolExtraPrivileges: 'on' });
    expect(await readFuses(join(packed, 'struckline'))).toEqual(EXPECTED_FUSES);
  });

  test('holds what was built, one package and its one binary, and nothing else', () => {
    const files = listPackage(join(packed, 'resources', 'app.asar'), { isPack: false }).map((path) => path.slice(1));
    expect(files).toEqual(expect.arrayContaining(['package.json', 'LICENSE', 'out/main/main.js', 'out/preload/preload.cjs', 'out/renderer/index.html', prebuild]));
    expect(new Set(files.map((path) => path.split('/').slice(0, 2).join('/')))).toEqual(
      new Set(['LICENSE', 'package.json', 'out', 'out/main', 'out/preload', 'out/renderer', 'node_modules', 'node_modules/better-sqlite3']),
    );
    expect(files.filter((path) => path.endsWith('.node'))).toEqual([prebuild]);
  });

  test('keeps that binary alone outside of the archive whose integrity is checked', async () => {
    const { stdout } = await run('find', [join(packed, 'resources', 'app.asar.unpacked'), '-type', 'f']);
    expect(stdout.trim().split('\n')).toEqual([join(packed, 'resources', 'app.asar.unpacked', prebuild)]);
  });

  test('needs nothing else to keep a house and to make its papers', async () => {
    const app = join(elsewhere, 'app');
    extractAll(join(packed, 'resources', 'app.asar'), app);
    const office = /import\("\.\/(office-[^"]+)"\)/.exec(readFileSync(join(app, 'out', 'main', 'main.js'), 'utf8'))?.[1];
    writeFileSync(
      join(app, 'keep-a-house.mjs'),
      `const { openOffice } = await import('./out/main/${office}');
       const office = openOffice({ shell: 'desktop', folder: process.argv[2], ownFolder: process.argv[2] });
       const made = await office.call('create-demo', {});
       const paper = await office.call('write-paper', { file: made.value.file, paper: { kind: 'record', of: null }, form: 'pdf', size: 'a4' });
       process.stdout.write(JSON.stringify([made.value.file, paper.error ?? Buffer.from(paper.value.bytes, 'base64').subarray(0, 5).toString()]));
       await office.close();`,
    );
    const houses = join(elsewhere, 'houses');
    const { stdout } = await run(process.execPath, [join(app, 'keep-a-house.mjs'), houses]);
    const [file, begins] = JSON.parse(stdout) as readonly string[];
    expect(file).toMatch(/\.struckline$/);
    expect(existsSync(join(houses, file!))).toBe(true);
    expect(begins).toBe('%PDF-');
  });
});
