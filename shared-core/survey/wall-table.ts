import { fault, good, type Fault } from '../base/index.ts';
import { applyEdit, type Edit, encodeHouse, type House, type Room } from '../house/index.ts';
import { type ColumnWords, parseMeasure, quoteTyped, wordsIn } from '../units/index.ts';
import { endsReader, lengthReader, readNameCell, type ReadRow, readRows, readTurnCell, type RowCells, type TableKind } from './read-cells.ts';
import { type Ends, endsText, nextWallId, turnText } from './typed-walls.ts';
import { say, sayDecimal } from '../words/index.ts';

/** In the order that a table without headings has. */
const WORDS = {
  wall: wordsIn(say`wall, name, wall name, wall no, letter, no, number`),
  length: wordsIn(say`length, wall length, width, wall width, long, run, measure, size`),
  corner: wordsIn(say`corner, turn, angle, inner angle, corner at its right, right corner, corner right`),
  height: wordsIn(say`height, wall height, ceiling height, high, ht`),
  floorLine: wordsIn(say`floor line, floor, floor level, base, base line, baseline`),
  lean: wordsIn(say`lean, plumb, out of plumb, lean of its right corner`),
  note: wordsIn(say`note, notes, remark, remarks, comment, comments`),
} satisfies ColumnWords<string>;
export type WallColumn = keyof typeof WORDS;
export const WALL_COLUMNS = Object.entries(WORDS).map(([column, [name]]) => [column as WallColumn, name] as const);

const WITHOUT_HEADINGS: readonly WallColumn[] = ['length', 'corner', 'height', 'floorLine', 'lean', 'note'];
const FACT_COLUMNS: Readonly<Record<string, WallColumn>> = { id: 'wall', length: 'length', turn: 'corner', height: 'height', base: 'floorLine', plumbRight: 'lean', note: 'note' };

/** A wall as the exchange document writes it. */
type WallFacts = Extract<Edit, { kind: 'add-walls' }>['walls'][number];

export interface WallTable {
  /** What is wrong with the table, or with the room as it would be, and belongs to no row. */
  readonly faults: readonly Fault[];
  readonly rows: readonly ReadRow<WallColumn>[];
  /** What takes the walls into the room; null while anything is wrong. */
  readonly edit: Extract<Edit, { kind: 'add-walls' | 'replace-walls' }> | null;
}

export interface WallsTaken {
  /** Whether they take the place of the room's walls or follow them. */
  readonly isReplacing: boolean;
  /** What a wall is high before which none has a height. */
  readonly height: Ends | null;
}

/**
 * The walls of a table that was copied from a spreadsheet or a file and pasted, for a room of a house.
 *
 * Cells are kept apart by tabs, semicolons or commas (`readSeparated`). A first row without a digit holds headings, in any
 * order and in the trade's other words too; one such as `Length (cm)` gives bare numbers their unit. Without headings the
 * columns are length, corner, height, floor line, lean, note, and before them the wall where the first cell is a name.
 * Lengths are read as a length field of the house reads them and kept as typed; a height or a floor line may have two ends, as
 * `8' to 9' 6"`. An empty corner is inside, an empty height that of the wall before; walls without a name get the next
 * letter. A wall that takes the place of one keeps its openings, and what the table has no column for.
 *
 * Where anything is wrong there is no edit: what is wrong with a cell stands at its row as a sentence, in the order of
 * the rows. Commas between bare numbers are refused without headings: `3,76` is one length to one and two to another.
 *
 * `12' 4"` and `outside` before a tab are a wall A, 12' 4" long, an outside corner at its right.
 */
