import type { BrowserWindowConstructorOptions, CustomScheme, MenuItemConstructorOptions } from 'electron';
import { DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL } from '../../shared-core/contract/index.ts';
import type { ElectronCalls, PageCalls } from '../../src-main/desktop/electron-calls.ts';
import type { SenderFrame } from '../../src-main/desktop/security.ts';

export const OWN_FRAME: SenderFrame = { url: 'app://struckline/', parent: null };

type Listener = (...args: never[]) => unknown;

/** Listeners by event, called as Electron would call them. */
class Listeners {
  readonly #listeners: { readonly event: string; readonly listener: Listener }[] = [];

  add(event: string, listener: Listener): void {
    this.#listeners.push({ event, listener });
  }

  emit(event: string, ...args: unknown[]): void {
    for (const one of this.#listeners.filter((candidate) => candidate.event === event)) one.listener(...(args as never[]));
  }
}

/** An event of Electron's that can be held back. */
export function preventable(url = '') {
  const event = { url, isPrevented: false, preventDefault: () => void (event.isPrevented = true) };
  return event;
}

/** Stands in for Electron: it does what Electron says it does at each call, and writes down what it was asked in order. */
export class StandInElectron {
  readonly log: string[] = [];
  readonly schemes: CustomScheme[] = [];
  readonly windows: BrowserWindowConstructorOptions[] = [];
  menu: MenuItemConstructorOptions[] = [];
  isSecondInstance = false;
  readonly #app = new Listeners();
  /** Of the windows in the order in which they were opened. */
  readonly #windows: Listeners[] = [];
  #isReady = false;
  #serve: ((request: Request) => Promise<Response>) | undefined;
  readonly #answers = new Map<string, (event: { readonly senderFrame: SenderFrame | null }, ...told: [unknown, unknown]) => unknown>();
  readonly #decisions: { request?: (contents: unknown, permission: unknown, decide: (isGranted: boolean) => void) => void; check?: () => boolean; device?: () => boolean } = {};

  readonly calls: ElectronCalls = {
    app: {
      requestSingleInstanceLock: () => !this.isSecondInstance,
      enableSandbox: () => this.#before('enableSandbox'),
      whenReady: async () => {
        this.log.push('ready');
        this.#isReady = true;
      },
      quit: () => {
        this.log.push('quit');
        const event = preventable();
        this.#app.emit('will-quit', event);
        this.log.push(event.isPrevented ? 'held back' : 'ended');
      },
      on: (event: string, listener: Listener) => this.#app.add(event, listener),
    },
    protocol: {
      registerSchemesAsPrivileged: (schemes) => {
        this.#before('registerSchemesAsPrivileged');
        this.schemes.push(...schemes);
      },
      handle: (scheme, handler) => {
        this.#after(`handle ${scheme}`);
        this.#serve = handler;
      },
    },
    ipcMain: {
      handle: (channel, listener) => {
        this.log.push(`listen ${channel}`);
        this.#answers.set(channel, listener);
      },
    },
    permissions: () => {
      this.#after('permissions');
      return {
        setPermissionRequestHandler: (handler) => void (this.#decisions.request = handler),
        setPermissionCheckHandler: (handler) => void (this.#decisions.check = handler),
        setDevicePermissionHandler: (handler) => void (this.#decisions.device = handler),
      };
    },
    setMenu: (template) => void (this.menu = template),
    openWindow: (options) => {
      this.#after('openWindow');
      this.windows.push(options);
      const listeners = new Listeners();
      this.#windows.push(listeners);
      return {
        loadURL: async (address) => void this.log.push(`load ${address}`),
        once: (event, listener) => listeners.add(event, listener),
        show: () => this.log.push('show'),
        isMinimized: () => true,
        restore: () => this.log.push('restore'),
        focus: () => this.log.push('focus'),
      };
    },
  };

  emit(event: string, ...args: unknown[]): void {
    this.#app.emit(event, ...args);
  }

  emitOfWindow(event: string, index = 0): void {
    this.#windows[index]?.emit(event);
  }

  /** A call of the window, its data copied both ways as between processes. */
  async invoke(method: unknown, argument: unknown, senderFrame: SenderFrame | null = OWN_FRAME): Promise<unknown> {
    return this.#invoke(DESKTOP_CHANNEL, senderFrame, method, argument);
  }

  /** A file is dropped on the window, whose path the preload has found out. */
  async drop(path: unknown, senderFrame: SenderFrame | null = OWN_FRAME): Promise<unknown> {
    return this.#invoke(DESKTOP_DROP_CHANNEL, senderFrame, path, undefined);
  }

  async #invoke(channel: string, senderFrame: SenderFrame | null, ...told: [unknown, unknown]): Promise<unknown> {
    const answer = this.#answers.get(channel);
    if (!answer) throw new Error('nothing listens to the window');
    return structuredClone(await answer({ senderFrame }, ...structuredClone(told)));
  }

  async fetch(address: string, options: RequestInit = {}): Promise<Response> {
    if (!this.#serve) throw new Error('nothing serves the protocol');
    return this.#serve(new Request(address, options));
  }

  /** What each of the three questions about a permission is answered. */
  askPermission(): readonly unknown[] {
    let granted: boolean | undefined;
    this.#decisions.request?.({}, 'media', (isGranted) => void (granted = isGranted));
    return [granted, this.#decisions.check?.(), this.#decisions.device?.()];
  }

  /** A page comes to be; what it may not do is asked through its events. */
  createPage(): { emit(event: string, value: unknown): void; openWindow(url: string): unknown } {
    const listeners = new Listeners();
    let opener: ((asked: { readonly url: string }) => unknown) | undefined;
    const page: PageCalls = {
      on: (event: string, listener: Listener) => listeners.add(event, listener),
      setWindowOpenHandler: (handler) => void (opener = handler),
    };
    this.#app.emit('web-contents-created', {}, page);
    return { emit: (event, value) => listeners.emit(event, value), openWindow: (url) => opener?.({ url }) };
  }

  #before(call: string): void {
    if (this.#isReady) throw new Error(`${call} takes effect only before the app is ready`);
    this.log.push(call);
  }

  #after(call: string): void {
    if (!this.#isReady) throw new Error(`${call} can only be asked once the app is ready`);
    this.log.push(call);
  }
}
