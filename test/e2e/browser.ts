import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'microsoft-edge'];

/** The browser that the tests drive: STRUCKLINE_BROWSER, or the first Chromium on the path. */
export function findBrowser(): string {
  const named = process.env['STRUCKLINE_BROWSER'];
  const candidates = named ? [named] : (process.env['PATH'] ?? '').split(delimiter).flatMap((folder) => NAMES.map((name) => join(folder, name)));
  const found = candidates.find((path) => existsSync(path));
  if (found === undefined) throw new Error('No Chromium to test with: install one (Debian: apt-get install -y chromium), or name it in STRUCKLINE_BROWSER.');
  return found;
}

export const BROWSER_ARGUMENTS = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
