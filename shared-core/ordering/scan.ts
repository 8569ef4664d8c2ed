import { fault, good, type Outcome } from '../base/index.ts';
import { type Element, GROUP_SEPARATOR, readElements, readPrintedElements } from './element-string.ts';
import { checkGtin, GTIN_LENGTHS, quoteTyped } from '../units/index.ts';
import { say } from '../words/index.ts';

/** What the code on a package says. */
export interface Scan {
  /** The package's own GTIN, or that of what is in it; its digits as they were read. */
  readonly gtin: string | null;
  /** The batch or lot. */
  readonly run: string | null;
  /** The count that the code states, of what its GTIN names: of doubles, where that is a double. */
  readonly rolls: number | null;
  /** The code as it came, without the space around it. */
  readonly text: string;
}

/** More than all identifiers that are read can hold once each. */
const LONGEST_SCAN = 300;
const TAKES = say`it takes a GTIN of 8, 12, 13 or 14 digits or a GS1 code such as (01)06291041500213(10)2214(37)8`;

/** What a reader may send in front of a code, to say which kind of bar code it was. */
const ELEMENT_PREFIXES = [']C1', ']d2', ']Q3', ']e0'];
const GTIN_PREFIXES = [']E0', ']E4', ']I1'];

/**
 * What a code reader sent or somebody typed from under a bar code: a GTIN, a run and a count, where it says them.
 *
 * Reads a GTIN alone, with spaces or hyphens between its digits; and GS1 element strings, as printed with brackets around
 * their identifiers or as a reader sends them, with the control character 29 (GS) after each value of no fixed length
 * that another follows. The identifiers are 00 01 02 10 11 13 15 16 17 20 21 30 37 240 241. In front may stand
 * what the reader says of the bar code: ]C1 ]d2 ]Q3 ]e0 for element strings, ]E0 ]E4 ]I1 for a GTIN alone. Without that,
 * a GS and brackets, an element string has to begin with 00, 01 or 02 and digits enough, since a number typed by hand
 * may begin with any other identifier; 8, 12, 13 or 14 digits are a GTIN.
 *
 * Fails, with a message that quotes the place and says what would be accepted, on anything else: an identifier that is
 * not read, a wrong length, check digit or date, an identifier that comes twice, GTINs of both kinds, two counts. A
 * reader that leaves the GS out can't be seen through: the value goes on to the end.
 * Source: GS1 General Specifications, application identifiers and check digits; ISO/IEC 15424 for the marks in front
 * (both from memory).
 *
 * `(01)06291041500213(10)2214(37)8` is 8 of the GTIN 06291041500213, run 2214.
 */
export function readScan(text: string): Outcome<Scan> {
  const scanned = text.trim();
  if (scanned === '') return fault('', say`There is no code here; ${TAKES}`);
  if (scanned.length > LONGEST_SCAN) return fault('', say`${quoteTyped(scanned)} is more than ${LONGEST_SCAN} characters; ${TAKES}`);

  const prefix = scanned.startsWith(']') ? scanned.slice(0, 3) : null;
  const code = prefix === null ? scanned : scanned.slice(3);
  if (prefix !== null && GTIN_PREFIXES.includes(prefix)) return readGtin(code, scanned);
  if (prefix !== null && !ELEMENT_PREFIXES.includes(prefix)) {
    return fault('', say`${quoteTyped(prefix)} is another kind of bar code than those that are read, which are ${[...ELEMENT_PREFIXES, ...GTIN_PREFIXES].join(', ')}; ${TAKES}`);
  }
  if (code.startsWith('(')) return fromElements(readPrintedElements(code), scanned);
  if (prefix !== null || code.includes(GROUP_SEPARATOR) || /^(?:0[12][0-9]{14}|00[0-9]{18})/.test(code)) return fromElements(readElements(code), scanned);
  if (GTIN_LENGTHS.includes(digitsOf(code)?.length ?? 0)) return readGtin(code, scanned);
  return fault('', say`${quoteTyped(scanned)} is no code of a package; ${TAKES}, and no pattern number or run number`);
}

/** Digits without the spaces and hyphens between them; null where there is anything else. */
function digitsOf(code: string): string | null {
  return /^[0-9](?:[ \u00a0-]?[0-9])*$/.test(code) ? code.replaceAll(/[ \u00a0-]/g, '') : null;
}

function readGtin(code: string, text: string): Outcome<Scan> {
  const gtin = checkGtin(digitsOf(code) ?? code);
  return gtin.ok ? good({ gtin: gtin.value, run: null, rolls: null, text }) : gtin;
}

function fromElements(elements: Outcome<readonly Element[]>, text: string): Outcome<Scan> {
  if (!elements.ok) return elements;
  const valueOf = (...identifiers: readonly string[]) => elements.value.find(({ identifier }) => identifiers.includes(identifier))?.value ?? null;
  const count = valueOf('37', '30');
  return good({ gtin: valueOf('01', '02'), run: valueOf('10'), rolls: count === null ? null : Number(count), text });
}
