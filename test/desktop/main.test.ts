import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { BRIDGE_NAME } from '../../shared-core/contract/index.ts';
import { demoHouse, makeHouseFile } from '../../src-main/office/index.ts';
import { electronModule, type Exposed } from './electron-module.ts';
import { StandInElectron } from './stand-in.ts';
import { PROTECTIONS } from './starting.ts';

const BEFORE = { argv: process.argv, listeners: ['uncaughtException', 'unhandledRejection'].map((event) => [event, process.listeners(event as 'uncaughtException')] as const) };

let folder: string;
let electron: StandInElectron;
let named: Map<string, string>;
let paths: Map<unknown, string>;
let exposed: Exposed;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-main-'));
  electron = new StandInElectron();
  [named, paths, exposed] = [new Map(), new Map(), new Map()];
  vi.resetModules();
  vi.stubEnv('STRUCKLINE_OWN', join(folder, 'own'));
  vi.stubEnv('STRUCKLINE_HOUSES', join(folder, 'houses'));
});
afterEach(() => {
  electron.calls.app.quit();
  vi.unstubAllEnvs();
  vi.doUnmock('electron');
  process.argv = BEFORE.argv;
  // The shell hears of faults of its whole process, which is the tests' own here.
  for (const [event, known] of BEFORE.listeners) {
    for (const listener of process.listeners(event as 'uncaughtException')) if (!known.includes(listener)) process.removeListener(event, listener);
  }
  rmSync(folder, { recursive: true, force: true });
});

/** Loads the files that Electron itself loads. */
async function start(argv: readonly string[] = [], isPackaged = true): Promise<void> {
  vi.doMock('electron', () => electronModule(electron, { isPackaged, named, paths, exposed }));
  process.argv = ['/struckline', ...argv];
  await import('../../src-main/desktop/main.ts');
  await import('../../src-main/desktop/preload.ts');
}

const untilLoaded = () => expect.poll(() => electron.windows[0]?.webContents.address).toBeTruthy();
const bridge = () => exposed.get(BRIDGE_NAME)!;

describe('the app as Electron loads it', () => {
  test('passes every setting of the checklist to Electron itself', async () => {
    await start();
    await untilLoaded();
    expect(electron.log.slice(0, 2)).toEqual(['enableSandbox', 'registerSchemesAsPrivileged']);
    expect(electron.windows.map(({ options: { webPreferences } }) => webPreferences)).toEqual([
      {
        preload: expect.stringMatching(/[/\\]preload[/\\]preload\.cjs$/),
        ...PROTECTIONS,
      },
    ]);
    expect(electron.isLetThrough('https://struckline.example/')).toBe(false);
    expect(electron.askPermission('media', { isMainFrame: true, requestingUrl: 'app://struckline/' })).toEqual([false, false, false]);
    expect(electron.menu.length).toBeGreaterThan(0);
  });

  test('keeps its profile and the state of its windows in its own folder, and its name its own', async () => {
    await start();
    await untilLoaded();
    expect(Object.fromEntries(named)).toEqual({ name: 'Struckline', userData: join(folder, 'own', 'desktop-profile') });
    expect(existsSync(join(folder, 'own', 'desktop-profile'))).toBe(true);
    electron.windows[0]?.close();
    expect(readdirSync(join(folder, 'own')).sort()).toEqual(['desktop-profile', 'window.json']);
  });

  test('uses the main screen first', async () => {
    electron.screens = [{ x: 0, y: 0, width: 1000, height: 650 }, { x: 1000, y: 0, width: 3000, height: 2000 }];
    await start();
    await untilLoaded();
    expect(electron.windows[0]?.options).toMatchObject({ width: 1000, height: 650 });
  });

  test.each([[true, 0], [false, 1]])('opens the house that it is started with (packed: %s)', async (isPackaged, passedOver) => {
    mkdirSync(join(folder, 'elsewhere'));
    const path = join(folder, 'elsewhere', 'Alder.struckline');
    expect(await makeHouseFile(path, demoHouse())).toEqual([]);
    await start([...Array<string>(passedOver).fill('out/main/main.js'), path], isPackaged);
    await untilLoaded();
    const address = electron.windows[0]!.webContents.address;
    expect(address).toMatch(/^app:\/\/struckline\/#\/elsewhere%3A[0-9a-f]{16}$/);
    const file = decodeURIComponent(address.split('#/')[1]!);
    expect(await bridge()['call']!('open-house', { file })).toMatchObject({ ok: true, value: { file } });
  });

  test('says in a box why it could not start', async () => {
    writeFileSync(join(folder, 'houses'), 'a file where the folder should be');
    await start();
    await expect.poll(() => electron.errorBoxes).toEqual([expect.stringMatching(/^Struckline could not start: [^]*houses/)]);
    expect(electron.log.at(-1)).toBe('exit 1');
  });
});

describe('what the preload gives the page', () => {
  test('is two calls, and nothing of Electron', async () => {
    await start();
    expect([...exposed.keys()]).toEqual([BRIDGE_NAME]);
    expect(Object.entries(bridge()).map(([name, value]) => `${name}: ${typeof value}`)).toEqual(['call: function', 'openDropped: function']);
  });

  test('reaches the office, which answers', async () => {
    await start();
    await untilLoaded();
    expect(await bridge()['call']!('describe-host', {})).toMatchObject({ ok: true, value: { shell: 'desktop', folder: join(folder, 'houses'), firstFile: null } });
    expect(await bridge()['call']!('no-such-call', {})).toMatchObject({ ok: false, error: { code: 'bad-argument' } });
  });

  test('opens a file that was dropped by its own path, and none that the page made up', async () => {
    const path = join(folder, 'Alder.struckline');
    await makeHouseFile(path, demoHouse());
    await start();
    await untilLoaded();
    const dropped = { name: 'Alder.struckline' };
    paths.set(dropped, path);
    expect(await bridge()['openDropped']!(dropped)).toMatchObject({ ok: true, value: { house: { format: 'struckline-house' } } });
    expect(await bridge()['openDropped']!({ name: 'Alder.struckline' })).toMatchObject({ ok: false, error: { code: 'refused' } });
  });
});
