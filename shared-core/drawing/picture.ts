import type { Border, Lining, Mural, Wallcovering } from '../house/index.ts';
import { laidWidthOf, matchOf } from '../house/index.ts';
import type { StretchLayout, Strip } from '../setting-out/index.ts';
import { floorDivide, modulo } from '../units/index.ts';
import type { DrawnPoint, PictureShape } from './shapes.ts';

/** What the picture of one repeat shows, in units. */
export interface Tile {
  readonly width: number;
  readonly height: number;
}

/**
 * How wide and how high one repeat of a covering is; null where nothing repeats, or in lining and murals.
 *
 * A wallcovering's is the horizontal repeat wide, without one the laid width. With a drop match all strips are alike and
 * the drop alone makes the wider repeat, so that its picture is never wider than a strip. A border's is its repeat wide
 * and its own width high.
 * Example: a wallcovering that lays 20 1/2 in with a repeat of 21 in has a tile of 20 1/2 in by 21 in.
 */
export function tileOf(covering: Wallcovering | Border | Lining | Mural): Tile | null {
  if (covering.kind === 'border') return covering.repeat.length === 0 ? null : { width: covering.repeat.length, height: covering.width.length };
  if (covering.kind !== 'wallcovering' || covering.repeat.length === 0) return null;
  const laidWidth = laidWidthOf(covering);
  const across = covering.horizontalRepeat?.length ?? laidWidth;
  return { width: matchOf(covering) === 'drop' ? Math.min(across, laidWidth) : across, height: covering.repeat.length };
}

/**
 * Where a repeat begins on a strip.
 *
 * The strip's own left edge were it a full one; where a straight pattern runs on over several strips, the edge of the
 * one at which it began. A panel trimmed at both edges shows the middle of the roll.
 */
export function tileLeft(tile: Tile, covering: Wallcovering, { grid }: Pick<StretchLayout, 'grid'>, strip: Pick<Strip, 'number' | 'from' | 'to'>): number {
  const laidWidth = laidWidthOf(covering);
  if (covering.panels === 'equal') return strip.from - floorDivide(laidWidth - (strip.to - strip.from), 2);
  const along = strip.number * laidWidth;
  return grid.origin + along - (matchOf(covering) === 'straight' ? modulo(along, tile.width) : 0);
}

/**
 * The picture on the areas of one piece of a strip, at true scale, where the piece's phase puts it.
 *
 * Shapes: `left` is where a repeat begins.
 * Example: a piece whose top edge, 2 in of trim above 8 ft, lies 5 in into the repeat has a repeat begin at 8' 7".
 */
export function pictureOnPiece(tile: Tile, covering: Wallcovering, left: number, piece: Strip['pieces'][number], areas: readonly (readonly DrawnPoint[])[]): PictureShape {
  return { kind: 'picture', picture: covering.id, areas, x: left, y: -piece.upperEdge - piece.phase, ...tile, fall: 0, isTurned: piece.isTurned ?? false };
}

/**
 * The picture on a part of a border, its upper edge along the part's.
 *
 * Shapes: `firstRepeat` is any position of the axis at which a repeat begins; `area` is the part's four corners
 * clockwise from the upper left one. Where the part slopes, so does the tile, its upright edges staying upright.
 */
export function pictureAlong(tile: Tile, covering: Border, firstRepeat: number, area: readonly DrawnPoint[]): PictureShape {
  const [upperLeft, upperRight] = [area[0]!, area[1]!];
  const slope = (upperRight.y - upperLeft.y) / (upperRight.x - upperLeft.x);
  const x = firstRepeat + Math.floor((upperLeft.x - firstRepeat) / tile.width) * tile.width;
  return { kind: 'picture', picture: covering.id, areas: [area], x, y: upperLeft.y + (x - upperLeft.x) * slope, ...tile, fall: slope * tile.width, isTurned: false };
}
