import { mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { LARGEST_CALL_BYTES } from '../../shared-core/contract/index.ts';
import { CONTENT_POLICY } from '../../src-main/office/index.ts';
import { OwnWindow } from './own-window.ts';
import { type Answer, ask, askRaw, PATIENT_LIMITS, serveHouses, type Serving, signIn, statusesOf } from './serving.ts';

let serving: Serving;
let own: OwnWindow;
let origin: string;
let host: string;

beforeAll(async () => {
  serving = await serveHouses(PATIENT_LIMITS);
  own = await OwnWindow.open(serving);
  ({ origin } = serving.served);
  ({ host } = new URL(origin));
});
afterAll(() => serving.close());
/** After each attack: nothing of it reached the house, and the user works on. */
afterEach(() => own.worksOn());

const errorCode = ({ text }: Answer) => (JSON.parse(text) as { error?: { code: string } }).error?.code;
const page = (path: string, headers: Record<string, string> = {}) => ask(origin, { path, headers: { host, cookie: own.cookie, ...headers } });
/** A call that would be made, but for these headers; undefined leaves one out. */
const call = (changes: Record<string, string | undefined>) => own.call('undo', `{"file":"Home.struckline","revision":${own.revision}}`, changes);
/** The head of a request with all that the window's own requests have. */
const head = (line: string, ...more: readonly string[]) => [line, `Host: ${host}`, `Origin: ${origin}`, `Cookie: ${own.cookie}`, ...more, '', ''].join('\r\n');
const callHead = (...more: readonly string[]) => head('POST /call/undo HTTP/1.1', 'Content-Type: application/json', ...more);
const undo = () => `{"file":"Home.struckline","revision":${own.revision}}`;
const chunked = (body: string) => `${body.length.toString(16)}\r\n${body}\r\n0\r\n\r\n`;

describe('the token', () => {
  /** An attack before anybody has signed in; the user still can. */
  async function attackFresh(attack: (fresh: { readonly origin: string; readonly host: string; readonly path: string }) => Promise<void>): Promise<void> {
    const fresh = await serveHouses();
    const { origin: freshOrigin, host: freshHost, pathname, search } = new URL(fresh.served.address);
    await attack({ origin: freshOrigin, host: freshHost, path: pathname + search });
    expect(fresh.served.isSignedIn()).toBe(false);
    await (await OwnWindow.open(fresh)).worksOn();
    await fresh.close();
  }

  test.each(['/', '/?token=', '/?token=x', `/?token=${'A'.repeat(43)}`, `/?token=${'A'.repeat(5000)}`, '/?Token=x', '/?tokens=x'])('made up or missing, %s', (path) =>
    attackFresh(async (fresh) => {
      const answer = await ask(fresh.origin, { path, headers: { host: fresh.host } });
      expect([answer.status, answer.headers['set-cookie'], answer.headers['content-type']]).toEqual([401, undefined, 'text/plain; charset=utf-8']);
      expect(answer.text).toContain('Start Struckline again');
    }),
  );

  test.each([
    ['twice', (path: string) => `${path}&${path.slice(2)}`],
    ['before another', (path: string) => `${path}&token=x`],
    ['after another', (path: string) => path.replace('?', '?token=x&')],
    ['on another path', (path: string) => path.replace('/?', '/index.html?')],
    ['cut short', (path: string) => path.slice(0, -1)],
    ['lengthened', (path: string) => `${path}A`],
  ])('%s', (_how, changed) =>
    attackFresh(async (fresh) => {
      expect((await ask(fresh.origin, { path: changed(fresh.path), headers: { host: fresh.host } })).status).toBe(401);
    }),
  );

  test.each(['HEAD', 'POST', 'PUT', 'OPTIONS'])('by %s', (method) =>
    attackFresh(async ({ origin: freshOrigin, host: freshHost, path }) => {
      expect((await ask(freshOrigin, { method, path, headers: { host: freshHost, origin: freshOrigin } })).status).toBe(401);
    }),
  );

  test.each<Record<string, string>>([{ host: 'rebound.example' }, { 'sec-fetch-site': 'cross-site' }, { origin: 'https://other.example' }])(
    'come by somehow, by a page of another site: %j',
    (headers) =>
      attackFresh(async (fresh) => {
        expect((await ask(fresh.origin, { path: fresh.path, headers: { host: fresh.host, ...headers } })).status).toBe(403);
      }),
  );

  test('replayed after its use', async () => {
    const { pathname, search } = new URL(serving.served.address);
    const answer = await ask(origin, { path: pathname + search, headers: { host } });
    expect([answer.status, answer.headers['set-cookie']]).toEqual([401, undefined]);
    expect(answer.text).toContain('Start Struckline again');
  });

  test('sent many times in one breath signs in once', async () => {
    const fresh = await serveHouses();
    const { pathname, search, host: freshHost } = new URL(fresh.served.address);
    const answers = await askRaw(fresh.served.origin, `GET ${pathname + search} HTTP/1.1\r\nHost: ${freshHost}\r\n\r\n`.repeat(10));
    expect(answers.match(/^set-cookie: /gim)).toHaveLength(1);
    await fresh.close();
  });
});

describe('the cookie', () => {
  test.each([undefined, '', 'none', 'struckline=1', 'struckline-1=abc', 'struckline-80=abc; other=abc'])('missing or made up: %j', async (cookie) => {
    const answer = await ask(origin, { headers: cookie === undefined ? { host } : { host, cookie } });
    expect([answer.status, answer.text.includes('<title>')]).toEqual([401, false]);
    const called = await call({ cookie });
    expect([called.status, errorCode(called)]).toEqual([401, 'bad-argument']);
  });

  test('cut short, lengthened, emptied, or under another name', async () => {
    const [name, value] = own.cookie.split('=');
    for (const wrong of [own.cookie.slice(0, -1), `${own.cookie}A`, `${name}=`, `x${own.cookie}`, own.cookie.replace('s', 'x'), `struckline-1=${value}`]) expect((await call({ cookie: wrong })).status).toBe(401);
  });

  test('of another run, signed in there', async () => {
    const other = await serveHouses();
    const cookie = await signIn(other.served);
    expect((await call({ cookie })).status).toBe(401);
    expect((await call({ cookie: `${own.cookie.split('=')[0]}=${cookie.split('=')[1]}` })).status).toBe(401);
    await other.close();
  });

  test('a cookie of our name that a page of another port has set, and which comes first, shuts nobody out', async () => {
    const [name] = own.cookie.split('=');
    expect((await page('/', { cookie: `${name}=theirs; ${own.cookie}` })).status).toBe(200);
    expect((await page('/', { cookie: `${name}=theirs;${name}=; ${name}` })).status).toBe(401);
  });
});

describe('names, origins and sites', () => {
  test.each(['localhost', 'rebound.example', '127.0.0.1', '127.0.0.1:1', '[::1]', '0.0.0.0', '127.1', '127.0.0.1.', '127.0.0.1.nip.example'])('a foreign Host: %s', async (name) => {
    const named = name === '127.0.0.1' || /:\d$/.test(name) ? name : `${name}:${new URL(origin).port}`;
    expect((await page('/', { host: named })).status).toBe(403);
    // What a rebound name's own page would send is all of one piece.
    const answer = await call({ host: named, origin: `http://${named}` });
    expect([answer.status, errorCode(answer)]).toEqual([403, 'bad-argument']);
  });

  test.each([undefined, 'null', '', 'https://other.example', 'http://localhost', 'http://127.0.0.1:1', 'http://127.0.0.1', 'file://'])('a call from the Origin %j', async (foreign) => {
    const answer = await call({ origin: foreign });
    expect([answer.status, errorCode(answer)]).toEqual([403, 'bad-argument']);
    if (foreign !== undefined) expect((await page('/', { origin: foreign })).status).toBe(403);
  });

  // A page of another server on this machine is 'same-site': the browser would send it our cookie.
  test.each(['cross-site', 'same-site', 'none'])('a call that the browser marks as %s', async (site) => {
    expect((await call({ 'sec-fetch-site': site })).status).toBe(403);
  });

  test.each(['cross-site', 'same-site'])('a page that the browser marks as %s', async (site) => {
    expect((await page('/', { 'sec-fetch-site': site })).status).toBe(403);
    expect((await page('/assets/index-4f2A_b.js', { 'sec-fetch-site': site })).status).toBe(403);
  });

  test('no page of another origin is told that it may read or call, asked for or not', async () => {
    const preflight = (headers: Record<string, string>) =>
      ask(origin, {
        method: 'OPTIONS',
        path: '/call/undo',
        headers: { host, 'access-control-request-method': 'POST', 'access-control-request-headers': 'content-type', 'access-control-request-private-network': 'true', ...headers },
      });
    const answers = [
      await preflight({ 'origin': 'https://other.example', 'sec-fetch-site': 'cross-site' }),
      await preflight({ origin }),
      await preflight({ origin, cookie: own.cookie }),
      await page('/', { origin: 'https://other.example' }),
      await page('/', { origin }),
      await own.call('list-houses', '{}'),
    ];
    expect(answers.map(({ status }) => status)).toEqual([403, 401, 405, 403, 200, 200]);
    for (const { headers } of answers) expect(Object.keys(headers).filter((name) => /^access-control|^timing-allow/.test(name))).toEqual([]);
    own.forgetCalls();
  });

  test('another address of this machine: nothing listens there', async () => {
    const outside = Object.values(networkInterfaces()).flatMap((addresses) => addresses ?? []).filter(({ internal }) => !internal);
    const port = Number(new URL(origin).port);
    const isReached = (address: string) =>
      new Promise<boolean>((resolve) => {
        const socket = connect({ host: address, port, timeout: 1000 });
        const settle = (reached: boolean) => () => resolve((socket.destroy(), reached));
        socket.once('connect', settle(true)).once('error', settle(false)).once('timeout', settle(false));
      });
    expect(await isReached('127.0.0.1')).toBe(true);
    for (const address of [...outside.map(({ address, scopeid }) => (scopeid ? `${address}%${scopeid}` : address)), '127.0.0.2', '::1']) expect([address, await isReached(address)]).toEqual([address, false]);
  });

  test.runIf(process.platform === 'linux')('the system itself names the loopback address as the only one of this port', () => {
    const port = Number(new URL(origin).port).toString(16).toUpperCase().padStart(4, '0');
    const LISTENING = '0A';
    const listening = ['tcp', 'tcp6'].flatMap((table) => readFileSync(`/proc/net/${table}`, 'utf8').split('\n').map((line) => line.trim().split(/\s+/))).filter(([, local, , state]) => local?.endsWith(`:${port}`) && state === LISTENING);
    expect(listening.map(([, local]) => local)).toEqual([`0100007F:${port}`]);
  });
});

describe('requests that two readers would read in two ways, all with the cookie', () => {
  const one = 'Content-Length: 0';
  const next = () => head('GET / HTTP/1.1');
  test.each<[string, () => string]>([
    ['a length and chunks', () => callHead(`Content-Length: ${undo().length}`, 'Transfer-Encoding: chunked') + chunked(undo()) + next()],
    ['chunks and a length', () => callHead('Transfer-Encoding: chunked', 'Content-Length: 4') + chunked(undo()) + next()],
    ['two lengths', () => callHead(`Content-Length: ${undo().length}`, one) + undo()],
    ['two equal lengths', () => callHead(`Content-Length: ${undo().length}`, `Content-Length: ${undo().length}`) + undo()],
    ['a list of lengths', () => callHead(`Content-Length: ${undo().length}, ${undo().length}`) + undo()],
    ['a length with a sign', () => callHead(`Content-Length: +${undo().length}`) + undo()],
    ['a length below nothing', () => callHead('Content-Length: -1') + undo()],
    ['a length in hexadecimal', () => callHead(`Content-Length: 0x${undo().length.toString(16)}`) + undo()],
    ['an unknown coding', () => callHead('Transfer-Encoding: xchunked') + chunked(undo())],
    ['two codings', () => callHead('Transfer-Encoding: chunked', 'Transfer-Encoding: identity') + chunked(undo())],
    ['chunks that are not the last coding', () => callHead('Transfer-Encoding: chunked, identity') + chunked(undo())],
    ['a space before a colon', () => callHead('Transfer-Encoding : chunked') + chunked(undo())],
    ['a chunk of less than nothing', () => `${callHead('Transfer-Encoding: chunked')}-2\r\n{}\r\n0\r\n\r\n`],
    ['a chunk beyond all numbers', () => `${callHead('Transfer-Encoding: chunked')}fffffffffffffffff\r\n{}\r\n0\r\n\r\n`],
    ['a chunk with a long story', () => `${callHead('Transfer-Encoding: chunked')}2;${'a'.repeat(20_000)}\r\n{}\r\n0\r\n\r\n`],
    ['chunks in an older protocol', () => callHead('Transfer-Encoding: chunked').replace('HTTP/1.1', 'HTTP/1.0') + chunked(undo())],
    ['two hosts', () => callHead(`Content-Length: ${undo().length}`, 'Host: other.example') + undo()],
    ['its host twice', () => callHead(`Content-Length: ${undo().length}`, `Host: ${host}`) + undo()],
    ['no host', () => callHead(`Content-Length: ${undo().length}`).replace(/Host: .*\r\n/, '') + undo()],
    ['a whole address', () => head(`GET ${origin}/ HTTP/1.1`)],
    ['a whole address of somebody else', () => head('GET http://other.example/ HTTP/1.1')],
    ['a call at a whole address', () => callHead(`Content-Length: ${undo().length}`).replace('/call', `${origin}/call`) + undo()],
    ['no path', () => head('OPTIONS * HTTP/1.1')],
    ['a path that begins with nothing', () => head('GET index.html HTTP/1.1')],
    ['a header over two lines', () => head('GET / HTTP/1.1', 'X-One: a', ' b')],
    ['bare line feeds', () => head('GET / HTTP/1.1').replaceAll('\r', '')],
    ['a bare carriage return', () => head('GET / HTTP/1.1', 'X-One: a\rX-Two: b')],
    ['NUL in a header', () => head('GET / HTTP/1.1', 'X-One: a\0b')],
    ['a bell in a header', () => head('GET / HTTP/1.1', 'X-One: a\x07b')],
    ['NUL in a header\'s name', () => head('GET / HTTP/1.1', 'X\0One: a')],
    ['NUL in the path', () => head('GET /\0 HTTP/1.1')],
    ['a space in the path', () => head('GET / / HTTP/1.1')],
    ['an older protocol', () => head('GET / HTTP/1.0')],
    ['no protocol', () => 'GET /\r\n\r\n'],
    ['a newer protocol', () => 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'],
    ['the greeting of an encrypted connection', () => '\x16\x03\x01\x02\0\x01\0\x01\xfc\x03\x03'],
    ['an unknown method', () => head('CALL / HTTP/1.1')],
    ['a WebSocket', () => head('GET / HTTP/1.1', 'Connection: Upgrade', 'Upgrade: websocket', 'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==', 'Sec-WebSocket-Version: 13')],
    ['a change of protocol', () => head('GET / HTTP/1.1', 'Connection: Upgrade, HTTP2-Settings', 'Upgrade: h2c', 'HTTP2-Settings: AAMAAABkAAQAAP__')],
    ['a body that waits to be invited', () => callHead('Expect: 100-continue', `Content-Length: ${undo().length}`) + undo()],
    ['what cannot be expected', () => callHead('Expect: gold', `Content-Length: ${undo().length}`) + undo()],
  ])('%s', async (_what, bytes) => {
    const answer = await askRaw(origin, bytes());
    // One answer, and the connection is at its end: nothing behind it is taken for another request.
    expect(statusesOf(answer)).toEqual([400]);
    expect(answer).toContain('This request is not understood.');
    expect(answer).toContain(CONTENT_POLICY);
  });

  test.each([
    ['an address', () => head(`GET /${'a'.repeat(20_000)} HTTP/1.1`)],
    ['a header', () => head('GET / HTTP/1.1', `X-Long: ${'a'.repeat(20_000)}`)],
    ['the name of a header', () => head('GET / HTTP/1.1', `${'X'.repeat(20_000)}: a`)],
    ['all of many headers', () => head('GET / HTTP/1.1', ...Array.from({ length: 2_500 }, (_, index) => `X${index}: a`))],
  ])('%s that is too long', async (_what, bytes) => {
    const answer = await askRaw(origin, bytes());
    expect(statusesOf(answer)).toEqual([431]);
    expect(answer).toContain('are too long');
    expect(answer).toContain(CONTENT_POLICY);
  });

  test('a tunnel to somewhere else is closed unanswered', async () => {
    expect(await askRaw(origin, head('CONNECT other.example:80 HTTP/1.1'))).toBe('');
  });

  test.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'TRACE', 'PROPFIND', 'SEARCH'])('%s', async (method) => {
    for (const path of ['/', '/call/undo', '/nothing']) {
      const answer = await ask(origin, { method, path, headers: { ...own.headers(), 'x-http-method-override': 'POST' } });
      expect([answer.status, answer.headers['content-security-policy'], answer.text.includes(own.cookie)]).toEqual([405, CONTENT_POLICY, false]);
    }
  });

  test('a call by GET, a page by POST', async () => {
    expect((await page('/call/undo')).status).toBe(405);
    for (const path of ['/', '/call', '/CALL/undo']) expect((await ask(origin, { method: 'POST', path, headers: own.headers(), body: undo() })).status).toBe(405);
  });
});

