import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session } from 'electron';
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
const own = ownFolder(surroundings);
// As built: out/main/main.js
const builtFolder = join(import.meta.dirname, '..');

async function start(): Promise<void> {
  // Without these, an app that is not packed shares name and profile with every other such app.
  const profile = join(own, 'desktop-profile');
  mkdirSync(profile, { recursive: true, mode: 0o700 });
  app.setName('Struckline');
  app.setPath('userData', profile);
  await startDesktop(
    {
      app,
      protocol,
      ipcMain,
      process,
      session: () => session.defaultSession,
      workAreas: () => {
        const main = screen.getPrimaryDisplay();
        return [main, ...screen.getAllDisplays().filter(({ id }) => id !== main.id)].map(({ workArea }) => workArea);
      },
      setMenu: (template) => Menu.setApplicationMenu(Menu.buildFromTemplate(template)),
      openWindow: (options) => new BrowserWindow(options),
      ask: (window, question) => (window instanceof BrowserWindow ? dialog.showMessageBox(window, question) : dialog.showMessageBox(question)),
      chooseFiles: (options) => dialog.showOpenDialog(options),
      showErrorBox: (title, text) => dialog.showErrorBox(title, text),
      report: (line) => process.stderr.write(`${line}\n`),
    },
    {
      ...houses,
      rendererFolder: join(builtFolder, 'renderer'),
      preloadFile: join(builtFolder, 'preload', 'preload.cjs'),
      windowStateFile: join(own, 'window.json'),
      platform: process.platform,
      isPackaged: app.isPackaged,
      openOffice: () => openOffice({ shell: 'desktop', folder: houses.folder, ownFolder: own }),
    },
  );
}

start().catch((error: unknown) => {
  dialog.showErrorBox(say`Struckline could not start`, `${error instanceof Error ? error.message : String(error)}\n\n${say`Houses are kept in ${houses.folder}.`}`);
  app.exit(1);
});
