import type { DrawnPoint } from '../../shared-core/drawing/index.ts';

/** Where a pointer is in a drawing. */
export interface PointedAt {
  /** The subject under it, as `kind id`. */
  readonly key: string | null;
  /** In the drawing's own units. */
  readonly at: DrawnPoint;
  readonly unitsPerPixel: number;
  /** A finger covers more than a mouse or a pen does. */
  readonly isTouch: boolean;
}

/** A hand that was put down in a drawing and is somewhere else now. */
export interface Drag extends PointedAt {
  readonly from: DrawnPoint;
  readonly hasShift: boolean;
  readonly hasControl: boolean;
}

/** What can be dragged in a drawing. */
export interface Dragging {
  /** The cursor over what can be taken hold of; null elsewhere. */
  readonly cursorAt: (pointed: PointedAt) => string | null;
  /** Follows the hand, at its end for good; null gives up. */
  readonly follow: (drag: Drag | null, isDone: boolean) => void;
  /** A finger that goes up or down there drags too, where it would scroll the sheet otherwise. */
  readonly isUpright?: boolean;
}
