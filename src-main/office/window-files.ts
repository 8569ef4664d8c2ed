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
  // With the line above it lets the window share memory with its worker, so that a plan can be told to stop.
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-store',
} as const;

export const PLAIN_TEXT_TYPE = 'text/plain; charset=utf-8';

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

/** Which file of the built window the path of a request stands for, the path being as it was sent: nothing is decoded. */
export function findServedFile(requestPath: string): ServedFile | null {
  const [, path, ending] = SERVED_PATH.exec(requestPath === '/' ? '/index.html' : requestPath) ?? [];
  const type = ending !== undefined && Object.hasOwn(SERVED_TYPES, ending) ? SERVED_TYPES[ending] : undefined;
  return path === undefined || type === undefined ? null : { path, type, isImmutable: path.startsWith('assets/') };
}
