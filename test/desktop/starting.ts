import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { failure, type OpenedHouse, type Reply } from '../../shared-core/contract/index.ts';
import { encodeHouse, newHouse } from '../../shared-core/house/index.ts';
import { type DesktopSettings, startDesktop } from '../../src-main/desktop/start-desktop.ts';
import { makeWindow } from '../loopback/serving.ts';
import { settled, StandInElectron } from './stand-in.ts';

const HOUSE = encodeHouse(newHouse('Alder', 'metric', 'EUR'));

/** The shell over a stand-in for Electron, and over an office that writes down what it is asked. */
export class Starting {
  readonly folder = mkdtempSync(join(tmpdir(), 'struckline-desktop-'));
  readonly electron = new StandInElectron();
  readonly calls: { readonly method: string; readonly argument: unknown }[] = [];
  readonly closings: (() => void)[] = [];

  readonly settings: DesktopSettings = {
    rendererFolder: makeWindow(this.folder),
    preloadFile: join(this.folder, 'preload.cjs'),
    windowStateFile: join(this.folder, 'window.json'),
    folder: '/houses',
    files: [],
    platform: 'linux',
    isPackaged: true,
    openOffice: () => {
      this.electron.log.push('open office');
      return {
        call: async (method, argument) => {
          this.calls.push({ method, argument });
          return { ok: true, value: argument };
        },
        openPath: async (path) => {
          this.calls.push({ method: 'open a path', argument: path });
          return opened(path);
        },
        close: () => new Promise((resolve) => this.closings.push(resolve)),
      };
    },
  };

  /** Starts the shell, and waits until it has done all that it does without being answered. */
  async start(changes: Partial<DesktopSettings> = {}): Promise<StandInElectron> {
    void startDesktop(this.electron.calls, { ...this.settings, ...changes });
    await settled();
    return this.electron;
  }

  clear(): void {
    rmSync(this.folder, { recursive: true });
  }
}

/** A house that is not there is refused, any other is opened under its file's name. */
function opened(path: string): Reply<OpenedHouse> {
  if (path.includes('gone')) return failure('no-such-house', 'It is no longer there.', [{ path: 'Gone', message: 'was moved' }]);
  const value = { file: basename(path), revision: 1, house: HOUSE, undo: null, redo: null, lookOnly: null };
  return { ok: true, value };
}

/** One for each test of a file, cleared away after it. */
export function startingForEach(take: (starting: Starting) => void): void {
  let starting: Starting;
  beforeEach(() => {
    starting = new Starting();
    take(starting);
  });
  afterEach(() => starting.clear());
}

/** What a window's page is given by Electron and what it is not, beside its preload. */
export const PROTECTIONS = {
  sandbox: true,
  contextIsolation: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  plugins: false,
  navigateOnDragDrop: false,
  safeDialogs: true,
  spellcheck: false,
  devTools: false,
};
