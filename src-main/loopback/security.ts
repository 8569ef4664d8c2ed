import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { say } from '../../shared-core/words/index.ts';

/** Compares in a time that does not depend on where two secrets differ, nor on how long the offered one is. */
export function isSameSecret(offered: string, secret: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(offered), digest(secret));
}

/**
 * Whether one of the cookies of that name holds the secret.
 *
 * Cookies are shared by all ports of a machine: a page of another port may set one of the same name for a longer path,
 * and the browser then sends that one first. `app=theirs; app=ours` holds ours.
 */
export function holdsCookie(header: string | undefined, name: string, secret: string): boolean {
  const pairs = (header ?? '').split(';').map((pair) => pair.trim());
  return pairs.some((pair) => pair.startsWith(`${name}=`) && isSameSecret(pair.slice(name.length + 1), secret));
}

export interface Refusal {
  readonly status: number;
  readonly message: string;
}

export const NOT_UNDERSTOOD = say`This request is not understood. It takes HTTP/1.1 with one Host, a path that is spelled right, and neither Upgrade nor Expect.`;

/**
 * Why a request cannot come from the app's own page, or null.
 *
 * What another reader might read in another way is refused whoever sends it: two hosts, a whole address in the place of
 * a path, an older protocol, a change of protocol, a body that waits to be invited. The Host check stops a foreign name
 * that was made to point at this machine; Origin and Sec-Fetch-Site stop pages of other sites, and pages of other
 * servers on this machine, to which the browser would send the cookie too.
 */
export function findForeignness(request: Pick<IncomingMessage, 'method' | 'url' | 'httpVersion' | 'headers' | 'headersDistinct'>, origin: string): Refusal | null {
  const { method, url, httpVersion, headers, headersDistinct } = request;
  const isPlain = httpVersion === '1.1' && headersDistinct['host']?.length === 1 && headers.upgrade === undefined && headers.expect === undefined;
  if (!isPlain || !url?.startsWith('/')) return { status: 400, message: NOT_UNDERSTOOD };
  if (origin !== `http://${headers.host}`) return { status: 403, message: say`This server answers to ${origin} alone.` };
  const isReading = method === 'GET' || method === 'HEAD';
  const isOriginOwn = headers.origin === origin || (isReading && headers.origin === undefined);
  const site = headers['sec-fetch-site'];
  // A browser says 'none' where the user typed or opened the address.
  const isSiteOwn = site === undefined || site === 'same-origin' || (isReading && site === 'none');
  return isOriginOwn && isSiteOwn ? null : { status: 403, message: say`This server answers to its own pages alone.` };
}
