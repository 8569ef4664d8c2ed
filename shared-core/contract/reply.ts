import type { Fault } from '../base/index.ts';

export type ErrorCode =
  /** The call itself was not understood. */
  | 'bad-argument'
  /** The facts would contradict one another, or nothing is there to undo. */
  | 'refused'
  | 'no-such-house'
  | 'not-a-house'
  /** Somebody changed the house meanwhile; `details` are empty and the house should be opened again. */
  | 'changed-elsewhere'
  | 'too-large'
  /** Somebody asked for it to be given up. */
  | 'stopped'
  /** A fault of the program or of the disk. */
  | 'host-failure';

export interface ReplyError {
  readonly code: ErrorCode;
  /** What happened, what it means for the house file, and what to do. */
  readonly message: string;
  readonly details: readonly Fault[];
}

export type Reply<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly error: ReplyError };

export function failure(code: ErrorCode, message: string, details: readonly Fault[] = []): { readonly ok: false; readonly error: ReplyError } {
  return { ok: false, error: { code, message, details } };
}
