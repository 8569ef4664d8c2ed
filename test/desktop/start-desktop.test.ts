import { describe, expect, test } from 'vitest';
import { DESKTOP_CHANNEL, DESKTOP_DROP_CHANNEL, LARGEST_CALL_BYTES } from '../../shared-core/contract/index.ts';
import { preventable } from './listeners.ts';
import { OWN_FRAME, type StandInElectron } from './stand-in.ts';
import { type Starting, startingForEach } from './starting.ts';

let starting: Starting;
let electron: StandInElectron;
startingForEach((one) => {
  starting = one;
  electron = one.electron;
});

const start = () => starting.start();

test('starts in the order that Electron asks for, and is fenced in before the page is loaded', async () => {
  await start();
  expect(electron.log).toEqual([
    'enableSandbox',
    'registerSchemesAsPrivileged',
    'ready',
    'open office',
    'session',
    'handle app',
    `listen ${DESKTOP_CHANNEL}`,
    `listen ${DESKTOP_DROP_CHANNEL}`,
    'openWindow',
    'load app://struckline/',
  ]);
});

test('the protocol has the rights of a secure site and no others', async () => {
  await start();
  expect(electron.schemes).toEqual([{ scheme: 'app', privileges: { standard: true, secure: true } }]);
});

describe('a page', () => {
  test.each(['will-navigate', 'will-redirect', 'will-frame-navigate'])('goes nowhere but to itself (%s)', async (event) => {
    await start();
    const page = electron.createPage();
    const isPrevented = (address: string) => {
      const navigation = preventable(address);
      page.emit(event, navigation);
      return navigation.isPrevented;
    };
    expect(isPrevented('app://struckline/')).toBe(false);
    expect(isPrevented('https://struckline.example/')).toBe(true);
    expect(isPrevented('app://struckline/assets/index.js')).toBe(true);
    expect(isPrevented('file:///etc/passwd')).toBe(true);
  });

  test.each(['https://struckline.example/', 'app://struckline/?x=1', 'app://struckline/assets/index.js', 'about:blank', 'javascript:0'])('opens no window of %s', async (address) => {
    await start();
    expect(electron.createPage().openWindow(address)).toEqual({ action: 'deny' });
    expect(electron.windows).toHaveLength(1);
  });

  test('opens its own address in another window, which the shell makes with every protection', async () => {
    await start();
    expect(electron.createPage().openWindow('app://struckline/#/Home.struckline/order')).toEqual({ action: 'deny' });
    expect(electron.windows).toHaveLength(2);
    expect(electron.windows[1]?.options.webPreferences).toEqual(electron.windows[0]?.options.webPreferences);
    expect(electron.log.at(-1)).toBe('load app://struckline/#/Home.struckline/order');
  });

  test('takes in no web view', async () => {
    await start();
    const page = electron.createPage();
    const attaching = preventable();
    page.emit('will-attach-webview', attaching);
    expect(attaching.isPrevented).toBe(true);
  });
});

describe('the session', () => {
  const page = { isMainFrame: true, requestingUrl: 'app://struckline/#/Home.struckline/order' };

  test.each(['media', 'geolocation', 'notifications', 'clipboard-read', 'fileSystem', 'openExternal', 'usb', 'unknown'])('is denied %s, whichever way it asks', async (permission) => {
    await start();
    expect(electron.askPermission(permission, page)).toEqual([false, false, false]);
  });

  test('lets the page itself put a table on the clipboard, which is all that it is granted, and nobody else', async () => {
    await start();
    const ask = (asker: Partial<typeof page>) => electron.askPermission('clipboard-sanitized-write', { ...page, ...asker });
    expect(ask({})).toEqual([true, true, false]);
    expect(ask({ isMainFrame: false })).toEqual([false, false, false]);
    expect(ask({ requestingUrl: 'https://struckline.example/' })).toEqual([false, false, false]);
    expect(electron.askPermission('clipboard-sanitized-write', { isMainFrame: true })).toEqual([false, false, false]);
  });

  test.each([
    ['app://struckline/assets/index.js', true],
    ['blob:app://struckline/1', true],
    ['data:image/png;base64,AA', true],
    ['https://struckline.example/', false],
    ['http://127.0.0.1:8080/', false],
    ['ws://struckline.example/', false],
    ['file:///etc/passwd', false],
    ['app://elsewhere/', false],
    ['blob:https://struckline.example/1', false],
    ['blob:app://struckline.example/1', false],
    ['devtools://devtools/bundled/inspector.html', false],
    ['', false],
  ])('lets a request for %s through: %s', async (address, isThrough) => {
    await start();
    expect(electron.isLetThrough(address)).toBe(isThrough);
  });

  test('saves what the page made itself, and nothing else', async () => {
    await start();
    expect(['blob:app://struckline/1', 'app://struckline/icon.svg', 'https://struckline.example/a.exe', 'data:text/plain,a'].map((address) => electron.isSaved(address))).toEqual([true, false, false, false]);
  });

  test('fetches no dictionaries', async () => {
    await start();
    expect(electron.isSpellChecked).toBe(false);
  });
});

