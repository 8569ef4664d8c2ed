import { type Length, lengthOf, type Measure } from '../units/index.ts';
import type { Wallcovering } from './types.ts';

/** Both ends of a height or a base that may be given once. */
export function endsOf(value: Measure | readonly [Measure, Measure]): { readonly left: Length; readonly right: Length } {
  return 'typed' in value ? { left: value.length, right: value.length } : { left: value[0].length, right: value[1].length };
}

/** How a wallcovering's strips meet: as stated, or by its repeat. */
export function matchOf(covering: Wallcovering): 'free' | 'straight' | 'drop' {
  return covering.match ?? (covering.repeat.length === 0 ? 'free' : 'straight');
}

/**
 * The width that one strip adds to a wall: the roll's width less both selvedges and less what a double-cut seam overlaps.
 *
 * Example: a roll 21 in wide with selvedges of 1/4 in lays 20 1/2 in.
 */
export function laidWidthOf(covering: Wallcovering): Length {
  const overlap = covering.seam === 'double-cut' ? (covering.seamOverlap?.length ?? 0) : 0;
  return lengthOf(covering.width.length - 2 * covering.selvedge.length - overlap);
}
