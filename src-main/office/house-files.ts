import { readFile, stat } from 'node:fs/promises';
import { extname } from 'node:path';
import { bad, type Fault, fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { encodeHouse, type House, LARGEST_DOCUMENT_CHARACTERS, readDocument } from '../../shared-core/house/index.ts';
import { HouseStore } from '../store/index.ts';

export const HOUSE_FILE_ENDING = '.struckline';
const MOST_BYTES_A_CHARACTER = 4;

export function isHouseFile(path: string): boolean {
  return extname(path).toLowerCase() === HOUSE_FILE_ENDING;
}

/** The house in a house file or an exchange document, whichever the path's ending says. */
export async function readHouse(path: string): Promise<Outcome<House>> {
  if (!isHouseFile(path)) return readDocumentFile(path);
  const store = await HouseStore.open(path);
  if (!store.ok) return store;
  const read = await store.value.read();
  await store.value.close();
  return read.ok ? good(read.value.house) : read;
}

/** Makes a house file; never in place of one that is there. */
export async function makeHouseFile(path: string, house: House): Promise<readonly Fault[]> {
  if (!isHouseFile(path)) return [{ path: '', message: `${path} is not the name of a house file; it takes a name that ends in ${HOUSE_FILE_ENDING}.` }];
  const store = await HouseStore.create(path, house);
  if (!store.ok) return store.faults;
  await store.value.close();
  return [];
}

/** Replaces the house in a house file, as one edit that can be undone. */
export async function replaceHouse(path: string, house: House): Promise<readonly Fault[]> {
  if (!isHouseFile(path)) return [{ path: '', message: `${path} is not a house file; import writes into a file that ends in ${HOUSE_FILE_ENDING}.` }];
  const store = await HouseStore.open(path);
  if (!store.ok) return store.faults;
  try {
    const read = await store.value.read();
    if (!read.ok) return read.faults;
    const changed = await store.value.edit({ kind: 'replace-house', house: encodeHouse(house) as never }, read.value.revision);
    if (changed.ok) return [];
    return changed.failure.code === 'refused' ? changed.failure.faults : [{ path: '', message: 'The house was changed meanwhile by another program; nothing was replaced. Try again.' }];
  } finally {
    await store.value.close();
  }
}

async function readDocumentFile(path: string): Promise<Outcome<House>> {
  let bytes: Buffer;
  try {
    const { size } = await stat(path);
    if (size > LARGEST_DOCUMENT_CHARACTERS * MOST_BYTES_A_CHARACTER) return fault('', `${path} is ${size} bytes, far larger than a house document. Check that it is the right file.`);
    bytes = await readFile(path);
  } catch (error) {
    return fault('', `${path} can't be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  try {
    return readDocument(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return bad([{ path: '', message: `${path} is not text in UTF-8; a house document is JSON text.` }]);
  }
}
