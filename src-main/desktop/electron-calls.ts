import type { AboutPanelOptionsOptions, BrowserWindowConstructorOptions, CustomScheme, MenuItemConstructorOptions, MessageBoxOptions, OpenDialogOptions, Rectangle } from 'electron';

export interface Preventable {
  preventDefault(): void;
}

/** How a process of Electron's came to its end, in Electron's own words. */
export interface Ending {
  readonly reason: string;
  readonly exitCode: number;
}

/** The page in a window, and any other page that should come to be. */
export interface PageCalls {
  on(event: 'will-navigate' | 'will-redirect' | 'will-frame-navigate', listener: (event: Preventable & { readonly url: string }) => void): unknown;
  on(event: 'will-attach-webview', listener: (event: Preventable) => void): unknown;
  on(event: 'render-process-gone', listener: (event: unknown, ending: Ending) => void): unknown;
  setWindowOpenHandler(handler: (asked: { readonly url: string }) => { action: 'deny' }): void;
  getURL(): string;
  reload(): void;
  forcefullyCrashRenderer(): void;
}

export interface WindowCalls {
  readonly webContents: PageCalls;
  loadURL(address: string): Promise<void>;
  once(event: 'ready-to-show' | 'closed', listener: () => void): unknown;
  on(event: 'close' | 'unresponsive' | 'responsive', listener: () => void): unknown;
  show(): void;
  maximize(): void;
  isMaximized(): boolean;
  isMinimized(): boolean;
  isDestroyed(): boolean;
  restore(): void;
  focus(): void;
  destroy(): void;
  getNormalBounds(): Rectangle;
}

/** The frame that a call came from; null where it has gone away meanwhile. */
export interface SenderFrame {
  readonly url: string;
  readonly parent: unknown;
}

/** What is told of whoever asks for a permission. */
export interface Asker {
  readonly isMainFrame: boolean;
  readonly requestingUrl?: string;
}

/** Where the window's requests, permissions and downloads are judged. */
export interface SessionCalls {
  setPermissionRequestHandler(handler: (page: unknown, permission: string, decide: (isGranted: boolean) => void, asker: Asker) => void): void;
  setPermissionCheckHandler(handler: (page: unknown, permission: string, origin: string, asker: Asker) => boolean): void;
  setDevicePermissionHandler(handler: () => boolean): void;
  setSpellCheckerEnabled(isEnabled: boolean): void;
  readonly webRequest: {
    onBeforeRequest(listener: (asked: { readonly url: string }, decide: (decision: { cancel: boolean }) => void) => void): void;
  };
  on(event: 'will-download', listener: (event: Preventable, item: { getURL(): string }) => void): unknown;
}

/** All that the desktop shell asks of Electron, so that the tests can stand in for it. */
export interface ElectronCalls {
  readonly app: {
    requestSingleInstanceLock(): boolean;
    enableSandbox(): void;
    whenReady(): Promise<unknown>;
    quit(): void;
    exit(code: number): void;
    setAboutPanelOptions(options: AboutPanelOptionsOptions): void;
    on(event: 'window-all-closed' | 'before-quit' | 'activate', listener: () => void): unknown;
    on(event: 'second-instance', listener: (event: unknown, argv: string[], currentFolder: string) => void): unknown;
    on(event: 'open-file', listener: (event: Preventable, path: string) => void): unknown;
    on(event: 'will-quit', listener: (event: Preventable) => void): unknown;
    on(event: 'child-process-gone', listener: (event: unknown, ending: Ending & { readonly type: string }) => void): unknown;
    on(event: 'web-contents-created', listener: (event: unknown, page: PageCalls) => void): unknown;
  };
  readonly protocol: {
    registerSchemesAsPrivileged(schemes: CustomScheme[]): void;
    handle(scheme: string, handler: (request: Request) => Promise<Response>): void;
  };
  readonly ipcMain: {
    handle(channel: string, listener: (event: { readonly senderFrame: SenderFrame | null }, method: unknown, argument: unknown) => unknown): void;
  };
  /** The process of the shell itself. */
  readonly process: Pick<NodeJS.EventEmitter, 'on'>;
  /** Asked for after the app is ready, as Electron wants it. */
  session(): SessionCalls;
  /** What can be used of each screen, the main one first; asked for after the app is ready. */
  workAreas(): readonly Rectangle[];
  setMenu(template: MenuItemConstructorOptions[]): void;
  openWindow(options: BrowserWindowConstructorOptions): WindowCalls;
  /** Asks the user, over a window where there is one; which button was pressed. */
  ask(window: WindowCalls | null, question: MessageBoxOptions): Promise<{ readonly response: number }>;
  chooseFiles(options: OpenDialogOptions): Promise<{ readonly filePaths: readonly string[] }>;
  showErrorBox(title: string, text: string): void;
  /** A line for whoever started the app from a terminal. */
  report(line: string): void;
}
