import { fault, good, type Outcome } from '../base/index.ts';
import { faultOfCheckDigit, isCalendarDay, quoteTyped } from '../units/index.ts';
import { say } from '../words/index.ts';

/** What a reader sends for FNC1: the control character 29, between values of no fixed length and what follows. */
export const GROUP_SEPARATOR = '\u001d';

/** One value of a GS1 element string with the identifier that says what it is. */
export interface Element {
  readonly identifier: string;
  readonly value: string;
}

interface Field {
  readonly least: number;
  readonly most: number;
  readonly isDigits: boolean;
  /** What is wrong with a value of the right length and characters. */
  readonly faultOf?: (value: string) => string | null;
}

const digits = (count: number, faultOf?: Field['faultOf']): Field => ({ least: count, most: count, isDigits: true, ...(faultOf && { faultOf }) });
const upTo = (most: number): Field => ({ least: 1, most, isDigits: false });
const gtin = digits(14, faultOfCheckDigit);
const date = digits(6, faultOfDate);
const count: Field = { least: 1, most: 8, isDigits: true, faultOf: (value) => (Number(value) > 0 ? null : say`${quoteTyped(value)} counts nothing; it takes a count from 1`) };

/** GS1 General Specifications, application identifiers (from memory). Those of a fixed length need no separator. */
const FIELDS: ReadonlyMap<string, Field> = new Map([
  ['00', digits(18, faultOfCheckDigit)],
  ['01', gtin],
  ['02', gtin],
  ['10', upTo(20)],
  ['11', date],
  ['13', date],
  ['15', date],
  ['16', date],
  ['17', date],
  ['20', digits(2)],
  ['21', upTo(20)],
  ['30', count],
  ['37', count],
  ['240', upTo(30)],
  ['241', upTo(30)],
]);
const READ = say`those that are read are ${[...FIELDS.keys()].join(', ')}`;

/** Pairs of which a code has one: its own GTIN or that of its content, a count of items or one of what is contained. */
const ONE_OF: readonly (readonly [string, string])[] = [['01', '02'], ['30', '37']];

/** The characters that a value of letters and digits may have: set 82 of the GS1 General Specifications (from memory). */
const CHARACTERS = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/;

/**
 * The elements of a string as a reader sends it.
 *
 * A value of a fixed length ends by itself, any other at a separator or at the end; a separator after the former and in
 * front of the whole is passed over. `readScan` says what is refused.
 * Example: 0106291041500213102214␝378 is 01 with 06291041500213, 10 with 2214 and 37 with 8.
 */
export function readElements(code: string): Outcome<readonly Element[]> {
  const elements: Element[] = [];
  for (let at = code.startsWith(GROUP_SEPARATOR) ? 1 : 0; at < code.length; ) {
    const identifier = [code.slice(at, at + 2), code.slice(at, at + 3)].find((start) => FIELDS.has(start));
    const field = identifier === undefined ? undefined : FIELDS.get(identifier);
    if (identifier === undefined || field === undefined) return unknown(code, code.slice(at, at + 2));
    const from = at + identifier.length;
    const separator = code.indexOf(GROUP_SEPARATOR, from);
    const open = separator < 0 ? code.length : separator;
    const to = field.least === field.most ? Math.min(open, from + field.most) : open;
    elements.push({ identifier, value: code.slice(from, to) });
    at = to === separator ? to + 1 : to;
  }
  return judge(code, elements);
}

/**
 * The elements of a string as it is printed under a bar code, each identifier in brackets.
 *
 * Values are taken without the space around them and may hold no brackets themselves, which would be read as identifiers.
 * Example: (01)06291041500213(10)2214 is 01 with 06291041500213 and 10 with 2214.
 */
export function readPrintedElements(code: string): Outcome<readonly Element[]> {
  const elements: Element[] = [];
  const element = /\(([0-9]{2,4})\)([^()]*)/y;
  while (element.lastIndex < code.length) {
    const at = element.lastIndex;
    const found = element.exec(code);
    if (found === null) return fault('', say`In ${quoteTyped(code)}, ${quoteTyped(code.slice(at))} is not understood; brackets are taken around identifiers alone, such as (01) or (10)`);
    const [, identifier = '', value = ''] = found;
    if (!FIELDS.has(identifier)) return unknown(code, identifier);
    elements.push({ identifier, value: value.trim() });
  }
  return judge(code, elements);
}

function unknown(code: string, identifier: string) {
  return fault('', say`In ${quoteTyped(code)}, ${quoteTyped(identifier)} is no identifier that is read here; ${READ}`);
}

function judge(code: string, elements: readonly Element[]): Outcome<readonly Element[]> {
  const has = (wanted: string) => elements.some(({ identifier }) => identifier === wanted);
  const refused = (problem: string) => fault('', say`In ${quoteTyped(code)}, ${problem}`);
  if (elements.length === 0) return refused(say`no identifier is followed by a value, such as (01)06291041500213`);
  for (const [index, { identifier, value }] of elements.entries()) {
    const problem = faultOfValue(identifier, value);
    if (problem !== null) return refused(problem);
    if (elements.findIndex((other) => other.identifier === identifier) < index) return refused(say`(${identifier}) comes twice; each identifier is taken once`);
  }
  const pair = ONE_OF.find(([one, other]) => has(one) && has(other));
  if (pair) return refused(say`(${pair[0]}) and (${pair[1]}) stand together; one of them is taken`);
  return good(elements);
}

function faultOfValue(identifier: string, value: string): string | null {
  const { least, most, isDigits, faultOf } = FIELDS.get(identifier)!;
  const size = least === most ? most : say`${least} to ${most}`;
  const accepted = isDigits ? say`(${identifier}) takes ${size} digits` : say`(${identifier}) takes ${size} letters, digits and marks without spaces`;
  if (value.length < least || value.length > most) return say`${accepted}, and ${quoteTyped(value)} has ${value.length}`;
  if (!(isDigits ? /^[0-9]+$/ : CHARACTERS).test(value)) return say`${accepted}, and ${quoteTyped(value)} has other characters`;
  const problem = faultOf?.(value) ?? null;
  return problem === null ? null : `(${identifier}): ${problem}`;
}

/** Year, month and day in two digits each; the day may be 00 for the whole month. Every fourth year is read as a leap year. */
function faultOfDate(value: string): string | null {
  const [year, month, day] = [value.slice(0, 2), value.slice(2, 4), value.slice(4)].map(Number) as [number, number, number];
  const isDay = isCalendarDay(2000 + year, month, day === 0 ? 1 : day);
  return isDay ? null : say`${quoteTyped(value)} is no date; it takes year, month and day in two digits each, such as 260302`;
}
