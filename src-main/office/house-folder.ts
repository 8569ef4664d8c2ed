import { existsSync } from 'node:fs';
import { join } from 'node:path';

export interface Surroundings {
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly homeFolder: string;
  readonly currentFolder: string;
}

/** Where houses are kept unless the user says otherwise: STRUCKLINE_HOUSES, else a folder among the user's documents. */
export function defaultFolder({ environment, homeFolder }: Surroundings): string {
  if (environment['STRUCKLINE_HOUSES']) return environment['STRUCKLINE_HOUSES'];
  const documents = join(homeFolder, 'Documents');
  return join(existsSync(documents) ? documents : homeFolder, 'Struckline');
}

/** Where the app keeps what is its own, not the user's. */
export function dataFolder({ platform, environment, homeFolder }: Pick<Surroundings, 'environment' | 'homeFolder'> & { readonly platform: NodeJS.Platform }): string {
  if (platform === 'darwin') return join(homeFolder, 'Library', 'Application Support', 'Struckline');
  if (platform === 'win32') return join(environment['LOCALAPPDATA'] ?? join(homeFolder, 'AppData', 'Local'), 'Struckline');
  return join(environment['XDG_DATA_HOME'] || join(homeFolder, '.local', 'share'), 'struckline');
}

/** The list of houses that were opened by their paths, as a file among the app's own. */
export function rememberedFile(surroundings: Pick<Surroundings, 'environment' | 'homeFolder'>): string {
  return join(dataFolder({ ...surroundings, platform: process.platform }), 'houses-elsewhere.json');
}
