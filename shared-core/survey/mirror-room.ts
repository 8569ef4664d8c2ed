import type { Band, Opening, Room, Wall } from '../house/index.ts';
import { lengthOf, type LengthStyle, type Measure, printLength } from '../units/index.ts';
import { goesAllRound } from './outline.ts';

type Ends = Wall['height'];

const OTHER_SIDE = { left: 'right', right: 'left', head: 'head', sill: 'sill' } as const;

/**
 * The room as its mirror image, as in the other half of a pair of houses: the same facts the other way round.
 *
 * Where walls go all round the first stays the first, and the others follow it clockwise the other way; the ids go with
 * the places, so that the new walls are A, B, C in order too. What is measured from a left end is measured from the other
 * one, printed in the given style. Where a line is to be struck is left open: a pattern is not mirrored with its room.
 * Example: walls A 4 m, B 3 m, C 4 m, D 2.9 m become A 4 m, B 2.9 m, C 4 m, D 3 m; a door 1 m wide that stands 0.5 m from
 * the left of A stands 2.5 m from it.
 */
export function mirrorRoom(room: Room, style: LengthStyle): Room {
  const { walls } = room;
  const isRound = goesAllRound(room);
  /** Of each wall in its new order, where it stood. */
  const order = isRound ? walls.map((_, index) => (walls.length - index) % walls.length) : walls.map((_, index) => walls.length - 1 - index);
  const idOf = new Map(order.map((old, index) => [walls[old]!.id, walls[index]!.id]));
  const moved = (id: string) => idOf.get(id) ?? id;
  const movedAll = (ids: readonly string[]) => walls.map(({ id }) => id).filter((id) => ids.some((old) => moved(old) === id));
  /** A corner stands at the right of the wall that was the one after it. */
  const cornerOf = (id: string) => moved(walls[(walls.findIndex((wall) => wall.id === id) + 1) % walls.length]!.id);
  const lengthOfWall = (id: string) => walls.find((wall) => wall.id === id)!.length;

  const fromOther = <Thing extends { readonly from: Measure; readonly width: Measure }>(thing: Thing, wall: Measure): Thing => {
    const from = lengthOf(wall.length - thing.from.length - thing.width.length);
    return { ...thing, from: { length: from, typed: printLength(from, style) } };
  };
  const mirroredWall = (wall: Wall, index: number): Wall => {
    const { plumbRight: _ownCorner, ...own } = wall;
    const { turn, plumbRight } = walls[(index + walls.length - 1) % walls.length]!;
    // What leans at the end of walls that do not go round stands at their beginning now, where there is no fact for it.
    const leans = plumbRight && (isRound || index > 0) ? { plumbRight } : {};
    return { ...own, id: moved(wall.id), turn, ...leans, height: swapped(wall.height), base: swapped(wall.base), openings: wall.openings.map((opening) => withSidesSwapped(fromOther(opening, wall.length))).reverse() };
  };
  const mirroredBand = ({ layout: _layout, runMayChange, ...band }: Band): Band => ({ ...band, walls: movedAll(band.walls), ...(runMayChange ? { runMayChange: runMayChange.map(cornerOf) } : {}) });
  return {
    ...room,
    walls: order.map((old) => mirroredWall(walls[old]!, old)),
    ...(room.focalWall === undefined ? {} : { focalWall: moved(room.focalWall) }),
    rails: room.rails.map((rail) => (rail.walls ? { ...rail, walls: movedAll(rail.walls) } : rail)),
    furniture: room.furniture.map((piece) => ({ ...fromOther(piece, lengthOfWall(piece.wall)), wall: moved(piece.wall) })),
    bands: room.bands.map(mirroredBand),
    ...(room.ceiling ? { ceiling: room.ceiling.along === undefined ? room.ceiling : { ...room.ceiling, along: moved(room.ceiling.along) } } : {}),
  };
}

function swapped(ends: Ends): Ends {
  return 'typed' in ends ? ends : [ends[1], ends[0]];
}

function withSidesSwapped({ reveal, ...opening }: Opening): Opening {
  return { ...opening, ...(reveal ? { reveal: { ...reveal, sides: reveal.sides.map((side) => OTHER_SIDE[side]) } } : {}) };
}
