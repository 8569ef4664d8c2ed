import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../shared-core/words/index.ts';
import { menuFor } from '../../src-main/desktop/menu.ts';
import { settled, type StandInElectron } from './stand-in.ts';
import { type Starting, startingForEach } from './starting.ts';

/** What is left of Electron's roles; none of them opens a page, a tool for developers or anything of the network. */
const SAFE_ROLES = [
  ...['about', 'services', 'hide', 'hideOthers', 'unhide', 'quit', 'close', 'minimize', 'zoom', 'front', 'window'],
  ...['undo', 'redo', 'cut', 'copy', 'paste', 'delete', 'selectAll', 'resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen'],
];

let starting: Starting;
let electron: StandInElectron;
startingForEach((one) => {
  starting = one;
  electron = one.electron;
});

const itemsOf = (menu: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
  menu.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? itemsOf(item.submenu) : [])]);
const labelsOf = (label: string) => itemsOf(electron.menu.filter((menu) => menu.label === label)).slice(1).map((item) => item.label ?? '');
const press = async (label: string) => {
  const item = itemsOf(electron.menu).find((one) => one.label?.replace('&', '') === label);
  (item?.click as () => void)();
  await settled();
};

describe.each([
  ['darwin', ['Struckline', 'File', 'Edit', 'View', 'Window'], ['New window', 'Open a house…', '', 'Close the window'], ['Minimize', 'Zoom', '', 'Bring all to front']],
  ['win32', ['&File', '&Edit', '&View', '&Window', '&Help'], ['&New window', '&Open a house…', '', '&Close the window', '', 'E&xit'], ['&Minimize']],
  ['linux', ['&File', '&Edit', '&View', '&Window', '&Help'], ['&New window', '&Open a house…', '', '&Close the window', '', '&Quit'], ['&Minimize']],
] as const)('the menu on %s', (platform, menus, file, window) => {
  test('is laid out as is usual there', async () => {
    await starting.start({ platform });
    expect(electron.menu.map(({ label }) => label)).toEqual(menus);
    expect(labelsOf(menus.find((label) => label.endsWith('File'))!)).toEqual(file);
    expect(labelsOf(menus.find((label) => label.endsWith('Window'))!)).toEqual(window);
    expect(itemsOf(electron.menu).filter(({ role }) => role === 'about' || role === 'quit')).toHaveLength(2);
  });

  test.each([true, false])('has safe roles alone, each with a name that is said (packed: %s)', async (isPackaged) => {
    await starting.start({ platform, isPackaged });
    const items = itemsOf(electron.menu).filter(({ type }) => type !== 'separator');
    expect(items.filter(({ label }) => !label)).toEqual([]);
    expect(items.flatMap(({ role }) => (role && !SAFE_ROLES.includes(role) ? [role] : []))).toEqual([]);
    expect(items.filter(({ role, click, submenu }) => !role && !click && !submenu)).toEqual([]);
  });
});

test('elsewhere than on macOS a letter picks each item, one letter alone in a menu, in every language', async () => {
  const bar = menuFor('linux', { newWindow: () => {}, openHouses: () => {} });
  for (const { code, words } of LANGUAGES) {
    for (const items of [bar, ...bar.map((menu) => itemsOf([menu]).slice(1))]) {
      const labels = items.flatMap(({ label }) => (label === undefined ? [] : [words?.[label] ?? label]));
      const letters = labels.map((label) => /&(.)/u.exec(label)?.[1]?.toLowerCase());
      expect([code, letters, new Set(letters).size]).toEqual([code, letters.filter((letter) => letter !== undefined), labels.length]);
    }
  }
});

test('another window opens with the list of houses', async () => {
  await starting.start({ files: ['/houses/Alder.struckline'] });
  await press('New window');
  expect(electron.windows[1]?.webContents.address).toBe('app://struckline/');
});

test('houses are chosen in a dialog that begins in their folder', async () => {
  await starting.start();
  electron.chosenFiles = ['/elsewhere/Alder.struckline', '/houses/Birch.struckline'];
  await press('Open a house…');
  expect(electron.fileDialogs).toMatchObject([{ defaultPath: '/houses', filters: [{ extensions: ['struckline'] }], properties: ['openFile', 'multiSelections'] }]);
  expect(electron.windows.slice(1).map(({ webContents }) => webContents.address)).toEqual(['app://struckline/#/Alder.struckline', 'app://struckline/#/Birch.struckline']);
});

test('a dialog that is called off opens nothing', async () => {
  await starting.start();
  await press('Open a house…');
  expect(electron.windows).toHaveLength(1);
});

test('About tells the version', async () => {
  await starting.start();
  expect(electron.about).toMatchObject({ applicationName: 'Struckline', applicationVersion: expect.stringMatching(/^\d+\.\d+\.\d+$/) });
});
