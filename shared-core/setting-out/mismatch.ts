import { type Length, lengthOf, modulo } from '../units/index.ts';

export interface Mismatch {
  readonly amount: Length;
  /** Whether the pattern runs past a whole repeat by that much, or stops short of one. */
  readonly side: 'over' | 'short' | 'none';
  /** For a drop match, how far apart the two strips stand in height. */
  readonly vertical: Length;
}

/**
 * By how much a run misses a whole number of repeats, the nearer way.
 *
 * Shapes: units; no repeat, no mismatch. Example: 540 3/8 in of a repeat of 20 1/2 in is 7 3/8 in over, 550 in 3 1/2 in
 * short.
 */
export function missBy(run: number, repeat: number): Pick<Mismatch, 'amount' | 'side'> {
  const over = repeat === 0 ? 0 : modulo(run, repeat);
  return { amount: lengthOf(Math.min(over, Math.max(0, repeat - over))), side: over === 0 ? 'none' : over <= repeat - over ? 'over' : 'short' };
}
