import type { Band, Layout } from '../house/index.ts';
import type { Length } from '../units/index.ts';

/** A place on a wall: the distance from its left end. */
export interface WallPlace {
  readonly wall: string;
  readonly at: Length;
}

/** Where a stretch is begun, which way it is hung and where its ends meet, in plain lengths. */
export interface ChosenLayout {
  readonly start: WallPlace;
  /** Which part of strip 0 stands at the start. */
  readonly edge: 'left' | 'centre' | 'right' | undefined;
  readonly direction: Layout['direction'];
  readonly kill: 'start' | WallPlace;
}

/** The user's own layout of a band, if there is one. */
export function chosenLayout(band: Pick<Band, 'layout'>): ChosenLayout | undefined {
  const { layout } = band;
  if (!layout) return undefined;
  const place = ({ wall, at }: Layout['start']): WallPlace => ({ wall, at: at.length });
  return { start: place(layout.start), edge: layout.start.edge, direction: layout.direction, kill: layout.kill === 'start' ? 'start' : place(layout.kill as Layout['start']) };
}
