import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { findBrowser, findHindrance, type Machine, type OpenedWindow, openWindow } from '../../src-main/loopback/open-window.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-window-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const machine = (changes: Partial<Machine> = {}): Machine => ({
  platform: 'linux',
  environment: { PATH: `${folder}/bin`, DISPLAY: ':0', XDG_DATA_HOME: `${folder}/data` },
  homeFolder: folder,
  userId: 1000,
  ...changes,
});
const profiles = () => join(folder, 'data', 'struckline', 'window-profiles');

/** A program in the place of a browser that notes how it was started and then does as it is told. */
function installBrowser(name: string, then: string): string {
  mkdirSync(join(folder, 'bin'), { recursive: true });
  const program = join(folder, 'bin', name);
  writeFileSync(program, `#!/bin/sh\nprintf '%s\\n' "$@" > '${folder}/started'\n${then}\n`);
  chmodSync(program, 0o755);
  return program;
}

async function opened(outcome: Promise<OpenedWindow | string>): Promise<OpenedWindow> {
  const window = await outcome;
  if (typeof window === 'string') throw new Error(window);
  return window;
}

describe('a window is not opened', () => {
  test('where there is no display', () => {
    expect(findHindrance(machine({ environment: {} }))).toBe('no display here');
    expect(findHindrance(machine({ environment: { DISPLAY: '' } }))).toBe('no display here');
    expect(findHindrance(machine({ environment: { WAYLAND_DISPLAY: 'wayland-0' } }))).toBeNull();
    expect(findHindrance(machine({ platform: 'darwin', environment: {} }))).toBeNull();
  });

  test('for root, whose browser would have no sandbox', async () => {
    installBrowser('chromium', 'sleep 60');
    expect(await openWindow('http://127.0.0.1:1/', machine({ userId: 0 }))).toBe('no window is opened for root');
    expect(existsSync(join(folder, 'started'))).toBe(false);
  });

  test('where no browser is installed', async () => {
    expect(await openWindow('http://127.0.0.1:1/', machine())).toBe('no Chromium-family browser found');
  });

  test('where the browser cannot be started, and no profile is left', async () => {
    writeFileSync(installBrowser('chromium', ''), '#!/no/such/program\n');
    expect(await openWindow('http://127.0.0.1:1/', machine())).toBe('the browser did not start');
    expect(readdirSync(profiles())).toEqual([]);
  });
});

test('the browser is looked for under the names and in the places of the platform', () => {
  expect(findBrowser(machine())).toBeNull();
  const brave = installBrowser('brave-browser', '');
  expect(findBrowser(machine())).toBe(brave);
  mkdirSync(join(folder, 'bin', 'chromium'));
  expect(findBrowser(machine())).toBe(brave);
  const edge = installBrowser('microsoft-edge', '');
  expect(findBrowser(machine())).toBe(edge);
  chmodSync(edge, 0o644);
  expect(findBrowser(machine())).toBe(brave);
  const mac = join(folder, 'Applications', 'Chromium.app', 'Contents', 'MacOS');
  mkdirSync(mac, { recursive: true });
  writeFileSync(join(mac, 'Chromium'), '', { mode: 0o755 });
  expect(findBrowser(machine({ platform: 'darwin' }))).toBe(join(mac, 'Chromium'));
});

test('the browser is started as a window of its own with a profile of its own and with its sandbox', async () => {
  installBrowser('chromium', 'exec sleep 60');
  const window = await opened(openWindow('http://127.0.0.1:1/?token=x', machine()));
  const profile = join(profiles(), String(process.pid));
  await expect.poll(() => existsSync(join(folder, 'started')) && readFileSync(join(folder, 'started'), 'utf8')).toBe(
    `--app=http://127.0.0.1:1/?token=x\n--user-data-dir=${profile}\n--no-first-run\n--no-default-browser-check\n`,
  );
  expect(existsSync(profile)).toBe(true);
  await window.close();
});

test('closing ends the browser and clears its profile away', async () => {
  installBrowser('chromium', `echo $$ > '${folder}/process'; exec sleep 60`);
  const window = await opened(openWindow('http://127.0.0.1:1/', machine()));
  await expect.poll(() => existsSync(join(folder, 'process')) && readFileSync(join(folder, 'process'), 'utf8')).toMatch(/\n$/);
  await window.close();
  await window.closed;
  expect(() => process.kill(Number(readFileSync(join(folder, 'process'), 'utf8')), 0)).toThrow('ESRCH');
  expect(readdirSync(profiles())).toEqual([]);
});

test('the end of the browser is noticed', async () => {
  installBrowser('chromium', 'exit 3');
  const window = await opened(openWindow('http://127.0.0.1:1/', machine()));
  await window.closed;
  await window.close();
  expect(readdirSync(profiles())).toEqual([]);
});

test('profiles of runs that were killed are cleared away, those of other runs are not', async () => {
  const gone = 2 ** 30;
  for (const name of [String(gone), String(process.ppid), 'somebody-else']) mkdirSync(join(profiles(), name), { recursive: true });
  installBrowser('chromium', 'exec sleep 60');
  const window = await opened(openWindow('http://127.0.0.1:1/', machine()));
  expect(readdirSync(profiles()).sort()).toEqual([String(process.pid), String(process.ppid), 'somebody-else'].sort());
  await window.close();
});
