import { readFile, stat } from 'node:fs/promises';
import { extname } from 'node:path';
import { bad, type Fault, fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { type Edit, encodeHouse, type House, LARGEST_DOCUMENT_CHARACTERS, readDocument } from '../../shared-core/house/index.ts';
import { LARGEST_ROOM_TABLE_BYTES, readRoomTable } from '../../shared-core/survey/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { HouseStore, type StoreFailure } from '../store/index.ts';

export const HOUSE_FILE_ENDING = '.struckline';
const MOST_BYTES_A_CHARACTER = 4;

export function isHouseFile(path: string): boolean {
  return extname(path).toLowerCase() === HOUSE_FILE_ENDING;
}

/** A house as a file has it: how often it was changed there, and when last, as an ISO date and time in UTC; null where the file does not say. */
export interface StampedHouse {
  readonly house: House;
  readonly revision: number | null;
  readonly changed: string | null;
}

/** The house in a house file or an exchange document, whichever the path's ending says; of a document, which counts no changes, when its file was written. */
export async function readStamped(path: string): Promise<Outcome<StampedHouse>> {
  if (isHouseFile(path)) {
    const stored = await HouseStore.lookWhole(path);
    if (!stored.ok) return stored;
    const { house, revision, changed } = stored.value;
    return good({ house, revision, changed });
  }
  const text = await readText(path, LARGEST_DOCUMENT_CHARACTERS * MOST_BYTES_A_CHARACTER, say`a house document`, say`a house document is JSON text`);
  if (!text.ok) return text;
  const house = readDocument(text.value.text);
  return house.ok ? good({ house: house.value, revision: null, changed: text.value.written }) : house;
}

/** The house alone. */
export async function readHouse(path: string): Promise<Outcome<House>> {
  const stamped = await readStamped(path);
  return stamped.ok ? good(stamped.value.house) : stamped;
}

/** Makes a house file; never in place of one that is there. */
export async function makeHouseFile(path: string, house: House): Promise<readonly Fault[]> {
  if (!isHouseFile(path)) return [{ path: '', message: say`${path} is not the name of a house file; it takes a name that ends in ${HOUSE_FILE_ENDING}.` }];
  const store = await HouseStore.create(path, house);
  if (!store.ok) return store.faults;
  await store.value.close();
  return [];
}

/** Replaces the house in a house file, as one edit that can be undone. */
export async function replaceHouse(path: string, house: House): Promise<readonly Fault[]> {
  return changeHouse(path, () => good({ kind: 'replace-house', house: encodeHouse(house) as never }));
}

/** Adds the rooms of a CSV file to the house in a house file, as one edit that can be undone; all of them or none. */
export async function addRooms(path: string, tablePath: string): Promise<readonly Fault[]> {
  const text = await readText(tablePath, LARGEST_ROOM_TABLE_BYTES, say`a table of rooms`, say`a table of rooms is CSV text`);
  if (!text.ok) return text.faults;
  return changeHouse(path, (house) => {
    const { edit, faults, rows } = readRoomTable(text.value.text, house);
    if (edit) return good(edit);
    return bad([...faults, ...rows.flatMap(({ line, troubles }) => troubles.map(({ words }) => ({ path: '', message: say`Line ${line}: ${words}` })))]);
  });
}

async function changeHouse(path: string, editOf: (house: House) => Outcome<Edit>): Promise<readonly Fault[]> {
  if (!isHouseFile(path)) return [{ path: '', message: say`${path} is not a house file; a change is written into a file that ends in ${HOUSE_FILE_ENDING}.` }];
  const store = await HouseStore.open(path);
  if (!store.ok) return store.faults;
  try {
    const read = await store.value.read();
    if (!read.ok) return read.faults;
    const edit = editOf(read.value.house);
    if (!edit.ok) return edit.faults;
    const changed = await store.value.edit(edit.value, read.value.revision);
    if (changed.ok) return [];
    return faultsOf(changed.failure);
  } finally {
    await store.value.close();
  }
}

function faultsOf(failure: StoreFailure): readonly Fault[] {
  switch (failure.code) {
    case 'refused':
      return failure.faults.length > 0 ? failure.faults : [{ path: '', message: failure.message }];
    case 'changed-elsewhere':
      return [{ path: '', message: say`The house was changed meanwhile by another program; nothing was changed. Try again.` }];
    case 'look-only':
    case 'not-written':
      return [{ path: '', message: failure.message }];
  }
}

async function readText(path: string, mostBytes: number, what: string, form: string): Promise<Outcome<{ readonly text: string; readonly written: string }>> {
  let bytes: Buffer;
  let written: string;
  try {
    const { size, mtime } = await stat(path);
    written = mtime.toISOString();
    if (size > mostBytes) return fault('', say`${path} is ${size} bytes, far larger than ${what}. Check that it is the right file.`);
    bytes = await readFile(path);
  } catch (error) {
    return fault('', say`${path} can't be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  try {
    return good({ text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), written });
  } catch {
    return fault('', say`${path} is not text in UTF-8; ${form}.`);
  }
}
