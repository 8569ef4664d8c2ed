import type { MenuItemConstructorOptions } from 'electron';
import { say } from '../../shared-core/words/index.ts';

/** What the menu asks of the shell. */
export interface MenuActions {
  newWindow(): void;
  openHouses(): void;
}

const LINE: MenuItemConstructorOptions = { type: 'separator' };

/**
 * The menu in the platform's own order: on macOS the app's menu comes first, elsewhere the way out stands under File and
 * About under Help, and each name marks the letter that picks it: `&File`.
 *
 * Electron's own menu would offer pages of the network, the developer tools, and its roles' names in English alone.
 */
export function menuFor(platform: NodeJS.Platform, actions: MenuActions): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const about: MenuItemConstructorOptions = { role: 'about', label: say`&About Struckline` };
  const common = [fileMenu(platform, actions), editMenu(), viewMenu(), windowMenu(isMac)];
  return isMac ? [appMenu(about), ...common].map(withoutMarks) : [...common, { label: say`&Help`, submenu: [about] }];
}

/** On macOS no letters pick from a menu. */
function withoutMarks(item: MenuItemConstructorOptions): MenuItemConstructorOptions {
  const { label, submenu } = item;
  return { ...item, ...(label === undefined ? {} : { label: label.replace('&', '') }), ...(Array.isArray(submenu) ? { submenu: submenu.map(withoutMarks) } : {}) };
}

function appMenu(about: MenuItemConstructorOptions): MenuItemConstructorOptions {
  return {
    label: 'Struckline',
    submenu: [
      about,
      LINE,
      { role: 'services', label: say`Services` },
      LINE,
      { role: 'hide', label: say`Hide Struckline` },
      { role: 'hideOthers', label: say`Hide others` },
      { role: 'unhide', label: say`Show all` },
      LINE,
      { role: 'quit', label: say`Quit Struckline` },
    ],
  };
}

function fileMenu(platform: NodeJS.Platform, { newWindow, openHouses }: MenuActions): MenuItemConstructorOptions {
  const quit: MenuItemConstructorOptions = { role: 'quit', label: platform === 'win32' ? say`E&xit` : say`&Quit` };
  return {
    label: say`&File`,
    submenu: [
      { label: say`&New window`, accelerator: 'CmdOrCtrl+N', click: newWindow },
      { label: say`&Open a house…`, accelerator: 'CmdOrCtrl+O', click: openHouses },
      LINE,
      { role: 'close', label: say`&Close the window` },
      ...(platform === 'darwin' ? [] : [LINE, quit]),
    ],
  };
}

function editMenu(): MenuItemConstructorOptions {
  return {
    label: say`&Edit`,
    submenu: [
      { role: 'undo', label: say`&Undo` },
      { role: 'redo', label: say`&Redo` },
      LINE,
      { role: 'cut', label: say`Cu&t` },
      { role: 'copy', label: say`&Copy` },
      { role: 'paste', label: say`&Paste` },
      { role: 'delete', label: say`&Delete` },
      LINE,
      { role: 'selectAll', label: say`Select &all` },
    ],
  };
}

function viewMenu(): MenuItemConstructorOptions {
  return {
    label: say`&View`,
    submenu: [
      { role: 'resetZoom', label: say`&Actual size` },
      { role: 'zoomIn', label: say`&Larger` },
      { role: 'zoomOut', label: say`&Smaller` },
      LINE,
      { role: 'togglefullscreen', label: say`&Full screen` },
    ],
  };
}

/** Its role lets macOS list the open windows in it. */
function windowMenu(isMac: boolean): MenuItemConstructorOptions {
  const front: MenuItemConstructorOptions[] = [{ role: 'zoom', label: say`Zoom` }, LINE, { role: 'front', label: say`Bring all to front` }];
  return { role: 'window', label: say`&Window`, submenu: [{ role: 'minimize', label: say`&Minimize` }, ...(isMac ? front : [])] };
}
