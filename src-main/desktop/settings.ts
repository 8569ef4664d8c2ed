import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { defaultFolder, isHouseFile, type Surroundings } from '../office/index.ts';

export interface HouseChoice {
  readonly folder: string;
  /** Houses to open, each by its whole path. */
  readonly files: readonly string[];
}

/**
 * The folder of houses, and the house files that are named, which are opened where they lie.
 *
 * A second start and the system's own way of opening a file can't change the folder of an app that runs, so the first
 * start does not either.
 */
export function readSettings(argv: readonly string[], surroundings: Surroundings): HouseChoice {
  const { values } = parse(argv);
  const folder = typeof values['folder'] === 'string' && values['folder'] !== '' ? values['folder'] : defaultFolder(surroundings);
  return { folder: resolve(surroundings.currentFolder, folder), files: filesNamed(argv, surroundings.currentFolder) };
}

/**
 * The house files that a command line names, as whole paths; what else stands there is the runtime's own, or nothing.
 *
 * Example: `filesNamed(['--lang=de', 'Home.struckline'], '/houses')` is ['/houses/Home.struckline'].
 */
export function filesNamed(argv: readonly string[], currentFolder: string): readonly string[] {
  const paths = parse(argv).positionals.map((named) => resolve(currentFolder, pathOf(named)));
  return [...new Set(paths.filter(isHouseFile))];
}

/** On Linux a file may be handed on as an address, such as `file:///houses/Home.struckline`. */
function pathOf(named: string): string {
  if (!named.startsWith('file:')) return named;
  try {
    return fileURLToPath(named);
  } catch {
    return named;
  }
}

function parse(argv: readonly string[]) {
  return parseArgs({ args: [...argv], options: { folder: { type: 'string' } }, allowPositionals: true, strict: false });
}
