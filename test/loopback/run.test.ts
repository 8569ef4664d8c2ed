import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Answer, ask, makeWindow, openRaw } from './serving.ts';

const SCRIPT = join(import.meta.dirname, 'run-small-window.ts');
const isRoot = process.getuid?.() === 0;
/** Root is given no window, so the tests of the window run as somebody else where root runs them. */
const NOBODY = 65_534;
const user = isRoot ? { uid: NOBODY, gid: NOBODY } : {};
const isUserAble = spawnSync(process.execPath, ['--eval', `require('node:fs').readFileSync(${JSON.stringify(SCRIPT)})`], user).status === 0;

let folder: string;
let rendererFolder: string;
let children: ChildProcess[];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'struckline-run-'));
  rendererFolder = makeWindow(folder);
  children = [];
});
afterEach(() => {
  for (const { pid } of children) if (isAnyLeft(pid!)) process.kill(whole(pid!), 'SIGKILL');
  rmSync(folder, { recursive: true });
});

/** Each run is the first of a group of processes, which all that it starts belong to. Windows has no such groups. */
const whole = (pid: number) => (process.platform === 'win32' ? pid : -pid);

function isAnyLeft(pid: number): boolean {
  try {
    return process.kill(whole(pid), 0);
  } catch {
    return false;
  }
}

/** What is under way in the middle of a stop: silence, half a head, and a call of the signed-in window with half a body. */
async function beginSlowRequests({ origin, host }: URL, cookie: string): Promise<{ readonly ended: Promise<unknown> }> {
  const half = `POST /call/list-houses HTTP/1.1\r\nHost: ${host}\r\nOrigin: ${origin}\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: 2\r\n`;
  const begun = await Promise.all(['', half, `${half}\r\n{`].map((bytes) => openRaw(origin, bytes)));
  // Whoever is answered now has been read after them.
  expect((await ask(origin, { headers: { host, cookie } })).status).toBe(200);
  return { ended: Promise.all(begun.map(({ ended }) => ended)) };
}

const open = ({ origin, pathname, search, host }: URL) => ask(origin, { path: pathname + search, headers: { host } });
const cookieOf = (answer: Answer) => answer.headers['set-cookie']?.[0]?.split(';')[0] ?? '';

interface Run {
  readonly child: ChildProcess;
  readonly exit: Promise<number | null>;
  output(): string;
  /** The address that it prints, once it has. */
  readonly address: () => Promise<string>;
}

function run(argv: readonly string[], environment: Record<string, string> = {}, renderer = rendererFolder, as: { uid?: number; gid?: number } = {}): Run {
  const child = spawn(process.execPath, [SCRIPT, renderer, ...argv], {
    ...as,
    detached: process.platform !== 'win32',
    cwd: folder,
    env: { PATH: process.env['PATH'], HOME: folder, ...environment },
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  children.push(child);
  let output = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (piece: Buffer) => (output += piece.toString('utf8')));
  return {
    child,
    exit: Promise.all([once(child, 'exit'), ...[child.stdout, child.stderr].map((stream) => once(stream!, 'close'))]).then(([[code]]) => code as number | null),
    output: () => output,
    address: async () => {
      await expect.poll(() => output).toContain('\n');
      return /http:\/\/\S+/.exec(output)?.[0] ?? '';
    },
  };
}

describe('where there is no display', () => {
  test('one line tells the address, which opens the window', async () => {
    const { address, output } = run([]);
    const opened = new URL(await address());
    expect(output()).toMatch(/^Struckline is at http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43} \(no display here; open the address in a browser on this machine\)\n$/);
    expect((await open(opened)).status).toBe(303);
    expect(existsSync(join(folder, 'Struckline'))).toBe(true);
  });

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('%s ends it in order, slow requests and all, and leaves no process', async (signal) => {
    const { child, address, exit } = run([]);
    const opened = new URL(await address());
    const { ended } = await beginSlowRequests(opened, cookieOf(await open(opened)));
    child.kill(signal);
    expect(await exit).toBe(0);
    await ended;
    expect(isAnyLeft(child.pid!)).toBe(false);
    await expect(ask(opened.origin, {})).rejects.toThrow('ECONNREFUSED');
  });

  test('a second signal makes nothing of it worse', async () => {
    const { child, address, exit, output } = run([]);
    await address();
    child.kill('SIGINT');
    child.kill('SIGINT');
    // It may come when all is closed and the process has let go of its handlers already.
    expect([0, null]).toContain(await exit);
    expect([null, 'SIGINT']).toContain(child.signalCode);
    expect(output()).toMatch(/^Struckline is at [^\n]*\n$/);
  });

  test('it ends with the program that started it', async () => {
    const { child, address, exit } = run([]);
    await address();
    child.disconnect();
    expect(await exit).toBe(0);
  });
});

