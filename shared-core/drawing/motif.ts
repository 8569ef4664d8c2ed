import type { Border, Lining, Mural, Wallcovering } from '../house/index.ts';
import { laidWidthOf, matchOf } from '../house/index.ts';
import type { Strip } from '../setting-out/index.ts';
import { UNITS_PER_MILLIMETRE } from '../units/index.ts';
import { between, clipToConvex } from './geometry.ts';
import type { DrawnPoint } from './shapes.ts';

const STEM_POINTS = 12;
/** A repeat finer than this is drawn without leaves; half of it is not drawn at all. */
const FINEST_LEAVES = 120 * UNITS_PER_MILLIMETRE;
const LEAVES = [
  { along: 0.1, side: -1 },
  { along: 0.27, side: 1 },
  { along: 0.44, side: -1 },
  { along: 0.61, side: 1 },
  { along: 0.78, side: -1 },
  { along: 0.93, side: 1 },
] as const;

/** A covering's repeat as our own motif draws it. */
export interface Motif {
  readonly width: number;
  readonly repeat: number;
  /** Strokes of one repeat from its upper left corner. */
  readonly strokes: readonly (readonly DrawnPoint[])[];
}

/**
 * A stem with leaves, one for each repeat, that runs on from strip to strip where the pattern is matched.
 *
 * For a straight match it ends at the height it began at; for a drop match higher by the drop, where the next strip's
 * begins. A free match, a covering without a repeat or one finer than 60 mm has none.
 * Example: a half-drop of 640 mm on strips of 530 mm rises 320 mm over each strip.
 */
export function motifOf(covering: Wallcovering | Lining | Mural): Motif | null {
  if (covering.kind !== 'wallcovering') return null;
  const repeat = covering.repeat.length;
  if (matchOf(covering) === 'free' || repeat < FINEST_LEAVES / 2) return null;
  const rise = matchOf(covering) === 'drop' && covering.dropBy ? (repeat * covering.dropBy.numerator) / covering.dropBy.denominator : 0;
  return sprig(laidWidthOf(covering), repeat, rise);
}

/** A border's motif: the same stem along the wall, one for each repeat; none without a repeat or finer than 60 mm. */
export function motifOfBorder(covering: Border | Lining): Motif | null {
  return covering.kind === 'lining' || covering.repeat.length < FINEST_LEAVES / 2 ? null : sprig(covering.repeat.length, covering.width.length, 0);
}

function sprig(width: number, repeat: number, rise: number): Motif {
  const size = Math.min(repeat, width);
  const heightAt = (along: number) => repeat / 2 - rise * along + size * 0.13 * Math.sin(2 * Math.PI * along);
  const stem = Array.from({ length: STEM_POINTS + 1 }, (_, step) => ({ x: (width * step) / STEM_POINTS, y: heightAt(step / STEM_POINTS) }));
  const leaves = LEAVES.map(({ along, side }) => leafAt({ x: width * along, y: heightAt(along) }, stemDirection(heightAt, along, width) + side * 0.95, size * 0.26));
  return { width, repeat, strokes: width < FINEST_LEAVES ? [stem] : [stem, ...leaves] };
}

function stemDirection(heightAt: (along: number) => number, along: number, width: number): number {
  return Math.atan2(heightAt(along + 0.02) - heightAt(along - 0.02), width * 0.04);
}

function leafAt(foot: DrawnPoint, direction: number, length: number): readonly DrawnPoint[] {
  const outline = [
    [0, 0],
    [0.3, 0.15],
    [0.6, 0.16],
    [1, 0],
    [0.6, -0.1],
    [0.3, -0.12],
    [0, 0],
  ] as const;
  const [cosine, sine] = [Math.cos(direction), Math.sin(direction)];
  return outline.map(([along, aside]) => ({
    x: foot.x + length * (along * cosine - aside * sine),
    y: foot.y + length * (along * sine + aside * cosine),
  }));
}

/**
 * The motif on a piece of a strip, at true scale, where the piece's phase puts it, cut off at the piece's edges.
 *
 * Shapes: `left` is where the strip's left edge would stand were it a full one; `area` is what the piece covers, its
 * corners clockwise.
 * Example: a piece whose top edge lies 100 mm into the repeat has the repeat's first line 100 mm above that edge.
 */
export function motifOnPiece(motif: Motif, left: number, piece: Strip['pieces'][number], area: readonly DrawnPoint[]): readonly (readonly DrawnPoint[])[] {
  const lines: (readonly DrawnPoint[])[] = [];
  // One repeat more below: a stem that rises reaches into the repeat above its own.
  for (let top = -piece.upperEdge - piece.phase; top < motif.repeat - piece.bottom; top += motif.repeat) {
    for (const stroke of motif.strokes) {
      lines.push(...clipToConvex(stroke.map(({ x, y }) => ({ x: left + x, y: top + y })), area));
    }
  }
  return lines;
}

/**
 * A border's motif along a part of a wall.
 *
 * Shapes: `firstRepeat` is any position of the axis at which a repeat begins; `area` is the part's four corners
 * clockwise from the upper left one, whose upper edge the motif follows.
 */
export function motifAlong(motif: Motif, firstRepeat: number, area: readonly DrawnPoint[]): readonly (readonly DrawnPoint[])[] {
  const [upperLeft, upperRight] = [area[0]!, area[1]!];
  const topAt = (x: number) => between(upperLeft.y, upperRight.y, (x - upperLeft.x) / (upperRight.x - upperLeft.x));
  const lines: (readonly DrawnPoint[])[] = [];
  const first = firstRepeat + Math.floor((upperLeft.x - firstRepeat) / motif.width) * motif.width;
  for (let left = first; left < upperRight.x; left += motif.width) {
    for (const stroke of motif.strokes) {
      lines.push(...clipToConvex(stroke.map(({ x, y }) => ({ x: left + x, y: topAt(left + x) + y })), area));
    }
  }
  return lines;
}
