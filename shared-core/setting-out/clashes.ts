import type { Border, HungBand, Room } from '../house/index.ts';
import { type Length, lengthOf } from '../units/index.ts';
import type { BorderLayout } from './borders.ts';
import { edgeOver, topOf } from './heights.ts';
import type { Ends, StretchWall } from './stretch.ts';

/** A piece of furniture or a rail that stands in a border's way. */
export interface Clash {
  readonly wall: string;
  readonly id: string;
  /** As it is called in words: `headboard`. */
  readonly name: string;
  /** How much of the border's height it takes at most. */
  readonly by: Length;
}

/**
 * What a border does not clear: furniture that reaches above its lower edge, rails within its height.
 *
 * Shapes: heights above the wall's floor line, in units, judged where they are worst.
 * Example: a border from 88 to 94 in behind a headboard 90 in high is 2 in in its way.
 */
export function findClashes({ axis, levelTop }: Pick<BorderLayout, 'axis' | 'levelTop'>, band: HungBand, { width }: Border, room: Pick<Room, 'furniture' | 'rails'>): readonly Clash[] {
  return axis.walls.flatMap(({ wall }) => {
    const top = levelTop === null ? topOf(band, wall) : { left: levelTop, right: levelTop };
    const topAboveFloor: Ends = { left: lengthOf(top.left - wall.base.left), right: lengthOf(top.right - wall.base.right) };
    const reach = (from: number, to: number) => edgeOver(topAboveFloor, wall.length, from, Math.min(to, wall.length));
    const inTheWay = (id: string, name: string | undefined, by: number): readonly Clash[] => (by > 0 ? [{ wall: wall.id, id, name: name ?? id, by: lengthOf(Math.min(by, width.length)) }] : []);
    return [
      ...room.furniture
        .filter((piece) => piece.wall === wall.id)
        .flatMap((piece) => inTheWay(piece.id, piece.name, piece.height.length - (reach(piece.from.length, piece.from.length + piece.width.length).lowest - width.length))),
      ...room.rails
        .filter((rail) => isOn(rail, wall))
        .flatMap((rail) => {
          const { lowest, highest } = reach(0, wall.length);
          return inTheWay(rail.id, rail.name, Math.min(highest, rail.at.length + rail.width.length) - Math.max(lowest - width.length, rail.at.length));
        }),
    ];
  });
}

function isOn(rail: Room['rails'][number], wall: StretchWall): boolean {
  return rail.walls?.includes(wall.id) ?? true;
}
