export const APP_SCHEME = 'app';
const APP_HOST = 'struckline';
export const APP_ADDRESS = `${APP_SCHEME}://${APP_HOST}/`;

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
}

/** Which file of the built window an address of the app's own protocol stands for. */
export function findServedFile(method: string, address: string): ServedFile | null {
  const url = parseOwn(address);
  if (method !== 'GET' || !url) return null;
  const [, path, ending] = SERVED_PATH.exec(url.pathname === '/' ? '/index.html' : url.pathname) ?? [];
  const type = ending !== undefined && Object.hasOwn(SERVED_TYPES, ending) ? SERVED_TYPES[ending] : undefined;
  return path === undefined || type === undefined ? null : { path, type };
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
