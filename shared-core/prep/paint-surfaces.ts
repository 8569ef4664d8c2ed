import { type Band, type House, hungBand, type Opening, type OpeningRule, type Room, type Surface, type Wall } from '../house/index.ts';
import { drawOutline } from '../survey/index.ts';
import { addRatios, ratio, type Ratio, rectangleArea } from '../units/index.ts';
import { stepFor } from './opening-rules.ts';
import { bandRegion, common, heightAt, lengthOnWall, type Region, regionArea } from './paint-regions.ts';
import type { SurfaceOf } from './prep-plan.ts';

/** An opening in a painted surface; areas in square units, exactly. */
export interface MeasuredOpening {
  readonly wall: string;
  readonly opening: Opening;
  /** As much of it as lies in the surface, which is what a rule judges. */
  readonly size: Ratio;
  readonly deducted: Ratio;
  /** Of its covered sides what is painted with the surface. */
  readonly reveals: Ratio;
}

/** A surface that is painted, as it is measured; areas in square units, exactly. */
export interface MeasuredSurface {
  readonly room: Room;
  readonly surface: SurfaceOf;
  /** Of a wall. */
  readonly band: string | null;
  /** What is on it now. */
  readonly ground: Surface | undefined;
  /** The skirting and the doors of woodwork stand apart. */
  readonly parts: readonly { readonly part: 'wall' | 'ceiling' | 'skirting' | 'doors'; readonly area: Ratio; readonly count: number }[];
  readonly openings: readonly MeasuredOpening[];
}

const ZERO = ratio(0n);

/** The sum of exact areas; of none, nothing. */
export function sumOf(areas: readonly Ratio[]): Ratio {
  return areas.reduce(addRatios, ZERO);
}

/** What is painted of a surface: all of it, less what is taken off for its openings, with their reveals where they count. */
export function paintedArea({ parts, openings }: Pick<MeasuredSurface, 'parts' | 'openings'>): Ratio {
  return sumOf([...parts.map(({ area }) => area), ...openings.flatMap(({ deducted, reveals }) => [less(deducted), reveals])]);
}

function less({ numerator, denominator }: Ratio): Ratio {
  return ratio(-numerator, denominator);
}

/**
 * Every surface of a house that is covered by a paint: room by room the walls of its bands, the ceiling, the woodwork.
 *
 * Openings are taken off walls by the rule of the house, judged by the part that lies in the band: where an opening goes
 * through two bands, each is a surface of its own (DIN 18363, read in a decorators' magazine). A head belongs to the
 * band that has the uppermost part of its opening, a sill to the one that has the lowest. Overhead the floor's area counts. Of woodwork the skirting stands along every
 * wall but for what goes down to the floor, and a door's face is as large as its opening: no rule has a say in it.
 * Example: a wall of 4 m by 2.5 m with a door of 0.8 m by 2 m is 10 m² by DIN 18363 and 8.4 m² by NRM2; its skirting,
 * 10 cm high, is 0.32 m².
 */
export function paintedSurfaces(house: Pick<House, 'rooms' | 'rules'>, covering: string): readonly MeasuredSurface[] {
  return house.rooms.flatMap((room) => [
    ...room.bands.filter((band) => band.covering === covering).flatMap((band) => band.walls.flatMap((id) => room.walls.filter((wall) => wall.id === id).map((wall) => measureWall(room, band, wall, house.rules.openings)))),
    ...(room.ceiling?.covering === covering ? [measureCeiling(room)] : []),
    ...(room.woodwork?.covering === covering ? [measureWoodwork(room, room.woodwork)] : []),
  ]);
}

function measureWall(room: Room, band: Band, wall: Wall, rule: OpeningRule): MeasuredSurface {
  const region = bandRegion(hungBand(room, band), wall);
  return {
    room,
    surface: { kind: 'wall', wall: wall.id },
    band: band.id,
    ground: wall.surface,
    parts: [{ part: 'wall', area: regionArea(region, wall), count: 1 }],
    openings: wall.openings.flatMap((opening) => {
      const size = sizeWithin(opening, region, wall);
      if (size === null) return [];
      const { deducted, addsReveals } = stepFor(rule, size);
      return [{ wall: wall.id, opening, size, deducted: ratio(size.numerator * BigInt(deducted), size.denominator * 100n), reveals: addsReveals ? revealsOf(opening, region, wall) : ZERO }];
    }),
  };
}

function regionOf({ from, width, sill, height }: Opening): Region {
  return { left: from.length, right: from.length + width.length, from: sill.length, to: sill.length + height.length };
}

function sizeWithin(opening: Opening, region: Region, wall: Wall): Ratio | null {
  const shared = common(regionOf(opening), region);
  const size = shared && regionArea(shared, wall);
  return size && size.numerator > 0n ? size : null;
}

/** The covered sides of an opening that belong to a region of its wall. */
function revealsOf(opening: Opening, region: Region, wall: Wall): Ratio {
  const { reveal } = opening;
  const hole = regionOf(opening);
  const shared = common(hole, region);
  if (!reveal || !shared) return ZERO;
  const [sill, head] = [opening.sill.length, opening.sill.length + opening.height.length];
  const isHeadIn = shared.to === head;
  const isSillIn = shared.from === sill;
  const lengths = reveal.sides.map((side): Ratio => {
    if (side === 'left') return heightAt(shared, shared.left, wall);
    if (side === 'right') return heightAt(shared, shared.right, wall);
    if (side === 'head') return isHeadIn ? lengthOnWall(hole, head, wall) : ZERO;
    return isSillIn ? lengthOnWall(hole, sill, wall) : ZERO;
  });
  const { numerator, denominator } = sumOf(lengths);
  return ratio(numerator * BigInt(reveal.depth.length), denominator);
}

function measureCeiling(room: Room): MeasuredSurface {
  const area = ratio(BigInt(drawOutline(room).floorArea));
  return { room, surface: { kind: 'ceiling' }, band: null, ground: room.ceilingSurface, parts: [{ part: 'ceiling', area, count: 1 }], openings: [] };
}

function measureWoodwork(room: Room, { skirting, doors, surface }: NonNullable<Room['woodwork']>): MeasuredSurface {
  const regionOn = (wall: Wall): Region => ({ left: 0, right: wall.length.length, from: 0, to: skirting.length });
  const leaves = doors ? room.walls.flatMap(({ openings }) => openings.filter(({ kind }) => kind === 'door')) : [];
  return {
    room,
    surface: { kind: 'woodwork' },
    band: null,
    ground: surface,
    parts: [
      { part: 'skirting', area: sumOf(room.walls.map((wall) => regionArea(regionOn(wall), wall))), count: room.walls.length },
      ...(leaves.length > 0 ? [{ part: 'doors' as const, area: sumOf(leaves.map(({ width, height }) => ratio(BigInt(rectangleArea(width.length, height.length))))), count: leaves.length }] : []),
    ],
    openings: room.walls.flatMap((wall) =>
      wall.openings.flatMap((opening) => {
        const size = opening.sill.length === 0 ? sizeWithin(opening, regionOn(wall), wall) : null;
        return size ? [{ wall: wall.id, opening, size, deducted: size, reveals: ZERO }] : [];
      }),
    ),
  };
}
