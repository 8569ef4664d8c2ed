import { OPENING_KINDS, OPENING_WORDS } from '../house/index.ts';
import { type ColumnWords, wordsIn } from '../units/index.ts';
import { say } from '../words/index.ts';

/** The columns of a table of rooms in the order in which they are written: the heading, then other words for it. */
export const ROOM_WORDS = {
  storey: wordsIn(say`storey, story, floor, level`),
  room: wordsIn(say`room, room name, name of the room`),
  wall: wordsIn(say`wall, walls, wall name`),
  what: wordsIn(say`what, kind, type, item`),
  name: wordsIn(say`name, label`),
  length: wordsIn(say`length, wall length`),
  corner: wordsIn(say`corner, turn, angle, inner angle, corner at its right, right corner`),
  height: wordsIn(say`height, high, ht`),
  floorLine: wordsIn(say`floor line, base, base line, baseline`),
  lean: wordsIn(say`lean, plumb, out of plumb, lean of its right corner`),
  lookedAt: wordsIn(say`looked at most, focal wall, focal`),
  entrance: wordsIn(say`entrance, way in`),
  from: wordsIn(say`from left, from, distance, distance from the left`),
  width: wordsIn(say`width, wide`),
  sill: wordsIn(say`sill, sill height, from floor, above floor, lower edge`),
  reveal: wordsIn(say`reveal, reveal depth, depth`),
  covered: wordsIn(say`covered, covered sides, reveal sides, sides`),
  note: wordsIn(say`note, notes, remark, remarks, comment, comments`),
} satisfies ColumnWords<string>;

export type RoomColumn = keyof typeof ROOM_WORDS;
export const ROOM_COLUMNS = Object.entries(ROOM_WORDS).map(([column, [name]]) => [column as RoomColumn, name] as const);

type OpeningKind = (typeof OPENING_KINDS)[number];

/** What a row is of, in the order in which somebody is told of them. */
export const ROW_KINDS = ['room', 'wall', ...OPENING_KINDS.map(wordOfOpening), 'rail', 'furniture'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

/** What a row is of as one reads it; in a cell the English word is understood too, which stands in a file. */
export const KIND_WORDS: Readonly<Record<RowKind, string>> = {
  room: say`room`,
  wall: say`wall`,
  door: OPENING_WORDS.door,
  window: OPENING_WORDS.window,
  archway: OPENING_WORDS.archway,
  fireplace: OPENING_WORDS.fireplace,
  'fitted furniture': OPENING_WORDS.furniture,
  rail: say`rail`,
  furniture: say`furniture`,
};

/** Furniture in an opening's place is fitted; what stands before a wall is plain furniture. */
export function wordOfOpening(kind: OpeningKind): Exclude<OpeningKind, 'furniture'> | 'fitted furniture' {
  return kind === 'furniture' ? 'fitted furniture' : kind;
}

export function openingOf(word: RowKind): OpeningKind | null {
  return OPENING_KINDS.find((kind) => wordOfOpening(kind) === word) ?? null;
}

/** The columns that a row of each kind fills beside storey, room and what. */
export function columnsOf(kind: RowKind): readonly RoomColumn[] {
  if (kind === 'room') return ['note'];
  if (kind === 'wall') return ['wall', 'length', 'corner', 'height', 'floorLine', 'lean', 'lookedAt', 'note'];
  if (kind === 'rail') return ['wall', 'name', 'sill', 'height'];
  if (kind === 'furniture') return ['wall', 'name', 'from', 'width', 'height'];
  return ['wall', 'name', 'entrance', 'from', 'width', 'height', 'sill', 'reveal', 'covered'];
}
