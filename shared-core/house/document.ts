import { z } from 'zod';
import { bad, type Fault, fault, good, type Outcome } from '../base/index.ts';
import { type LengthStyle, type Measure, printLength } from '../units/index.ts';
import { quoteValue } from './accepted.ts';
import { house as houseSchema } from './house.ts';
import { findFaults } from './invariants.ts';
import { firstFaults, MOST_FAULTS } from './report.ts';
import { isKept } from './photo.ts';
import type { House, HouseDocument } from './types.ts';
import { say } from '../words/index.ts';

/** All the pictures and photos that a house takes, and far more facts than people type. */
export const LARGEST_DOCUMENT_CHARACTERS = 21_000_000;
const DEEPEST_FACTS = 20;
/** Twice what a house with every list full of ordinary things has; what is wrong with more would fill the memory. */
const MOST_VALUES = 500_000;
const LONGEST_KEY = 60;

/**
 * Reads an exchange document's text as a house.
 *
 * Either all of it is good or nothing is taken: every fault names its path, the value and what is accepted.
 * Example: `readDocument('{"format":"struckline-house","version":1}')` fails with the one fault at path `name`.
 */
export function readDocument(documentText: string): Outcome<House> {
  if (documentText.length > LARGEST_DOCUMENT_CHARACTERS) {
    return fault('', say`The document is larger than ${LARGEST_DOCUMENT_CHARACTERS / 1_000_000} million characters; a house document is smaller. Check that it is the right file.`);
  }
  let raw: unknown;
  try {
    raw = JSON.parse(documentText);
  } catch {
    return fault('', say`The document is not JSON text; a house document is JSON that begins with {"format": "struckline-house", "version": 1.`);
  }
  const read = decodeHouse(raw);
  if (!read.ok) return read;
  const missing = read.value.photos.flatMap(({ image }, index) => (isKept(image) ? [{ path: `photos[${index}].image`, message: say`is ${quoteValue(image)}, which stands for a photo in a house file; a document takes the photo itself, as a data URL` }] : []));
  return missing.length > 0 ? bad(missing) : read;
}

/** Decodes a parsed exchange document and checks what its facts must have in common. */
export function decodeHouse(raw: unknown): Outcome<House> {
  const decoded = decodeFacts(houseSchema, raw, '');
  if (!decoded.ok) return decoded;
  const house = decoded.value as House;
  const faults = findFaults(house);
  return faults.length > 0 ? bad(faults) : good(house);
}

/** Decodes facts by their schema; each fault's path begins with `at`. */
export function decodeFacts<Schema extends z.ZodType>(schema: Schema, raw: unknown, at: string): Outcome<z.output<Schema>> {
  const shape = shapeOf(raw);
  if (shape === 'deep') {
    return fault(at, at === '' ? say`This is nested more than ${DEEPEST_FACTS} deep; facts of a house never are` : say`is nested more than ${DEEPEST_FACTS} deep; facts of a house never are`);
  }
  if (shape === 'many') {
    return fault(at, at === '' ? say`This holds more than ${MOST_VALUES} values; a house holds fewer` : say`holds more than ${MOST_VALUES} values; a house holds fewer`);
  }
  const result = z.safeDecode(schema, raw as z.input<Schema>);
  if (result.success) return good(result.data);
  const found: Fault[] = [];
  for (const issue of result.error.issues) {
    found.push(...toFaults(issue, at));
    if (found.length > MOST_FAULTS) break;
  }
  return bad(firstFaults(found));
}

/** Walked level by level, because what is nested without end would end a recursion first. */
function shapeOf(raw: unknown): 'good' | 'deep' | 'many' {
  let level: readonly unknown[] = [raw];
  let values = 0;
  for (let depth = 0; depth <= DEEPEST_FACTS; depth += 1) {
    level = level.flatMap((value) => (typeof value === 'object' && value !== null ? Object.values(value) : []));
    values += level.length;
    if (values > MOST_VALUES) return 'many';
    if (level.length === 0) return 'good';
  }
  return 'deep';
}

/** A house as an exchange document, lengths as they were typed. */
export function encodeHouse(house: House): HouseDocument {
  return z.encode(houseSchema, house as z.output<typeof houseSchema>);
}

/**
 * A house as the text of an exchange document, every length in the house's own style where that is exact.
 *
 * `readDocument(writeDocument(house))` gives a house of equal lengths, money and names.
 */
export function writeDocument(house: House): string {
  return `${JSON.stringify(encodeHouse(printMeasures(house, house.lengths)), null, 2)}\n`;
}

function printMeasures<Value>(value: Value, style: LengthStyle): Value {
  if (Array.isArray(value)) return value.map((item) => printMeasures(item, style)) as Value;
  if (typeof value !== 'object' || value === null) return value;
  if ('typed' in value && 'length' in value) {
    const { length } = value as unknown as Measure;
    return { length, typed: printLength(length, style) } as Value;
  }
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, printMeasures(item, style)])) as Value;
}

/** The JSON Schema of the exchange document. */
export function documentSchema(): object {
  return {
    ...z.toJSONSchema(houseSchema, { io: 'input' }),
    title: 'A house planned with Struckline',
    description: `Facts only. Lengths are texts with their unit, for example ${quoteValue('12\' 4 1/2"')} or "3.76 m".`,
  };
}

/** `rooms[2].walls[0].length` from the schema library's list of keys. */
export function printPath(keys: readonly PropertyKey[], at = ''): string {
  return keys.reduce<string>(
    (path, key) => (typeof key === 'number' ? `${path}[${key}]` : path === '' ? printKey(key) : `${path}.${printKey(key)}`),
    at,
  );
}

function printKey(key: PropertyKey): string {
  const text = String(key);
  return text.length > LONGEST_KEY ? `${text.slice(0, LONGEST_KEY)}…` : text;
}

function toFaults(issue: z.core.$ZodIssue, at: string): Fault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.slice(0, MOST_FAULTS + 1).map((key) => ({ path: printPath([...issue.path, key], at), message: issue.message }));
  }
  if (issue.code === 'invalid_union') {
    // Of the forms a fact may take, the one that came furthest tells most: a length that could not be understood
    // rather than 'not a list of two'.
    const understood = issue.errors.flat().find((inner) => inner.code === 'custom' || inner.path.length > 0 || inner.code === 'unrecognized_keys');
    if (understood) return toFaults({ ...understood, path: [...issue.path, ...understood.path] }, at);
  }
  return [{ path: printPath(issue.path, at), message: issue.message }];
}
