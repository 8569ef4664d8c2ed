import type { BrowserWindowConstructorOptions, Rectangle } from 'electron';
import type { PageCalls, WindowCalls } from '../../src-main/desktop/electron-calls.ts';
import { Listeners } from './listeners.ts';

/** Stands in for a page: what it may not do is asked through its events. */
export class StandInPage implements PageCalls {
  address = '';
  readonly #listeners = new Listeners();
  readonly #log: string[];
  #opener: ((asked: { readonly url: string }) => unknown) | undefined;

  constructor(log: string[]) {
    this.#log = log;
  }

  on(event: string, listener: (...args: never[]) => unknown): void {
    this.#listeners.add(event, listener);
  }

  emit(event: string, ...args: unknown[]): void {
    this.#listeners.emit(event, ...args);
  }

  setWindowOpenHandler(handler: (asked: { readonly url: string }) => unknown): void {
    this.#opener = handler;
  }

  openWindow(url: string): unknown {
    return this.#opener?.({ url });
  }

  getURL(): string {
    return this.address;
  }

  reload(): void {
    this.#log.push('reload');
  }

  /** Electron tells of the end of the process that it was told to end. */
  forcefullyCrashRenderer(): void {
    this.#log.push('crash');
    this.emit('render-process-gone', {}, { reason: 'killed', exitCode: 9 });
  }
}

/** Stands in for a window that is shown, moved and closed. */
export class StandInWindow implements WindowCalls {
  readonly options: BrowserWindowConstructorOptions;
  readonly webContents: StandInPage;
  bounds: Rectangle;
  isMaximised = false;
  isMinimised = false;
  readonly #log: string[];
  readonly #listeners = new Listeners();
  #isDestroyed = false;

  readonly #onLoad: (window: StandInWindow) => void;

  /** `onLoad` throws where the page can't be loaded. */
  constructor(options: BrowserWindowConstructorOptions, log: string[], onLoad: (window: StandInWindow) => void) {
    this.options = options;
    this.#log = log;
    this.#onLoad = onLoad;
    this.webContents = new StandInPage(log);
    const { x = 0, y = 0, width = 0, height = 0 } = options;
    this.bounds = { x, y, width, height };
  }

  on(event: string, listener: () => void): void {
    this.#listeners.add(event, listener);
  }

  once(event: string, listener: () => void): void {
    this.#listeners.add(event, listener, true);
  }

  emit(event: string): void {
    this.#listeners.emit(event);
  }

  async loadURL(address: string): Promise<void> {
    this.#log.push(`load ${address}`);
    this.webContents.address = address;
    this.#onLoad(this);
  }

  show(): void {
    this.#log.push('show');
  }

  maximize(): void {
    this.#log.push('maximize');
    this.isMaximised = true;
  }

  isMaximized(): boolean {
    return this.isMaximised;
  }

  isMinimized(): boolean {
    return this.isMinimised;
  }

  restore(): void {
    this.#log.push('restore');
    this.isMinimised = false;
  }

  focus(): void {
    this.#log.push(`focus ${this.webContents.address}`);
  }

  getNormalBounds(): Rectangle {
    return this.bounds;
  }

  isDestroyed(): boolean {
    return this.#isDestroyed;
  }

  /** As the user closes it. */
  close(): void {
    this.emit('close');
    this.destroy();
  }

  destroy(): void {
    this.#isDestroyed = true;
    this.#log.push('closed');
    this.emit('closed');
  }
}
