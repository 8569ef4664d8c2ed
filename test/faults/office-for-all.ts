import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { type Office, openOffice } from '../../src-main/office/index.ts';

/** One office for all tests of a file, with a folder of its own that is cleared away after them. */
export function officeForAll(take: (office: Office, folder: string) => void): void {
  let folder: string;
  let office: Office;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'struckline-faults-'));
    office = openOffice({ shell: 'loopback', folder: join(folder, 'houses'), ownFolder: join(folder, 'own') });
    take(office, folder);
  });
  afterAll(async () => {
    await office.close();
    rmSync(folder, { recursive: true });
  });
}
