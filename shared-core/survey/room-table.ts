import { bad, type Fault, freeId, good, idFor, type Outcome } from '../base/index.ts';
import { applyEdit, type Edit, type House, MOST_FURNITURE, MOST_OPENINGS, MOST_RAILS, MOST_ROOMS, MOST_WALLS, newHouse, REVEAL_SIDES, USUAL_SIDES } from '../house/index.ts';
import { quoteTyped, wordsIn } from '../units/index.ts';
import { endsReader, lengthReader, readNameCell, type ReadRow, readRows, readTurnCell, type RowCells, type TableKind } from './read-cells.ts';
import { columnsOf, KIND_WORDS, openingOf, ROOM_COLUMNS, ROOM_WORDS, type RoomColumn, ROW_KINDS, type RowKind } from './room-columns.ts';
import { type Ends, endsText, nextWallId, turnText } from './typed-walls.ts';
import { say } from '../words/index.ts';

type RoomFacts = Extract<Edit, { kind: 'add-rooms' }>['rooms'][number];
type WallFacts = NonNullable<RoomFacts['walls']>[number];
type Row = RowCells<RoomColumn>;

export interface RoomTable {
  /** What is wrong with the table as a whole. */
  readonly faults: readonly Fault[];
  readonly rows: readonly ReadRow<RoomColumn>[];
  /** What adds the rooms to the house; null while anything is wrong. */
  readonly edit: Extract<Edit, { kind: 'add-rooms' }> | null;
}

/** A room as far as its rows have been read, and from which row each of its facts is. */
interface Draft {
  readonly facts: { id: string; name: string; storey?: string; note?: string; walls: WallFacts[]; rails: NonNullable<RoomFacts['rails']>; furniture: NonNullable<RoomFacts['furniture']>; focalWall?: string };
  readonly rows: Row[];
  readonly origins: Map<string, Row>;
  /** The height of the wall before. */
  height: Ends | null;
  wall: WallFacts | null;
}

/** Of a file: far more than the table of a house. */
export const LARGEST_ROOM_TABLE_BYTES = 8_000_000;

const ROOM_TABLE: TableKind<RoomColumn> = {
  words: ROOM_WORDS,
  needed: ['room'],
  mostRows: 10_000,
  longestText: 2_000_000,
  takes: say`it takes a row of headings and one row for each wall and each opening; the headings are ${ROOM_COLUMNS.map(([, name]) => name).join(', ')}`,
  columnsWithout: () => null,
};

type Side = (typeof REVEAL_SIDES)[number];
export const SIDE_WORDS: Readonly<Record<Side, string>> = { left: say`left`, right: say`right`, head: say`head`, sill: say`sill` };

/** What a cell may say, in every language in English too. */
const [AND, ALL, YES, NO] = [say`and`, say`all`, say`yes, y, x, true, 1`, say`no, n, false, 0, -`].map(wordsIn) as [Words, Words, Words, Words];
type Words = ReturnType<typeof wordsIn>;

/**
 * The rooms of a table as `writeRoomTable` writes it, or somebody in a spreadsheet, to be added to a house.
 *
 * The first row holds headings, in any order and in the trade's other words too; only the room has to be there. A row is
 * of what its `what` says, a wall where nothing does: a room, a wall, a door, window, archway, fireplace or fitted
 * furniture on the wall, a rail or a piece of furniture. An empty room is that of the row above, an empty wall of
 * an opening or of furniture too; a row `room` begins another room even where its name is the same. Cells are read as those of
 * a table of walls. An empty sill is the floor but for a window; a reveal without sides is covered left, right and at the
 * head. Where there is no column of entrances a room's first door is it.
 *
 * Ids are made that the house does not have. Nothing is added where anything is wrong: there is no edit then, and what is
 * wrong stands at its row as a sentence.
 *
 * `Room,Wall,Length,Height` and under it `Hall,A,12 ft,8 ft` is one room Hall with a wall A.
 */