describe('the protocol', () => {
  test('serves the window with the headers that fence it in', async () => {
    await start();
    const answer = await electron.fetch('app://struckline/');
    expect(await answer.text()).toContain('<title>window</title>');
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'content-security-policy': expect.stringMatching(/^default-src 'none'; script-src 'self'; /),
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
    });
    expect((await electron.fetch('app://struckline/assets/index-4f2A_b.js')).headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  });

  test.each(['app://struckline/assets/gone.js', 'app://struckline/../secret.js', 'app://struckline/notes.txt', 'app://elsewhere/'])('has nothing at %s', async (address) => {
    await start();
    const answer = await electron.fetch(address);
    expect([answer.status, answer.headers.get('content-security-policy')]).toEqual([404, expect.stringMatching(/^default-src 'none'/)]);
    expect(await answer.text()).toBe('There is nothing at this address.');
  });
});

describe('a call', () => {
  test('of the window reaches the office as plain data', async () => {
    await start();
    expect(await electron.invoke('open-house', { file: 'Home.struckline', more: undefined, when: new Date(0), list: new Map([[1, 2]]) })).toMatchObject({ ok: true });
    expect(starting.calls).toStrictEqual([{ method: 'open-house', argument: { file: 'Home.struckline', when: '1970-01-01T00:00:00.000Z', list: {} } }]);
  });

  test.each([
    ['a frame that is gone', null],
    ['another site', { url: 'https://struckline.example/', parent: null }],
    ['a file', { url: 'file:///struckline/index.html', parent: null }],
    ['another host of the protocol', { url: 'app://elsewhere/', parent: null }],
    ['a frame within the page', { url: 'app://struckline/', parent: OWN_FRAME }],
    ['an empty page', { url: 'about:blank', parent: null }],
    ['a page that is not the app', { url: 'app://struckline/icon.svg', parent: null }],
  ])('of %s is refused', async (_who, frame) => {
    await start();
    expect(await electron.invoke('open-house', {}, frame)).toMatchObject({ ok: false, error: { code: 'bad-argument' } });
    expect(starting.calls).toEqual([]);
  });

  test('is refused where it is no call at all', async () => {
    await start();
    const ring: Record<string, unknown> = {};
    ring['ring'] = ring;
    for (const [method, argument] of [[undefined, {}], [7, {}], [{}, {}], ['x'.repeat(101), {}], ['open-house', undefined], ['open-house', 1n], ['open-house', ring]]) {
      expect(await electron.invoke(method, argument)).toMatchObject({ ok: false, error: { code: 'bad-argument' } });
    }
    expect(starting.calls).toEqual([]);
  });

  test('is refused where it is too large, counted in bytes', async () => {
    await start();
    const letters = '\u00e9'.repeat(LARGEST_CALL_BYTES / 2);
    expect(await electron.invoke('open-house', letters)).toMatchObject({ ok: false, error: { code: 'too-large' } });
    expect(starting.calls).toEqual([]);
    expect(await electron.invoke('open-house', letters.slice(1))).toMatchObject({ ok: true });
  });
});

describe('a file that is dropped', () => {
  test('is opened by its path', async () => {
    await start();
    expect(await electron.drop('/houses/Alder.struckline')).toMatchObject({ ok: true, value: { file: 'Alder.struckline' } });
    expect(await electron.drop('/houses/gone.struckline')).toMatchObject({ error: { message: 'It is no longer there.' } });
    expect(starting.calls).toEqual(['Alder', 'gone'].map((name) => ({ method: 'open a path', argument: `/houses/${name}.struckline` })));
  });

  test.each([['', OWN_FRAME], ['Alder.struckline', OWN_FRAME], [7, OWN_FRAME], [undefined, OWN_FRAME], ['/houses/Alder.struckline', null], ['/houses/Alder.struckline', { url: 'https://struckline.example/', parent: null }]])('is refused without a path of the disk, or of another page (%j, %j)', async (path, frame) => {
    await start();
    expect(await electron.drop(path, frame)).toMatchObject({ ok: false });
    expect(starting.calls).toEqual([]);
  });
});

describe('the end', () => {
  test('waits until the office has closed the house files, however often it is asked for', async () => {
    await start();
    electron.log.length = 0;
    electron.emit('window-all-closed');
    electron.calls.app.quit();
    expect(electron.log).toEqual(['quit', 'held back', 'quit', 'held back']);
    expect(starting.closings).toHaveLength(1);
    starting.closings[0]?.();
    await expect.poll(() => electron.log.slice(4)).toEqual(['quit', 'ended']);
  });
});
