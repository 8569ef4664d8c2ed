import type { PieceType } from '../../../shared-core/cutting/index.ts';

/** A door, a window or fitted furniture, in mm: `from` along the walls, `sill` and `head` above the floor. */
export interface Opening {
  readonly from: number;
  readonly width: number;
  readonly sill: number;
  readonly head: number;
}

/** The walls of a room one after another as one run, in mm, and how many such rooms there are. */
export interface Room {
  readonly perimeter: number;
  readonly height: number;
  readonly openings: readonly Opening[];
  readonly times: number;
}

/** How a house is hung with one pattern, in mm; `position` is where in its repeat the pattern stands at a ceiling. */
export interface Hanging {
  readonly repeat: number;
  readonly isHalfDrop: boolean;
  readonly position: number;
  /** Added above and below each piece. */
  readonly trim: number;
}

export const STRIP_WIDTH = 530;

/**
 * The pieces that rooms take, by length and phase, in mm; equal ones are one type.
 *
 * Rule: strips of 530 hang side by side around the room; one that lies wholly within an opening is a piece above it and
 * one below it, where there is wall; any other goes from ceiling to floor. The pattern is set out from the ceiling: a
 * piece's phase is the pattern's position there plus how far below the ceiling its upper edge lies, trim included; with
 * a half-drop every second strip is half a repeat further on.
 *
 * Example: 4 strips, height 2400, trim 50, repeat 640, and a window from 500 to 1700 with its sill at 900 and its head
 * at 2100: 2 pieces of 2500 at phase 590, 2 of 400 above at 590, and 2 of 1000 below at 170 (1500 - 50 less 2 repeats).
 */
export function piecesOf(rooms: readonly Room[], hanging: Hanging): readonly PieceType[] {
  const types = new Map<string, PieceType>();
  for (const room of rooms) {
    const strips = (room.perimeter + STRIP_WIDTH - 1 - ((room.perimeter - 1) % STRIP_WIDTH)) / STRIP_WIDTH;
    for (let strip = 0; strip < strips; strip += 1) {
      for (const { top, bottom } of partsOf(room, strip)) {
        const length = top - bottom + 2 * hanging.trim;
        const phase = phaseOf(hanging, strip, room.height - top);
        const key = `${length} ${phase}`;
        types.set(key, { length, phase, count: (types.get(key)?.count ?? 0) + room.times });
      }
    }
  }
  return [...types.values()].sort((one, other) => other.length - one.length || one.phase - other.phase);
}

/** Where there is wall behind a strip, from the top down, in heights above the floor. */
function partsOf({ height, openings }: Room, strip: number): readonly { readonly top: number; readonly bottom: number }[] {
  const [left, right] = [strip * STRIP_WIDTH, (strip + 1) * STRIP_WIDTH];
  const opening = openings.find(({ from, width }) => from <= left && right <= from + width);
  if (opening === undefined) return [{ top: height, bottom: 0 }];
  return [
    { top: height, bottom: opening.head },
    { top: opening.sill, bottom: 0 },
  ].filter(({ top, bottom }) => top > bottom);
}

function phaseOf({ repeat, isHalfDrop, position, trim }: Hanging, strip: number, belowCeiling: number): number {
  if (repeat === 0) return 0;
  const drop = isHalfDrop && strip % 2 === 1 ? repeat / 2 : 0;
  const phase = (position + belowCeiling - trim + drop) % repeat;
  return phase < 0 ? phase + repeat : phase;
}
