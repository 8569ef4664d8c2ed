import type { BrowserWindowConstructorOptions, CustomScheme, MenuItemConstructorOptions } from 'electron';
import type { SenderFrame } from './security.ts';

interface Preventable {
  preventDefault(): void;
}

/** The page in a window, and any other page that should come to be. */
export interface PageCalls {
  on(event: 'will-navigate' | 'will-redirect' | 'will-frame-navigate', listener: (event: Preventable & { readonly url: string }) => void): unknown;
  on(event: 'will-attach-webview', listener: (event: Preventable) => void): unknown;
  setWindowOpenHandler(handler: (asked: { readonly url: string }) => { action: 'deny' }): void;
}

export interface WindowCalls {
  loadURL(address: string): Promise<void>;
  once(event: 'ready-to-show' | 'closed', listener: () => void): unknown;
  show(): void;
  isMinimized(): boolean;
  restore(): void;
  focus(): void;
}

/** All that the desktop shell asks of Electron, so that the tests can stand in for it. */
export interface ElectronCalls {
  readonly app: {
    requestSingleInstanceLock(): boolean;
    enableSandbox(): void;
    whenReady(): Promise<unknown>;
    quit(): void;
    on(event: 'second-instance' | 'window-all-closed', listener: () => void): unknown;
    on(event: 'will-quit', listener: (event: Preventable) => void): unknown;
    on(event: 'web-contents-created', listener: (event: unknown, contents: PageCalls) => void): unknown;
  };
  readonly protocol: {
    registerSchemesAsPrivileged(schemes: CustomScheme[]): void;
    handle(scheme: string, handler: (request: Request) => Promise<Response>): void;
  };
  readonly ipcMain: {
    handle(channel: string, listener: (event: { readonly senderFrame: SenderFrame | null }, method: unknown, argument: unknown) => unknown): void;
  };
  /** Asked for after the app is ready, as Electron wants it. */
  permissions(): {
    setPermissionRequestHandler(handler: (contents: unknown, permission: unknown, decide: (isGranted: boolean) => void) => void): void;
    setPermissionCheckHandler(handler: () => boolean): void;
    setDevicePermissionHandler(handler: () => boolean): void;
  };
  setMenu(template: MenuItemConstructorOptions[]): void;
  openWindow(options: BrowserWindowConstructorOptions): WindowCalls;
}
