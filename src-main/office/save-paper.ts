import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { randomUUID } from 'node:crypto';
import type { SavedPaper } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { fileNameOf } from './file-names.ts';
import { HOUSE_FILE_ENDING } from './house-files.ts';
import type { PaperFile } from './paper-desk.ts';

/** Writes a paper into a folder of the house's papers beside its file; it stands there whole, in place of one of its name. */
export function savePaper({ fileName, bytes, path }: Pick<PaperFile, 'fileName' | 'bytes'> & { readonly path: string }): SavedPaper {
  const folder = join(dirname(path), fileNameOf(basename(path, HOUSE_FILE_ENDING), say`, papers`));
  mkdirSync(folder, { recursive: true });
  const draft = join(folder, `.${randomUUID()}.draft`);
  writeFileSync(draft, bytes);
  renameSync(draft, join(folder, fileName));
  return { folder, fileName };
}
