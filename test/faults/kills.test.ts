import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { expect, test } from 'vitest';
import { HouseStore } from '../../src-main/store/index.ts';
import { firstHouse, printOf, UndisturbedSession } from './numbered-edits.ts';
import { shareOf } from '../share-of.ts';

const KILLS = shareOf(1_000, 8);
const ENDLESS = '1000000';
/** A kill waits for so many changes at most and then for a moment of chance, so that it falls into opening, into a change or between two. */
const MOST_CHANGES = 5;
const LONGEST_MOMENT_MILLISECONDS = 15;

test(`a session killed ${KILLS} times at moments of chance loses nothing that was answered and shows no half of a change`, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'struckline-kills-'));
  const path = join(folder, 'Session.struckline');
  const undisturbed = await UndisturbedSession.start(join(folder, 'undisturbed.struckline'));
  const made = await HouseStore.create(path, firstHouse());
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  await made.value.close();
  let answered = 0;
  let recoveries = 0;
  try {
    for (let kill = 0; kill < KILLS; kill += 1) {
      const before = answered;
      const lines = await linesUntilKilled(path, Math.floor(Math.random() * (MOST_CHANGES + 1)), Math.random() * LONGEST_MOMENT_MILLISECONDS);
      expect(lines.filter((line) => line.startsWith('failed'))).toEqual([]);
      answered = Math.max(answered, ...lines.flatMap((line) => /^revision (\d+)$/.exec(line)?.slice(1).map(Number) ?? []));
      if (readdirSync(folder).includes('Session.struckline-journal')) recoveries += 1;
      const opened = await HouseStore.open(path);
      if (!opened.ok) throw new Error(`kill ${kill}: ${JSON.stringify(opened.faults)}`);
      const read = await opened.value.read();
      if (!read.ok) throw new Error(`kill ${kill}: ${JSON.stringify(read.faults)}`);
      expect(await opened.value.findDamage()).toBeNull();
      await opened.value.close();
      const { revision } = read.value;
      expect([answered, answered + 1], `kill ${kill}: ${answered} were answered since ${before}`).toContain(revision);
      expect(printOf(read.value), `kill ${kill}, revision ${revision}`).toBe(await undisturbed.printAt(revision));
      expect(readdirSync(folder).sort()).toEqual(['Session.struckline', 'undisturbed.struckline']);
      answered = revision;
    }
  } finally {
    await undisturbed.close();
    rmSync(folder, { recursive: true });
  }
  expect(answered).toBeGreaterThan(KILLS);
  console.log(`${KILLS} kills, ${answered} changes, ${recoveries} journals left to be played back`);
});

/** What a session says until it is killed: once it has answered so many changes and a moment has passed. */
async function linesUntilKilled(path: string, changes: number, milliseconds: number): Promise<readonly string[]> {
  const child: ChildProcess = spawn(process.execPath, [join(import.meta.dirname, 'run-session.ts'), path, ENDLESS, '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  let isDoomed = false;
  child.stdout!.setEncoding('utf8').on('data', (text: string) => {
    said += text;
    if (isDoomed || said.split('\n').length - 2 < changes) return;
    isDoomed = true;
    setTimeout(() => child.kill('SIGKILL'), milliseconds);
  });
  const [, signal] = (await once(child, 'close')) as [number | null, string | null];
  expect(signal).toBe('SIGKILL');
  // A line that was cut off was not said.
  return said.slice(0, said.lastIndexOf('\n')).split('\n');
}
