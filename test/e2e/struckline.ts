import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base } from '@playwright/test';
import { serveOffice } from '../../src-main/loopback/serve-office.ts';
import { openOffice } from '../../src-main/office/index.ts';

const ROOT = new URL('../..', import.meta.url).pathname;

export interface Running {
  /** The address with its one-time token, as it was printed. */
  readonly address: string;
  readonly folder: string;
  stop(): Promise<void>;
}

/** Starts the app as its user would, in a loopback window's server, on a folder of houses; what is the app's own lies in it. */
export function startStruckline(folder: string, ...more: readonly string[]): Promise<Running> {
  return startBeside(join(folder, 'own'), folder, ...more);
}

/** The same, with the app's own folder elsewhere. */
export async function startBeside(own: string, folder: string, ...more: readonly string[]): Promise<Running> {
  const child = spawn(process.execPath, ['src-main/start.ts', '--loopback', '--folder', folder, ...more], {
    cwd: ROOT,
    env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '', STRUCKLINE_OWN: own },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await readAddress(child);
  return {
    address,
    folder,
    stop: () =>
      new Promise((resolve) => {
        if (child.exitCode !== null) return resolve();
        child.once('exit', () => resolve());
        child.kill('SIGINT');
      }),
  };
}

function readAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    const read = (chunk: Buffer) => {
      printed += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]+/.exec(printed);
      if (found) resolve(found[0]);
    };
    child.stdout?.on('data', read);
    child.stderr?.on('data', read);
    child.once('exit', (status) => reject(new Error(`Struckline stopped with ${status} before it printed an address: ${printed}`)));
  });
}

export async function temporaryFolder(): Promise<string> {
  return mkdtemp(join(tmpdir(), 'struckline-'));
}

/** The same server and office within this process, which is there at once; how the app starts and ends is for the tests that start it. */
async function serveHere(folder: string): Promise<Running> {
  const office = openOffice({ shell: 'loopback', folder, ownFolder: join(folder, 'own') });
  const served = await serveOffice(office, { rendererFolder: join(ROOT, 'out', 'renderer') });
  let stopping: Promise<void> | null = null;
  const stop = async () => {
    await served.close();
    await office.close();
  };
  return { address: served.address, folder, stop: () => (stopping ??= stop()) };
}

/** Marks a test that takes long: `npm run test:long` runs it, `npm test` leaves it out. */
export const LONG = { tag: '@long' };

/** A test with the app running on an empty folder of houses. */
export const test = base.extend<{ running: Running }>({
  running: async ({ browserName: _any }, use) => {
    const folder = await temporaryFolder();
    const running = await serveHere(folder);
    await use(running);
    await running.stop();
    await rm(folder, { recursive: true });
  },
});

export { expect } from '@playwright/test';
