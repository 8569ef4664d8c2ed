import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isAbsolute } from 'node:path';
import { writeOwn } from './own-folder.ts';

const MOST_REMEMBERED = 100;

interface Remembered {
  readonly path: string;
  readonly name: string;
}

/**
 * The houses outside of the folder that were opened by their paths, the last one first.
 *
 * The window knows each by a word that says nothing of where it lies, so that it can name no other file. The list is
 * read anew each time: two running apps have one list. Without a file that can be written it lasts as long as the run.
 */
export class RememberedHouses {
  readonly #file: string;
  /** The list where no file has it. */
  #unkept: readonly Remembered[] | null = null;

  constructor(file: string) {
    this.#file = file;
  }

  list(): readonly (Remembered & { readonly key: string })[] {
    return this.#read().map((one) => ({ ...one, key: keyOf(one.path) }));
  }

  /** Remembers a house under its name, and gives the word for it. */
  remember(path: string, name: string): string {
    const before = this.#read();
    if (before[0]?.path !== path || before[0].name !== name) this.#write([{ path, name }, ...before.filter((one) => one.path !== path)].slice(0, MOST_REMEMBERED));
    return keyOf(path);
  }

  forget(key: string): void {
    this.#write(this.#read().filter(({ path }) => keyOf(path) !== key));
  }

  /** A list that can't be read is as good as none: the houses themselves are where they were. */
  #read(): readonly Remembered[] {
    if (this.#unkept !== null) return this.#unkept;
    try {
      const list: unknown = JSON.parse(readFileSync(this.#file, 'utf8'));
      return Array.isArray(list) ? list.filter(isRemembered) : [];
    } catch {
      return [];
    }
  }

  #write(list: readonly Remembered[]): void {
    try {
      writeOwn(this.#file, list);
      this.#unkept = null;
    } catch {
      // A full or locked disk takes no house away: the list is a convenience.
      this.#unkept = list;
    }
  }
}

function isRemembered(one: Partial<Remembered> | null): one is Remembered {
  return typeof one?.path === 'string' && isAbsolute(one.path) && typeof one.name === 'string';
}

function keyOf(path: string): string {
  return `elsewhere:${createHash('sha256').update(path).digest('hex').slice(0, 16)}`;
}
