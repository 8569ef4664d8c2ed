import type { House } from '../house/index.ts';
import { findRunParts, insideCorners, type PlacedPiece, type RoomPieces } from '../ordering/index.ts';
import type { Piece } from '../setting-out/index.ts';
import type { BandPlan, CeilingPlan, RoomPlan } from './house-plan.ts';

/** Stands for a band in lists of pieces. */
export const CEILING = '(ceiling)';

/** All pieces of a band, in hanging order from left to right. */
export function piecesOf(band: Pick<BandPlan, 'kind' | 'stretches'>): readonly Piece[] {
  return band.stretches.flatMap((stretch) => ('strips' in stretch ? stretch.strips : stretch.lengths).flatMap(({ pieces }) => pieces));
}

export function placedOverhead(room: string, strips: CeilingPlan['strips']): readonly PlacedPiece[] {
  return strips.flatMap(({ pieces }) => pieces.map((piece) => ({ room, band: CEILING, piece })));
}

/**
 * What hangs of a covering in a room: none, or one hanging with its parts, each of which may come from a run of its own.
 *
 * A room is parted where its facts allow it, and only where the covering hangs there in a single stretch of strips: what
 * else hangs of it goes with the first part.
 */
export function hangingOf(house: House, room: RoomPlan, covering: string): readonly RoomPieces[] {
  const bands = room.bands.filter((band) => band.covering === covering);
  const placed = new Map<Piece, PlacedPiece>(bands.flatMap((band) => piecesOf(band).map((piece) => [piece, { room: room.id, band: band.id, piece }])));
  const overhead = room.ceiling?.covering === covering ? placedOverhead(room.id, room.ceiling.strips) : [];
  const whole = [...placed.values(), ...overhead];
  if (whole.length === 0) return [];
  const [parted] = bands.flatMap((band) => (band.kind === 'strips' ? band.stretches.map((stretch) => ({ band: band.id, stretch })) : []));
  const isOne = bands.reduce((sum, { stretches }) => sum + stretches.length, 0) === 1;
  const mayChange = house.rooms.find(({ id }) => id === room.id)?.bands.find(({ id }) => id === parted?.band)?.runMayChange ?? [];
  if (!parted || !isOne) return [{ room: room.id, parts: [whole] }];

  const split = (walls: readonly string[]) => {
    const found = findRunParts(parted.stretch, walls);
    const groups = [...new Set(found.map(({ group }) => group))];
    const parts = groups.map((group) => found.filter((part) => part.group === group).flatMap(({ strips }) => strips.flatMap(({ pieces }) => pieces.map((piece) => placed.get(piece)!))));
    const changes = found.slice(1).map((part, index) => ({ after: part.after!, from: groups.indexOf(found[index]!.group), to: groups.indexOf(part.group) }));
    return { parts: parts.map((part, index) => (index === 0 ? [...part, ...overhead] : part)), changes };
  };
  return [{ room: room.id, parts: mayChange.length > 0 ? split(mayChange).parts : [whole], corners: { inside: insideCorners(parted.stretch.axis).map(({ wall }) => wall), at: split } }];
}
