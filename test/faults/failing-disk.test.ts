import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { HouseStore } from '../../src-main/store/index.ts';
import { firstHouse, printOf, UndisturbedSession } from './numbered-edits.ts';
import { findStraceTrouble, runWatched } from './strace.ts';
import { shareOf } from '../share-of.ts';

const NAME = 'Session.struckline';
const CHANGES = '6';
const MOST_FAILURES = '3';
const FULL = /^The disk on which Session\.struckline lies is full\. Nothing was changed\./;
const BROKEN = /^The disk on which Session\.struckline lies does not read or write as it should\. Nothing was changed\.|^Session\.struckline (can't be opened where it lies|is damaged, or its disk does not read as it should)/;

/** Which call fails with which error, at its which time, once or ever after. */
const FAULTS = [
  { error: 'ENOSPC', call: 'pwrite64', words: FULL },
  { error: 'EIO', call: 'pwrite64', words: BROKEN },
  { error: 'EIO', call: 'fsync', words: BROKEN },
  { error: 'EIO', call: 'unlink', words: BROKEN },
  { error: 'EIO', call: 'pread64', words: BROKEN },
].flatMap((fault) => Array.from({ length: 60 }, (_, index) => ({ ...fault, when: index < 30 ? `${index + 1}` : `${index - 29}+` })));

/** Of a share the cases lie apart, so that each kind of fault has some. */
const CASES = shareOf(FAULTS.length, 5);
const chosen = FAULTS.filter((_, index) => Math.floor((index * CASES) / FAULTS.length) > Math.floor(((index - 1) * CASES) / FAULTS.length));

const trouble = findStraceTrouble();

describe.skipIf(trouble !== null)(`a disk that fails${trouble === null ? '' : ` (skipped: ${trouble})`}`, () => {
  let folder: string;
  let undisturbed: UndisturbedSession;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'struckline-disk-'));
    undisturbed = await UndisturbedSession.start(join(folder, 'undisturbed.struckline'));
  });
  afterAll(async () => {
    await undisturbed.close();
    rmSync(folder, { recursive: true });
  });

  test.each(chosen)('at $call with $error, time $when: what could not be made is said, the rest stays', async ({ error, call, when, words }) => {
    const own = mkdtempSync(join(folder, 'case-'));
    const path = join(own, NAME);
    const made = await HouseStore.create(path, firstHouse());
    if (!made.ok) throw new Error(JSON.stringify(made.faults));
    await made.value.close();
    const within = [own, path, `${path}-journal`].flatMap((one) => ['-P', one]);
    const lines = await runWatched(['-f', '-o', '/dev/null', ...within, '-e', `trace=${call}`, '-e', `inject=${call}:error=${error}:when=${when}`], path, CHANGES, MOST_FAILURES);

    const failed = lines.filter((line) => line.startsWith('failed'));
    for (const line of failed) expect(messageOf(line)).toMatch(words);
    const answered = lines.filter((line) => line.startsWith('revision')).length;
    const opened = await HouseStore.open(path);
    if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
    const read = await opened.value.read();
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    expect(await opened.value.findDamage()).toBeNull();
    await opened.value.close();
    expect([answered, answered + 1]).toContain(read.value.revision);
    expect(printOf(read.value)).toBe(await undisturbed.printAt(read.value.revision));
    expect(readdirSync(own)).toEqual([NAME]);
  });
});

test('without strace no fault of the disk is tried, which is said', () => {
  expect(trouble === null || /strace/.test(trouble)).toBe(true);
  expect(new Set(chosen.map(({ call, error }) => `${error} ${call}`)).size).toBe(5);
});

/** What a session says of a failure, without what kind it was. */
function messageOf(line: string): string {
  const [, , code, rest] = /^(failed) (\S+) (.*)$/.exec(line) ?? [];
  if (code === 'open' || code === 'read') return rest!;
  expect(code).toBe('not-written');
  return (JSON.parse(rest!) as { readonly message: string }).message;
}
