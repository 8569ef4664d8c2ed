import { OPENING_KINDS } from '../house/index.ts';
import type { ColumnWords } from '../units/index.ts';

/** The columns of a table of rooms in the order in which they are written: the heading, then other words for it. */
export const ROOM_WORDS = {
  storey: ['storey', 'story', 'floor', 'level'],
  room: ['room', 'room name', 'name of the room'],
  wall: ['wall', 'walls', 'wall name'],
  what: ['what', 'kind', 'type', 'item'],
  name: ['name', 'label'],
  length: ['length', 'wall length'],
  corner: ['corner', 'turn', 'angle', 'inner angle', 'corner at its right', 'right corner'],
  height: ['height', 'high', 'ht'],
  floorLine: ['floor line', 'base', 'base line', 'baseline'],
  lean: ['lean', 'plumb', 'out of plumb', 'lean of its right corner'],
  lookedAt: ['looked at most', 'focal wall', 'focal'],
  entrance: ['entrance', 'way in'],
  from: ['from left', 'from', 'distance', 'distance from the left'],
  width: ['width', 'wide'],
  sill: ['sill', 'sill height', 'from floor', 'above floor', 'lower edge'],
  reveal: ['reveal', 'reveal depth', 'depth'],
  covered: ['covered', 'covered sides', 'reveal sides', 'sides'],
  note: ['note', 'notes', 'remark', 'remarks', 'comment', 'comments'],
} satisfies ColumnWords<string>;

export type RoomColumn = keyof typeof ROOM_WORDS;
export const ROOM_COLUMNS = Object.entries(ROOM_WORDS).map(([column, [name]]) => [column as RoomColumn, name!] as const);

type OpeningKind = (typeof OPENING_KINDS)[number];

/** What a row is of, in the order in which somebody is told of them. */
export const ROW_KINDS = ['room', 'wall', ...OPENING_KINDS.map(wordOfOpening), 'rail', 'furniture'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

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
