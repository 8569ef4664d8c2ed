import type { BrowserWindowConstructorOptions, MenuItemConstructorOptions, MessageBoxOptions, OpenDialogOptions } from 'electron';
import { StandInWindow } from './stand-in-window.ts';
import { OWN_FRAME, type StandInElectron } from './stand-in.ts';

/** What the page finds in its window: what the preload put there. */
export type Exposed = Map<string, Readonly<Record<string, (...told: unknown[]) => Promise<unknown>>>>;

/**
 * The stand-in as the module `electron`, for the two files that Electron itself loads.
 *
 * `paths` has where a file lies that the user dropped; of any other, Electron knows no path.
 */
export function electronModule(electron: StandInElectron, { isPackaged, named, paths, exposed }: { readonly isPackaged: boolean; readonly named: Map<string, string>; readonly paths: Map<unknown, string>; readonly exposed: Exposed }) {
  const { calls } = electron;
  const display = (id: number) => ({ id, workArea: electron.screens[id] });
  return {
    app: { ...calls.app, isPackaged, setName: (name: string) => void named.set('name', name), setPath: (name: string, path: string) => void named.set(name, path) },
    protocol: calls.protocol,
    ipcMain: calls.ipcMain,
    session: {
      get defaultSession() {
        return calls.session();
      },
    },
    screen: { getPrimaryDisplay: () => display(0), getAllDisplays: () => electron.screens.map((_, id) => display(id)).reverse() },
    Menu: { buildFromTemplate: (template: MenuItemConstructorOptions[]) => template, setApplicationMenu: calls.setMenu },
    BrowserWindow: class {
      static [Symbol.hasInstance](value: unknown): boolean {
        return value instanceof StandInWindow;
      }
      constructor(options: BrowserWindowConstructorOptions) {
        return calls.openWindow(options);
      }
    },
    dialog: {
      showMessageBox: (...asked: [StandInWindow, MessageBoxOptions] | [MessageBoxOptions]) => calls.ask(asked.length === 2 ? asked[0] : null, asked.at(-1) as MessageBoxOptions),
      showOpenDialog: (options: OpenDialogOptions) => calls.chooseFiles(options),
      showErrorBox: calls.showErrorBox,
    },
    contextBridge: { exposeInMainWorld: (name: string, api: Readonly<Record<string, () => Promise<unknown>>>) => void exposed.set(name, api) },
    ipcRenderer: { invoke: (channel: string, ...told: [unknown, unknown]) => electron.send(channel, OWN_FRAME, ...told) },
    webUtils: { getPathForFile: (file: unknown) => paths.get(file) ?? '' },
  };
}
