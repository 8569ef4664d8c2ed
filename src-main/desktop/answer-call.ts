import { isAbsolute } from 'node:path';
import { failure, LARGEST_CALL_BYTES, type Reply, TOO_LARGE_CALL } from '../../shared-core/contract/index.ts';
import { say } from '../../shared-core/words/index.ts';
import type { Office } from '../office/index.ts';
import type { SenderFrame } from './electron-calls.ts';
import { isOwnFrame } from './security.ts';

const LONGEST_METHOD_NAME = 100;

/**
 * Answers one call from the window.
 *
 * The argument goes on as the JSON that it stands for, as over the loopback transport, so that nothing but plain data
 * reaches the office.
 */
export async function answerCall(office: Pick<Office, 'call'>, sender: SenderFrame | null, method: unknown, argument: unknown): Promise<Reply<unknown>> {
  if (!isOwnFrame(sender)) return failure('bad-argument', say`Only the window of Struckline itself may call its office.`);
  if (typeof method !== 'string' || method.length > LONGEST_METHOD_NAME) return failure('bad-argument', say`A call names its method as a short text.`);
  const text = printJson(argument);
  if (text === undefined) return failure('bad-argument', say`A call takes its argument as plain data.`);
  if (Buffer.byteLength(text) > LARGEST_CALL_BYTES) {
    return failure('too-large', TOO_LARGE_CALL);
  }
  return office.call(method, JSON.parse(text));
}

/** Opens the house file that was dropped on the window, by the path that the preload found out. */
export async function answerDrop(office: Pick<Office, 'openPath'>, sender: SenderFrame | null, path: unknown): Promise<Reply<unknown>> {
  if (!isOwnFrame(sender)) return failure('bad-argument', say`Only the window of Struckline itself may call its office.`);
  if (typeof path !== 'string' || !isAbsolute(path)) return failure('refused', say`This is not a file on the disk; save it first, then drop it here.`);
  return office.openPath(path);
}

function printJson(value: unknown): string | undefined {
  try {
    return JSON.stringify(value);
  } catch {
    return undefined;
  }
}
