import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { laidWidthOf, matchOf } from '../house/index.ts';
import { ceilDivide, floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, cornersWithin, layAxis, onWall } from './axis.ts';
import { chosenLayout, type WallPlace } from './chosen-layout.ts';
import { cutStrips, dropOf, patternOf, type Strip, type StripSpan } from './cut-strips.ts';
import { type Grid, placeGrid } from './grid.ts';
import { type Mismatch, missBy } from './mismatch.ts';
import { findSlivers, type Sliver } from './slivers.ts';
import { leanAfter, type Stretch, wrapAfter } from './stretch.ts';

export interface StretchLayout {
  readonly axis: Axis;
  readonly grid: Grid;
  readonly start: WallPlace;
  /** Null in an open stretch. */
  readonly kill: WallPlace | null;
  readonly mismatch: Mismatch | null;
  /** Where a corner leans: the mismatch at the height where it takes no more than the usual wrap. */
  readonly mismatchUpright: Mismatch | null;
  readonly slivers: readonly Sliver[];
  readonly datum: Length;
  readonly strips: readonly Strip[];
}

/**
 * Sets out the strips of a wallcovering on one stretch: where each stands, and the pieces to cut for it.
 *
 * Shapes: positions and lengths in units. A strip wholly inside an opening becomes a piece above and one below it;
 * each piece is as long as the covered area is high over the strip's whole width, and a trim at both ends.
 * The layout is the band's own unless another is given.
 * Sources: the rules of the trade (common practice); the figures are the house's `rules`.
 * Example: walls of 12' 4", 10' 2", 12' 4", 10' 2", 8 ft high, strips of 20 1/2 in from the first corner to the right:
 * 27 strips of 8' 4", the pattern 7 3/8 in over at the kill point.
 */
export function setOutStrips(stretch: Stretch, band: HungBand, covering: Wallcovering, rules: Rules, layout = chosenLayout(band)): StretchLayout {
  const axis = layAxis(stretch, (wall) => wrapAfter(wall, rules));
  const laidWidth = laidWidthOf(covering);
  const grid = placeGrid(axis, laidWidth, layout);
  const lean = cornersWithin(axis, grid.from, grid.to).reduce((sum, { from, to, wall }) => sum + leanAfter(wall, to - from, rules), 0);
  const { datum, strips } = cutStrips(axis, stripSpans(grid, laidWidth), band, covering, rules);
  return {
    axis,
    grid,
    start: onWall(axis, grid.struck),
    kill: axis.isClosed ? onWall(axis, grid.from) : null,
    mismatch: axis.isClosed ? mismatchOf(grid, covering) : null,
    mismatchUpright: axis.isClosed && lean > 0 ? mismatchOf(grid, covering, lean) : null,
    slivers: findSlivers(axis, grid, laidWidth, band, rules),
    datum,
    strips,
  };
}

/** The strips' spans on the axis; the end that laps in a corner is a wrap wider and may take a strip of its own. */
export function stripSpans(grid: Grid, laidWidth: Length): readonly StripSpan[] {
  const first = floorDivide(grid.from - grid.origin, laidWidth);
  const last = ceilDivide(grid.to - grid.origin, laidWidth) - 1;
  const spans = [];
  for (let number = first; number <= last; number += 1) {
    const from = Math.max(grid.from, grid.origin + number * laidWidth);
    const to = Math.min(grid.to, grid.origin + (number + 1) * laidWidth);
    spans.push({ number, from, to, cutWidth: to - from });
  }
  if (grid.lappedEnd === null || grid.lap === 0) return spans;
  const isRight = grid.lappedEnd === 'right';
  const end = isRight ? spans.at(-1)! : spans[0]!;
  const wanted = end.cutWidth + grid.lap;
  end.cutWidth = Math.min(wanted, laidWidth);
  if (wanted > laidWidth) {
    const corner = isRight ? grid.to : grid.from;
    const extra = { number: end.number + (isRight ? 1 : -1), from: corner, to: corner, cutWidth: wanted - laidWidth };
    if (isRight) spans.push(extra);
    else spans.unshift(extra);
  }
  return spans;
}

/**
 * By how much the pattern misses itself where the ends of a closed stretch meet.
 *
 * `less` is what leaning corners take of the width at one height and not at another. The ends are thought moved to the nearest whole repeat; what would hang on there and what hangs at the beginning stand
 * apart in height by their drops. Example: nine whole strips of a half-drop of 24 in end 12 in apart, ten end together.
 */
export function mismatchOf(grid: Grid, covering: Wallcovering, less = 0): Mismatch {
  if (matchOf(covering) === 'free') return { amount: lengthOf(0), side: 'none', vertical: lengthOf(0) };
  const pattern = patternOf(covering);
  const laidWidth = laidWidthOf(covering);
  const across = covering.horizontalRepeat?.length ?? laidWidth;
  const end = grid.to - less;
  const missed = missBy(end - grid.from, across);
  const dropAt = (position: number) => dropOf(pattern.repeat, pattern.drop, floorDivide(position - grid.origin, laidWidth));
  const moved = missed.side === 'short' ? missed.amount : -missed.amount;
  const apart = modulo(dropAt(end + moved) - dropAt(grid.from), pattern.repeat);
  return { ...missed, vertical: lengthOf(Math.min(apart, pattern.repeat - apart)) };
}
