import { writeFile } from 'node:fs/promises';
import type { Fault } from '../../shared-core/base/index.ts';
import type { HousePlan } from '../../shared-core/plan/index.ts';

export interface CommandResult {
  readonly status: 0 | 1 | 3;
  readonly output: string;
  readonly errors: string;
}

export const PROGRAM = 'struckline';

/** What is wrong with what was asked for. */
export function fault(message: string): { readonly ok: false; readonly faults: readonly Fault[] } {
  return { ok: false, faults: [{ path: '', message }] };
}

export function done(output: string): CommandResult {
  return { status: 0, output, errors: '' };
}

export function finished(faults: readonly Fault[]): CommandResult {
  if (faults.length === 0) return done('');
  return { status: 1, output: '', errors: faults.map(({ path, message }) => `${PROGRAM}: ${path === '' ? '' : `${path} `}${message}\n`).join('') };
}

/** What was done, with what of the plan can't be met. */
export function withProblems({ problems }: HousePlan, output: string): CommandResult {
  const errors = problems.map(({ message }) => `${PROGRAM}: ${message}\n`).join('');
  return { status: problems.length > 0 ? 3 : 0, output, errors };
}

/** Writes a file that is not there yet. */
export async function writeNew(path: string, content: string | Uint8Array, failed: (why: string) => string): Promise<readonly Fault[]> {
  try {
    await writeFile(path, content, { flag: 'wx' });
    return [];
  } catch (error) {
    return [{ path: '', message: failed(error instanceof Error ? error.message : String(error)) }];
  }
}