export function readRoomTable(text: string, house: House): RoomTable {
  const opened = readRows(text, ROOM_TABLE);
  if (!opened.ok) return { faults: opened.faults, rows: [], edit: null };
  const reader = new RoomReader(house);
  for (const row of opened.value) reader.read(row);
  const { drafts } = reader;
  for (const draft of drafts) if (draft.rows.every(({ isGood }) => isGood)) blameRows(draft, house);
  const edit = { kind: 'add-rooms' as const, rooms: drafts.map(({ facts }) => facts) };
  const isGood = opened.value.every((row) => row.isGood);
  // What only the house as a whole can have against them: that there are too many, say.
  const tried = isGood ? applyEdit(house, edit) : null;
  return { faults: tried && !tried.ok ? tried.faults : [], rows: opened.value.map(({ read }) => read), edit: tried?.ok ? edit : null };
}

class RoomReader {
  readonly drafts: Draft[] = [];
  readonly #house: House;
  readonly #taken: string[];
  #current: Draft | null = null;

  constructor(house: House) {
    this.#house = house;
    this.#taken = house.rooms.map(({ id }) => id);
  }

  read(row: Row): void {
    const kind = readKind(row);
    const room = this.#roomOf(row, kind);
    room?.rows.push(row);
    if (!room || kind === null) return;
    const own = columnsOf(kind);
    for (const [column] of ROOM_COLUMNS) {
      const isOwn = column === 'room' || column === 'storey' || column === 'what' || own.includes(column);
      if (!isOwn && row.typed(column) !== '') row.complain(column, say`a ${KIND_WORDS[kind]} takes none, and there stands ${quoteTyped(row.typed(column))}.`);
    }
    if (kind === 'room') {
      if (row.typed('note') !== '') room.facts.note = row.typed('note');
      return;
    }
    if (kind === 'wall') this.#readWall(row, room);
    else if (kind === 'rail') this.#readRail(row, room);
    else if (kind === 'furniture') this.#readPiece(row, room);
    else this.#readOpening(row, kind, room);
  }

