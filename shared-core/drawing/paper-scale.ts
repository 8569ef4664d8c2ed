import { type LengthStyle, UNITS_PER_MILLIMETRE } from '../units/index.ts';
import { say } from '../words/index.ts';
import { fittingScale } from './fit.ts';
import type { View } from './marks.ts';
import type { Drawing } from './shapes.ts';

/** A point is 1/72 in. */
export const UNITS_PER_POINT = (25.4 / 72) * UNITS_PER_MILLIMETRE;

/** How many times smaller than life a drawing is, and how that is said. */
export interface PaperScale {
  readonly times: number;
  readonly said: string;
}

/** So many inches to the foot, from the largest scale on. */
const INCHES_TO_THE_FOOT = [
  { inches: '1 1/2', times: 8 },
  { inches: '1', times: 12 },
  { inches: '3/4', times: 16 },
  { inches: '1/2', times: 24 },
  { inches: '3/8', times: 32 },
  { inches: '1/4', times: 48 },
  { inches: '3/16', times: 64 },
  { inches: '1/8', times: 96 },
  { inches: '1/16', times: 192 },
] as const;

/**
 * The scales of drawings on paper, from the largest on.
 *
 * Source: metric by ISO 5455, but 1 : 25, which is common practice; imperial as architects' scales have them, common
 * practice, no source. Example: metric ones begin with 1 : 5; `1/2 in = 1 ft (1 : 24)` is the fourth imperial one.
 */
export function paperScales(style: LengthStyle): readonly PaperScale[] {
  return style === 'metric' ? [5, 10, 20, 25, 50, 100, 200].map((times) => ({ times, said: `1 : ${times}` })) : INCHES_TO_THE_FOOT.map(({ inches, times }) => ({ times, said: say`${inches} in = 1 ft (1 : ${times})` }));
}

/** A box of paper in points. */
export type PaperBox = Pick<View, 'width' | 'height'>;

/** How much of paper a drawing takes at a scale, with what stands beside it, in points. */
export function sizeOnPaper({ bounds, margin }: Drawing, times: number, textHeight: number): PaperBox {
  const unitsPerPoint = UNITS_PER_POINT * times;
  return {
    width: (bounds.right - bounds.left) / unitsPerPoint + (margin.left + margin.right) * textHeight,
    height: (bounds.bottom - bounds.top) / unitsPerPoint + (margin.top + margin.bottom) * textHeight,
  };
}

/** Looks at a drawing in a box that it just fills at a scale. */
export function viewOnPaper(drawing: Drawing, times: number, textHeight: number): View {
  return { ...sizeOnPaper(drawing, times, textHeight), textHeight, zoom: 1, panX: 0, panY: 0 };
}

/**
 * The largest standard scale at which a drawing fits a box of paper, how it is said, and the view that draws it so.
 *
 * Shapes: the box and the height of text in points. What fits at none of them fills the box, and that is said.
 * Example: a drawing 4 m by 2.5 m without margins fits 505 by 350 points, 178 by 123 mm, at 1 : 25 as 160 by 100 mm, and
 * in feet and inches at 1/2 in = 1 ft (1 : 24) as 167 by 104 mm.
 */
export function scaleOnPaper(drawing: Drawing, style: LengthStyle, box: PaperBox, textHeight: number): { readonly scale: string; readonly view: View } {
  const fitting = paperScales(style).find(({ times }) => {
    const { width, height } = sizeOnPaper(drawing, times, textHeight);
    return width <= box.width && height <= box.height;
  });
  if (fitting) return { scale: fitting.said, view: viewOnPaper(drawing, fitting.times, textHeight) };
  const times = 1 / (UNITS_PER_POINT * fittingScale(drawing, { ...box, textHeight }));
  return { scale: say`to no standard scale`, view: viewOnPaper(drawing, times, textHeight) };
}