describe('what cannot be is said in one line', () => {
  test('a window that is not built', async () => {
    const { exit, output } = run([], {}, join(folder, 'nothing'));
    expect(await exit).toBe(1);
    expect(output()).toBe("Struckline's window is not built yet: run 'npm run build' first.\n");
  });

  test('arguments that make no sense', async () => {
    const { exit, output } = run(['--nonsense']);
    expect(await exit).toBe(2);
    expect(output()).toMatch(/^Unknown option '--nonsense'.*\n$/);
  });

  test('a folder that cannot be made', async () => {
    writeFileSync(join(folder, 'taken'), '');
    const { exit, output } = run(['--folder', 'taken/houses']);
    expect(await exit).toBe(1);
    expect(output()).toMatch(/^Struckline cannot keep houses in .*taken\/houses: .*\n$/);
  });
});

describe.skipIf(process.platform === 'win32')('with a display, for a user who may read this program', () => {
  const environment = () => ({ DISPLAY: ':0', XDG_DATA_HOME: join(folder, 'data'), PATH: `${join(folder, 'bin')}:${process.env['PATH']}` });

  /** A program in the place of a browser; it keeps the address it was given and then does as it is told. */
  function installBrowser(then: string): void {
    mkdirSync(join(folder, 'bin'));
    writeFileSync(join(folder, 'bin', 'chromium'), `#!/bin/sh\necho "$1" | sed s/--app=// > '${folder}/opened'\n${then}\n`);
    chmodSync(join(folder, 'bin', 'chromium'), 0o755);
  }
  function runAsUser(): Run {
    if (isRoot) for (const path of ['.', 'bin']) chownSync(join(folder, path), NOBODY, NOBODY);
    return run([], environment(), rendererFolder, user);
  }
  async function openedAddress(): Promise<URL> {
    const file = join(folder, 'opened');
    await expect.poll(() => existsSync(file) && readFileSync(file, 'utf8')).toMatch(/\n$/);
    return new URL(readFileSync(file, 'utf8').trim());
  }

  test.runIf(isRoot)('root is told the address and no browser is started', async () => {
    installBrowser('sleep 60');
    const { address, output } = run([], environment());
    await address();
    expect(output()).toContain('(no window is opened for root; open the address');
    expect(existsSync(join(folder, 'opened'))).toBe(false);
  });

  test.skipIf(!isUserAble)('it ends when the window is closed, slow requests and all, and leaves nothing', async () => {
    installBrowser(`while [ ! -e '${folder}/close' ]; do sleep 0.05; done`);
    const { child, exit, output } = runAsUser();
    const opened = await openedAddress();
    const { ended } = await beginSlowRequests(opened, cookieOf(await open(opened)));
    writeFileSync(join(folder, 'close'), '');
    expect(await exit).toBe(0);
    await ended;
    expect(output()).toBe('');
    expect(isAnyLeft(child.pid!)).toBe(false);
    expect(readdirSync(join(folder, 'data', 'struckline', 'window-profiles'))).toEqual([]);
  });

  test.skipIf(!isUserAble)('Ctrl-C ends it and the browser, and leaves nothing', async () => {
    installBrowser(`echo $$ > '${folder}/process'; exec sleep 60`);
    const { child, exit } = runAsUser();
    const opened = await openedAddress();
    const { ended } = await beginSlowRequests(opened, cookieOf(await open(opened)));
    child.kill('SIGINT');
    expect(await exit).toBe(0);
    await ended;
    expect(() => process.kill(Number(readFileSync(join(folder, 'process'), 'utf8')), 0)).toThrow('ESRCH');
    expect(isAnyLeft(child.pid!)).toBe(false);
    expect(readdirSync(join(folder, 'data', 'struckline', 'window-profiles'))).toEqual([]);
  });

  test.skipIf(!isUserAble)('a browser that ends without opening the window leaves the user with the address', async () => {
    installBrowser('exit 1');
    const { child, address, exit, output } = runAsUser();
    expect((await open(new URL(await address()))).status).toBe(303);
    expect(output()).toContain('(the browser window did not open; open the address');
    child.kill('SIGINT');
    expect(await exit).toBe(0);
  });
});
