import type { View } from './marks.ts';
import type { Drawing, DrawnPoint } from './shapes.ts';

/** Pixels of a landscape page within its margins, less what a figure keeps around it, on the smaller of the usual papers. */
const PAPER = { width: 960, height: 600 };

/** Pixels in one unit at which a drawing and what stands beside it just fill the box. */
export function fittingScale(drawing: Drawing, { width, height, textHeight }: Pick<View, 'width' | 'height' | 'textHeight'>): number {
  const { bounds, margin } = drawing;
  const across = (width - (margin.left + margin.right) * textHeight) / Math.max(1, bounds.right - bounds.left);
  const down = (height - (margin.top + margin.bottom) * textHeight) / Math.max(1, bounds.bottom - bounds.top);
  return Math.max(0, Math.min(across, down));
}

/** The box of a drawing on paper: as large as the page lets it be, and no higher than it needs. */
export function boxOnPaper(drawing: Drawing, textHeight: number): Pick<View, 'width' | 'height'> {
  const { bounds, margin } = drawing;
  const scale = fittingScale(drawing, { ...PAPER, textHeight });
  return { width: PAPER.width, height: (bounds.bottom - bounds.top) * scale + (margin.top + margin.bottom) * textHeight };
}

/** Pixels in one unit, and where the drawing's own upper left corner stands in its box. */
export function frameOf(drawing: Drawing, view: View) {
  const { bounds, margin } = drawing;
  const h = view.textHeight;
  const scale = fittingScale(drawing, view) * view.zoom;
  return {
    scale,
    left: margin.left * h + (view.width - (margin.left + margin.right) * h - (bounds.right - bounds.left) * scale) / 2 + view.panX,
    top: margin.top * h + (view.height - (margin.top + margin.bottom) * h - (bounds.bottom - bounds.top) * scale) / 2 + view.panY,
  };
}

/** The place in a drawing's own units at which a pixel of its box stands, and how many of them one pixel is. */
export function placeUnder(drawing: Drawing, view: View, pixel: DrawnPoint): { readonly at: DrawnPoint; readonly unitsPerPixel: number } {
  const { scale, left, top } = frameOf(drawing, view);
  return { at: { x: drawing.bounds.left + (pixel.x - left) / scale, y: drawing.bounds.top + (pixel.y - top) / scale }, unitsPerPixel: 1 / scale };
}
