import { spawnSync } from 'node:child_process';
import type { CuttingProblem } from '../../../shared-core/cutting/index.ts';
import type { HighsAnswer } from './highs-arc-flow.ts';

export type HighsOutcome =
  | { readonly kind: 'finished'; readonly rolls: number; readonly milliseconds: number }
  | { readonly kind: 'time up' | 'killed' | 'aborted' };

const CHILD = new URL('highs-child.ts', import.meta.url).pathname;
const GRACE_SECONDS = 15;

/** Has a process of its own solve a problem; one that hangs is killed, and one that fails leaves its last words on standard error. */
export function askHighs(problem: CuttingProblem, seconds: number): HighsOutcome {
  const child = spawnSync(process.execPath, [CHILD], {
    input: JSON.stringify({ problem, seconds }),
    encoding: 'utf8',
    timeout: 1_000 * (seconds + GRACE_SECONDS),
    killSignal: 'SIGKILL',
  });
  if (child.signal === 'SIGKILL') return { kind: 'killed' };
  if (child.status !== 0) {
    console.error(child.stderr.trim().split('\n').slice(-8).join('\n'));
    return { kind: 'aborted' };
  }
  const { rolls, milliseconds } = JSON.parse(child.stdout.trim().split('\n').at(-1)!) as HighsAnswer;
  return rolls === null ? { kind: 'time up' } : { kind: 'finished', rolls, milliseconds };
}
