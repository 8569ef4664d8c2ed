import { assert } from '../base/index.ts';
import { ceilDivide, floorDivide } from './tape.ts';

/** Strips that all start at the same place of the repeat. */
export interface LikeStrips {
  readonly rollLength: number;
  /** 0 for a free match. */
  readonly repeat: number;
  readonly length: number;
  readonly count: number;
}

export interface Yield {
  readonly perRoll: number;
  /** Rolls for all the strips; null where a roll gives none. */
  readonly rolls: number | null;
}

export interface CountExplained {
  /** From the top of a strip to the top of the next: the length rounded up to whole repeats. */
  readonly spacing: number;
  /** Whole spacings in a roll, as textbooks count. */
  readonly textbook: Yield;
  /** Whatever the place in the repeat at which rolls start. */
  readonly safe: Yield;
  /** Where every roll starts at the best place. */
  readonly best: Yield;
  /** The chance that a roll gives one strip less than the textbook says, if any start is as likely as another. */
  readonly chanceOfOneLess: { readonly numerator: number; readonly denominator: number };
}

/**
 * Sets the textbook's count of rolls for strips of one phase beside the count that is safe and the best one.
 *
 * All lengths are whole numbers of one unit; the chance is an exact fraction, not always in lowest
 * terms. Numbers that are not whole or out of range are a bug of the caller and throw.
 *
 * Rule: with spacing d, a roll gives floor((usable - length) / d) + 1 strips, usable being the roll
 * less one repeat to be safe, and all of it at best. A start that loses more above the first strip
 * than (roll - length) mod d costs one strip of the best count (own derivation).
 *
 * Example: 16 strips of 2400 mm from rolls of 10050 mm, repeat 625: spacing 2500; textbook and best
 * 4 a roll, 4 rolls; safe 3 a roll, 6 rolls; chance 475/625 that a roll gives 3.
 */
export function explainCount({ rollLength, repeat, length, count }: LikeStrips): CountExplained {
  assert([rollLength, repeat, length, count].every(Number.isSafeInteger), 'the strips are not told in whole numbers');
  assert(rollLength > 0 && repeat >= 0 && length > 0 && count >= 0, 'the strips are out of range');
  assert(Number.isSafeInteger(length + repeat), 'the strips are too long to reckon with');

  const overRepeat = repeat === 0 ? 0 : length % repeat;
  const spacing = overRepeat === 0 ? length : length + repeat - overRepeat;
  const yieldOf = (perRoll: number): Yield => ({ perRoll, rolls: perRoll === 0 ? null : ceilDivide(count, perRoll) });
  const mostIn = (usable: number): number => (usable < length ? 0 : floorDivide(usable - length, spacing) + 1);
  const textbook = floorDivide(rollLength, spacing);
  const best = mostIn(rollLength);
  const isOneLessPossible = best > 0 && textbook === best;
  return {
    spacing,
    textbook: yieldOf(textbook),
    safe: yieldOf(mostIn(rollLength - repeat)),
    best: yieldOf(best),
    chanceOfOneLess: {
      numerator: isOneLessPossible ? Math.max(0, repeat - ((rollLength - length) % spacing)) : 0,
      denominator: Math.max(repeat, 1),
    },
  };
}
