import { homedir } from 'node:os';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { say } from '../../shared-core/words/index.ts';
import { speakChosen } from '../office/speak-chosen.ts';

const surroundings = { platform: process.platform, environment: process.env, homeFolder: homedir() };
speakChosen(surroundings);
const { openOffice, ownFolder } = await import('../office/index.ts');
const { readSettings } = await import('./settings.ts');
const { startDesktop } = await import('./start-desktop.ts');

// A packed app is its own program; otherwise the first argument is the file that Electron was given to run.
const argv = process.argv.slice(app.isPackaged ? 1 : 2);
const houses = readSettings(argv, { ...surroundings, currentFolder: process.cwd() });
// As built: out/main/main.js
const builtFolder = join(import.meta.dirname, '..');

startDesktop(
  {
    app,
    protocol,
    ipcMain,
    permissions: () => session.defaultSession,
    setMenu: (template) => Menu.setApplicationMenu(Menu.buildFromTemplate(template)),
    openWindow: (options) => new BrowserWindow(options),
  },
  {
    rendererFolder: join(builtFolder, 'renderer'),
    preloadFile: join(builtFolder, 'preload', 'preload.cjs'),
    platform: process.platform,
    openOffice: () => openOffice({ shell: 'desktop', ...houses, ownFolder: ownFolder(surroundings) }),
  },
).catch((error: unknown) => {
  dialog.showErrorBox(say`Struckline could not start`, `${error instanceof Error ? error.message : String(error)}\n\n${say`Houses are kept in ${houses.folder}.`}`);
  app.exit(1);
});
