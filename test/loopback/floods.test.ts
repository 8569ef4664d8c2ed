import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Limits, USUAL_LIMITS } from '../../src-main/loopback/serve-office.ts';
import { OwnWindow } from './own-window.ts';
import { type Answer, ask, askRaw, openRaw, serveHouses, type Serving, statusesOf } from './serving.ts';

let serving: Serving;
let own: OwnWindow;
let origin: string;
let host: string;

async function start(limits: Limits): Promise<void> {
  serving = await serveHouses(limits);
  own = await OwnWindow.open(serving);
  ({ origin } = serving.served);
  ({ host } = new URL(origin));
}
afterEach(async () => {
  await own.worksOn();
  await serving.close();
});

const count = <Value>(values: readonly Value[], value: Value) => values.filter((other) => other === value).length;
const once = async (times: number, work: (index: number) => Promise<Answer>) => Promise.all(Array.from({ length: times }, (_, index) => work(index)));

describe('many at once, by the usual limits', () => {
  beforeEach(() => start(USUAL_LIMITS));

  /** A thousand of them hold every kind of stranger. */
  const KINDS: readonly ((index: number) => Promise<Answer>)[] = [
    (index) => ask(origin, { path: `/?token=${index}`, headers: { host } }),
    () => ask(origin, { headers: { host: 'rebound.example', cookie: own.cookie } }),
    () => ask(origin, { method: 'POST', path: '/call/undo', headers: { ...own.headers(), origin: 'https://other.example' }, body: '{"file":"Home.struckline","revision":0}' }),
    (index) => ask(origin, { path: '/assets/index-4f2A_b.js', headers: { host, cookie: `struckline=${index}` } }),
    () => ask(origin, { path: '/%', headers: { host } }),
  ];

  test('a thousand strangers are refused, for what they are or as too many; the window loads, calls and saves meanwhile', async () => {
    const strangers = once(1000, (index) => KINDS[index % KINDS.length]!(index));
    const loads = once(100, () => ask(origin, { path: '/assets/index-4f2A_b.js', headers: { host, cookie: own.cookie } }));
    for (let edits = 0; edits < 20; edits += 1) await own.edit();
    expect(new Set((await loads).map(({ status }) => status))).toEqual(new Set([200]));
    const answers = await strangers;
    const statuses = answers.map(({ status }) => status);
    expect(new Set(statuses)).toEqual(new Set([401, 403, 429]));
    for (const { status, headers, text } of answers) {
      expect([headers['retry-after'], headers.connection]).toEqual([status === 429 ? '1' : undefined, 'close']);
      if (status === 429) expect(text).toContain('Try again in a second');
    }
    expect(serving.calls.every(({ method }) => method === 'edit-house')).toBe(true);
    own.forgetCalls();
  });

  test('a thousand requests of a stranger on one connection get answers until it is closed, all of them refusals', async () => {
    const statuses = statusesOf(await askRaw(origin, `GET / HTTP/1.1\r\nHost: ${host}\r\n\r\n`.repeat(1000)));
    expect(statuses.length).toBeGreaterThan(0);
    expect(statuses.filter((status) => status !== 401 && status !== 429)).toEqual([]);
  });

  test("the window's own hundreds at once are not counted", async () => {
    expect(new Set((await once(300, () => own.call('describe-host', '{}'))).map(({ status }) => status))).toEqual(new Set([200]));
    own.forgetCalls();
  });

  test('one who has the token signs in through all of it', async () => {
    const fresh = await serveHouses(USUAL_LIMITS);
    const strangers = once(300, () => ask(fresh.served.origin, { headers: { host: new URL(fresh.served.origin).host } }));
    await (await OwnWindow.open(fresh)).worksOn();
    expect(count((await strangers).map(({ status }) => status), 200)).toBe(0);
    await fresh.close();
  });
});

