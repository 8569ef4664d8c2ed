import type { Fill, Pen, PictureShape, Subject } from './shapes.ts';

/** How a drawing is looked at: the box it fills, the height of its text, and how far it is enlarged and moved. */
export interface View {
  readonly width: number;
  readonly height: number;
  readonly textHeight: number;
  readonly zoom: number;
  readonly panX: number;
  readonly panY: number;
}

/** One tile of a picture, all of it in pixels of the box. */
export type PictureTile = Pick<PictureShape, 'picture' | 'x' | 'y' | 'width' | 'height' | 'fall' | 'isTurned'>;

/** What the painter paints, in pixels of the box. */
export type Mark = { readonly pen: Pen; readonly subject: Subject | undefined } & (
  | { readonly kind: 'path'; readonly d: string; readonly fill: Fill | 'sheet' }
  | { readonly kind: 'text'; readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end'; readonly size: number; readonly text: string; readonly turn: number }
  | ({ readonly kind: 'picture'; readonly d: string } & PictureTile)
  | { readonly kind: 'ring'; readonly x: number; readonly y: number; readonly radius: number; readonly text: string; readonly size: number }
);
