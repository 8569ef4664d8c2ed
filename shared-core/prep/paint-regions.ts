import { endsOf, type HungBand, type Wall } from '../house/index.ts';
import { addRatios, ratio, type Ratio } from '../units/index.ts';

/**
 * A part of a wall: between two uprights, from a height up to a height or the wall's top. Heights are above the floor
 * line, in units; what slopes with the floor line keeps its area.
 */
export interface Region {
  readonly left: number;
  readonly right: number;
  readonly from: number;
  /** Null for as high as the wall goes. */
  readonly to: number | null;
}

type WallShape = Pick<Wall, 'length' | 'height'>;

const ZERO = ratio(0n);

/**
 * What a band takes of a wall, over all its length.
 *
 * Example: from the floor to the ceiling of a wall 4 m long: from 0 to 4 m along it, from 0 up to its top.
 */
export function bandRegion({ from, to }: Pick<HungBand, 'from' | 'to'>, wall: WallShape): Region {
  return { left: 0, right: wall.length.length, from: from === 'floor' ? 0 : from.length, to: to === 'ceiling' ? null : to.length };
}

/** What two regions of one wall have in common; null where it is nothing. */
export function common(one: Region, other: Region): Region | null {
  const left = Math.max(one.left, other.left);
  const right = Math.min(one.right, other.right);
  const from = Math.max(one.from, other.from);
  const to = one.to === null ? other.to : other.to === null ? one.to : Math.min(one.to, other.to);
  return left < right && (to === null || from < to) ? { left, right, from, to } : null;
}

/**
 * The area of a region that lies on its wall, in square units, exactly; a raked wall cuts it off.
 *
 * Example: of a wall 4 m long, 1 m high at the left and 3 m at the right, what lies above 2 m is 1 m²: the triangle over
 * the right half.
 */
export function regionArea(region: Region, wall: WallShape): Ratio {
  const above = areaAbove(region, region.from, wall);
  const over = region.to === null ? ZERO : areaAbove(region, region.to, wall);
  const { numerator, denominator } = addRatios(above, ratio(-over.numerator, over.denominator));
  // All but what a raked wall cuts off is whole, which keeps sums of thousands small.
  return numerator % denominator === 0n ? ratio(numerator / denominator) : ratio(numerator, denominator);
}

/**
 * How much of a level line over a region's width lies below the top of its wall, in units, exactly.
 *
 * Example: at 2 m over the whole of that wall, 2 m.
 */
export function lengthOnWall({ left, right }: Region, height: number, wall: WallShape): Ratio {
  const [start, end] = [topAt(left, wall) - scaled(height, wall), topAt(right, wall) - scaled(height, wall)];
  const width = BigInt(right - left);
  if (start <= 0n && end <= 0n) return ZERO;
  if (start >= 0n && end >= 0n) return ratio(width);
  const [over, under] = start > 0n ? [start, -end] : [end, -start];
  return ratio(width * over, over + under);
}

/** How high a region is at one of its uprights, in units, exactly. */
export function heightAt({ from, to }: Region, at: number, wall: WallShape): Ratio {
  const wallTop = topAt(at, wall);
  const top = to === null || scaled(to, wall) > wallTop ? wallTop : scaled(to, wall);
  const height = top - scaled(from, wall);
  return height > 0n ? ratio(height, BigInt(wall.length.length)) : ZERO;
}

/** A wall's height at a place along it, times its length, so that it is whole. */
function topAt(at: number, { length: { length }, height }: WallShape): bigint {
  const { left, right } = endsOf(height);
  return BigInt(left) * BigInt(length - at) + BigInt(right) * BigInt(at);
}

function scaled(height: number, { length: { length } }: WallShape): bigint {
  return BigInt(height) * BigInt(length);
}

function areaAbove({ left, right }: Region, height: number, wall: WallShape): Ratio {
  const [start, end] = [topAt(left, wall) - scaled(height, wall), topAt(right, wall) - scaled(height, wall)];
  const [width, length] = [BigInt(right - left), BigInt(wall.length.length)];
  if (start <= 0n && end <= 0n) return ZERO;
  if (start >= 0n && end >= 0n) return ratio((start + end) * width, 2n * length);
  const [over, under] = start > 0n ? [start, -end] : [end, -start];
  return ratio(over * over * width, 2n * length * (over + under));
}
