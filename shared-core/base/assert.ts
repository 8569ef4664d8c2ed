/** A bug of ours, never the user's: what the code relies on did not hold. */
export class BrokenAssumption extends Error {
  override readonly name = 'BrokenAssumption';
}

export function assert(condition: unknown, assumption: string): asserts condition {
  if (!condition) throw new BrokenAssumption(assumption);
}

/** The value, where it is known to be there. */
export function present<Value>(value: Value | null | undefined, what: string): Value {
  assert(value !== null && value !== undefined, `${what} is missing`);
  return value;
}
