import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { LARGEST_CALL_BYTES } from '../../shared-core/contract/index.ts';
import { CONTENT_POLICY } from '../../src-main/office/index.ts';
import { ask, callHeaders, serveEcho, type Serving, signIn } from './serving.ts';

let serving: Serving;
let cookie: string;
let host: string;

beforeAll(async () => {
  serving = await serveEcho();
  cookie = await signIn(serving.served);
  host = new URL(serving.served.origin).host;
});
afterAll(() => serving.close());
beforeEach(() => {
  serving.calls.length = 0;
});

const page = (path: string, headers: Record<string, string> = {}) => ask(serving.served.origin, { path, headers: { host, cookie, ...headers } });
const call = (changes: Record<string, string | undefined> = {}, body: string | Buffer = '{"file":"Home.struckline"}', path = '/call/open-house') => {
  const headers = Object.fromEntries(Object.entries({ ...callHeaders(serving.served, cookie), ...changes }).filter(([, value]) => value !== undefined));
  return ask(serving.served.origin, { method: 'POST', path, headers: headers as Record<string, string>, body });
};
const errorCode = (text: string) => (JSON.parse(text) as { error?: { code: string } }).error?.code;

describe('signing in', () => {
  test('swaps the token for a session cookie and goes on to a clean address', async () => {
    const fresh = await serveEcho();
    const { pathname, search, host: freshHost, port } = new URL(fresh.served.address);
    expect(fresh.served.isSignedIn()).toBe(false);
    const answer = await ask(fresh.served.origin, { path: pathname + search, headers: { host: freshHost, 'sec-fetch-site': 'none' } });
    expect(answer.status).toBe(303);
    expect(answer.headers.location).toBe('/');
    expect(answer.headers['set-cookie']).toEqual([expect.stringMatching(new RegExp(`^struckline-${port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`))]);
    expect(fresh.served.isSignedIn()).toBe(true);
    await fresh.close();
  });

  test('gives every run a token and a session of 256 random bits', async () => {
    const fresh = await serveEcho();
    const token = new URL(fresh.served.address).searchParams.get('token') ?? '';
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(token).not.toBe(new URL(serving.served.address).searchParams.get('token'));
    const [, session] = (await signIn(fresh.served)).split('=');
    expect(session).not.toBe(token);
    expect(session).not.toBe(cookie.split('=')[1]);
    await fresh.close();
  });

  test('refuses a token that was used before, in words that say what to do', async () => {
    const { pathname, search } = new URL(serving.served.address);
    const answer = await ask(serving.served.origin, { path: pathname + search, headers: { host } });
    expect(answer.status).toBe(401);
    expect(answer.headers['set-cookie']).toBeUndefined();
    expect(answer.headers['content-type']).toBe('text/plain; charset=utf-8');
    expect(answer.text).toContain('Start Struckline again');
  });

  test('lets the signed-in window open its old address again', async () => {
    const { pathname, search } = new URL(serving.served.address);
    const answer = await page(pathname + search);
    expect([answer.status, answer.headers.location, answer.headers['set-cookie']]).toEqual([303, '/', undefined]);
  });

  test.each(['', 'x', 'A'.repeat(43), 'A'.repeat(5000)])('refuses the made-up token %j and keeps the true one good', async (made) => {
    const fresh = await serveEcho();
    const freshHost = new URL(fresh.served.origin).host;
    const answer = await ask(fresh.served.origin, { path: `/?token=${made}`, headers: { host: freshHost } });
    expect(answer.status).toBe(401);
    expect(await signIn(fresh.served)).toMatch(/^struckline-/);
    await fresh.close();
  });

  test('does not use the token up for a look-ahead by HEAD', async () => {
    const fresh = await serveEcho();
    const { pathname, search, host: freshHost } = new URL(fresh.served.address);
    await ask(fresh.served.origin, { method: 'HEAD', path: pathname + search, headers: { host: freshHost } });
    expect(await signIn(fresh.served)).toMatch(/^struckline-/);
    await fresh.close();
  });

  test('a page of another site cannot use the token, even where it has come by it', async () => {
    const fresh = await serveEcho();
    const { pathname, search, host: freshHost } = new URL(fresh.served.address);
    const answer = await ask(fresh.served.origin, { path: pathname + search, headers: { host: freshHost, 'sec-fetch-site': 'cross-site' } });
    expect(answer.status).toBe(403);
    await fresh.close();
  });
});

