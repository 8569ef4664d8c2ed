import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';

export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** On every answer, refusals too. */
export const SECURITY_HEADERS = {
  'Content-Security-Policy': CONTENT_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-store',
} as const;

/** The only kinds of file that leave the folder of the built window. */
export const SERVED_TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  woff2: 'font/woff2',
  woff: 'font/woff',
};

/** One plain name, at most one folder deep. No dots in a row, no escapes: what is not spelled like this is not there. */
const SERVED_PATH = /^\/((?:assets\/)?[A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+)*\.([a-z0-9]+))$/;

export interface ServedFile {
  /** Below the folder of the built window. */
  readonly path: string;
  readonly type: string;
  /** Its name holds a hash of what is in it, so it never changes. */
  readonly isImmutable: boolean;
}

/** Which file the path of a request stands for, the path being as it was sent: nothing is decoded. */
export function findServedFile(requestPath: string): ServedFile | null {
  const [, path, ending] = SERVED_PATH.exec(requestPath === '/' ? '/index.html' : requestPath) ?? [];
  const type = ending !== undefined && Object.hasOwn(SERVED_TYPES, ending) ? SERVED_TYPES[ending] : undefined;
  return path === undefined || type === undefined ? null : { path, type, isImmutable: path.startsWith('assets/') };
}

/** Compares in a time that does not depend on where two secrets differ, nor on how long the offered one is. */
export function isSameSecret(offered: string, secret: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(offered), digest(secret));
}

export interface Refusal {
  readonly status: number;
  readonly message: string;
}

/**
 * Why a request cannot come from the app's own page, or null.
 *
 * The Host check stops a foreign name that was made to point at this machine; Origin and Sec-Fetch-Site stop pages of
 * other sites, and pages of other servers on this machine, to which the browser would send the cookie too.
 */
export function findForeignness(method: string, headers: IncomingHttpHeaders, origin: string): Refusal | null {
  if (origin !== `http://${headers.host}`) return { status: 403, message: `This server answers to ${origin} alone.` };
  const isReading = method === 'GET' || method === 'HEAD';
  const isOriginOwn = headers.origin === origin || (isReading && headers.origin === undefined);
  const site = headers['sec-fetch-site'];
  // A browser says 'none' where the user typed or opened the address.
  const isSiteOwn = site === undefined || site === 'same-origin' || (isReading && site === 'none');
  return isOriginOwn && isSiteOwn ? null : { status: 403, message: 'This server answers to its own pages alone.' };
}
