import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type Agent, type IncomingHttpHeaders, request as httpRequest } from 'node:http';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Limits, type ServedOffice, serveOffice, USUAL_LIMITS } from '../../src-main/loopback/serve-office.ts';
import { type Office, openOffice } from '../../src-main/office/index.ts';

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  /** Whether it came on a connection that another request had come on before. */
  readonly isReused: boolean;
}

export interface Asked {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
  /** Sends the body in pieces without saying how long it is. */
  readonly isChunked?: boolean;
  /** Else the connection is the request's own. */
  readonly agent?: Agent;
}

/** One raw HTTP request: nothing is added to the headers, nothing is tidied in the path. */
export function ask(origin: string, { method = 'GET', path = '/', headers = {}, body, isChunked = false, agent }: Asked): Promise<Answer> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const sent = httpRequest({ hostname, port, method, path, headers, agent: agent ?? false }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(pieces).toString('utf8'), isReused: sent.reusedSocket }),
      );
    });
    sent.on('error', reject);
    if (body !== undefined && !isChunked) sent.setHeader('content-length', Buffer.byteLength(body));
    if (body !== undefined && isChunked) sent.write(body);
    sent.end(isChunked ? undefined : body);
  });
}

export interface Raw {
  readonly socket: Socket;
  /** All that came, once the server has ended the connection. */
  readonly ended: Promise<string>;
}

/** A connection with nothing on it but these bytes, however wrong they are as HTTP. */
export async function openRaw(origin: string, bytes: string): Promise<Raw> {
  const { hostname, port } = new URL(origin);
  const socket = connect(Number(port), hostname);
  let text = '';
  socket.on('data', (piece: Buffer) => (text += piece.toString('utf8')));
  // What the server no longer takes is no news: what it answered is.
  socket.on('error', () => undefined);
  const ended = new Promise<string>((resolve) => socket.once('close', () => resolve(text)));
  await new Promise((resolve) => socket.once('connect', resolve).once('close', resolve));
  socket.write(bytes, 'latin1');
  return { socket, ended };
}

export async function askRaw(origin: string, bytes: string): Promise<string> {
  return (await openRaw(origin, bytes)).ended;
}

export function statusesOf(text: string): number[] {
  return [...text.matchAll(/HTTP\/1\.1 (\d{3}) /g)].map(([, status]) => Number(status));
}

/** A suite asks more in a second than strangers may. */
export const PATIENT_LIMITS: Limits = { ...USUAL_LIMITS, strangers: { ...USUAL_LIMITS.strangers, requestsEachSecond: Infinity } };

export interface Serving {
  readonly served: ServedOffice;
  /** Holds the built window and whatever lies around it. */
  readonly folder: string;
  /** What reached the office, in order. */
  readonly calls: { readonly method: string; readonly argument: unknown }[];
  readonly close: () => Promise<void>;
}

/** The real server over a small window and an office that says back what it was asked. */
export function serveEcho(limits = PATIENT_LIMITS): Promise<Serving> {
  return serve(limits, () => ({
    call: async (method, argument) => {
      if (method === 'break') throw new Error('a secret of the inside');
      return { ok: true, value: argument };
    },
    close: async () => undefined,
  }));
}

/** The real server over a small window and the real office. */
export function serveHouses(limits = PATIENT_LIMITS): Promise<Serving> {
  return serve(limits, (folder) => openOffice({ shell: 'loopback', folder: join(folder, 'houses'), ownFolder: join(folder, 'own') }));
}

async function serve(limits: Limits, open: (folder: string) => Pick<Office, 'call' | 'close'>): Promise<Serving> {
  const folder = mkdtempSync(join(tmpdir(), 'struckline-serving-'));
  const rendererFolder = makeWindow(folder);
  const office = open(folder);
  const calls: { method: string; argument: unknown }[] = [];
  const call: Office['call'] = (method, argument) => {
    calls.push({ method, argument });
    return office.call(method, argument);
  };
  const served = await serveOffice({ call }, { rendererFolder, limits });
  return {
    served,
    folder,
    calls,
    close: async () => {
      await served.close();
      await office.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** A small built window with files beside and around it that must never be served. */
export function makeWindow(folder: string): string {
  const rendererFolder = join(folder, 'renderer');
  mkdirSync(join(rendererFolder, 'assets', 'deep'), { recursive: true });
  writeFileSync(join(folder, 'secret.js'), 'outside');
  writeFileSync(join(rendererFolder, 'index.html'), '<!doctype html><title>window</title>');
  writeFileSync(join(rendererFolder, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(rendererFolder, 'notes.txt'), 'of a type that is not served');
  writeFileSync(join(rendererFolder, '.hidden.js'), 'hidden');
  writeFileSync(join(rendererFolder, 'assets', 'index-4f2A_b.js'), 'export {};');
  writeFileSync(join(rendererFolder, 'assets', 'deep', 'deep.js'), 'too deep');
  return rendererFolder;
}

/** Swaps the token for the session's cookie, as the browser does. */
export async function signIn(served: ServedOffice): Promise<string> {
  const { pathname, search } = new URL(served.address);
  const answer = await ask(served.origin, { path: pathname + search, headers: { host: new URL(served.origin).host } });
  const cookie = answer.headers['set-cookie']?.[0]?.split(';')[0];
  if (cookie === undefined) throw new Error(`no cookie with status ${answer.status}: ${answer.text}`);
  return cookie;
}

/** The headers of a call as the app's own page sends it. */
export function callHeaders(served: ServedOffice, cookie: string): Record<string, string> {
  return {
    'host': new URL(served.origin).host,
    'origin': served.origin,
    'sec-fetch-site': 'same-origin',
    'content-type': 'application/json',
    cookie,
  };
}
