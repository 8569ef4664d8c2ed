import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { randomUUID } from 'node:crypto';
import { failure, type Reply, type SavedPaper } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { fileNameOf } from './file-names.ts';
import { HOUSE_FILE_ENDING } from './house-files.ts';
import type { PaperFile } from './paper-desk.ts';

/** Writes a paper into a folder of the house's papers beside its file; it stands there whole, in place of one of its name. */
export function savePaper({ fileName, bytes, path }: Pick<PaperFile, 'fileName' | 'bytes'> & { readonly path: string }): Reply<SavedPaper> {
  const folder = join(dirname(path), fileNameOf(basename(path, HOUSE_FILE_ENDING), say`, papers`));
  const draft = join(folder, `.${randomUUID()}.draft`);
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(draft, bytes);
    renameSync(draft, join(folder, fileName));
    return { ok: true, value: { folder, fileName } };
  } catch (error) {
    if (existsSync(draft)) rmSync(draft);
    return failure('host-failure', say`The paper could not be put into ${folder}: ${error instanceof Error ? error.message : String(error)}. Save it by itself in another place.`);
  }
}
