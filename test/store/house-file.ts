import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { type HouseStore } from '../../src-main/store/index.ts';

/** The place of a house file in a folder of its own for each test, and its store, which is closed after it. */
export function houseFileForEach(): { readonly path: string; kept(opening: ReturnType<typeof HouseStore.open>): Promise<HouseStore> } {
  let folder: string;
  let store: HouseStore | undefined;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'struckline-store-'));
  });
  afterEach(async () => {
    await store?.close();
    rmSync(folder, { recursive: true });
  });
  return {
    get path() {
      return join(folder, 'Alder.struckline');
    },
    async kept(opening) {
      const outcome = await opening;
      if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join(' '));
      store = outcome.value;
      return store;
    },
  };
}