  /** The room that a row belongs to: the one above, one before it, or another. */
  #roomOf(row: Row, kind: RowKind | null): Draft | null {
    const above = this.#current?.facts;
    const name = row.typed('room') || above?.name;
    const isAbove = name === above?.name && (row.typed('storey') === '' || row.typed('storey') === above?.storey);
    if (name === undefined) {
      row.complain('room', say`there is nothing, and no room in a row above; it takes the name of the room.`);
      return null;
    }
    const storey = row.typed('storey') || (row.typed('room') === '' ? above?.storey : undefined);
    const known = kind === 'room' ? undefined : isAbove ? this.#current! : this.drafts.findLast(({ facts }) => facts.name === name && facts.storey === storey);
    if (!known && this.#taken.length >= MOST_ROOMS) {
      row.complain('room', say`the house would have more rooms than the ${MOST_ROOMS} that it takes.`);
      return null;
    }
    const room = known ?? this.#begin(name, storey, row);
    if (row.typed('room') === '') row.show('room', name);
    this.#current = room;
    return room;
  }

  #begin(name: string, storey: string | undefined, row: Row): Draft {
    const id = idFor(name, 'room', this.#taken);
    this.#taken.push(id);
    const draft: Draft = { facts: { id, name, ...(storey === undefined ? {} : { storey }), walls: [], rails: [], furniture: [] }, rows: [], origins: new Map([['rooms[0]', row]]), height: null, wall: null };
    this.drafts.push(draft);
    return draft;
  }

  #readWall(row: Row, room: Draft): void {
    const { walls } = room.facts;
    if (walls.length >= MOST_WALLS) return row.complain('wall', say`${room.facts.name} has the ${MOST_WALLS} walls that a room takes in rows above already.`);
    const taken = walls.map(({ id }) => id);
    const id = row.take('wall', readNameCell) ?? nextWallId(taken);
    if (row.typed('wall') === '') row.show('wall', id);
    if (taken.includes(id)) row.complain('wall', say`${room.facts.name} has a wall ${id} in a row above already; each wall has a name of its own.`);
    const length = row.need('length', this.#length, say`a length`) ?? '';
    const turn = row.take('corner', readTurnCell, turnText) ?? 'inside';
    const height = row.take('height', endsReader(this.#house.lengths, say`A height`), endsText) ?? room.height;
    const base = row.take('floorLine', endsReader(this.#house.lengths, say`A floor line`), endsText) ?? '0 in';
    const plumbRight = row.take('lean', this.#length);
    if (row.typed('height') === '') {
      if (height === null) row.complain('height', say`there is nothing, and no wall of the room before it has one; it takes a length.`);
      else row.show('height', endsText(height));
    }
    room.height = height;
    if (row.take('lookedAt', readYes, sayYes) === true) {
      if (room.facts.focalWall !== undefined) row.complain('lookedAt', say`wall ${room.facts.focalWall} is it already; a room takes one.`);
      room.facts.focalWall = id;
    }
    room.origins.set(`rooms[0].walls[${walls.length}]`, row);
    room.wall = { id, length, turn, height: height ?? '', base, ...(plumbRight === null ? {} : { plumbRight }), ...(row.typed('note') === '' ? {} : { note: row.typed('note') }), openings: [] };
    walls.push(room.wall);
  }

  #readOpening(row: Row, kind: RowKind, room: Draft): void {
    const wall = this.#wallOf(row, kind, room);
    const name = row.take('name', readNameCell);
    const opening = { from: this.#need(row, 'from', say`how far it is from the left end of its wall`), width: this.#need(row, 'width', say`its width`), height: this.#need(row, 'height', say`its height`) };
    const sill = kind === 'window' ? this.#need(row, 'sill', say`the height of its sill`) : (row.take('sill', this.#length) ?? '0 in');
    const depth = row.take('reveal', this.#length);
    const sides = row.take('covered', readSides, (all) => all.map((side) => SIDE_WORDS[side]).join(' '));
    if (sides !== null && row.typed('reveal') === '') row.complain('reveal', say`there is nothing; what is covered in it wants its depth.`);
    const hasEntrance = room.facts.walls.some(({ openings = [] }) => openings.some(({ entrance }) => entrance));
    const entrance = row.has('entrance') ? row.take('entrance', readYes, sayYes) === true : kind === 'door' && !hasEntrance;
    if (!wall) return;
    const openings = (wall.openings ??= []);
    if (openings.length >= MOST_OPENINGS) return row.complain('wall', say`wall ${wall.id} has the ${MOST_OPENINGS} openings that a wall takes in rows above already.`);
    room.origins.set(`rooms[0].walls[${room.facts.walls.indexOf(wall)}].openings[${openings.length}]`, row);
    const opened = openingOf(kind)!;
    openings.push({ id: name ?? freeId(opened, openings.map(({ id }) => id)), kind: opened, entrance, ...opening, sill, ...(depth === null ? {} : { reveal: { depth, sides: [...(sides ?? USUAL_SIDES)] } }) });
  }

  #readRail(row: Row, room: Draft): void {
    const { rails } = room.facts;
    if (rails.length >= MOST_RAILS) return row.complain('room', say`${room.facts.name} has the ${MOST_RAILS} rails that a room takes in rows above already.`);
    const walls = row.typed('wall').split(/[\s,;]+/).filter((word) => word !== '');
    const isAll = walls.length === 0 || (walls.length === 1 && isOneOf(ALL, walls[0]!) && !room.facts.walls.some(({ id }) => id === walls[0]));
    room.origins.set(`rooms[0].rails[${rails.length}]`, row);
    rails.push({
      id: idFor(row.typed('name'), 'rail', rails.map(({ id }) => id)),
      ...named(row),
      ...(isAll ? {} : { walls }),
      at: this.#need(row, 'sill', say`the height of its lower edge above the floor`),
      width: this.#need(row, 'height', say`how high it is itself`),
    });
  }

  #readPiece(row: Row, room: Draft): void {
    const { furniture } = room.facts;
    if (furniture.length >= MOST_FURNITURE) return row.complain('room', say`${room.facts.name} has the ${MOST_FURNITURE} pieces of furniture that a room takes in rows above already.`);
    const wall = this.#wallOf(row, 'furniture', room);
    room.origins.set(`rooms[0].furniture[${furniture.length}]`, row);
    furniture.push({
      id: idFor(row.typed('name'), 'piece', furniture.map(({ id }) => id)),
      ...named(row),
      wall: wall?.id ?? '',
      from: this.#need(row, 'from', say`how far it is from the left end of its wall`),
      width: this.#need(row, 'width', say`its width`),
      height: this.#need(row, 'height', say`its height`),
    });
  }

  /** The wall that something stands on: the one named, else that of the row above. */
  #wallOf(row: Row, kind: RowKind, room: Draft): WallFacts | null {
    const name = row.take('wall', readNameCell);
    const wall = name === null ? room.wall : room.facts.walls.find(({ id }) => id === name);
    if (row.typed('wall') === '' && wall) row.show('wall', wall.id);
    const there = room.facts.walls.map(({ id }) => id).join(', ') || say`none yet`;
    if (!wall && row.typed('wall') === '') row.complain('wall', say`there is nothing, and no wall in a row above; a ${KIND_WORDS[kind]} stands on one.`);
    else if (!wall && name !== null) row.complain('wall', say`${name} is no wall of ${room.facts.name} in a row above; its walls are ${there}.`);
    room.wall = wall ?? room.wall;
    return wall ?? null;
  }

  #need(row: Row, column: RoomColumn, takes: string): string {
    return row.need(column, this.#length, takes) ?? '';
  }

  get #length(): (cell: string) => Outcome<string, string> {
    return lengthReader(this.#house.lengths);
  }
}

function named(row: Row): { name?: string } {
  return row.typed('name') === '' ? {} : { name: row.typed('name') };
}

function readKind(row: Row): RowKind | null {
  if (row.typed('what') === '') {
    row.show('what', KIND_WORDS.wall);
    return 'wall';
  }
  return row.take(
    'what',
    (cell) => {
      const word = cell.replaceAll(/[\s_-]+/g, ' ');
      const kind = ROW_KINDS.find((one) => isOneOf([one, KIND_WORDS[one]], word));
      return kind ? good(kind) : bad(say`${quoteTyped(cell)} is nothing that a row is of; it takes ${ROW_KINDS.map((one) => KIND_WORDS[one]).join(', ')}.`);
    },
    (kind) => KIND_WORDS[kind],
  );
}

function readYes(cell: string): Outcome<boolean, string> {
  if (isOneOf(YES, cell)) return good(true);
  return isOneOf(NO, cell) ? good(false) : bad(say`${quoteTyped(cell)} is neither yes nor no; it takes yes, or nothing.`);
}

function sayYes(isSo: boolean): string {
  return isSo ? YES[0] : NO[0];
}

function readSides(cell: string): Outcome<readonly Side[], string> {
  const words = cell.split(/[\s,;]+/).filter((word) => word !== '' && !isOneOf(AND, word));
  const sides = words.flatMap((word) => REVEAL_SIDES.find((side) => isOneOf([side, SIDE_WORDS[side]], word)) ?? []);
  return sides.length === words.length ? good(sides) : bad(say`${quoteTyped(cell)} names more than the sides of a reveal; it takes some of ${REVEAL_SIDES.map((side) => SIDE_WORDS[side]).join(', ')}.`);
}

/** Whatever its capitals. */
function isOneOf(words: readonly string[], word: string): boolean {
  return words.some((one) => one.toLowerCase() === word.toLowerCase());
}

const FACT_COLUMNS: Readonly<Record<string, Readonly<Record<string, RoomColumn>>>> = {
  rooms: { name: 'room', storey: 'storey', note: 'note' },
  walls: { id: 'wall', length: 'length', turn: 'corner', height: 'height', base: 'floorLine', plumbRight: 'lean', note: 'note' },
  openings: { id: 'name', from: 'from', width: 'width', height: 'height', sill: 'sill', reveal: 'reveal', depth: 'reveal', sides: 'covered' },
  rails: { id: 'name', name: 'name', walls: 'wall', at: 'sill', width: 'height' },
  furniture: { id: 'name', name: 'name', wall: 'wall', from: 'from', width: 'width', height: 'height' },
};

/** Says at each row what the house's rules have against it: the room by itself, in a house that has no other. */
function blameRows({ facts, origins }: Draft, house: House): void {
  const tried = applyEdit(newHouse('Rooms', house.lengths), { kind: 'add-rooms', rooms: [facts] });
  if (tried.ok) return;
  for (const found of tried.faults) {
    const [origin, row] = [...origins].filter(([path]) => found.path === path || found.path.startsWith(`${path}.`)).at(-1) ?? [];
    if (!origin || !row) {
      origins.get('rooms[0]')!.say(null, found.message);
      continue;
    }
    const [, list = ''] = /(\w+)\[\d+\]$/.exec(origin)!;
    const key = found.path.slice(origin.length).split('.').at(-1)!.replace(/\[\d+\]$/, '');
    row.blame(FACT_COLUMNS[list]![key], found);
  }
}
