import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..');
const ELECTRON_FOLDER = join(ROOT, 'node_modules', 'electron');
const ELECTRON_MAIN = join(ROOT, 'out', 'main', 'main.js');
const LOOPBACK_MAIN = join(import.meta.dirname, 'loopback', 'main.ts');

const RELEASE_HOST = 'https://github.com';
const PROBE_MILLISECONDS = 3_000;
/** Electron that cannot run on a machine (no usable sandbox, a missing library) says so within this time. */
const FALSE_START_MILLISECONDS = 5_000;
/** What a shell reports for a program that was ended by a signal. */
const ENDED_BY_SIGNAL = 128;

type Environment = Readonly<Record<string, string | undefined>>;

export interface Ending {
  readonly exitCode: number;
  readonly milliseconds: number;
  /** Whether it ended because this process was told to stop. */
  readonly isWanted: boolean;
}

/** What this file needs of the machine. */
export interface Starter {
  readonly platform: NodeJS.Platform;
  readonly environment: Environment;
  readonly userId: number | null;
  /** The program of Electron's runtime, or null where it has not been fetched. */
  findElectron(): string | null;
  isReachable(address: string): Promise<boolean>;
  fetchElectron(): Promise<boolean>;
  isBuilt(): boolean;
  run(program: string, argv: readonly string[]): Promise<Ending>;
  say(line: string): void;
}

/** Starts the desktop shell where it can run, otherwise the loopback shell; the exit code. */
export async function start(argv: readonly string[], starter: Starter): Promise<number> {
  const forwarded = argv.filter((argument) => argument !== '--loopback');
  const loopback = async () => (await starter.run(process.execPath, [LOOPBACK_MAIN, ...forwarded])).exitCode;
  if (forwarded.length < argv.length) return loopback();
  const hindrance = findHindrance(starter);
  if (hindrance) {
    starter.say(`${hindrance}: opening Struckline for a browser instead.`);
    return loopback();
  }
  const electron = starter.findElectron() ?? (await fetchElectron(starter));
  if (!electron) {
    starter.say("Electron's runtime is not here and can't be fetched: opening Struckline in a browser window instead.");
    return loopback();
  }
  if (!starter.isBuilt()) {
    starter.say("Struckline's window is not built yet: run 'npm run build' first.");
    return 1;
  }
  const ending = await starter.run(electron, [ELECTRON_MAIN, ...forwarded]);
  if (ending.exitCode === 0 || ending.isWanted || ending.milliseconds > FALSE_START_MILLISECONDS) return ending.exitCode;
  starter.say("Electron's runtime can't run on this machine: opening Struckline in a browser window instead.");
  return loopback();
}

/** Why Electron's window cannot open here at all, fetched or not. */
function findHindrance({ platform, environment, userId }: Starter): string | null {
  if (platform !== 'linux') return null;
  if (!environment['DISPLAY'] && !environment['WAYLAND_DISPLAY']) return "There is no display here for Electron's window";
  if (userId === 0) return 'Electron does not run as root with its sandbox';
  return null;
}

async function fetchElectron(starter: Starter): Promise<string | null> {
  if (!(await starter.isReachable(findReleaseHost(starter.environment)))) return null;
  starter.say("Fetching Electron's runtime, which happens once; this may take a minute.");
  return (await starter.fetchElectron()) ? starter.findElectron() : null;
}

/** The host that Electron's own installer would ask, which lets a mirror be set. */
export function findReleaseHost(environment: Environment): string {
  const mirror = environment['npm_config_electron_mirror'] ?? environment['NPM_CONFIG_ELECTRON_MIRROR'] ?? environment['ELECTRON_MIRROR'];
  return mirror && URL.canParse(mirror) ? new URL(mirror).origin : RELEASE_HOST;
}

export function findElectronProgram(): string | null {
  try {
    const program = join(ELECTRON_FOLDER, 'dist', readFileSync(join(ELECTRON_FOLDER, 'path.txt'), 'utf8'));
    return existsSync(program) ? program : null;
  } catch {
    return null;
  }
}

export async function isReachable(address: string): Promise<boolean> {
  try {
    await fetch(address, { method: 'HEAD', redirect: 'manual', signal: AbortSignal.timeout(PROBE_MILLISECONDS) });
    return true;
  } catch {
    return false;
  }
}

function createStarter(): Starter {
  let child: ChildProcess | null = null;
  let isStopping = false;
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      isStopping = true;
      if (child) child.kill(signal);
      else process.exit(ENDED_BY_SIGNAL);
    });
  }
  const run = async (program: string, argv: readonly string[], isInstaller = false): Promise<Ending> => {
    if (isStopping) return { exitCode: ENDED_BY_SIGNAL, milliseconds: 0, isWanted: true };
    const began = performance.now();
    // Set by some editors in their terminals; Electron would then run as plain Node.
    const { ELECTRON_RUN_AS_NODE: _, ...environment } = process.env;
    const output = isInstaller ? 'ignore' : 'inherit';
    // The channel's end tells the loopback shell that this process is gone, even where it was killed.
    const started = spawn(program, argv, { env: environment, stdio: ['inherit', output, output, ...(program === process.execPath ? ['ipc' as const] : [])] });
    child = started;
    const exitCode = await new Promise<number>((resolve) => {
      started.once('error', () => resolve(1));
      started.once('exit', (code) => resolve(code ?? ENDED_BY_SIGNAL));
    });
    child = null;
    return { exitCode, milliseconds: performance.now() - began, isWanted: isStopping };
  };
  return {
    platform: process.platform,
    environment: process.env,
    userId: process.getuid?.() ?? null,
    findElectron: findElectronProgram,
    isReachable,
    isBuilt: () => existsSync(ELECTRON_MAIN),
    fetchElectron: async () => (await run(process.execPath, [join(ELECTRON_FOLDER, 'install.js')], true)).exitCode === 0,
    run,
    say: (line) => {
      if (!isStopping) process.stdout.write(`${line}\n`);
    },
  };
}

if (import.meta.main) process.exitCode = await start(process.argv.slice(2), createStarter());
