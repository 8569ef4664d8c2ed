import { type ChildProcess, spawn } from 'node:child_process';
import { accessSync, constants, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { say } from '../../shared-core/words/index.ts';
import { ownFolder, type OwnFolderSurroundings } from '../office/index.ts';

export interface Machine extends OwnFolderSurroundings {
  /** Null where the platform has no user ids. */
  readonly userId: number | null;
}

export interface OpenedWindow {
  /** Settles when the window's process has ended, for whatever reason; the profile is there until `close`. */
  readonly closed: Promise<void>;
  /** Ends the window's process and clears its profile away. */
  close(): Promise<void>;
}

const LINUX_COMMANDS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'microsoft-edge-stable', 'brave-browser'];
const MAC_PROGRAMS = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'Brave Browser.app/Contents/MacOS/Brave Browser',
  'Chromium.app/Contents/MacOS/Chromium',
];
const WINDOWS_PROGRAMS = [
  'Microsoft\\Edge\\Application\\msedge.exe',
  'Google\\Chrome\\Application\\chrome.exe',
  'BraveSoftware\\Brave-Browser\\Application\\brave.exe',
  'Chromium\\Application\\chrome.exe',
];

const CLOSING_MILLISECONDS = 5_000;

/** Why no window may be opened from here, in a few words, or null. */
export function findHindrance({ platform, environment, userId }: Machine): string | null {
  if (platform === 'linux' && !environment['DISPLAY'] && !environment['WAYLAND_DISPLAY']) return say`no display here`;
  // A browser started by root runs only without its sandbox; that is for the user to choose, not for us.
  if (userId === 0) return say`no window is opened for root`;
  return null;
}

/** An installed browser that can open an address as a window of its own, or null. */
export function findBrowser({ platform, environment, homeFolder }: Machine): string | null {
  const candidates = {
    darwin: () => ['/Applications', join(homeFolder, 'Applications')].flatMap((folder) => MAC_PROGRAMS.map((program) => join(folder, program))),
    win32: () =>
      ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
        const folder = environment[name];
        return folder ? WINDOWS_PROGRAMS.map((program) => join(folder, program)) : [];
      }),
    other: () => LINUX_COMMANDS.flatMap((command) => (environment['PATH'] ?? '').split(delimiter).filter(Boolean).map((folder) => join(folder, command))),
  };
  return candidates[platform === 'darwin' || platform === 'win32' ? platform : 'other']().find(isProgram) ?? null;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/**
 * Opens an address as a window of an installed browser, or says in a few words why not.
 *
 * Each run has a profile of its own, cleared away afterwards: two runs that shared one would also share a browser
 * process, and the end of the one would look like the end of the other.
 */
export async function openWindow(address: string, machine: Machine): Promise<OpenedWindow | string> {
  const hindrance = findHindrance(machine);
  if (hindrance) return hindrance;
  const browser = findBrowser(machine);
  if (!browser) return say`no Chromium-family browser found`;
  const profiles = join(ownFolder(machine), 'window-profiles');
  const profile = join(profiles, String(process.pid));
  try {
    mkdirSync(profile, { recursive: true, mode: 0o700 });
    clearAbandoned(profiles);
  } catch (error) {
    return say`no folder for the browser's profile: ${(error as Error).message}`;
  }
  const child = spawn(browser, [`--app=${address}`, `--user-data-dir=${profile}`, '--no-first-run', '--no-default-browser-check'], { stdio: 'ignore' });
  const isStarted = await new Promise<boolean>((resolve) => {
    child.once('spawn', () => resolve(true));
    child.once('error', () => resolve(false));
  });
  if (!isStarted) {
    clear(profile);
    return say`the browser did not start`;
  }
  const closed = hasEnded(child) ? Promise.resolve() : new Promise<void>((resolve) => child.once('exit', () => resolve()));
  return {
    closed,
    async close() {
      child.kill('SIGTERM');
      const forced = setTimeout(() => child.kill('SIGKILL'), CLOSING_MILLISECONDS);
      await closed;
      clearTimeout(forced);
      clear(profile);
    },
  };
}

function hasEnded(child: ChildProcess): boolean {
  return child.exitCode !== null || child.signalCode !== null;
}

/** Profiles of runs that were killed before they could clear up. */
function clearAbandoned(profiles: string): void {
  for (const name of readdirSync(profiles)) {
    if (/^\d+$/.test(name) && !isRunning(Number(name))) clear(join(profiles, name));
  }
}

function isRunning(processId: number): boolean {
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** The browser's own children may still be writing for a moment. A folder that stays is cleared by the next run. */
function clear(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  } catch {
    return;
  }
}
