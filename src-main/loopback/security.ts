import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { say } from '../../shared-core/words/index.ts';

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
  if (origin !== `http://${headers.host}`) return { status: 403, message: say`This server answers to ${origin} alone.` };
  const isReading = method === 'GET' || method === 'HEAD';
  const isOriginOwn = headers.origin === origin || (isReading && headers.origin === undefined);
  const site = headers['sec-fetch-site'];
  // A browser says 'none' where the user typed or opened the address.
  const isSiteOwn = site === undefined || site === 'same-origin' || (isReading && site === 'none');
  return isOriginOwn && isSiteOwn ? null : { status: 403, message: say`This server answers to its own pages alone.` };
}
