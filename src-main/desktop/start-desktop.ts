import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { type Office, PLAIN_TEXT_TYPE, SECURITY_HEADERS, VERSION } from '../office/index.ts';
import { APP_ADDRESS, APP_SCHEME, houseAddress } from './addresses.ts';
import { answerCall, answerDrop } from './answer-call.ts';
import { chooseHouses, sayNotOpened } from './dialogs.ts';
import type { ElectronCalls } from './electron-calls.ts';
import { confinePage, confineSession } from './fence.ts';
import { menuFor } from './menu.ts';
import { findProtocolFile } from './security.ts';
import { filesNamed, type HouseChoice } from './settings.ts';
import { watchShell } from './watch-faults.ts';
import type { PageFacts } from './window-options.ts';
import { WindowStateFile } from './window-state.ts';
import { Windows } from './windows.ts';

export interface DesktopSettings extends PageFacts, HouseChoice {
  readonly rendererFolder: string;
  /** Where the state of the windows is kept. */
  readonly windowStateFile: string;
  readonly platform: NodeJS.Platform;
  /** Called once, by the first instance only: two of them would have the same house files open. */
  openOffice(): Office;
}

/** Runs the desktop shell; settles when its first windows have been asked to load the app. */
export async function startDesktop(electron: ElectronCalls, settings: DesktopSettings): Promise<void> {
  const { app, protocol, ipcMain } = electron;
  watchShell(electron);
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([{ scheme: APP_SCHEME, privileges: { standard: true, secure: true } }]);
  const windows = new Windows(electron, settings, new WindowStateFile(settings.windowStateFile));
  app.on('web-contents-created', (_event, page) => confinePage(page, (address) => void windows.open(address)));
  quitWithLastWindow(app, settings.platform);
  const named = [...settings.files];
  // macOS names the file that the app was started with before the app is ready.
  let openFile = (path: string): unknown => named.push(path);
  app.on('open-file', (event, path) => {
    event.preventDefault();
    openFile(path);
  });
  await app.whenReady();

  const office = settings.openOffice();
  closeWithApp(app, office);
  confineSession(electron.session());
  protocol.handle(APP_SCHEME, (request) => serve(request, settings.rendererFolder));
  ipcMain.handle(DESKTOP_CHANNEL, (event, method, argument) => answerCall(office, event.senderFrame, method, argument));
  ipcMain.handle(DESKTOP_DROP_CHANNEL, (event, path) => answerDrop(office, event.senderFrame, path));

  /** Shows the houses at these paths, each in a window of its own, or says why not. */
  async function openHouses(paths: readonly string[]): Promise<void> {
    for (const path of paths) {
      const reply = await office.openPath(path);
      if (!reply.ok) await electron.ask(windows.last, sayNotOpened(path, reply.error));
      else if (!windows.showHouse(reply.value.file)) await windows.open(houseAddress(reply.value.file));
    }
  }
  const openList = () => windows.open(APP_ADDRESS);
  const chooseAndOpen = async () => openHouses((await electron.chooseFiles(chooseHouses(settings.folder))).filePaths);

  app.setAboutPanelOptions({ applicationName: 'Struckline', applicationVersion: VERSION, copyright: say`The Struckline authors, MIT licence` });
  electron.setMenu(menuFor(settings.platform, { newWindow: () => void openList(), openHouses: () => void chooseAndOpen() }));
  app.on('second-instance', (_event, argv, currentFolder) => {
    const paths = filesNamed(argv, currentFolder);
    if (paths.length > 0) void openHouses(paths);
    else if (!windows.showLast()) void openList();
  });
  // On macOS the app runs on without windows, and its icon in the dock brings one back.
  app.on('activate', () => {
    if (!windows.last) void openList();
  });
  openFile = (path) => void openHouses([path]);
  await openHouses(named);
  if (!windows.last) await openList();
}

async function serve(request: Request, rendererFolder: string): Promise<Response> {
  const file = findProtocolFile(request.method, request.url);
  const content = file && (await readFile(join(rendererFolder, file.path)).catch(() => null));
  return content
    ? new Response(content, { headers: { ...SECURITY_HEADERS, 'Content-Type': file.type } })
    : new Response(say`There is nothing at this address.`, { status: 404, headers: { ...SECURITY_HEADERS, 'Content-Type': PLAIN_TEXT_TYPE } });
}

/** The app ends with its last window; on macOS only where it was told to, and then also after a window that first had to save. */
function quitWithLastWindow(app: ElectronCalls['app'], platform: NodeJS.Platform): void {
  let isQuitting = false;
  app.on('before-quit', () => (isQuitting = true));
  app.on('window-all-closed', () => {
    if (platform !== 'darwin' || isQuitting) app.quit();
  });
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
