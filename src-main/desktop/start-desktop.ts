import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BrowserWindowConstructorOptions, MenuItemConstructorOptions } from 'electron';
import { DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { type Office, PLAIN_TEXT_TYPE, SECURITY_HEADERS } from '../office/index.ts';
import { answerCall, answerDrop } from './answer-call.ts';
import type { ElectronCalls, PageCalls, WindowCalls } from './electron-calls.ts';
import { APP_ADDRESS, APP_SCHEME, findProtocolFile, isOwnPage } from './security.ts';

export interface DesktopSettings {
  readonly rendererFolder: string;
  readonly preloadFile: string;
  readonly platform: NodeJS.Platform;
  /** Called once, by the first instance only: two of them would have the same house files open. */
  openOffice(): Office;
}

/** Runs the desktop shell; settles when its first window has been asked to load the app. */
export async function startDesktop(electron: ElectronCalls, settings: DesktopSettings): Promise<void> {
  const { app, protocol, ipcMain } = electron;
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([{ scheme: APP_SCHEME, privileges: { standard: true, secure: true } }]);
  const windows: WindowCalls[] = [];
  app.on('web-contents-created', (_event, page) => confine(page, (address) => void open(address)));
  app.on('window-all-closed', () => app.quit());
  await app.whenReady();

  const office = settings.openOffice();
  closeWithApp(app, office);
  denyPermissions(electron);
  protocol.handle(APP_SCHEME, (request) => serve(request, settings.rendererFolder));
  ipcMain.handle(DESKTOP_CHANNEL, (event, method, argument) => answerCall(office, event.senderFrame, method, argument));
  ipcMain.handle(DESKTOP_DROP_CHANNEL, (event, path) => answerDrop(office, event.senderFrame, path));
  electron.setMenu(menuFor(settings.platform));

  async function open(address: string): Promise<void> {
    const window = electron.openWindow(windowOptions(settings.preloadFile));
    windows.push(window);
    window.once('ready-to-show', () => window.show());
    window.once('closed', () => windows.splice(windows.indexOf(window), 1));
    await window.loadURL(address);
  }
  app.on('second-instance', () => windows.slice(-1).forEach(bringForward));
  await open(APP_ADDRESS);
}

export function windowOptions(preloadFile: string): BrowserWindowConstructorOptions {
  return {
    title: 'Struckline',
    width: 1280,
    height: 800,
    show: false,
    webPreferences: {
      preload: preloadFile,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      // Electron fetches its dictionaries from outside.
      spellcheck: false,
    },
  };
}

/** Nothing but the app's own page is opened, and that by the shell itself, in a window with every protection. */
function confine(page: PageCalls, open: (address: string) => void): void {
  for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'] as const) {
    page.on(event, (navigation) => {
      if (!isOwnPage(navigation.url)) navigation.preventDefault();
    });
  }
  page.on('will-attach-webview', (event) => event.preventDefault());
  page.setWindowOpenHandler(({ url }) => {
    if (isOwnPage(url)) open(url);
    return { action: 'deny' };
  });
}

function denyPermissions(electron: ElectronCalls): void {
  const permissions = electron.permissions();
  permissions.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  permissions.setPermissionCheckHandler(() => false);
  permissions.setDevicePermissionHandler(() => false);
}

async function serve(request: Request, rendererFolder: string): Promise<Response> {
  const file = findProtocolFile(request.method, request.url);
  const content = file && (await readFile(join(rendererFolder, file.path)).catch(() => null));
  return content
    ? new Response(content, { headers: { ...SECURITY_HEADERS, 'Content-Type': file.type } })
    : new Response(say`There is nothing at this address.`, { status: 404, headers: { ...SECURITY_HEADERS, 'Content-Type': PLAIN_TEXT_TYPE } });
}

/** Holds the end of the app back until the office has closed every house file. */
function closeWithApp(app: ElectronCalls['app'], office: Office): void {
  let state: 'open' | 'closing' | 'closed' = 'open';
  app.on('will-quit', (event) => {
    if (state === 'closed') return;
    event.preventDefault();
    if (state === 'closing') return;
    state = 'closing';
    void office.close().finally(() => {
      state = 'closed';
      app.quit();
    });
  });
}

function bringForward(window: WindowCalls): void {
  if (window.isMinimized()) window.restore();
  window.focus();
}

/** Electron's own menu would offer pages of the network and the developer tools. */
function menuFor(platform: NodeJS.Platform): MenuItemConstructorOptions[] {
  const view: MenuItemConstructorOptions[] = [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { type: 'separator' }, { role: 'togglefullscreen' }];
  return [...(platform === 'darwin' ? [{ role: 'appMenu' as const }] : []), { role: 'fileMenu' }, { role: 'editMenu' }, { label: say`View`, submenu: view }, { role: 'windowMenu' }];
}
