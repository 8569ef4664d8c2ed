import { type House, type Opening, OPENING_KINDS, OPENING_WORDS, type Wall } from '../../../shared-core/house/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import type { Facts } from './typed-facts.ts';

export type OpeningKind = Opening['kind'];

/** An opening as it is typed. */
export interface NewOpening {
  readonly kind: OpeningKind;
  readonly from: string;
  readonly width: string;
  readonly height: string;
  readonly sill: string;
  /** The choice of an opening that it is like, which gave all but its place. */
  readonly like: string | null;
  readonly reveal: Facts[string] | null;
}

export const OPENING_CHOICES: readonly (readonly [OpeningKind, string])[] = OPENING_KINDS.map((kind) => [kind, OPENING_WORDS[kind]]);

export function emptyOpening(kind: OpeningKind): NewOpening {
  return { kind, from: '', width: '', height: '', sill: kind === 'window' ? '' : '0 in', like: null, reveal: null };
}

/** What a rectangle drawn on a wall is: a door where it stands on the floor, else a window, unless the row says more. */
export function kindDrawn(chosen: OpeningKind, isOnFloor: boolean): OpeningKind {
  return chosen === 'door' && !isOnFloor ? 'window' : chosen;
}

interface Alike {
  readonly key: string;
  readonly words: string;
  readonly opening: Opening;
}

/** The openings of a house that the next one can be made like, those of its room first, each size once. */
export function alikeOpenings(house: House, room: string): readonly Alike[] {
  const rooms = [...house.rooms.filter(({ id }) => id === room), ...house.rooms.filter(({ id }) => id !== room)];
  const all = rooms.flatMap((one) => one.walls.flatMap((wall) => wall.openings.map((opening): Alike => ({ key: JSON.stringify([one.id, wall.id, opening.id]), words: wordsOf(opening, wall, one.name), opening }))));
  return [...Map.groupBy(all, ({ opening }) => sizeOf(opening)).values()].flatMap(([first]) => first ?? []);
}

/** The next opening with everything but its place taken from another. */
export function openingLike({ key, opening: { kind, width, height, sill, reveal } }: Alike, from: string): NewOpening {
  return { kind, from, width: width.typed, height: height.typed, sill: sill.typed, like: key, reveal: reveal ? { depth: reveal.depth.typed, sides: [...reveal.sides] } : null };
}

function wordsOf({ id, width, height, sill, reveal }: Opening, wall: Wall, room: string): string {
  const more = [...(sill.length > 0 ? [say`sill ${sill.typed}`] : []), ...(reveal ? [say`reveal ${reveal.depth.typed}`] : [])];
  // So that a kind's first letter, typed, chooses the kind.
  return say`same as ${id} of wall ${wall.id}, ${room}: ${[`${width.typed} × ${height.typed}`, ...more].join(', ')}`;
}

function sizeOf({ kind, width, height, sill, reveal }: Opening): string {
  return JSON.stringify([kind, width.length, height.length, sill.length, reveal?.depth.length, reveal?.sides.toSorted()]);
}