test('connections that only wait: the oldest has to go for each that is too many, and never the window\'s', async () => {
  const [held, most] = [60, 20];
  await start({ ...USUAL_LIMITS, strangers: { connections: most, requestsEachSecond: Infinity } });
  await own.worksOn();
  // Of each two one is silent and one has begun to speak.
  const waiting = await Promise.all(Array.from({ length: held }, (_, index) => openRaw(origin, index % 2 ? `GET / HTTP/1.1\r\nHost: ${host}\r\n` : '')));
  const gone: string[] = [];
  for (const { ended } of waiting) void ended.then((text) => gone.push(text));
  await expect.poll(() => gone.length).toBe(held - most);
  for (const text of gone) {
    expect(statusesOf(text)).toEqual([503]);
    expect(text).toMatch(/\r\nRetry-After: 1\r\n/);
    expect(text).toContain('Try again in a second');
  }
  // Its fresh connection takes the place of the oldest that is left.
  await own.worksOn();
  await expect.poll(() => gone.length).toBe(held - most + 1);
  for (const { socket } of waiting) socket.destroy();
});

describe('slow requests', () => {
  beforeEach(() => start({ ...USUAL_LIMITS, headersMilliseconds: 2_000, requestMilliseconds: 2_500, lookMilliseconds: 50 }));

  const TRICKLE_MILLISECONDS = 20;
  const ownHead = (more: string) => `POST /call/undo HTTP/1.1\r\n${Object.entries(own.headers()).map(([name, value]) => `${name}: ${value}\r\n`).join('')}${more}\r\n\r\n`;

  /** All that came back for a request that begins like this and never ends. */
  async function trickle(beginning: string, drop: string): Promise<string> {
    const { socket, ended } = await openRaw(origin, beginning);
    const dripping = setInterval(() => drop !== '' && socket.writable && socket.write(drop), TRICKLE_MILLISECONDS);
    const text = await ended;
    clearInterval(dripping);
    return text;
  }

  test('are given up, whatever of them is slow, and the window waits for none of them', async () => {
    const stranger = `GET / HTTP/1.1\r\nHost: ${host}\r\n`;
    const page = `${stranger}Cookie: ${own.cookie}\r\n\r\n`;
    const slow: readonly { readonly what: string; readonly beginning: string; readonly drop: string; readonly statuses?: readonly number[] }[] = [
      { what: 'nothing is said', beginning: '', drop: '' },
      { what: 'the first line is cut short', beginning: 'GET /', drop: '' },
      { what: 'the first line trickles in', beginning: 'GET /', drop: 'a' },
      { what: 'the headers stop', beginning: stranger, drop: '' },
      { what: 'a header trickles in', beginning: `${stranger}X-Long: `, drop: 'a' },
      { what: 'headers trickle in, with the cookie', beginning: ownHead('X-One: a').slice(0, -2), drop: 'X-More: a\r\n' },
      { what: 'the body never comes, with the cookie', beginning: ownHead('Content-Length: 1000'), drop: '' },
      { what: 'the body trickles in, with the cookie', beginning: ownHead('Content-Length: 100000'), drop: ' ' },
      { what: 'chunks trickle in, with the cookie', beginning: ownHead('Transfer-Encoding: chunked'), drop: '1\r\n \r\n' },
      { what: 'a chunk trickles in, with the cookie', beginning: `${ownHead('Transfer-Encoding: chunked')}ffff\r\n`, drop: ' ' },
      { what: 'a second request trickles in, with the cookie', beginning: `${page}GET / HTTP/1.1\r\nX-Long: `, drop: 'a', statuses: [200, 408] },
      { what: "a stranger's body trickles in", beginning: `POST /call/undo HTTP/1.1\r\nHost: ${host}\r\nOrigin: ${origin}\r\nContent-Length: 1000\r\n\r\n`, drop: ' ', statuses: [401] },
    ];
    const answers = slow.map(async ({ what, beginning, drop }) => {
      const texts = await Promise.all(Array.from({ length: 10 }, () => trickle(beginning, drop)));
      return { what, statuses: [...new Set(texts.map((text) => statusesOf(text).join()))], isSaid: texts.every((text) => /came too slowly|Start Struckline again/.test(text)) };
    });
    await own.worksOn();
    expect(await Promise.all(answers)).toEqual(slow.map(({ what, statuses = [408] }) => ({ what, statuses: [statuses.join()], isSaid: true })));
  });
});