export function readWallTable(text: string, house: House, room: Room, { isReplacing, height }: WallsTaken): WallTable {
  const opened = readRows(text, WALL_TABLE);
  if (!opened.ok) return { faults: opened.faults, rows: [], edit: null };
  const rows = opened.value;
  const there = encodeHouse({ ...house, rooms: [room] }).rooms![0]!.walls as WallFacts[];
  const ids = nameWalls(rows, there.map(({ id }) => id), isReplacing);

  let last = height;
  const walls = rows.map((row, index): WallFacts => {
    const old = isReplacing ? there.find(({ id }) => id === ids[index]) : undefined;
    const length = row.need('length', lengthReader(house.lengths), say`a length, such as ${house.lengths === 'imperial' ? `12' 4 1/2"` : sayDecimal('3.76')}`) ?? '';
    const turn = row.take('corner', readTurnCell, turnText) ?? (row.has('corner') ? 'inside' : (old?.turn ?? 'inside'));
    const high = row.take('height', endsReader(house.lengths, say`A height`), endsText) ?? old?.height ?? last;
    const base = row.take('floorLine', endsReader(house.lengths, say`A floor line`), endsText) ?? (row.has('floorLine') ? '0 in' : (old?.base ?? '0 in'));
    const lean = row.take('lean', lengthReader(house.lengths)) ?? (row.has('lean') ? null : (old?.plumbRight ?? null));
    if (row.typed('corner') === '') row.show('corner', turnText(turn));
    if (row.typed('height') === '') {
      if (high === null) row.complain('height', say`there is nothing, and no wall before it has one; it takes a length, or write one in the field above.`);
      else row.show('height', endsText(high));
    }
    last = high ?? last;
    const note = row.has('note') ? row.typed('note') : (old?.note ?? '');
    const { plumbRight: _lean, note: _note, ...kept } = old ?? {};
    return { ...kept, id: ids[index]!, length, turn, height: high ?? '', base, ...(lean === null ? {} : { plumbRight: lean }), ...(note === '' ? {} : { note }) };
  });
  const edit = (taken: WallFacts[]) => (isReplacing ? ({ kind: 'replace-walls', room: room.id, walls: taken } as const) : ({ kind: 'add-walls', room: room.id, walls: taken } as const));
  const areRowsRead = rows.every(({ isGood }) => isGood);
  const faults = blameRows(house, edit(walls.filter((_, index) => rows[index]!.isGood)), rows.filter(({ isGood }) => isGood), isReplacing ? 0 : there.length);
  const isGood = faults.length === 0 && rows.every((row) => row.isGood);
  return { faults: areRowsRead ? faults : [], rows: rows.map(({ read }) => read), edit: isGood ? edit(walls) : null };
}

const WALL_TABLE: TableKind<WallColumn> = {
  words: WORDS,
  needed: ['length'],
  mostRows: 200,
  longestText: 100_000,
  takes: say`it takes one row for each wall, with the columns ${WALL_COLUMNS.map(([, name]) => name).join(', ')}`,
  columnsWithout(lines, separator) {
    const first = lines[0]!;
    // A wall has a length, so that its row has a number.
    if (!first.cells.some((cell) => /\p{N}/u.test(cell))) return null;
    const split = separator === ',' ? lines.find(({ cells }) => cells.some((cell, index) => /^\d/.test(cell) && /\d$/.test(cells[index - 1] ?? ''))) : undefined;
    if (split) return fault('', say`Line ${split.number}: ${quoteTyped(split.cells.join(','))} can be read in two ways, as decimals and as cells; keep the cells apart by tabs or semicolons, or put headings above them`);
    return good(/^\p{L}/u.test(first.cells[0]!) && !parseMeasure(first.cells[0]!).ok ? ['wall', ...WITHOUT_HEADINGS] : WITHOUT_HEADINGS);
  },
};

/** The name of each wall: its own, else that of the wall in its place, else the next letter. */
function nameWalls(rows: readonly RowCells<WallColumn>[], there: readonly string[], isReplacing: boolean): readonly string[] {
  const own = rows.map((row) => row.take('wall', readNameCell));
  const taken = [...there, ...own.filter((name) => name !== null)];
  return rows.map((row, index) => {
    const name = own[index]!;
    if (name !== null) {
      if (own.indexOf(name) < index) row.complain('wall', say`${name} is a row further up already; each wall has a name of its own.`);
      else if (!isReplacing && there.includes(name)) row.complain('wall', say`the room has a wall ${name} already; leave its name out, or put these walls in their place.`);
      return name;
    }
    const inPlace = isReplacing ? there[index] : undefined;
    const given = inPlace !== undefined && !own.includes(inPlace) ? inPlace : nextWallId(taken);
    taken.push(given);
    row.show('wall', given);
    return given;
  });
}

/** Says at each row what the house's rules have against its wall; gives what they have against anything else. */
function blameRows(house: House, edit: Edit, rows: readonly RowCells<WallColumn>[], before: number): readonly Fault[] {
  const tried = applyEdit(house, edit);
  return tried.ok ? [] : tried.faults.filter((found) => {
    const [, index = '', rest = ''] = /^(?:rooms\[\d+\]\.)?walls\[(\d+)\]\.?(.*)$/.exec(found.path) ?? [];
    const row = index === '' ? undefined : rows[Number(index) - before];
    row?.blame(FACT_COLUMNS[rest.replace(/\[\d+\]$/, '')], found);
    return row === undefined;
  });
}
