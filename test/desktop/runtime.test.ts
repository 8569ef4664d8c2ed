import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { findElectronProgram } from '../../src-main/start.ts';
import { EXPECTED_FUSES, readFuses } from './fuses.ts';

const OUT = join(import.meta.dirname, '..', '..', 'out');
const MAIN_FILE = join(OUT, 'main', 'main.js');
const START_MILLISECONDS = 30_000;

const program = findElectronProgram();
const hindrance = findHindrance();

function findHindrance(): string | null {
  if (!program) return 'needs the Electron runtime, which is not installed here';
  if (!existsSync(MAIN_FILE)) return "needs the built app, which 'npm run build' makes";
  if (process.platform !== 'linux') return null;
  if (process.getuid?.() === 0) return 'needs a user who is not root, for whom Electron has a sandbox';
  return process.env['DISPLAY'] || process.env['WAYLAND_DISPLAY'] ? null : 'needs a display';
}

interface Target {
  readonly type: string;
  readonly url: string;
  readonly webSocketDebuggerUrl: string;
}

describe.skipIf(hindrance !== null)(`the real window${hindrance ? `: ${hindrance}` : ''}`, () => {
  let folder: string;
  let child: ChildProcess;
  let socket: WebSocket;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'struckline-runtime-'));
    const argv = ['--remote-debugging-port=0', MAIN_FILE, '--folder', join(folder, 'houses')];
    child = spawn(program!, argv, { env: { ...process.env, STRUCKLINE_OWN: join(folder, 'own') }, stdio: ['ignore', 'ignore', 'pipe'] });
    let output = '';
    child.stderr?.on('data', (piece: Buffer) => (output += piece.toString('utf8')));
    await expect.poll(() => output, { timeout: START_MILLISECONDS }).toMatch(/DevTools listening on ws:\S+/);
    const { host } = new URL(/DevTools listening on (ws:\S+)/.exec(output)![1]!);
    const findPage = async () => ((await (await fetch(`http://${host}/json/list`)).json()) as Target[]).find(({ type }) => type === 'page');
    await expect.poll(async () => (await findPage())?.url, { timeout: START_MILLISECONDS }).toBe('app://struckline/');
    socket = new WebSocket((await findPage())!.webSocketDebuggerUrl);
    await once(socket, 'open');
  }, 2 * START_MILLISECONDS);

  afterEach(async () => {
    socket?.close();
    if (child.exitCode === null && child.kill()) await once(child, 'exit');
    rmSync(folder, { recursive: true });
  });

  /** What an expression comes to in the page. */
  async function evaluate(expression: string): Promise<unknown> {
    const answered = once(socket, 'message');
    socket.send(JSON.stringify({ id: 1, method: 'Runtime.evaluate', params: { expression, awaitPromise: true, returnByValue: true } }));
    const [{ data }] = (await answered) as [MessageEvent<string>];
    const { result, exceptionDetails } = (JSON.parse(data) as { result: { result: { value: unknown }; exceptionDetails?: { text: string } } }).result;
    if (exceptionDetails) throw new Error(exceptionDetails.text);
    return result.value;
  }

  test('is the built window, and its office answers', async () => {
    expect(await evaluate("document.contentType + ' ' + document.title")).toBe('text/html Struckline');
    expect(await evaluate("strucklineHost.call('describe-host', {})")).toMatchObject({ ok: true, value: { shell: 'desktop', folder: join(folder, 'houses') } });
  });

  test('holds nothing of Node, nothing of Electron but the two calls, and reaches nothing outside', async () => {
    expect(await evaluate("[typeof require, typeof process, typeof module, Object.keys(strucklineHost).join()].join(' ')")).toBe('undefined undefined undefined call,openDropped');
    expect(await evaluate("fetch('https://struckline.example').then(() => 'left', () => 'stayed')")).toBe('stayed');
    expect(await evaluate("String(window.open('https://struckline.example'))")).toBe('null');
    expect(await evaluate("navigator.permissions.query({ name: 'geolocation' }).then(({ state }) => state)")).toBe('denied');
    expect(await evaluate("(location.href = 'https://struckline.example/', new Promise((resolve) => setTimeout(() => resolve(location.href), 500)))")).toBe('app://struckline/');
  });
});

/** Where the packing puts the program, or the app that holds it, before it makes an installer of it. */
const PACKED = ['linux-unpacked/struckline', 'linux-arm64-unpacked/struckline', 'win-unpacked/Struckline.exe', 'win-arm64-unpacked/Struckline.exe', 'mac/Struckline.app', 'mac-arm64/Struckline.app'];
const packed = PACKED.map((path) => join(OUT, 'packed', path)).filter((path) => existsSync(path));
const unpacked = packed.length === 0 ? ": needs the packed app, which 'npm run package' makes where Electron's runtime can be fetched" : '';

describe.skipIf(unpacked !== '')(`the packed app${unpacked}`, () => {
  test('has every fuse as it should be', async () => {
    expect(await Promise.all(packed.map(readFuses))).toEqual(packed.map(() => EXPECTED_FUSES));
  });
});
