import { findServedFile, type ServedFile } from '../office/index.ts';

export const APP_SCHEME = 'app';
const APP_HOST = 'struckline';
export const APP_ADDRESS = `${APP_SCHEME}://${APP_HOST}/`;

/** Which file of the built window an address of the app's own protocol stands for. */
export function findProtocolFile(method: string, address: string): ServedFile | null {
  const url = parseOwn(address);
  return method === 'GET' && url ? findServedFile(url.pathname) : null;
}

/** The frame that a call came from; null where it has gone away meanwhile. */
export interface SenderFrame {
  readonly url: string;
  readonly parent: unknown;
}

/** Whether a call came from the page of the app itself, not from a frame within it nor from anything else. */
export function isOwnFrame(frame: SenderFrame | null): boolean {
  return frame !== null && frame.parent === null && isOwnPage(frame.url);
}

/** The app is one page: to load it again is the only navigation there is. */
export function isOwnPage(address: string): boolean {
  const url = parseOwn(address);
  return url !== null && url.pathname === '/' && url.search === '';
}

function parseOwn(address: string): URL | null {
  const url = URL.parse(address);
  const isOwn = url?.protocol === `${APP_SCHEME}:` && url.host === APP_HOST && url.username === '' && url.password === '';
  return isOwn ? url : null;
}
