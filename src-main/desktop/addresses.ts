export const APP_SCHEME = 'app';
const APP_HOST = 'struckline';
export const APP_ADDRESS = `${APP_SCHEME}://${APP_HOST}/`;

/** The address of the app's own protocol, or null for any other. */
export function parseOwn(address: string): URL | null {
  const url = URL.parse(address);
  const isOwn = url?.protocol === `${APP_SCHEME}:` && url.host === APP_HOST && url.username === '' && url.password === '';
  return isOwn ? url : null;
}

/** Where the window shows a house, by the name that the office has for it: `app://struckline/#/Home.struckline`. */
export function houseAddress(file: string): string {
  return `${APP_ADDRESS}#/${encodeURIComponent(file)}`;
}

/**
 * The house that a window shows, by its address, or null.
 *
 * Example: `houseShown('app://struckline/#/Home.struckline/order')` is 'Home.struckline'.
 */
export function houseShown(address: string): string | null {
  const file = parseOwn(address)?.hash.split('/')[1];
  if (!file) return null;
  try {
    return decodeURIComponent(file);
  } catch {
    return null;
  }
}
