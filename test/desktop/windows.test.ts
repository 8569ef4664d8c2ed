import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { startDesktop } from '../../src-main/desktop/start-desktop.ts';
import { preventable } from './listeners.ts';
import { settled, type StandInElectron } from './stand-in.ts';
import { PROTECTIONS, Starting, startingForEach } from './starting.ts';

let starting: Starting;
let electron: StandInElectron;
startingForEach((one) => {
  starting = one;
  electron = one.electron;
});

const addresses = () => electron.windows.filter((window) => !window.isDestroyed()).map(({ webContents }) => webContents.address);
const since = async (happen: () => void) => {
  electron.log.length = 0;
  happen();
  await settled();
  return electron.log;
};

describe('the window', () => {
  const protections = () => ({ preload: join(starting.folder, 'preload.cjs'), ...PROTECTIONS });

  test('is opened with every protection that Electron has, and with nothing else', async () => {
    await starting.start();
    expect(electron.windows.map(({ options }) => options)).toEqual([
      { title: 'Struckline', width: 1280, height: 800, minWidth: 900, minHeight: 600, show: false, webPreferences: protections() },
    ]);
  });

  test('has developer tools in the checkout alone', async () => {
    await starting.start({ isPackaged: false });
    expect(electron.windows[0]?.options.webPreferences).toEqual({ ...protections(), devTools: true });
  });

  test('is shown once there is something to see', async () => {
    await starting.start();
    expect(electron.log).not.toContain('show');
    expect(await since(() => electron.windows[0]?.emit('ready-to-show'))).toEqual(['show']);
  });

  test('comes back where it was closed, as large as it was', async () => {
    await starting.start();
    const [first] = electron.windows;
    first!.bounds = { x: 100, y: 50, width: 1000, height: 700 };
    first!.isMaximised = true;
    first!.close();
    const again = new Starting();
    await again.start({ windowStateFile: starting.settings.windowStateFile });
    const [window] = again.electron.windows;
    expect(window?.options).toMatchObject({ x: 100, y: 50, width: 1000, height: 700 });
    window?.emit('ready-to-show');
    expect(again.electron.log.slice(-2)).toEqual(['maximize', 'show']);
    again.clear();
  });

  test('stands on a screen that is there, whatever the file of its state says', async () => {
    writeFileSync(starting.settings.windowStateFile, JSON.stringify({ version: 1, bounds: { x: 4000, y: 20, width: 5000, height: 700 }, isMaximised: false }));
    await starting.start();
    expect(electron.windows[0]?.options).toMatchObject({ width: 1920, height: 700 });
    expect(electron.windows[0]?.options).not.toHaveProperty('x');
  });

  test('does not hide the one before it', async () => {
    await starting.start();
    electron.windows[0]!.bounds = { x: 100, y: 50, width: 1000, height: 700 };
    electron.windows[0]!.webContents.openWindow('app://struckline/#/Home.struckline/order');
    expect(electron.windows[1]?.options).toMatchObject({ x: 132, y: 82, width: 1000, height: 700 });
  });

  test('that can not be loaded is a fault', async () => {
    electron.onLoad = () => {
      throw new Error('no such page');
    };
    await expect(startDesktop(electron.calls, starting.settings)).rejects.toThrow('no such page');
  });

  test('that is closed while it loads is none', async () => {
    electron.onLoad = (window) => {
      window.close();
      throw new Error('broken off');
    };
    await startDesktop(electron.calls, starting.settings);
    expect(addresses()).toEqual([]);
  });
});

