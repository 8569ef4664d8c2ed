import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { laidWidthOf } from '../house/index.ts';
import type { StretchLayout, Strip } from '../setting-out/index.ts';
import { motifOf, motifOnPiece } from './motif.ts';
import { pictureOnPiece, tileLeft, tileOf } from './picture.ts';
import type { Drawing, DrawnPoint, Shape } from './shapes.ts';
import { say } from '../words/index.ts';

export interface PatternTopFacts {
  readonly covering: Wallcovering;
  readonly band: Pick<HungBand, 'to'>;
  readonly stretch: StretchLayout;
  readonly rules: Pick<Rules, 'trim'>;
  readonly hasPicture: boolean;
}

/**
 * Draws where the pattern meets the upper edge: a repeat and a quarter of one strip, with the trim that is cut off over it.
 *
 * Shapes: units, heights upwards as negative y. It shows whether the head of a motif is cut. Null where nothing repeats.
 * Example: under a trim of 2 in and a repeat of 21 in it is 28 1/4 in high, the ceiling 2 in below its upper edge.
 */
export function drawPatternTop({ covering, band, stretch, rules, hasPicture }: PatternTopFacts): Drawing | null {
  const tile = tileOf(covering);
  const strip = stretch.strips.find(({ number, pieces }) => number === 0 && reachesTop(pieces[0])) ?? stretch.strips.find(({ pieces }) => reachesTop(pieces[0]));
  const piece = strip?.pieces[0];
  if (!tile || !strip || !piece) return null;
  const width = laidWidthOf(covering);
  const left = stretch.grid.origin + strip.number * width;
  const [upper, ceiling, lower] = [-piece.top - rules.trim.length, -piece.top, -piece.top + 1.25 * tile.height];
  const area: readonly DrawnPoint[] = [{ x: left, y: upper }, { x: left + width, y: upper }, { x: left + width, y: lower }, { x: left, y: lower }];
  const shown = { ...piece, bottom: -lower as typeof piece.bottom };
  const motif = hasPicture ? null : motifOf(covering);
  const shapes: readonly Shape[] = [
    { kind: 'polygon', points: area, pen: 'none', fill: 'pattern' },
    ...(hasPicture ? [pictureOnPiece(tile, covering, tileLeft(tile, covering, stretch, strip), shown, [area])] : []),
    ...(motif ? [{ kind: 'strokes' as const, lines: motifOnPiece(motif, left, shown, area), pen: 'visible' as const, spacing: Math.min(motif.width, motif.repeat) }] : []),
    { kind: 'polyline', points: [{ x: left, y: lower }, { x: left, y: upper }, { x: left + width, y: upper }, { x: left + width, y: lower }], pen: 'hidden' },
    { kind: 'line', from: { x: left - width / 8, y: ceiling }, to: { x: left + width * 1.125, y: ceiling }, pen: 'cut' },
  ];
  return {
    shapes,
    bounds: { left: left - width / 8, top: upper, right: left + width * 1.125, bottom: lower },
    margin: { left: 0.5, top: 0.5, right: 0.5, bottom: 0.5 },
    scaleBar: null,
    description: band.to === 'ceiling' ? say`The pattern at the ceiling, with the trim that is cut off over it.` : say`The pattern at the upper edge of the band, with the trim that is cut off over it.`,
  };
}

function reachesTop(piece: Strip['pieces'][number] | undefined): boolean {
  return piece?.part === 'full' || piece?.part === 'above';
}
