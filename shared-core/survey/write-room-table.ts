import type { House, Opening, Room, Wall } from '../house/index.ts';
import { type LengthStyle, type Measure, parseMeasure, printLength, writeSeparated } from '../units/index.ts';
import { type RoomColumn, type RowKind, wordOfOpening } from './room-columns.ts';

type Cells = Partial<Record<RoomColumn, string>>;

/** A file is the same in every language, so that each can read it. */
const HEADINGS: Readonly<Record<RoomColumn, string>> = {
  storey: 'Storey',
  room: 'Room',
  wall: 'Wall',
  what: 'What',
  name: 'Name',
  length: 'Length',
  corner: 'Corner',
  height: 'Height',
  floorLine: 'Floor line',
  lean: 'Lean',
  lookedAt: 'Looked at most',
  entrance: 'Entrance',
  from: 'From left',
  width: 'Width',
  sill: 'Sill',
  reveal: 'Reveal',
  covered: 'Covered',
  note: 'Note',
};
const COLUMNS = Object.keys(HEADINGS) as readonly RoomColumn[];

/**
 * All rooms of a house as CSV with a row for each room, and under it one for each wall and what is on it, each rail and
 * each piece of furniture; `readRoomTable` reads them again. Neither what hangs in a room nor its photos are in it, nor a
 * name that is an id alone, nor the space around a note.
 *
 * Lengths are written as they were typed, with their units; where that can be read in two ways, as the house prints it.
 * A rail's lower edge stands under the sill, and the walls it runs along are named with a space between, none for all.
 *
 * A door in wall A of the hall is the row `,Hall,A,door,door,,,80 in,,,,yes,2 ft,32 in,0 in,,,`.
 */
export function writeRoomTable(house: House): string {
  const rows = house.rooms.flatMap((room) => rowsOf(room, house.lengths).map((cells): Cells => ({ ...cells, room: room.name, storey: room.storey ?? '' })));
  return writeSeparated([COLUMNS.map((column) => HEADINGS[column]), ...rows.map((cells) => COLUMNS.map((column) => cells[column] ?? ''))]);
}

function rowsOf(room: Room, style: LengthStyle): readonly Cells[] {
  const row = (what: RowKind, cells: Cells): Cells => ({ what, ...cells });
  const text = (measure: Measure) => safely(measure, style);
  const ends = (height: Wall['height']) => ('typed' in height ? text(height) : `${text(height[0])} to ${text(height[1])}`);
  const opening = (wall: Wall, one: Opening) =>
    row(wordOfOpening(one.kind), {
      wall: wall.id,
      name: one.id,
      entrance: one.entrance ? 'yes' : '',
      from: text(one.from),
      width: text(one.width),
      height: text(one.height),
      sill: text(one.sill),
      ...(one.reveal ? { reveal: text(one.reveal.depth), covered: one.reveal.sides.join(' ') } : {}),
    });
  return [
    row('room', { note: room.note?.trim() ?? '' }),
    ...room.walls.flatMap((wall) => [
      row('wall', {
        wall: wall.id,
        length: text(wall.length),
        corner: wall.turn,
        height: ends(wall.height),
        floorLine: ends(wall.base),
        lean: wall.plumbRight ? text(wall.plumbRight) : '',
        lookedAt: room.focalWall === wall.id ? 'yes' : '',
        note: wall.note?.trim() ?? '',
      }),
      ...wall.openings.map((one) => opening(wall, one)),
    ]),
    ...room.rails.map((rail) => row('rail', { wall: rail.walls?.join(' ') ?? '', name: rail.name ?? '', sill: text(rail.at), height: text(rail.width) })),
    ...room.furniture.map((piece) => row('furniture', { wall: piece.wall, name: piece.name ?? '', from: text(piece.from), width: text(piece.width), height: text(piece.height) })),
  ];
}

/** As it was typed, unless somebody who types it so would be asked what was meant: a document may have 12' - 4". */
function safely({ length, typed }: Measure, style: LengthStyle): string {
  const isPlain = (['imperial', 'metric'] as const).every((bare) => {
    const again = parseMeasure(typed, bare);
    return again.ok && again.value.length === length && again.value.typed === typed;
  });
  return isPlain ? typed : printLength(length, style);
}