describe('a second start', () => {
  test('ends before it opens anything', async () => {
    electron.isSecondInstance = true;
    await starting.start();
    expect(electron.log).toEqual(['quit', 'ended']);
  });

  test('brings the window forward that was opened last, and none that was closed', async () => {
    await starting.start();
    electron.createPage().openWindow('app://struckline/#/Home.struckline');
    electron.windows[1]!.isMinimised = true;
    expect(await since(() => electron.emit('second-instance', {}, ['/struckline'], '/'))).toEqual(['restore', 'focus app://struckline/#/Home.struckline']);
    electron.windows[1]?.close();
    expect(await since(() => electron.emit('second-instance', {}, ['/struckline'], '/'))).toEqual(['focus app://struckline/']);
  });

  test('opens the houses that it names, from the folder it was started in', async () => {
    await starting.start();
    electron.emit('second-instance', {}, ['/struckline', '--original-process-start-time=1', 'Alder.struckline', 'file:///houses/My%20Home.struckline', 'notes.txt'], '/elsewhere');
    await settled();
    expect(starting.calls.map(({ argument }) => argument)).toEqual(['/elsewhere/Alder.struckline', '/houses/My Home.struckline']);
    expect(addresses()).toEqual(['app://struckline/', 'app://struckline/#/Alder.struckline', 'app://struckline/#/My%20Home.struckline']);
  });

  test('shows a house where it is open already', async () => {
    await starting.start({ files: ['/houses/Alder.struckline'] });
    electron.windows[0]!.webContents.address = 'app://struckline/#/Alder.struckline/order';
    electron.createPage().openWindow('app://struckline/#/Birch.struckline');
    expect(await since(() => electron.emit('second-instance', {}, ['/houses/Alder.struckline'], '/'))).toEqual(['focus app://struckline/#/Alder.struckline/order']);
    expect(electron.windows).toHaveLength(2);
  });

  test('says what it could not open, and opens the rest', async () => {
    await starting.start();
    electron.emit('second-instance', {}, ['gone.struckline', 'Alder.struckline'], '/houses');
    await settled();
    expect(electron.questions).toMatchObject([{ type: 'error', message: 'gone.struckline was not opened.', detail: 'It is no longer there.\nGone was moved' }]);
    expect(addresses()).toHaveLength(1);
    await electron.answer(0);
    expect(addresses()).toEqual(['app://struckline/', 'app://struckline/#/Alder.struckline']);
  });
});

describe('the first start', () => {
  test('opens each house that is named in a window of its own, and no other', async () => {
    await starting.start({ files: ['/houses/Alder.struckline', '/elsewhere/Birch.struckline'] });
    expect(addresses()).toEqual(['app://struckline/#/Alder.struckline', 'app://struckline/#/Birch.struckline']);
  });

  test('shows the list of houses where the one that is named can not be opened', async () => {
    await starting.start({ files: ['/houses/gone.struckline'] });
    expect(addresses()).toEqual([]);
    await electron.answer(0);
    expect(addresses()).toEqual(['app://struckline/']);
  });
});

describe('on macOS', () => {
  const start = () => starting.start({ platform: 'darwin' });

  test('a file that is opened before the app is ready is opened then, and a later one at once', async () => {
    const events = [preventable(), preventable()];
    electron.beforeReady = () => electron.emit('open-file', events[0], '/houses/Alder.struckline');
    await start();
    expect(addresses()).toEqual(['app://struckline/#/Alder.struckline']);
    electron.emit('open-file', events[1], '/houses/Birch.struckline');
    await settled();
    expect(addresses()).toEqual(['app://struckline/#/Alder.struckline', 'app://struckline/#/Birch.struckline']);
    expect(events.map(({ isPrevented }) => isPrevented)).toEqual([true, true]);
  });

  test('the app runs on without windows, and its icon brings one back', async () => {
    await start();
    expect(await since(() => electron.windows[0]?.close())).toEqual(['closed']);
    expect(await since(() => electron.emit('activate'))).toEqual(['openWindow', 'load app://struckline/']);
    expect(await since(() => electron.emit('activate'))).toEqual([]);
    electron.windows[1]?.close();
    expect(await since(() => electron.emit('second-instance', {}, [], '/'))).toEqual(['openWindow', 'load app://struckline/']);
  });

  test('it ends with its last window where it was told to end and a window had to save first', async () => {
    await start();
    electron.emit('before-quit');
    expect(await since(() => electron.windows[0]?.close())).toEqual(['closed', 'quit', 'held back']);
  });
});

test('elsewhere the app ends with its last window', async () => {
  await starting.start();
  electron.createPage().openWindow('app://struckline/');
  expect(await since(() => electron.windows[0]?.close())).toEqual(['closed']);
  expect(await since(() => electron.windows[1]?.close())).toEqual(['closed', 'quit', 'held back']);
});
