import { endsOf, heightsOf, highestOf, hungBand, type Band, type Room, type Wall } from '../house/index.ts';
import { addAreas, type Area, areaOf, lengthOf, rectangleArea, UNITS_PER_METRE, ZERO_AREA } from '../units/index.ts';

const SQUARE_UNITS_PER_SQUARE_METRE = BigInt(UNITS_PER_METRE) ** 2n;

/** A part of a wall between two places along it and two heights above its floor line, in units. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The area of a wall as it is prepared: its length by its mean height, less every opening of it.
 *
 * Shapes: doors, windows, archways, fireplaces and fitted furniture are taken off whole, whatever rule paint is measured
 * by. What a raked ceiling cuts off an opening is not taken off twice. Each part is rounded to the nearest square unit.
 * Example: 4 m long, 2 m high at the left and 3 m at the right, a door of 0.8 by 2 m in it: 10 - 1.6 = 8.4 m².
 */
export function wallArea(wall: Wall): Area {
  return rangeArea(wall, { low: 0, high: highestOf(wall) });
}

/**
 * The area that bands take of a wall, once where they lie over one another, less openings.
 *
 * Example: a filling from 1 m to the ceiling of a wall 4 m long and 2.5 m high takes 6 m²; lining beneath it no more.
 */
export function bandsArea(room: Room, wall: Wall, bands: readonly Band[]): Area {
  const ranges = bands
    .map((band) => heightsOf(hungBand(room, band), highestOf(wall)))
    .map(({ bottom, top }) => ({ low: bottom as number, high: top as number }))
    .filter(({ low, high }) => high > low)
    .toSorted((one, other) => one.low - other.low);
  const apart = ranges.reduce<readonly { low: number; high: number }[]>((found, range) => {
    const last = found.at(-1);
    return last && range.low <= last.high ? [...found.slice(0, -1), { low: last.low, high: Math.max(last.high, range.high) }] : [...found, range];
  }, []);
  return addAreas(...apart.map((range) => rangeArea(wall, range)));
}

/**
 * Skirtings and door faces: the skirting along every wall but for what stands on the floor, and one face of each door.
 *
 * Example: walls of 4, 3, 4 and 3 m with a door of 0.8 by 2 m and a skirting of 100 mm: 13.2 m × 0.1 m + 1.6 m² = 2.92 m².
 */
export function woodworkArea(room: Room): Area {
  const { woodwork } = room;
  if (!woodwork) return ZERO_AREA;
  const openings = room.walls.flatMap((wall) => wall.openings);
  const onFloor = openings.filter(({ sill }) => sill.length === 0).reduce((sum, { width }) => sum + width.length, 0);
  const along = room.walls.reduce((sum, { length }) => sum + length.length, 0) - onFloor;
  const doors = woodwork.doors ? openings.filter(({ kind }) => kind === 'door') : [];
  return addAreas(rectangleArea(lengthOf(Math.max(0, along)), woodwork.skirting.length), ...doors.map(({ width, height }) => rectangleArea(width.length, height.length)));
}

/**
 * A share of an area in percent, rounded up to the square unit.
 *
 * Example: 25 % of 24 square feet is 6 square feet exactly.
 */
export function shareOf(area: Area, percent: number): Area {
  return areaOf(Number(dividedUp(BigInt(area) * BigInt(percent), 100n)));
}

/**
 * So much for every so many square metres, rounded up once to a whole.
 *
 * Example: 12 minutes a square metre of 2.5 m² are 30; one sheet for 2 m² of 2.5 m² is 2 sheets.
 */
export function amountOver(area: Area, amount: number, squareMetres = 1): number {
  return Number(dividedUp(BigInt(area) * BigInt(amount), SQUARE_UNITS_PER_SQUARE_METRE * BigInt(squareMetres)));
}

function rangeArea(wall: Wall, { low, high }: Pick<Part, 'low' | 'high'>): Area {
  const whole = partArea(wall, { from: 0, to: wall.length.length, low, high });
  const taken = wall.openings.map(({ from, width, sill, height }) =>
    partArea(wall, { from: from.length, to: from.length + width.length, low: Math.max(low, sill.length), high: Math.min(high, sill.length + height.length) }),
  );
  return areaOf(whole - addAreas(...taken));
}

/** What of a part lies under the wall's ceiling. */
function partArea(wall: Wall, { from, to, low, high }: Part): Area {
  if (high <= low) return ZERO_AREA;
  return areaOf(Number(areaAbove(wall, from, to, low) - areaAbove(wall, from, to, high)));
}

/** The area of a wall above a height, between two places: its ceiling is a straight line. */
function areaAbove(wall: Wall, from: number, to: number, height: number): bigint {
  const { left, right } = endsOf(wall.height);
  const length = BigInt(wall.length.length);
  // Heights are kept times the wall's length, so that they stay whole.
  const over = (at: number) => BigInt(left - height) * length + BigInt(right - left) * BigInt(at);
  const [one, other] = [over(from), over(to)];
  const width = BigInt(to - from);
  if (one >= 0n && other >= 0n) return dividedNearest((one + other) * width, 2n * length);
  if (one <= 0n && other <= 0n) return 0n;
  const [above, below] = one > other ? [one, -other] : [other, -one];
  return dividedNearest(above * above * width, 2n * length * (above + below));
}

function dividedUp(dividend: bigint, divisor: bigint): bigint {
  return (dividend + divisor - 1n) / divisor;
}

function dividedNearest(dividend: bigint, divisor: bigint): bigint {
  return (2n * dividend + divisor) / (2n * divisor);
}
