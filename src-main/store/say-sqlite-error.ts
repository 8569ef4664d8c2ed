import { say } from '../../shared-core/words/index.ts';

type Trouble = 'damaged' | 'full' | 'disk' | 'protected' | 'in-use' | 'out-of-reach';

/** By SQLite's plain codes, whatever follows them, and by the system's. */
const TROUBLES: Readonly<Record<string, Trouble>> = {
  SQLITE_CORRUPT: 'damaged',
  SQLITE_NOTADB: 'damaged',
  SQLITE_FORMAT: 'damaged',
  // What is asked of SQLite never changes: where it finds no such table or column, the file is not as it was written.
  SQLITE_ERROR: 'damaged',
  SQLITE_SCHEMA: 'damaged',
  SQLITE_CONSTRAINT: 'damaged',
  SQLITE_MISMATCH: 'damaged',
  SQLITE_TOOBIG: 'damaged',
  SQLITE_FULL: 'full',
  ENOSPC: 'full',
  EDQUOT: 'full',
  SQLITE_IOERR: 'disk',
  EIO: 'disk',
  SQLITE_READONLY: 'protected',
  SQLITE_PERM: 'protected',
  SQLITE_AUTH: 'protected',
  EACCES: 'protected',
  EPERM: 'protected',
  EROFS: 'protected',
  SQLITE_BUSY: 'in-use',
  SQLITE_LOCKED: 'in-use',
  SQLITE_PROTOCOL: 'in-use',
  EBUSY: 'in-use',
  SQLITE_CANTOPEN: 'out-of-reach',
  ENOENT: 'out-of-reach',
  ENOTDIR: 'out-of-reach',
  EISDIR: 'out-of-reach',
  ELOOP: 'out-of-reach',
  ENAMETOOLONG: 'out-of-reach',
};

const WORDS: Readonly<Record<Trouble, (name: string) => string>> = {
  damaged: (name) => say`${name} is damaged, or its disk does not read as it should: parts of it are not as Struckline wrote them. Nothing was changed. A back-up may still have the house.`,
  full: (name) => say`The disk on which ${name} lies is full. Nothing was changed. Make room on it, then try again.`,
  disk: (name) => say`The disk on which ${name} lies does not read or write as it should. Nothing was changed. Check that it is connected, then try again.`,
  protected: (name) => say`${name} or its folder is protected. Nothing was changed. Allow yourself to read and write both, or copy the file to where you may.`,
  'in-use': (name) => say`${name} is in use by another program. Nothing was changed. Try again once that is done with it.`,
  'out-of-reach': (name) => say`${name} can't be opened where it lies. Nothing was changed. Check that it is a file, that its disk is connected and that you may read its folder.`,
};

/**
 * What SQLite or the system found wrong with a file as a sentence with a way out; null of any other error.
 *
 * Takes what was thrown and the file's name. Example: of SQLITE_BUSY_SNAPSHOT it is 'Alder.struckline is in use by
 * another program. Nothing was changed. Try again once that is done with it.'
 */
export function saySqliteError(error: unknown, name: string): string | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const plain = /^SQLITE_[A-Z]+/.exec(code)?.[0] ?? code;
  return Object.hasOwn(TROUBLES, plain) ? WORDS[TROUBLES[plain]!](name) : null;
}
