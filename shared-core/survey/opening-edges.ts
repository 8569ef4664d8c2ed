import type { Opening } from '../house/index.ts';
import { inches, type Length, lengthOf, type LengthStyle, millimetres, printLength } from '../units/index.ts';

/** The four edges of an opening in units: from its wall's left end, and above its floor line. */
export interface OpeningEdges {
  readonly left: number;
  readonly right: number;
  readonly sill: number;
  readonly head: number;
}

export type OpeningEdge = keyof OpeningEdges;

/** The edges of an opening that follow what moves it: two opposite ones move it, one alone sizes it. */
export type Grip = readonly OpeningEdge[];

/** A place on a wall in units, from its left end and above its floor line. */
export interface WallSpot {
  readonly along: number;
  readonly up: number;
}

/** To what a pointer's hand is rounded, and by how far the arrow keys move with Shift. */
export const GRAINS = {
  imperial: { fine: inches(0.25), coarse: inches(1), stride: inches(6) },
  metric: { fine: millimetres(5), coarse: millimetres(10), stride: millimetres(100) },
} as const satisfies Readonly<Record<LengthStyle, unknown>>;

/** The finest that is written in a style: 1/64 in, 0.1 mm. */
export const FINEST = { imperial: lengthOf(127), metric: lengthOf(32) } as const satisfies Readonly<Record<LengthStyle, Length>>;

/** What is drawn smaller than this was a slip of the hand. */
export const LEAST_DRAWN = millimetres(100);

/**
 * The grain to which a hand that sees so many units in one pixel is rounded: fine where it can tell fine steps apart.
 *
 * Example: at 1000 units a pixel 1/4 in, which is 2032 units; at 4000 units a pixel 1 in.
 */
export function grainAt(style: LengthStyle, unitsPerPixel: number, isCoarse: boolean): Length {
  const { fine, coarse } = GRAINS[style];
  return isCoarse || unitsPerPixel > fine ? coarse : fine;
}

export function edgesOf({ from, width, sill, height }: Pick<Opening, 'from' | 'width' | 'sill' | 'height'>): OpeningEdges {
  return { left: from.length, right: from.length + width.length, sill: sill.length, head: sill.length + height.length };
}

/** Whether an opening stands on the floor and stays there; a window may be lifted off it. */
export function standsOnFloor({ kind, sill }: Pick<Opening, 'kind' | 'sill'>): boolean {
  return kind !== 'window' && sill.length === 0;
}

/** The edges that move a whole opening: along the wall, and up and down too unless it stands on the floor. */
export function wholeGrip(opening: Pick<Opening, 'kind' | 'sill'>): Grip {
  return standsOnFloor(opening) ? ['left', 'right'] : ['left', 'right', 'sill', 'head'];
}

/**
 * What of a wall's openings lies under a hand that reaches so many units around: the opening, and which of its edges
 * are taken hold of; null on bare wall.
 *
 * Within reach of an edge that edge is taken, near a corner both, elsewhere the whole; a quarter of a small opening is
 * left to each edge, so that its middle always moves it. Where two touch, the one that the hand is in is taken.
 * Example: of a window from 100 to 200 along and 100 to 200 up, a hand at (200, 150) that reaches 10 has its right edge,
 * one at (204, 196) right edge and head, one at (150, 150) all four.
 */
export function gripUnder(openings: readonly Opening[], { along, up }: WallSpot, reach: number): { readonly opening: Opening; readonly grip: Grip } | null {
  const within = (slack: number) =>
    openings.findLast((opening) => {
      const { left, right, sill, head } = edgesOf(opening);
      return along >= left - slack && along <= right + slack && up >= sill - slack && up <= head + slack;
    });
  const opening = within(0) ?? within(reach);
  if (!opening) return null;
  const { left, right, sill, head } = edgesOf(opening);
  const [inAlong, inUp] = [Math.min(reach, (right - left) / 4), Math.min(reach, (head - sill) / 4)];
  const grip: OpeningEdge[] = [];
  if (along <= left + inAlong) grip.push('left');
  else if (along >= right - inAlong) grip.push('right');
  if (up >= head - inUp) grip.push('head');
  else if (up <= sill + inUp && !standsOnFloor(opening)) grip.push('sill');
  return { opening, grip: grip.length > 0 ? grip : wholeGrip(opening) };
}

/** Where an opening's edges and corners can be taken hold of. */
export function handlesOf(edges: OpeningEdges, isOnFloor: boolean): readonly WallSpot[] {
  const { left, right, sill, head } = edges;
  const [centre, middle] = [(left + right) / 2, (sill + head) / 2];
  const above = [{ along: left, up: head }, { along: centre, up: head }, { along: right, up: head }, { along: left, up: middle }, { along: right, up: middle }];
  return isOnFloor ? above : [...above, { along: left, up: sill }, { along: centre, up: sill }, { along: right, up: sill }];
}

/**
 * The facts of an opening whose edges were moved, as somebody would type them in the house's style; only those that
 * changed.
 *
 * Example: a window 3' from the left, moved so that its left edge stands 40 1/4 in from there, is `{from: "3' 4 1/4\""}`.
 */
export function factsOfEdges(before: OpeningEdges | null, edges: OpeningEdges, style: LengthStyle): Readonly<Partial<Record<'from' | 'width' | 'sill' | 'height', string>>> {
  const facts = ({ left, right, sill, head }: OpeningEdges) => ({ from: left, width: right - left, sill, height: head - sill });
  const was = before && facts(before);
  return Object.fromEntries(
    Object.entries(facts(edges))
      .filter(([key, units]) => was?.[key as keyof typeof was] !== units)
      .map(([key, units]) => [key, printLength(lengthOf(units), style)]),
  );
}