describe('ways out of the folder', () => {
  test.each([
    ...['/notes.txt', '/.hidden.js', '/assets/deep/deep.js', '/assets', '/assets/', '/constructor.constructor', '/assets/x.__proto__'],
    ...['/../secret.js', '/assets/../../secret.js', '/./../secret.js', '/assets//../../secret.js', '//secret.js', '/assets/index-4f2A_b.js/..', '/....//secret.js'],
    ...['/..%2fsecret.js', '/%2e%2e/secret.js', '/%2e%2e%2fsecret.js', '/.%2e/secret.js', '/%2E%2E%5Csecret.js', '/%252e%252e%252fsecret.js', '/%25252e%25252e/secret.js'],
    ...['/..\\secret.js', '/..%5csecret.js', '/%c0%ae%c0%ae/secret.js', '/%c0%ae%c0%ae%c0%afsecret.js', '/%e0%80%ae%e0%80%ae/secret.js', '/%uff0e%uff0e/secret.js', '/%u002e%u002e/secret.js'],
    ...['/secret.js%00.js', '/%00', '/assets/index-4f2A_b.js%00.png', '/../secret.js%00', '/..%00/secret.js', '/..;/secret.js', '/.%0d./secret.js', '/%', '/%zz', '/%ff'],
    ...['/etc/passwd', '//etc/passwd', '/%2fetc/passwd', '/file:///etc/passwd', '/C:/Windows/win.ini', '/C:%5cWindows%5cwin.ini', '/%5c%5cserver%5cshare%5cfile.js', '/index.html::$DATA'],
    ...['/houses/Home.struckline', '/../houses/Home.struckline', '/assets/index-4f2A_b.js/', '/ASSETS/index-4f2A_b.js', '/INDEX.HTML', '/index.html.', '/index.html%20', '/index.html/'],
  ])('%s', async (path) => {
    const answer = await page(path);
    expect([400, 404]).toContain(answer.status);
    expect(answer.text).not.toMatch(/outside|hidden|too deep|not served|export|SQLite|root:/);
    expect(answer.headers['content-security-policy']).toBe(CONTENT_POLICY);
  });

  test('bytes that no address has', async () => {
    for (const path of ['/\xc0\xae\xc0\xae/secret.js', '/\xe0\x80\xae\xe0\x80\xae/secret.js', '/..\xef\xbc\x8fsecret.js']) expect(statusesOf(await askRaw(origin, head(`GET ${path} HTTP/1.1`, 'Connection: close')))).not.toContain(200);
  });

  test.skipIf(process.platform === 'win32')('links that lead out of it, to a file and to a folder, and back into it', async () => {
    const rendererFolder = join(serving.folder, 'renderer');
    symlinkSync(join(serving.folder, 'secret.js'), join(rendererFolder, 'assets', 'link.js'));
    symlinkSync(join('..', 'index.html'), join(rendererFolder, 'assets', 'link.html'));
    symlinkSync(join(serving.folder, 'houses', own.file), join(rendererFolder, 'link.png'));
    expect(readFileSync(join(rendererFolder, 'assets', 'link.js'), 'utf8')).toBe('outside');
    for (const path of ['/assets/link.js', '/assets/link.html', '/link.png']) expect((await page(path)).status).toBe(404);
    for (const path of ['assets/link.js', 'assets/link.html', 'link.png']) rmSync(join(rendererFolder, path));
    const elsewhere = join(serving.folder, 'elsewhere');
    mkdirSync(elsewhere);
    writeFileSync(join(elsewhere, 'index-4f2A_b.js'), 'outside');
    renameSync(join(rendererFolder, 'assets'), join(serving.folder, 'assets'));
    symlinkSync(elsewhere, join(rendererFolder, 'assets'));
    expect((await page('/assets/index-4f2A_b.js')).status).toBe(404);
    rmSync(join(rendererFolder, 'assets'));
    renameSync(join(serving.folder, 'assets'), join(rendererFolder, 'assets'));
    expect((await page('/assets/index-4f2A_b.js')).status).toBe(200);
  });
});

