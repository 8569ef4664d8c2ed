import { createHash, randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, isAbsolute } from 'node:path';

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
  readonly #file: string | null;
  /** The list where no file has it. */
  #unkept: readonly Remembered[] | null = null;

  constructor(file: string | null) {
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
    if (this.#file === null || this.#unkept !== null) return this.#unkept ?? [];
    try {
      const list: unknown = JSON.parse(readFileSync(this.#file, 'utf8'));
      return Array.isArray(list) ? list.filter(isRemembered) : [];
    } catch {
      return [];
    }
  }

  #write(list: readonly Remembered[]): void {
    this.#unkept = list;
    if (this.#file === null) return;
    const draft = `${this.#file}.${randomUUID()}.draft`;
    try {
      mkdirSync(dirname(this.#file), { recursive: true, mode: 0o700 });
      try {
        writeFileSync(draft, `${JSON.stringify(list, null, 2)}\n`, { mode: 0o600 });
        renameSync(draft, this.#file);
      } finally {
        rmSync(draft, { force: true });
      }
      this.#unkept = null;
    } catch {
      // A full or locked disk takes no house away: the list is a convenience.
    }
  }
}

function isRemembered(one: Partial<Remembered> | null): one is Remembered {
  return typeof one?.path === 'string' && isAbsolute(one.path) && typeof one.name === 'string';
}

function keyOf(path: string): string {
  return `elsewhere:${createHash('sha256').update(path).digest('hex').slice(0, 16)}`;
}
