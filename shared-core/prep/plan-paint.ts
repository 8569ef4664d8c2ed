import { assert, good } from '../base/index.ts';
import { type House, moneyIn, type Paint } from '../house/index.ts';
import { areaOf, type Money, type Ratio, readSpreadingRate, roundRatio, spreadingOfSolids, type SpreadingRate, UNITS_PER_MILLIMETRE, wholeMillilitres } from '../units/index.ts';
import { coatFactors } from './paint-coats.ts';
import { type MeasuredSurface, paintedArea, paintedSurfaces, sumOf } from './paint-surfaces.ts';
import { choosePacks } from './choose-packs.ts';
import type { PaintedSurface, PaintNeed } from './prep-plan.ts';

/**
 * What every paint of a house covers, how much of it that takes and the tins it is bought in, pooled over all rooms.
 *
 * Shapes: areas in square units, whole millilitres, money in the currency's smallest unit; paints in the order of the
 * coverings, without those that cover nothing. A surface's area is rounded to the unit, which only a raked wall needs;
 * from there all is exact until the millilitres of the whole are rounded up, once. A tin's own spreading rate counts
 * before solids and film.
 * Source: millilitres = area × coats ÷ spreading rate, with the factors of `COAT_FACTORS` (common practice).
 * Example: 50 m² in two coats at 12 m²/L take 8.334 L, by tins of 2.5 L and 5 L two large ones.
 */
export function planPaint(house: House): readonly PaintNeed[] {
  return house.coverings.flatMap((covering) => {
    if (covering.kind !== 'paint') return [];
    const surfaces = paintedSurfaces(house, covering.id);
    return surfaces.length === 0 ? [] : [needOf(house, covering, surfaces)];
  });
}

function needOf(house: House, paint: Paint, measured: readonly MeasuredSurface[]): PaintNeed {
  const surfaces = measured.map((surface) => sizesOf(surface, paint));
  const weights = surfaces.map(coatedArea);
  const spreading = spreadingOf(paint);
  const whole = spreading && millilitresFor(weights.reduce((sum, weight) => sum + weight, 0n), spreading);
  const shares = whole === null ? null : sharesOf(whole, weights);
  const bought = whole === null ? null : tinsFor(whole, paint, house.currency);
  return {
    covering: paint.id,
    surfaces: surfaces.map((surface, index) => ({ ...surface, millilitres: shares && shares[index]! })),
    rule: house.rules.openings,
    spreading,
    millilitres: whole,
    tins: bought && bought.tins,
    price: bought && bought.price,
  };
}

function sizesOf(surface: MeasuredSurface, { coats }: Paint): Omit<PaintedSurface, 'millilitres'> {
  const { first, later } = coatFactors(surface.ground);
  const rounded = (area: Ratio) => areaOf(Number(roundRatio(area)));
  return {
    room: surface.room.id,
    surface: surface.surface,
    band: surface.band,
    gross: rounded(sumOf(surface.parts.map(({ area }) => area))),
    deducted: rounded(sumOf(surface.openings.map(({ deducted }) => deducted))),
    reveals: rounded(sumOf(surface.openings.map(({ reveals }) => reveals))),
    area: rounded(paintedArea(surface)),
    coats,
    firstFactor: first,
    factor: later,
  };
}

/**
 * A surface's area times what all its coats take of it in percent: in hundredths of a square unit.
 *
 * Example: 10 square units in two coats of 125 % and 100 % are 2250 hundredths.
 */
export function coatedArea({ area, coats, firstFactor, factor }: Pick<PaintedSurface, 'area' | 'coats' | 'firstFactor' | 'factor'>): bigint {
  return BigInt(area) * BigInt(firstFactor + (coats - 1) * factor);
}

/**
 * The whole millilitres that so many hundredths of a square unit take, rounded up.
 *
 * Example: 120,001 mm² at 12,000 mm² a millilitre take 11.
 */
export function millilitresFor(hundredths: bigint, { squareMillimetres, millilitres }: SpreadingRate): number {
  const covered = 100n * BigInt(UNITS_PER_MILLIMETRE) ** 2n * BigInt(squareMillimetres);
  return Number((hundredths * BigInt(millilitres) + covered - 1n) / covered);
}

/**
 * What a paint covers: as its tin says, else by its solids and film, else not known.
 *
 * Example: of 65 % solids at a film of 50 µm, where the tin says nothing, 13 m²/L.
 */
export function spreadingOf({ spreadingRate, solids, film }: Pick<Paint, 'spreadingRate' | 'solids' | 'film'>): SpreadingRate | null {
  const read = spreadingRate !== undefined ? readSpreadingRate(spreadingRate) : solids !== undefined && film !== undefined ? spreadingOfSolids(solids, film) : good(null);
  assert(read.ok, 'a spreading rate that was accepted is read again');
  return read.value;
}

/** A whole in parts as their weights ask for; what rounding down leaves goes one by one to those that lost most. */
function sharesOf(whole: number, weights: readonly bigint[]): readonly number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0n);
  if (all === 0n) return weights.map(() => 0);
  const shares = weights.map((weight) => Number((BigInt(whole) * weight) / all));
  const over = whole - shares.reduce((sum, share) => sum + share, 0);
  const lost = weights.map((weight, index) => ({ index, rest: (BigInt(whole) * weight) % all })).toSorted((one, other) => (one.rest > other.rest ? -1 : one.rest < other.rest ? 1 : 0));
  for (const { index } of lost.slice(0, over)) shares[index]! += 1;
  return shares;
}

function tinsFor(millilitres: number, { soldIn }: Paint, currency: string): { readonly tins: PaintNeed['tins']; readonly price: Money | null } | null {
  if (!soldIn || soldIn.length === 0) return null;
  const { counts, price } = choosePacks(millilitres, soldIn.map((tin) => ({ amount: wholeMillilitres(tin.litres), price: moneyIn({ currency }, tin.price) })));
  const tins = soldIn.map(({ litres }, index) => ({ litres, count: counts[index]! })).filter(({ count }) => count > 0);
  return { tins: tins.toSorted((one, other) => other.litres - one.litres), price };
}
