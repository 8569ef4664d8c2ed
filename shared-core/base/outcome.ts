/** One thing wrong with what somebody gave us, said so that they can mend it. */
export interface Fault {
  /** Where it stands, as `rooms[2].walls[0].length`; empty for the whole. */
  readonly path: string;
  /** What is wrong, the value and what would be accepted, as a sentence. */
  readonly message: string;
}

export type Outcome<Value, Problem = readonly Fault[]> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly faults: Problem };

export function good<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function bad<Problem>(faults: Problem): { readonly ok: false; readonly faults: Problem } {
  return { ok: false, faults };
}

/** One fault as a failed outcome. */
export function fault(path: string, message: string): { readonly ok: false; readonly faults: readonly Fault[] } {
  return bad([{ path, message }]);
}