describe('bodies, sent with the cookie', () => {
  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/jsonp', 'text/json', 'application/x-json', 'application/json, text/plain', '', undefined])('of the type %j', async (type) => {
    const answer = await call({ 'content-type': type });
    expect([answer.status, errorCode(answer)]).toEqual([415, 'bad-argument']);
  });

  test.each(['', '{', '{"file":', 'file=Home', '{"a":1}}', '\u0000', '[1,]', "{'a':1}", 'NaN', '{"revision":0x10}', '"\\ud8', '{"a":1}{"a":2}'])('that are no JSON: %j', async (body) => {
    const answer = await own.call('undo', body);
    expect([answer.status, errorCode(answer)]).toEqual([400, 'bad-argument']);
  });

  test('that claim to be compressed', async () => {
    const answer = await own.call('undo', Buffer.from('1f8b0800000000000003ab56ca48cdc9c95700b7b6a2f20a000000', 'hex'), { 'content-encoding': 'gzip' });
    expect([answer.status, errorCode(answer)]).toEqual([400, 'bad-argument']);
  });

  test.each(['{"__proto__":{"isAdmin":true}}', '{"file":{"a":[{"__proto__":{"isAdmin":true}}]}}', String.raw`{"\u005f\u005fproto__":{"isAdmin":true}}`, '{"constructor":{"prototype":{"isAdmin":true}}}'])(
    'that would change what every object is: %s',
    async (body) => {
      const keys = Reflect.ownKeys(Object.prototype);
      const answer = await own.call('undo', body);
      expect([answer.status, errorCode(answer)]).toEqual([400, 'bad-argument']);
      expect(Reflect.ownKeys(Object.prototype)).toEqual(keys);
      expect({}).not.toHaveProperty('isAdmin');
    },
  );

  test.each<[string, string, string]>([
    ['undo', '[]', 'bad-argument'],
    ['undo', 'null', 'bad-argument'],
    ['undo', '{"constructor":1,"toString":2,"valueOf":3}', 'bad-argument'],
    ['undo', '['.repeat(100_000) + ']'.repeat(100_000), 'bad-argument'],
    ['undo', `${'{"file":'.repeat(100_000)}1${'}'.repeat(100_000)}`, 'bad-argument'],
    ['undo', `{"file":"Home.struckline","revision":1e400}`, 'bad-argument'],
    ['undo', `{"file":"Home.struckline","revision":9007199254740993}`, 'bad-argument'],
    ['undo', `{"file":"Home.struckline","revision":1${'0'.repeat(100_000)}}`, 'bad-argument'],
    ['undo', `{"file":"Home.struckline","revision":-1}`, 'bad-argument'],
    // Of a key that comes twice the last one counts, for every reader here.
    ['undo', `{"file":"Home.struckline","revision":0,"file":"../secret.js"}`, 'bad-argument'],
    ['import-document', JSON.stringify({ text: '{"__proto__":{"isAdmin":true},"name":{"__proto__":{"isAdmin":true}}}' }), 'refused'],
    ['import-document', JSON.stringify({ text: '['.repeat(100_000) }), 'refused'],
    ['__proto__', '{}', 'bad-argument'],
    ['constructor', '{}', 'bad-argument'],
    ['hasOwnProperty', '{}', 'bad-argument'],
  ])('for the call %s: %.60s', async (method, body, code) => {
    const answer = await own.call(method, body);
    expect([answer.status, errorCode(answer)]).toEqual([200, code]);
    expect({}).not.toHaveProperty('isAdmin');
    own.forgetCalls();
  });

  test('larger than a call may be, told and untold', async () => {
    const body = `"${'x'.repeat(LARGEST_CALL_BYTES)}"`;
    const told = await own.call('undo', body);
    expect([told.status, errorCode(told)]).toEqual([413, 'too-large']);
    const untold = await ask(origin, { method: 'POST', path: '/call/undo', headers: own.headers(), body, isChunked: true });
    expect([untold.status, errorCode(untold)]).toEqual([413, 'too-large']);
  });

  test('that are only announced are judged by what is announced', async () => {
    expect(statusesOf(await askRaw(origin, callHead(`Content-Length: ${LARGEST_CALL_BYTES + 1}`)))).toEqual([413]);
    expect(statusesOf(await askRaw(origin, callHead('Content-Length: 9007199254740993')))).toEqual([413]);
    // A stranger is refused before anything of a body has come.
    expect(statusesOf(await askRaw(origin, `POST /call/undo HTTP/1.1\r\nHost: ${host}\r\nOrigin: ${origin}\r\nContent-Length: 1000\r\n\r\n`))).toEqual([401]);
    expect(statusesOf(await askRaw(origin, `POST /call/undo HTTP/1.1\r\nHost: ${host}\r\nOrigin: ${origin}\r\nTransfer-Encoding: chunked\r\n\r\n`))).toEqual([401]);
  });

  test.each(['/call/a/b', '/call//undo', `/call/${'x'.repeat(101)}`, '/call/', '/call/%', '/call/..%2fundo', '/call/undo/'])('for no call: %.30s', async (path) => {
    const answer = await ask(origin, { method: 'POST', path, headers: own.headers(), body: undo() });
    expect([[400, 404].includes(answer.status) || answer.text.includes('knows no call of that name'), errorCode(answer)]).toEqual([true, 'bad-argument']);
    own.forgetCalls();
  });
});
