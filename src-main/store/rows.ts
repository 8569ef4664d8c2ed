import type { House } from '../../shared-core/house/index.ts';
import { decodeHouse, encodeHouse } from '../../shared-core/house/index.ts';
import { bad, type Fault, type Outcome } from '../../shared-core/base/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { FACT_TABLES, type FactTable } from './tables.ts';

export interface FactPlace {
  readonly table: FactTable | 'house';
  readonly id: string;
}

export interface StoredFacts {
  readonly position: number;
  readonly facts: string;
}

/** What became of one row; null is a row that is not there. */
export interface RowChange extends FactPlace {
  readonly before: StoredFacts | null;
  readonly after: StoredFacts | null;
}

const LIST_OF = {
  covering: 'coverings',
  room: 'rooms',
  supplier: 'suppliers',
  stock: 'stock',
  offer: 'offers',
  placed_order: 'orders',
  delivery: 'deliveries',
  sent_back: 'returns',
  leftover: 'leftovers',
  matching: 'matching',
  run_choice: 'runChoices',
  picture: 'pictures',
  photo: 'photos',
  task_choice: 'tasks',
  own_material: 'materials',
  expense: 'expenses',
} as const satisfies Readonly<Record<FactTable, keyof House>>;

export type Rows = ReadonlyMap<string, FactPlace & StoredFacts>;

/** A house as rows, one for what is true of it as a whole and one for each thing in its lists. */
export function toRows(house: House): Rows {
  const document = encodeHouse(house);
  const lists = new Set<string>(Object.values(LIST_OF));
  const own = Object.fromEntries(Object.entries(document).filter(([key]) => !lists.has(key)));
  const rows = new Map<string, FactPlace & StoredFacts>();
  const add = (table: FactTable | 'house', id: string, position: number, facts: unknown) =>
    rows.set(`${table} ${id}`, { table, id, position, facts: JSON.stringify(facts) });
  add('house', '1', 0, own);
  for (const table of FACT_TABLES) {
    (document[LIST_OF[table]] ?? []).forEach((item, position) => add(table, rowId(item, position), position, item));
  }
  return rows;
}

/** A picture's row is its covering's, so that one more or one less leaves the others their rows. */
function rowId(item: object, position: number): string {
  if ('id' in item) return String(item.id);
  return 'image' in item && 'covering' in item ? String(item.covering) : String(position);
}

/** Rows as a house; a fault where a row was damaged or written by something else. */
export function fromRows(ownFacts: string, lists: Readonly<Record<FactTable, readonly StoredFacts[]>>): Outcome<House> {
  const faults: Fault[] = [];
  const parse = (facts: string, path: string): unknown => {
    try {
      return JSON.parse(facts);
    } catch {
      faults.push({ path, message: say`is damaged and can't be read` });
      return null;
    }
  };
  const document: Record<string, unknown> = { ...(parse(ownFacts, 'house') as object | null) };
  for (const table of FACT_TABLES) document[LIST_OF[table]] = lists[table].map(({ facts }, index) => parse(facts, `${LIST_OF[table]}[${index}]`));
  if (faults.length > 0) return bad(faults);
  const decoded = decodeHouse(document);
  // Every fault of the facts has a place, so that it is told from one of the file.
  return decoded.ok ? decoded : bad(decoded.faults.map((one) => (one.path === '' ? { ...one, path: 'house' } : one)));
}

/** What an edit changed, from the text in which it is kept; null where it is damaged or written by something else. */
export function readChanges(text: string): readonly RowChange[] | null {
  let changes: unknown;
  try {
    changes = JSON.parse(text);
  } catch {
    return null;
  }
  return Array.isArray(changes) && changes.every(isRowChange) ? changes : null;
}

function isRowChange(change: Partial<RowChange> | null): change is RowChange {
  if (typeof change?.id !== 'string' || !(change.table === 'house' || FACT_TABLES.some((table) => table === change.table))) return false;
  return [change.before, change.after].every((row) => row === null || (Number.isSafeInteger(row?.position) && typeof row?.facts === 'string'));
}

export function changesBetween(before: Rows, after: Rows): readonly RowChange[] {
  const stored = (row: (FactPlace & StoredFacts) | undefined): StoredFacts | null => (row ? { position: row.position, facts: row.facts } : null);
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key) => {
    const [old, now] = [before.get(key), after.get(key)];
    if (old && now && old.facts === now.facts && old.position === now.position) return [];
    const { table, id } = (now ?? old)!;
    return [{ table, id, before: stored(old), after: stored(now) }];
  });
}
