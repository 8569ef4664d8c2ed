import { findServedFile, type ServedFile } from '../office/index.ts';
import { APP_ADDRESS, parseOwn } from './addresses.ts';
import type { Asker, SenderFrame } from './electron-calls.ts';

/** Which file of the built window an address of the app's own protocol stands for. */
export function findProtocolFile(method: string, address: string): ServedFile | null {
  const url = parseOwn(address);
  return method === 'GET' && url ? findServedFile(url.pathname) : null;
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

/**
 * Whether the window may ask for something at all: the app's own files, and what the page itself holds.
 *
 * There is no network: `https://struckline.example/` is refused, whatever the page's policy says.
 */
export function isAllowedRequest(address: string): boolean {
  return parseOwn(address) !== null || isOwnBlob(address) || address.startsWith('data:');
}

/** A file that the page made itself, such as a document that it writes out. */
export function isOwnBlob(address: string): boolean {
  return address.startsWith(`blob:${APP_ADDRESS}`);
}

/** Without it a table can't be copied: the page may put text on the clipboard at the user's click, and never reads it. */
const GRANTED = 'clipboard-sanitized-write';

/** All permissions but one are denied, and that one to all pages but the app's own. */
export function isGranted(permission: string, { isMainFrame, requestingUrl = '' }: Asker): boolean {
  return permission === GRANTED && isMainFrame && isOwnPage(requestingUrl);
}
