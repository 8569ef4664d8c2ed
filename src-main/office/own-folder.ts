import { randomUUID } from 'node:crypto';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export interface OwnFolderSurroundings {
  readonly platform: NodeJS.Platform;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly homeFolder: string;
}

/** Where the app keeps what belongs to no house, such as its settings: STRUCKLINE_OWN, else where the system keeps such things. */
export function ownFolder({ platform, environment, homeFolder }: OwnFolderSurroundings): string {
  if (environment['STRUCKLINE_OWN']) return environment['STRUCKLINE_OWN'];
  if (platform === 'darwin') return join(homeFolder, 'Library/Application Support/Struckline');
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] ?? join(homeFolder, 'AppData', 'Local'), 'Struckline');
  return join(environment['XDG_DATA_HOME'] || join(homeFolder, '.local', 'share'), 'struckline');
}

/** What a user chose for every house, in the app's own folder. */
export const SETTINGS_NAME = 'settings.json';

/** Writes a file of the app's own, for the user alone: all of it or none, so that nobody reads half of one. */
export function writeOwn(path: string, contents: unknown): void {
  const draft = `${path}.${randomUUID()}.draft`;
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  try {
    writeFileSync(draft, `${JSON.stringify(contents, null, 2)}\n`, { mode: 0o600 });
    renameSync(draft, path);
  } finally {
    rmSync(draft, { force: true });
  }
}
