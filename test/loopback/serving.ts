import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ServedOffice, serveOffice } from '../../src-main/loopback/serve-office.ts';

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

export interface Asked {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
  /** Sends the body in pieces without saying how long it is. */
  readonly isChunked?: boolean;
}

/** One raw HTTP request: nothing is added to the headers, nothing is tidied in the path. */
export function ask(origin: string, { method = 'GET', path = '/', headers = {}, body, isChunked = false }: Asked): Promise<Answer> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const sent = httpRequest({ hostname, port, method, path, headers, agent: false }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(pieces).toString('utf8') }));
    });
    sent.on('error', reject);
    if (body !== undefined && !isChunked) sent.setHeader('content-length', Buffer.byteLength(body));
    if (body !== undefined && isChunked) sent.write(body);
    sent.end(isChunked ? undefined : body);
  });
}

export interface Serving {
  readonly served: ServedOffice;
  readonly rendererFolder: string;
  /** What reached the office, in order. */
  readonly calls: { readonly method: string; readonly argument: unknown }[];
  readonly close: () => Promise<void>;
}

/** The real server over a small window and an office that says back what it was asked. */
export async function serveEcho(): Promise<Serving> {
  const folder = mkdtempSync(join(tmpdir(), 'struckline-serving-'));
  const rendererFolder = makeWindow(folder);
  const calls: { method: string; argument: unknown }[] = [];
  const served = await serveOffice(
    {
      call: async (method, argument) => {
        if (method === 'break') throw new Error('a secret of the inside');
        calls.push({ method, argument });
        return { ok: true, value: argument };
      },
    },
    { rendererFolder },
  );
  return {
    served,
    rendererFolder,
    calls,
    close: async () => {
      await served.close();
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