describe('who is let in', () => {
  test('the window itself', async () => {
    const answer = await call();
    expect([answer.status, JSON.parse(answer.text)]).toEqual([200, { ok: true, value: { file: 'Home.struckline' } }]);
    expect(serving.calls).toEqual([{ method: 'open-house', argument: { file: 'Home.struckline' } }]);
  });

  test.each([undefined, 'none', 'struckline=1', 'other=abc'])('nobody with the cookie %j', async (other) => {
    const asked = other === undefined ? { host } : { host, cookie: other };
    const pageAnswer = await ask(serving.served.origin, { headers: asked });
    expect(pageAnswer.status).toBe(401);
    expect(pageAnswer.text).not.toContain('<title>');
    const callAnswer = await call({ cookie: other });
    expect([callAnswer.status, errorCode(callAnswer.text)]).toEqual([401, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test('nobody with the right cookie cut short or lengthened', async () => {
    for (const wrong of [cookie.slice(0, -1), `${cookie}A`, cookie.replace(/=.*/, '=')]) expect((await call({ cookie: wrong })).status).toBe(401);
    expect(serving.calls).toEqual([]);
  });

  test.each(['localhost', 'struckline.example', '127.0.0.1', '127.0.0.1:1', '[::1]', '0.0.0.0', '127.1'])('nobody who names the host %s', async (name) => {
    const named = name.includes(':') || name === '127.0.0.1' ? name : `${name}:${new URL(serving.served.origin).port}`;
    expect((await page('/', { host: named })).status).toBe(403);
    const answer = await call({ host: named });
    expect([answer.status, errorCode(answer.text)]).toEqual([403, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test('nobody who signs in by a foreign name, and the token stays good', async () => {
    const fresh = await serveEcho();
    const { pathname, search } = new URL(fresh.served.address);
    expect((await ask(fresh.served.origin, { path: pathname + search, headers: { host: 'rebound.example' } })).status).toBe(403);
    expect(await signIn(fresh.served)).toMatch(/^struckline-/);
    await fresh.close();
  });

  test.each([undefined, 'null', 'https://struckline.example', 'http://localhost', 'http://127.0.0.1:1', 'file://'])('no call from a page of the origin %j', async (origin) => {
    const answer = await call({ origin });
    expect([answer.status, errorCode(answer.text)]).toEqual([403, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test('no reading by a page of a foreign origin', async () => {
    expect((await page('/', { origin: 'https://struckline.example' })).status).toBe(403);
  });

  // A page of another server on this machine is 'same-site': the browser would send it our cookie.
  test.each(['cross-site', 'same-site', 'none'])('no call that the browser marks as %s', async (site) => {
    expect((await call({ 'sec-fetch-site': site })).status).toBe(403);
    expect(serving.calls).toEqual([]);
  });

  test.each([
    ['cross-site', 403],
    ['same-site', 403],
    ['none', 200],
    ['same-origin', 200],
  ])('a page that the browser marks as %s is answered with %i', async (site, status) => {
    expect((await page('/', { 'sec-fetch-site': site })).status).toBe(status);
  });

  test('a call of a program that knows the cookie and the origin but marks nothing', async () => {
    expect((await call({ 'sec-fetch-site': undefined })).status).toBe(200);
  });

  test('no page of another origin is told that it may read', async () => {
    const answer = await ask(serving.served.origin, {
      method: 'OPTIONS',
      path: '/call/open-house',
      headers: { host, 'origin': 'https://struckline.example', 'access-control-request-method': 'POST' },
    });
    expect(answer.status).toBe(403);
    for (const { headers } of [answer, await call()]) expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  test('nobody from another machine: the server listens on the loopback address alone', async () => {
    const outside = Object.values(networkInterfaces()).flatMap((addresses) => addresses ?? []).filter(({ internal }) => !internal);
    const reached = await Promise.all(
      [...outside.map(({ address, scopeid }) => (scopeid ? `${address}%${scopeid}` : address)), '127.0.0.2', '::1'].map(
        (address) =>
          new Promise<boolean>((resolve) => {
            const socket = connect({ host: address, port: Number(new URL(serving.served.origin).port), timeout: 1000 });
            const settle = (isReached: boolean) => () => resolve((socket.destroy(), isReached));
            socket.once('connect', settle(true)).once('error', settle(false)).once('timeout', settle(false));
          }),
      ),
    );
    expect(reached).not.toContain(true);
  });
});

describe('calls', () => {
  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/jsonp', 'text/json', undefined])('are refused with the content type %j', async (type) => {
    const answer = await call({ 'content-type': type });
    expect([answer.status, errorCode(answer.text)]).toEqual([415, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test('may name the charset', async () => {
    expect((await call({ 'content-type': 'Application/JSON; charset=utf-8' })).status).toBe(200);
  });

  test.each(['', '{', '{"file":', 'file=Home', '{"a":1}}', '\u0000', '{"__proto__":{"isAdmin":true}}', '{"constructor":{"prototype":{}}}'])('are refused with the body %j', async (body) => {
    const answer = await call({}, body);
    expect([answer.status, errorCode(answer.text)]).toEqual([400, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test('are refused where the body is larger than a call may be, told or untold, and the session goes on', async () => {
    const body = `"${'x'.repeat(LARGEST_CALL_BYTES)}"`;
    const told = await call({}, body);
    expect([told.status, errorCode(told.text)]).toEqual([413, 'too-large']);
    const untold = await ask(serving.served.origin, { method: 'POST', path: '/call/open-house', headers: callHeaders(serving.served, cookie), body, isChunked: true });
    expect([untold.status, errorCode(untold.text)]).toEqual([413, 'too-large']);
    expect(serving.calls).toEqual([]);
    expect((await call()).status).toBe(200);
  });

  test('take a body that is just as large as a call may be', async () => {
    const answer = await call({}, `"${'x'.repeat(LARGEST_CALL_BYTES - 2)}"`);
    expect(answer.status).toBe(200);
  });

  test.each(['GET', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])('are not made by %s', async (method) => {
    const answer = await ask(serving.served.origin, { method, path: '/call/open-house', headers: callHeaders(serving.served, cookie) });
    expect([answer.status, errorCode(answer.text)]).toEqual([405, 'bad-argument']);
    expect(serving.calls).toEqual([]);
  });

  test.each([
    ['/call/a/b', 404],
    ['/call//open-house', 404],
    [`/call/${'x'.repeat(101)}`, 400],
    ['/call', 405],
    ['/CALL/open-house', 405],
    ['/', 405],
  ])('are not taken at %s', async (path, status) => {
    expect((await call({}, '{}', path)).status).toBe(status);
    expect(serving.calls).toEqual([]);
  });

  test('a fault of the host is a reply that tells nothing of the inside', async () => {
    const answer = await call({}, '{}', '/call/break');
    expect([answer.status, errorCode(answer.text)]).toEqual([500, 'host-failure']);
    expect(answer.text).not.toContain('secret');
  });
});

describe('files of the window', () => {
  test('are served with their type', async () => {
    const found = await Promise.all(['/', '/index.html', '/icon.svg', '/assets/index-4f2A_b.js'].map(async (path) => (await page(path)).headers['content-type']));
    expect(found).toEqual(['text/html; charset=utf-8', 'text/html; charset=utf-8', 'image/svg+xml', 'text/javascript; charset=utf-8']);
    expect((await page('/assets/index-4f2A_b.js')).text).toBe('export {};');
  });

  test('are kept by the browser only where their name changes with what is in them', async () => {
    expect((await page('/')).headers['cache-control']).toBe('no-store');
    expect((await page('/icon.svg')).headers['cache-control']).toBe('no-store');
    expect((await page('/assets/index-4f2A_b.js')).headers['cache-control']).toBe('private, max-age=31536000, immutable');
    expect((await page('/assets/gone.js')).headers['cache-control']).toBe('no-store');
  });

  test.each([
    '/notes.txt',
    '/.hidden.js',
    '/assets/deep/deep.js',
    '/assets',
    '/assets/',
    '/../secret.js',
    '/assets/../../secret.js',
    '/..%2fsecret.js',
    '/%2e%2e/secret.js',
    '/%2e%2e%2fsecret.js',
    '/.%2e/secret.js',
    '/%252e%252e%252fsecret.js',
    '/..\\secret.js',
    '/..%5csecret.js',
    '/%c0%ae%c0%ae/secret.js',
    '/%uff0e%uff0e/secret.js',
    '/assets//../../secret.js',
    '/./../secret.js',
    '//secret.js',
    '/secret.js%00.js',
    '/%00',
    '/assets/index-4f2A_b.js%00.png',
    '/assets/index-4f2A_b.js/',
    '/assets/index-4f2A_b.js/..',
    '/ASSETS/index-4f2A_b.js',
    '/index.html.',
    '/constructor.constructor',
    '/assets/x.__proto__',
  ])('%s is not one of them', async (path) => {
    const answer = await page(path);
    expect([400, 404]).toContain(answer.status);
    expect(answer.text).not.toMatch(/outside|hidden|too deep|not served|export/);
    expect(answer.headers['content-security-policy']).toBe(CONTENT_POLICY);
  });
});

test('every answer carries the headers that fence the page in', async () => {
  const answers = [
    await page('/'),
    await page('/assets/index-4f2A_b.js'),
    await page('/assets/gone.js'),
    await page('/%'),
    await page('/', { host: 'rebound.example' }),
    await ask(serving.served.origin, { headers: { host } }),
    await call(),
    await call({}, '{'),
    await call({ 'content-type': 'text/plain' }),
  ];
  expect(answers.map(({ status }) => status)).toEqual([200, 200, 404, 400, 403, 401, 200, 400, 415]);
  for (const { headers } of answers) {
    expect(headers).toMatchObject({
      'content-security-policy':
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
      'cross-origin-resource-policy': 'same-origin',
    });
  }
});

test('a thousand strangers at once are all refused and the session is unharmed', async () => {
  const strangers = Array.from({ length: 1000 }, (_, index) => ask(serving.served.origin, { path: `/?token=${index}`, headers: { host } }));
  const own = call();
  expect(new Set((await Promise.all(strangers)).map(({ status }) => status))).toEqual(new Set([401]));
  expect((await own).status).toBe(200);
});

test('closing ends connections that are still open', async () => {
  const fresh = await serveEcho();
  const socket = connect(Number(new URL(fresh.served.origin).port), '127.0.0.1');
  await new Promise((resolve) => socket.once('connect', resolve));
  const ended = new Promise((resolve) => socket.once('close', resolve));
  socket.on('error', () => undefined);
  await fresh.close();
  await ended;
  await expect(ask(fresh.served.origin, {})).rejects.toThrow('ECONNREFUSED');
});
