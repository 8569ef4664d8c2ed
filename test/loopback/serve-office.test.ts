import { connect } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { LARGEST_CALL_BYTES } from '../../shared-core/contract/index.ts';
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

  test('lets the signed-in window open its old address again', async () => {
    const { pathname, search } = new URL(serving.served.address);
    const answer = await page(pathname + search);
    expect([answer.status, answer.headers.location, answer.headers['set-cookie']]).toEqual([303, '/', undefined]);
  });
});

describe('who is let in', () => {
  test('the window itself', async () => {
    const answer = await call();
    expect([answer.status, JSON.parse(answer.text)]).toEqual([200, { ok: true, value: { file: 'Home.struckline' } }]);
    expect(serving.calls).toEqual([{ method: 'open-house', argument: { file: 'Home.struckline' } }]);
  });

  test.each(['none', 'same-origin'])('who asks for a page that the browser marks as %s', async (site) => {
    expect((await page('/', { 'sec-fetch-site': site })).status).toBe(200);
  });

  test('a program that knows the cookie and the origin but marks nothing', async () => {
    expect((await call({ 'sec-fetch-site': undefined })).status).toBe(200);
  });
});

describe('calls', () => {
  test('may name the charset', async () => {
    expect((await call({ 'content-type': 'Application/JSON; charset=utf-8' })).status).toBe(200);
  });

  test('take a body that is just as large as a call may be', async () => {
    const answer = await call({}, `"${'x'.repeat(LARGEST_CALL_BYTES - 2)}"`);
    expect(answer.status).toBe(200);
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
