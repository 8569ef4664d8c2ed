import { dirname, join } from 'node:path';
import { join as joinPath } from 'node:path/posix';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { readImports } from './read-imports.ts';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** All files that a file imports, by itself or by way of others. */
function importedBy(file: string, seen: Set<string>): Set<string> {
  for (const { specifier } of readImports(ROOT, file)) {
    const target = joinPath(dirname(file), specifier);
    if (seen.has(target)) continue;
    seen.add(target);
    importedBy(target, seen);
  }
  return seen;
}

/** A mistake that the checker shared with the planner would pass as right. */
it('the checker of cutting plans shares nothing with the planner but the problem', () => {
  const imported = [...importedBy('shared-core/cutting/check-cuts.ts', new Set())];
  expect(imported).toEqual(expect.arrayContaining(['shared-core/cutting/problem.ts', 'shared-core/cutting/check-certificate.ts', 'shared-core/cutting/check-ruled-out.ts']));
  const isItsOwn = (file: string): boolean => /^shared-core\/(base\/[a-z-]+|cutting\/problem|cutting\/check-[a-z-]+)\.ts$/.test(file);
  expect(imported.filter((file) => !isItsOwn(file))).toEqual([]);
});
