import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HouseStore } from '../../src-main/store/index.ts';
import { firstHouse, printOf, UndisturbedSession } from './numbered-edits.ts';
import { chanceOf } from './seeded.ts';
import { findStraceTrouble, runWatched } from './strace.ts';
import { type Contents, readTrace, TRACE_OPTIONS, WatchedDisk } from './watched-disk.ts';
import { shareOf } from '../share-of.ts';

const NAME = 'Session.struckline';
const CHANGES = shareOf(200, 4);
const SEED = 20_261_127;

const trouble = findStraceTrouble();
const named = (name: string) => (trouble === null ? name : `${name} (skipped: ${trouble})`);

describe('a power cut', () => {
  test.skipIf(trouble !== null)(named(`at any moment of a session of ${CHANGES} changes loses nothing that was answered and shows no half of a change`), async () => {
    const folder = mkdtempSync(join(tmpdir(), 'struckline-power-'));
    try {
      const { events, before } = await watch(folder);
      const undisturbed = await UndisturbedSession.start(join(folder, 'undisturbed.struckline'));
      const disk = new WatchedDisk(NAME, before);
      const chance = chanceOf(SEED);
      const seen = new Set<string>();
      let answered = 0;
      for (const [number, event] of events.entries()) {
        disk.take(event);
        if (event.kind === 'say') answered = Number(/^revision (\d+)$/.exec(event.line)?.[1] ?? answered);
        for (const [what, contents] of [['all', disk.all()], ['synced', disk.synced()], ['torn', disk.torn(chance)]] as const) {
          const key = keyOf(contents, answered);
          if (seen.has(key)) continue;
          seen.add(key);
          const place = `${what} after event ${number} (${event.kind}), ${answered} answered, seed ${SEED}`;
          const { revision, print } = await readAfterCut(join(folder, 'cut'), contents, place);
          expect([answered, answered + 1], place).toContain(revision);
          expect(print, place).toBe(await undisturbed.printAt(revision));
        }
      }
      await undisturbed.close();
      expect(answered).toBe(CHANGES);
      expect(seen.size).toBeGreaterThan(CHANGES * 10);
      console.log(`${events.length} events of ${CHANGES} changes, ${seen.size} states of the disk opened`);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

/** What a session does to its file, and the file before it. */
async function watch(folder: string) {
  const own = join(folder, 'watched');
  mkdirSync(own);
  const path = join(own, NAME);
  const made = await HouseStore.create(path, firstHouse());
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  await made.value.close();
  const before = readFileSync(path);
  const trace = join(folder, 'trace');
  const lines = await runWatched([...TRACE_OPTIONS, '-o', trace], path, String(CHANGES), '0');
  expect(lines.at(-1)).toBe('closed');
  return { events: readTrace(readFileSync(trace, 'latin1'), own, NAME), before };
}

async function readAfterCut(folder: string, contents: Contents, place: string) {
  mkdirSync(folder);
  for (const [name, bytes] of contents) writeFileSync(join(folder, name), bytes);
  const opened = await HouseStore.open(join(folder, NAME));
  if (!opened.ok) throw new Error(`${place}: ${JSON.stringify(opened.faults)}`);
  expect(opened.value.lookOnly, place).toBeNull();
  const read = await opened.value.read();
  if (!read.ok) throw new Error(`${place}: ${JSON.stringify(read.faults)}`);
  expect(await opened.value.findDamage(), place).toBeNull();
  await opened.value.close();
  rmSync(folder, { recursive: true });
  return { revision: read.value.revision, print: printOf(read.value) };
}

function keyOf(contents: Contents, answered: number): string {
  const hash = createHash('sha256').update(String(answered));
  for (const [name, bytes] of [...contents].sort(([one], [other]) => one.localeCompare(other))) hash.update(`\n${name} ${bytes.length}\n`).update(bytes);
  return hash.digest('hex');
}
