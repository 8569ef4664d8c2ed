import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, test } from 'vitest';
import { type Ending, findReleaseHost, isReachable, start, type Starter } from '../../src-main/start.ts';

interface Facts {
  readonly isInstalled?: boolean;
  readonly isReachable?: boolean;
  readonly isFetchable?: boolean;
  readonly electronEnding?: Partial<Ending>;
  readonly changes?: Partial<Starter>;
}

/** A machine of which only the facts are known; what is done on it is written down. */
function onMachine({ isInstalled = false, isReachable = false, isFetchable = false, electronEnding = {}, changes = {} }: Facts) {
  const done: string[] = [];
  let isThere = isInstalled;
  const starter: Starter = {
    platform: 'linux',
    environment: { DISPLAY: ':0' },
    userId: 1000,
    findElectron: () => (isThere ? '/electron' : null),
    isReachable: async (address) => {
      done.push(`probe ${address}`);
      return isReachable;
    },
    fetchElectron: async () => {
      done.push('fetch');
      isThere = isFetchable;
      return isFetchable;
    },
    isBuilt: () => true,
    run: async (program, [first = '', ...rest]) => {
      done.push([program === '/electron' ? 'electron' : 'node', first.replace(/^.*\/(src-main|out)\//, '$1/'), ...rest].join(' '));
      return { exitCode: 0, milliseconds: 60_000, isWanted: false, ...(program === '/electron' ? electronEnding : {}) };
    },
    say: (line) => void done.push(`say ${line}`),
    ...changes,
  };
  return { done, starter };
}

const ELECTRON = 'electron out/main/main.js --folder houses';
const LOOPBACK = 'node src-main/loopback/main.ts --folder houses';
const NOT_HERE = "say Electron's runtime is not here and can't be fetched: opening Struckline in a browser window instead.";
const FETCHING = "say Fetching Electron's runtime, which happens once; this may take a minute.";

test.each<[string, Facts, string[]]>([
  ['there', { isInstalled: true }, [ELECTRON]],
  ['to be fetched', { isReachable: true, isFetchable: true }, ['probe https://github.com', FETCHING, 'fetch', ELECTRON]],
  ['out of reach', {}, ['probe https://github.com', NOT_HERE, LOOPBACK]],
  ['not to be fetched', { isReachable: true }, ['probe https://github.com', FETCHING, 'fetch', NOT_HERE, LOOPBACK]],
])("with Electron's runtime %s", async (_where, facts, expected) => {
  const { done, starter } = onMachine(facts);
  await start(['--folder', 'houses'], starter);
  expect(done).toEqual(expected);
});

test('--loopback skips even the question whether Electron is there', async () => {
  const { done, starter } = onMachine({ isInstalled: true });
  await start(['--loopback', '--folder', 'houses'], starter);
  expect(done).toEqual([LOOPBACK]);
});

test.each<[string, Partial<Starter>, string]>([
  ['no display', { environment: {} }, "say There is no display here for Electron's window: opening Struckline for a browser instead."],
  ['root', { userId: 0 }, 'say Electron does not run as root with its sandbox: opening Struckline for a browser instead.'],
])('on Linux with %s it is the loopback shell at once', async (_what, changes, line) => {
  const { done, starter } = onMachine({ isInstalled: true, changes });
  await start(['--folder', 'houses'], starter);
  expect(done).toEqual([line, LOOPBACK]);
});

test.each(['darwin', 'win32'] as const)('on %s nothing is asked about a display', async (platform) => {
  const { done, starter } = onMachine({ isInstalled: true, changes: { platform, environment: {}, userId: null } });
  await start(['--folder', 'houses'], starter);
  expect(done).toEqual([ELECTRON]);
});

describe('the exit code', () => {
  test.each<[string, Partial<Ending>, number, string[]]>([
    ['is that of Electron', { exitCode: 7 }, 7, [ELECTRON]],
    ['is that of Electron where it was told to stop', { exitCode: 130, milliseconds: 100, isWanted: true }, 130, [ELECTRON]],
    ['is that of the loopback shell where Electron could not run', { exitCode: 133, milliseconds: 100 }, 0, [
      ELECTRON,
      "say Electron's runtime can't run on this machine: opening Struckline in a browser window instead.",
      LOOPBACK,
    ]],
  ])('%s', async (_which, electronEnding, exitCode, expected) => {
    const { done, starter } = onMachine({ isInstalled: true, electronEnding });
    expect(await start(['--folder', 'houses'], starter)).toBe(exitCode);
    expect(done).toEqual(expected);
  });

  test('tells that the window is not built', async () => {
    const { done, starter } = onMachine({ isInstalled: true, changes: { isBuilt: () => false } });
    expect(await start([], starter)).toBe(1);
    expect(done).toEqual(["say Struckline's window is not built yet: run 'npm run build' first."]);
  });
});

test.each([
  [{}, 'https://github.com'],
  [{ ELECTRON_MIRROR: 'https://mirror.example/electron/' }, 'https://mirror.example'],
  [{ npm_config_electron_mirror: 'https://mirror.example/electron/' }, 'https://mirror.example'],
  [{ ELECTRON_MIRROR: 'nonsense' }, 'https://github.com'],
])('the host that is asked, with %j, is %s', (environment, host) => {
  expect(findReleaseHost(environment)).toBe(host);
});

test('any answer of the host, even a refusal, means that it is within reach', async () => {
  const server = createServer((_request, response) => response.writeHead(403).end());
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  expect(await isReachable(address)).toBe(true);
  await new Promise((resolve) => server.close(resolve));
  expect(await isReachable(address)).toBe(false);
});
