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
