import { basename, dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { defaultFolder, type Surroundings } from '../office/index.ts';

export interface HouseChoice {
  readonly folder: string;
  readonly firstFile: string | null;
}

/** Which folder of houses to open, and which house first. What is not understood may be the runtime's own and is passed over. */
export function readSettings(argv: readonly string[], surroundings: Surroundings): HouseChoice {
  const { values, positionals } = parseArgs({ args: [...argv], options: { folder: { type: 'string' } }, allowPositionals: true, strict: false });
  const named = positionals.findLast((argument) => argument.endsWith('.struckline'));
  if (named !== undefined) {
    const file = resolve(surroundings.currentFolder, named);
    return { folder: dirname(file), firstFile: basename(file) };
  }
  const folder = typeof values.folder === 'string' && values.folder !== '' ? values.folder : defaultFolder(surroundings);
  return { folder: resolve(surroundings.currentFolder, folder), firstFile: null };
}
