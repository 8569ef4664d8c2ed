import type { FindDearest } from './dearest.ts';
import { dearestFree } from './dearest-free.ts';
import { dearestPatterned } from './dearest-patterned.ts';
import type { Tape } from './tape.ts';
import type { Work } from './work.ts';

/** Prepares a tape for finding its dearest rolls again and again. */
export function findDearest(tape: Tape, work: Work): FindDearest {
  return tape.repeat === 0 ? dearestFree(tape, work) : dearestPatterned(tape, work);
}
