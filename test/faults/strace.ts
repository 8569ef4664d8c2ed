import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

/** Why programs can't be watched here, in words, or null. */
export function findStraceTrouble(): string | null {
  const tried = spawnSync('strace', ['-f', '-e', 'trace=none', process.execPath, '--version'], { encoding: 'utf8' });
  if (tried.error) return `strace is not here (${tried.error.message})`;
  return tried.status === 0 ? null : `strace may not watch a program here (${tried.stderr.trim().split('\n').at(-1) ?? ''})`;
}

/** Runs a session under strace; what it said, line by line. */
export async function runWatched(options: readonly string[], ...session: readonly string[]): Promise<readonly string[]> {
  const child = spawn('strace', [...options, process.execPath, join(import.meta.dirname, 'run-session.ts'), ...session], { stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  let errors = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (errors += text));
  const [code] = (await once(child, 'close')) as [number | null];
  if (code !== 0) throw new Error(`the session ended with ${code}: ${errors.slice(-2_000)}`);
  return said.split('\n').filter(Boolean);
}
