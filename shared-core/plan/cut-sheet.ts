import type { House } from '../house/index.ts';
import { asCut, type CutList, isRollGoods, leftOfRoll, type RollGoods, rollOf } from '../ordering/index.ts';
import { unroll } from '../setting-out/index.ts';
import { type Length, showLength } from '../units/index.ts';
import { CEILING } from './hangings.ts';
import type { HousePlan } from './house-plan.ts';
import { nameRoom } from './name-room.ts';
import { isOffcut } from './roll-of-piece.ts';
import { say } from '../words/index.ts';

/** One cut of a roll, as somebody at the table reads it. */
export interface SheetCut {
  readonly label: string;
  readonly room: string;
  /** The walls it hangs on, or the ceiling, in words. */
  readonly where: string;
  readonly length: Length;
  readonly from: Length;
  /** How far into the repeat its top lies; null of a free match. */
  readonly mark: Length | null;
  readonly isOffcut: boolean;
  readonly isTurned: boolean;
}

export interface SheetRoll {
  readonly number: number;
  readonly cuts: readonly SheetCut[];
  /** What the roll surely leaves in one length, and whether it is long enough to be kept. */
  readonly left: Length;
  readonly isKept: boolean;
}

/**
 * The cut list of a run, roll by roll: what is cut, at which mark of the pattern, for which wall, and what is left.
 *
 * Empty for what is not cut from rolls. Example: roll 1 of 33 ft gives A1, A2 and A3 of 8' 4" for wall A of the front
 * bedroom, each 19 in into the repeat of 21 in, and leaves 5' 5", which is kept for repairs.
 */
export function cutSheet(house: House, plan: HousePlan, list: CutList): readonly SheetRoll[] {
  const found = house.coverings.find(({ id }) => id === list.covering);
  const covering = found && asCut(found);
  if (!covering || !isRollGoods(covering)) return [];
  const roll = rollOf(covering);
  const walls = wallsOfStrips(plan);
  return list.rolls.map((one) => {
    const left = leftOfRoll(one, roll);
    return {
      number: one.number,
      left,
      isKept: left >= house.rules.keptFrom.length,
      cuts: one.cuts.map(({ placed: { room, band, piece }, from }, index) => ({
        label: piece.label,
        room: nameRoom(house, room),
        where: band === CEILING ? say`ceiling` : sayWalls(walls.get(JSON.stringify([room, band, piece.label])) ?? []),
        length: piece.length,
        from,
        mark: roll.repeat === 0 ? null : piece.phase,
        isOffcut: isOffcut(one, index),
        isTurned: piece.isTurned ?? false,
      })),
    };
  });
}

/** Where the mark of a cut lies: '19" into the repeat', or 'at the repeat'. */
export function sayMark(mark: Length, house: Pick<House, 'lengths'>): string {
  return mark === 0 ? say`at the repeat` : say`${showLength(mark, house.lengths)} into the repeat`;
}

/**
 * From where the places of cuts are measured on a roll.
 *
 * Example: of a straight match whose rolls may begin anywhere from the top of the first cut, of a plain paper from the start.
 */
export function sayPlacesOnRoll(covering: RollGoods): string {
  const { repeat, rollStart } = rollOf(covering);
  return repeat > 0 && rollStart === 'anywhere' ? say`Places on the roll are measured from the top of the first cut, which takes up to one repeat to find.` : say`Places on the roll are measured from its start.`;
}

/** The walls that each piece hangs on, by room, band and label. */
function wallsOfStrips(plan: HousePlan): ReadonlyMap<string, readonly string[]> {
  const found = plan.rooms.flatMap((room) =>
    room.bands.flatMap((band) =>
      band.stretches.flatMap((stretch) => {
        const hung = 'strips' in stretch ? stretch.strips.map(({ pieces, parts }) => ({ pieces, walls: parts.map(({ wall }) => wall) })) : stretch.lengths.map(({ pieces, from, to }) => ({ pieces, walls: unroll(stretch.axis, from, to).map(({ wall }) => wall.id) }));
        return hung.flatMap(({ pieces, walls }) => pieces.map(({ label }): [string, readonly string[]] => [JSON.stringify([room.id, band.id, label]), [...new Set(walls)]]));
      }),
    ),
  );
  return new Map(found);
}

function sayWalls(walls: readonly string[]): string {
  const [only] = walls;
  if (only === undefined) return '';
  return walls.length === 1 ? say`wall ${only}` : say`walls ${walls.join(say` and `)}`;
}
