import { basename, dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { say } from '../../shared-core/words/index.ts';
import { defaultFolder, type Surroundings } from '../office/index.ts';

export const USAGE = say`usage: npm start -- [--folder DIR] [FILE.struckline]`;

export interface HouseChoice {
  readonly folder: string;
  readonly firstFile: string | null;
}

/** Which folder of houses to open, and which house first; a sentence where the arguments make no sense. */
export function readSettings(argv: readonly string[], surroundings: Surroundings): HouseChoice | string {
  let parsed;
  try {
    parsed = parseArgs({ args: [...argv], options: { folder: { type: 'string' } }, allowPositionals: true });
  } catch (error) {
    return `${(error as Error).message} (${USAGE})`;
  }
  const { values, positionals } = parsed;
  if (values.folder === '') return say`--folder takes the folder where houses are kept (${USAGE})`;
  if (positionals.length > 1) return say`${positionals.length} files were named; one can be opened at the start (${USAGE})`;
  const folder = resolve(surroundings.currentFolder, values.folder ?? defaultFolder(surroundings));
  const [named] = positionals;
  if (named === undefined) return { folder, firstFile: null };
  if (!named.endsWith('.struckline')) return say`"${named}" is not the name of a house file, which ends in .struckline (${USAGE})`;
  const file = resolve(surroundings.currentFolder, named);
  if (values.folder !== undefined && dirname(file) !== folder) return say`"${named}" does not lie in ${folder}; leave --folder out to open the folder that it lies in`;
  return { folder: dirname(file), firstFile: basename(file) };
}
