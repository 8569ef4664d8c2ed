import { houseShown } from './addresses.ts';
import type { ElectronCalls, WindowCalls } from './electron-calls.ts';
import { watchWindow } from './watch-faults.ts';
import { type PageFacts, windowOptions } from './window-options.ts';
import { beside, placeWindow, type WindowStateFile } from './window-state.ts';

/** The windows that are open, the one opened last at the end. */
export class Windows {
  readonly #electron: ElectronCalls;
  readonly #facts: PageFacts;
  readonly #state: WindowStateFile;
  readonly #open: WindowCalls[] = [];

  constructor(electron: ElectronCalls, facts: PageFacts, state: WindowStateFile) {
    this.#electron = electron;
    this.#facts = facts;
    this.#state = state;
  }

  get last(): WindowCalls | null {
    return this.#open.at(-1) ?? null;
  }

  /** Opens a window where the last one was closed, or beside the one that is open; settles when its page is loaded. */
  async open(address: string): Promise<void> {
    const before = this.last;
    const kept = before ? { bounds: beside(before.getNormalBounds()), isMaximised: false } : this.#state.read();
    const window = this.#electron.openWindow(windowOptions(this.#facts, placeWindow(kept?.bounds ?? null, this.#electron.workAreas())));
    this.#open.push(window);
    window.once('ready-to-show', () => {
      if (kept?.isMaximised) window.maximize();
      window.show();
    });
    window.on('close', () => this.#state.write({ bounds: window.getNormalBounds(), isMaximised: window.isMaximized() }));
    window.once('closed', () => this.#open.splice(this.#open.indexOf(window), 1));
    watchWindow(window, this.#electron.ask);
    await window.loadURL(address).catch((error: unknown) => {
      // A window that is closed at once breaks its loading off.
      if (!window.isDestroyed()) throw error;
    });
  }

  /** Brings the window forward that shows a house, and says whether there is one. */
  showHouse(file: string): boolean {
    return this.#bringForward(this.#open.findLast(({ webContents }) => houseShown(webContents.getURL()) === file));
  }

  /** Brings the window forward that was opened last, and says whether there is one. */
  showLast(): boolean {
    return this.#bringForward(this.#open.at(-1));
  }

  #bringForward(window: WindowCalls | undefined): boolean {
    if (window?.isMinimized()) window.restore();
    window?.focus();
    return window !== undefined;
  }
}
