import { EventEmitter } from 'node:events';
import type { AboutPanelOptionsOptions, CustomScheme, MenuItemConstructorOptions, MessageBoxOptions, OpenDialogOptions, Rectangle } from 'electron';
import { DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL } from '../../shared-core/contract/index.ts';
import type { Asker, ElectronCalls, SenderFrame, SessionCalls } from '../../src-main/desktop/electron-calls.ts';
import { Listeners, preventable } from './listeners.ts';
import { StandInPage, StandInWindow } from './stand-in-window.ts';

export const OWN_FRAME: SenderFrame = { url: 'app://struckline/', parent: null };

type Handler<Name extends keyof SessionCalls> = Parameters<Extract<SessionCalls[Name], (...told: never[]) => unknown>>[0];

/** Stands in for Electron: it does what Electron says it does at each call, and writes down what it was asked in order. */
export class StandInElectron {
  readonly log: string[] = [];
  readonly schemes: CustomScheme[] = [];
  readonly windows: StandInWindow[] = [];
  readonly questions: MessageBoxOptions[] = [];
  readonly errorBoxes: string[] = [];
  readonly reports: string[] = [];
  readonly fileDialogs: OpenDialogOptions[] = [];
  readonly process = new EventEmitter();
  menu: MenuItemConstructorOptions[] = [];
  about: AboutPanelOptionsOptions = {};
  isSecondInstance = false;
  screens: readonly Rectangle[] = [{ x: 0, y: 0, width: 1920, height: 1080 }];
  chosenFiles: readonly string[] = [];
  /** Something that happens while the app is getting ready. */
  beforeReady: () => void = () => {};
  /** Something that happens while a window loads; it throws where the page can't be loaded. */
  onLoad: (window: StandInWindow) => void = () => {};
  isSpellChecked = true;
  readonly #app = new Listeners();
  readonly #session = new Listeners();
  /** What gives the answer to each question that is open. */
  readonly #answering: ((button: number) => void)[] = [];
  #isReady = false;
  #serve: ((request: Request) => Promise<Response>) | undefined;
  readonly #answers = new Map<string, (event: { readonly senderFrame: SenderFrame | null }, ...told: [unknown, unknown]) => unknown>();
  #request: Handler<'setPermissionRequestHandler'> | undefined;
  #check: Handler<'setPermissionCheckHandler'> | undefined;
  #device: Handler<'setDevicePermissionHandler'> | undefined;
  #judge: Parameters<SessionCalls['webRequest']['onBeforeRequest']>[0] | undefined;

  readonly calls: ElectronCalls = {
    app: {
      requestSingleInstanceLock: () => !this.isSecondInstance,
      enableSandbox: () => this.#before('enableSandbox'),
      whenReady: async () => {
        this.beforeReady();
        this.log.push('ready');
        this.#isReady = true;
      },
      quit: () => {
        this.log.push('quit');
        this.#app.emit('before-quit');
        const event = preventable();
        this.#app.emit('will-quit', event);
        this.log.push(event.isPrevented ? 'held back' : 'ended');
      },
      exit: (code) => this.log.push(`exit ${code}`),
      setAboutPanelOptions: (options) => void (this.about = options),
      on: (event: string, listener: (...args: never[]) => unknown) => this.#app.add(event, listener),
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
    process: this.process,
    session: () => {
      this.#after('session');
      return {
        setPermissionRequestHandler: (handler) => void (this.#request = handler),
        setPermissionCheckHandler: (handler) => void (this.#check = handler),
        setDevicePermissionHandler: (handler) => void (this.#device = handler),
        setSpellCheckerEnabled: (isEnabled) => void (this.isSpellChecked = isEnabled),
        webRequest: { onBeforeRequest: (listener) => void (this.#judge = listener) },
        on: (event: string, listener: (...args: never[]) => unknown) => this.#session.add(event, listener),
      };
    },
    workAreas: () => {
      if (!this.#isReady) throw new Error('screens can only be asked for once the app is ready');
      return this.screens;
    },
    setMenu: (template) => void (this.menu = template),
    openWindow: (options) => {
      this.#after('openWindow');
      const window = new StandInWindow(options, this.log, this.onLoad);
      this.windows.push(window);
      window.once('closed', () => {
        if (this.windows.every((one) => one.isDestroyed())) this.#app.emit('window-all-closed');
      });
      this.#app.emit('web-contents-created', {}, window.webContents);
      return window;
    },
    ask: (_window, question) =>
      new Promise((resolve) => {
        this.questions.push(question);
        const answer = (response: number) => resolve({ response });
        this.#answering.push(answer);
        // Electron closes the question as if it had been called off.
        question.signal?.addEventListener('abort', () => answer(question.cancelId ?? 0));
      }),
    chooseFiles: async (options) => {
      this.fileDialogs.push(options);
      return { filePaths: this.chosenFiles };
    },
    showErrorBox: (title, text) => void this.errorBoxes.push(`${title}: ${text}`),
    report: (line) => void this.reports.push(line),
  };

  emit(event: string, ...args: unknown[]): void {
    this.#app.emit(event, ...args);
  }

  /** Presses a button of the question that was asked last. */
  async answer(button: number): Promise<void> {
    this.#answering.at(-1)?.(button);
    await settled();
  }

  /** A call of the window, its data copied both ways as between processes. */
  async invoke(method: unknown, argument: unknown, senderFrame: SenderFrame | null = OWN_FRAME): Promise<unknown> {
    return this.send(DESKTOP_CHANNEL, senderFrame, method, argument);
  }

  /** A file is dropped on the window, whose path the preload has found out. */
  async drop(path: unknown, senderFrame: SenderFrame | null = OWN_FRAME): Promise<unknown> {
    return this.send(DESKTOP_DROP_CHANNEL, senderFrame, path, undefined);
  }

  async send(channel: string, senderFrame: SenderFrame | null, ...told: [unknown, unknown]): Promise<unknown> {
    const answer = this.#answers.get(channel);
    if (!answer) throw new Error('nothing listens to the window');
    return structuredClone(await answer({ senderFrame }, ...structuredClone(told)));
  }

  async fetch(address: string, options: RequestInit = {}): Promise<Response> {
    if (!this.#serve) throw new Error('nothing serves the protocol');
    return this.#serve(new Request(address, options));
  }

  /** Whether a request of the window for this address gets through. */
  isLetThrough(url: string): boolean | undefined {
    let isCancelled: boolean | undefined;
    this.#judge?.({ url }, ({ cancel }) => void (isCancelled = cancel));
    return isCancelled === undefined ? undefined : !isCancelled;
  }

  isSaved(url: string): boolean {
    const event = preventable();
    this.#session.emit('will-download', event, { getURL: () => url });
    return !event.isPrevented;
  }

  /** What each of the three questions about a permission is answered. */
  askPermission(permission: string, asker: Asker): readonly unknown[] {
    let granted: boolean | undefined;
    this.#request?.({}, permission, (isGranted) => void (granted = isGranted), asker);
    return [granted, this.#check?.({}, permission, '', asker), this.#device?.()];
  }

  /** A page comes to be that the shell did not open. */
  createPage(): StandInPage {
    const page = new StandInPage(this.log);
    this.#app.emit('web-contents-created', {}, page);
    return page;
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

/** Lets everything go on that only waits for its turn. */
export async function settled(): Promise<void> {
  await new Promise((resolve) => setImmediate(resolve));
}
