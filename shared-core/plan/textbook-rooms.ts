import { type Band, endsOf, heightsOf, type House, hungBand, type Room } from '../house/index.ts';
import { addTextbookCounts, asCut, countByTextbook, isInSequence, isRollGoods, type OrderLine, rollOf, type TextbookCounts } from '../ordering/index.ts';
import { addAreas, type Area, areaOf, type Length, lengthOf, rectangleArea, roundedDivide } from '../units/index.ts';
import type { HousePlan } from './house-plan.ts';
import { piecesOf } from './hangings.ts';

/** One band of a room as textbooks count it, and the rolls that it takes when it alone is cut. */
export interface TextbookRow extends TextbookCounts {
  readonly room: string;
  readonly band: string;
  readonly length: Length;
  readonly rollsAlone: number;
}

export interface TextbookRows {
  readonly rows: readonly TextbookRow[];
  /** Each band counted and bought by itself. */
  readonly all: TextbookCounts;
}

/**
 * An order line in the textbooks' ways of counting, room by room: explanation beside our count, never the order.
 *
 * The strips of a band are those that hang from its top to its foot, all taken to be as long as the longest of them;
 * openings are taken off. Null where textbooks have nothing to say: of other goods than wallcoverings hung in strips,
 * and of rolls that are cut in their own sequence.
 * Example: the house's own 27 strips of 8' 4" from 33 ft with a repeat of 21 in: 3 to a roll, 9 rolls, which do not
 * fall short.
 */
export function countRoomsByTextbook(house: House, plan: HousePlan, line: OrderLine): TextbookRows | null {
  const covering = house.coverings.map(asCut).find(({ id }) => id === line.covering);
  if (!covering || !isRollGoods(covering) || covering.kind !== 'wallcovering' || isInSequence(covering)) return null;
  const { rollLength, repeat, rollStart } = rollOf(covering);
  const roll = { width: covering.width.length, length: lengthOf(rollLength) };
  const rows = plan.rooms
    .filter(({ id }) => line.rooms.includes(id))
    .flatMap(({ id, bands }) =>
      bands.flatMap((band): readonly TextbookRow[] => {
        const room = house.rooms.find((one) => one.id === id);
        const hung = room?.bands.find((one) => one.id === band.id);
        const strips = piecesOf(band).filter(({ part }) => part === 'full');
        const [first] = strips.toSorted((one, other) => other.length - one.length);
        if (band.covering !== covering.id || !room || !hung || !first) return [];
        const counts = countByTextbook({ roll, repeat: lengthOf(repeat), lead: rollStart === 'at-repeat' && repeat > 0 ? first.phase : null, strips: strips.length, length: first.length, area: areaOfBand(room, hung) });
        return [{ ...counts, room: id, band: band.id, length: first.length, rollsAlone: band.rollsAlone }];
      }),
    );
  return rows.length === 0 ? null : { rows, all: addTextbookCounts(rows) };
}

/**
 * The wall that a band covers, openings taken off; between two heights of a sloping edge the middle one counts.
 *
 * Example: a wall of 4 m by 2.5 m with a door of 0.8 m by 2 m: 8.4 m².
 */
export function areaOfBand(room: Room, band: Band): Area {
  const edges = hungBand(room, band);
  const areas = room.walls
    .filter(({ id }) => band.walls.includes(id))
    .map((wall) => {
      const { left, right } = endsOf(wall.height);
      const { bottom, top } = heightsOf(edges, lengthOf(roundedDivide(left + right, 2)));
      const holes = wall.openings.map(({ width, sill, height }) => rectangleArea(width.length, overlap(bottom, top, sill.length, sill.length + height.length)));
      return areaOf(rectangleArea(wall.length.length, overlap(bottom, top, bottom, top)) - addAreas(...holes));
    });
  return areaOf(Math.max(0, addAreas(...areas)));
}

function overlap(bottom: number, top: number, from: number, to: number): Length {
  return lengthOf(Math.max(0, Math.min(top, to) - Math.max(bottom, from)));
}
