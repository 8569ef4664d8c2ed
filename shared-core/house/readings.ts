import { present } from '../base/index.ts';
import { type Length, lengthOf, type Measure, type Money, parseMoney, printLength, ZERO_LENGTH } from '../units/index.ts';
import type { Band, House, Room, Wall, Wallcovering } from './types.ts';

/** Both ends of a height or a base that may be given once. */
export function endsOf(value: Measure | readonly [Measure, Measure]): { readonly left: Length; readonly right: Length } {
  return 'typed' in value ? { left: value.length, right: value.length } : { left: value[0].length, right: value[1].length };
}

/** How high a wall is where it is highest. */
export function highestOf({ height }: Pick<Wall, 'height'>): Length {
  const { left, right } = endsOf(height);
  return left > right ? left : right;
}

/** How a wallcovering's strips meet: as stated, or by its repeat. */
export function matchOf(covering: Wallcovering): 'free' | 'straight' | 'drop' {
  return covering.match ?? (covering.repeat.length === 0 ? 'free' : 'straight');
}

/**
 * The width that one strip adds to a wall: the roll's width less both selvedges and less what a double-cut seam overlaps.
 *
 * Example: a roll 21 in wide with selvedges of 1/4 in lays 20 1/2 in.
 */
export function laidWidthOf(covering: Wallcovering): Length {
  const overlap = covering.seam === 'double-cut' ? (covering.seamOverlap?.length ?? 0) : 0;
  return lengthOf(covering.width.length - 2 * covering.selvedge.length - overlap);
}

/** A band as it hangs: its edges as heights above the floor line, by whatever they were given. */
export type HungBand = Omit<Band, 'from' | 'to'> & { readonly from: 'floor' | Measure; readonly to: 'ceiling' | Measure };

/**
 * A band with edges at rails read as heights: it begins on a rail's upper edge and ends under a rail's lower one.
 *
 * Example: over a dado rail at 32 in that is 3 in high a filling begins at 35 in.
 */
export function hungBand(room: Pick<Room, 'rails'>, band: Band): HungBand {
  const railOf = (id: string) => present(room.rails.find((rail) => rail.id === id), `a rail ${id}`);
  const { from, to } = band;
  return {
    ...band,
    from: typeof from === 'object' && 'rail' in from ? measureOf(railOf(from.rail).at.length + railOf(from.rail).width.length) : from,
    to: typeof to === 'object' && 'rail' in to ? railOf(to.rail).at : to,
  };
}

/** A computed length as a measure, as though it had been typed. */
export function measureOf(units: number): Measure {
  const length = lengthOf(units);
  return { length, typed: printLength(length, 'metric') };
}

/** A band's edges above the floor line of a wall that is so high. */
export function heightsOf({ from, to }: Pick<HungBand, 'from' | 'to'>, wallHeight: Length): { readonly bottom: Length; readonly top: Length } {
  return { bottom: from === 'floor' ? ZERO_LENGTH : from.length, top: to === 'ceiling' ? wallHeight : to.length };
}

/** A covering as the order names it: by its pattern number, else its name, else its id. */
export function nameCovering(house: Pick<House, 'coverings'>, id: string): string {
  const covering = house.coverings.find((candidate) => candidate.id === id);
  return covering?.patternNumber ?? covering?.name ?? id;
}

/**
 * Money that the facts hold as a text; null where there is none, or none that the currency has.
 *
 * Example: '45.5' in a house of EUR is 4550 of its minor units.
 */
export function moneyIn({ currency }: Pick<House, 'currency'>, written: string | undefined): Money | null {
  const parsed = written === undefined ? null : parseMoney(written, currency);
  return parsed?.ok ? parsed.value : null;
}

/** A supplier as it is called: by the name recorded for it, else as the coverings name it. */
export function nameSupplier(house: Pick<House, 'suppliers'>, supplier: string): string {
  return house.suppliers.find(({ id }) => id === supplier)?.name ?? supplier;
}

/**
 * A room without what was noted of it and of its walls; the room itself where nothing was.
 *
 * Example: the room copied from one whose wall A has the note 'damp at the left' has nothing noted of its wall A.
 */
export function withoutNotes(room: Room): Room {
  if (room.note === undefined && room.walls.every(({ note }) => note === undefined)) return room;
  const { note: _ofRoom, ...rest } = room;
  return { ...rest, walls: room.walls.map(({ note: _ofWall, ...wall }): Wall => wall) };
}

/** How many minutes the house says that something takes, such as a strip; undefined where our figure stands. */
export function ownRateOf({ work }: Pick<House, 'work'>, of: string): number | undefined {
  return work?.rates?.find((rate) => rate.of === of)?.minutes;
}
