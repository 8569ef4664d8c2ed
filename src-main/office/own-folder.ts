import { join } from 'node:path';

export interface OwnFolderSurroundings {
  readonly platform: NodeJS.Platform;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly homeFolder: string;
}

/** Where the app keeps what belongs to no house, such as its settings: STRUCKLINE_OWN, else where the system keeps such things. */
export function ownFolder({ platform, environment, homeFolder }: OwnFolderSurroundings): string {
  if (environment['STRUCKLINE_OWN']) return environment['STRUCKLINE_OWN'];
  if (platform === 'darwin') return join(homeFolder, 'Library', 'Application Support', 'Struckline');
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] ?? join(homeFolder, 'AppData', 'Local'), 'Struckline');
  return join(environment['XDG_DATA_HOME'] || join(homeFolder, '.local', 'share'), 'struckline');
}
