import type { DrawnPoint, Spot } from './shapes.ts';

/** What a text or a ring takes of the sheet, in pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where everything of one drawing is put. */
export interface Sheet {
  readonly place: (spot: Spot) => DrawnPoint;
  readonly scale: number;
  readonly h: number;
  /** Where texts stand already. */
  readonly taken: Box[];
  readonly ringStep: { readonly every: number; readonly first: number; readonly last: number };
}

export function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
