import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { say } from '../../shared-core/words/index.ts';
import { type Office, openOffice, ownFolder } from '../office/index.ts';
import { openWindow } from './open-window.ts';
import { serveOffice } from './serve-office.ts';
import { readSettings } from './settings.ts';

const DONE = 0;
const FAILED = 1;
const BAD_USAGE = 2;

/** Runs the app until its window is closed or the process is told to stop; the exit code. */
export async function runLoopback(argv: readonly string[], rendererFolder: string): Promise<number> {
  const stop = listenForStop();
  const homeFolder = homedir();
  const settings = readSettings(argv, { environment: process.env, homeFolder, currentFolder: process.cwd() });
  if (typeof settings === 'string') return complain(settings, BAD_USAGE);
  if (!existsSync(join(rendererFolder, 'index.html'))) return complain(say`Struckline's window is not built yet: run 'npm run build' first.`, FAILED);
  let office: Office;
  try {
    office = openOffice({ shell: 'loopback', ...settings, ownFolder: ownFolder({ platform: process.platform, environment: process.env, homeFolder }) });
  } catch (error) {
    return complain(say`Struckline cannot keep houses in ${settings.folder}: ${(error as Error).message}`, FAILED);
  }
  try {
    await showUntilClosed(office, rendererFolder, homeFolder, stop);
  } finally {
    await office.close();
  }
  return DONE;
}

async function showUntilClosed(office: Office, rendererFolder: string, homeFolder: string, stop: AbortSignal): Promise<void> {
  const stopped = new Promise<void>((resolve) => (stop.aborted ? resolve() : stop.addEventListener('abort', () => resolve())));
  const served = await serveOffice(office, { rendererFolder });
  try {
    const opened = await openWindow(served.address, { platform: process.platform, environment: process.env, homeFolder, userId: process.getuid?.() ?? null });
    if (typeof opened === 'string') {
      printAddress(served.address, opened);
      return await stopped;
    }
    await Promise.race([opened.closed, stopped]);
    await opened.close();
    if (served.isSignedIn() || stop.aborted) return;
    // It handed the address on to something else, or fell over: the user should not be left with nothing.
    printAddress(served.address, say`the browser window did not open`);
    await stopped;
  } finally {
    await served.close();
  }
}

function printAddress(address: string, reason: string): void {
  process.stdout.write(say`Struckline is at ${address} (${reason}; open the address in a browser on this machine)\n`);
}

function complain(sentence: string, exitCode: number): number {
  process.stderr.write(`${sentence}\n`);
  return exitCode;
}

/** Ctrl-C reaches this process once from the terminal and again from the one that started it; both mean one stop. */
function listenForStop(): AbortSignal {
  const controller = new AbortController();
  const stop = () => controller.abort();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
  // The one that started us is gone, killed perhaps: nobody could stop this process any more.
  process.once('disconnect', stop);
  return controller.signal;
}
