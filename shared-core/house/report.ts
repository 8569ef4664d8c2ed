import type { Fault } from '../base/index.ts';
import { type Length, type LengthStyle, millimetres, parseMoney, printLength, ZERO_LENGTH } from '../units/index.ts';
import type { Covering, House } from './types.ts';
import { say, sayDecimal } from '../words/index.ts';

export type Report = (path: string, message: string) => void;

/** More than anybody mends at a time. */
export const MOST_FAULTS = 100;
const MOST_NAMED = 20;

/** The first faults, and that there are more where there are. */
export function firstFaults(faults: readonly Fault[]): readonly Fault[] {
  if (faults.length <= MOST_FAULTS) return faults;
  return [...faults.slice(0, MOST_FAULTS), { path: '', message: say`More is wrong than these ${MOST_FAULTS}; mend these first.` }];
}

/** The ids that something might have meant: 'A, B, C', and how many more there are where they are very many. */
export function sayKnown(things: readonly { readonly id: string }[]): string {
  if (things.length === 0) return say`none yet`;
  const named = things.slice(0, MOST_NAMED).map(({ id }) => id).join(', ');
  return things.length > MOST_NAMED ? say`${named} and ${things.length - MOST_NAMED} more` : named;
}

/** Far more than a room has, far less than a slip of the decimal mark makes. */
export const LONGEST_WALL = millimetres(100_000);
/** Keeps every floor area within the exact integers. */
export const LONGEST_OUTLINE = millimetres(500_000);
export const HIGHEST_WALL = millimetres(30_000);

/** A length as it stands in a message: exactly, with the decimal mark of the language. */
export function sayLength(length: Length, style: LengthStyle): string {
  return sayDecimal(printLength(length, style));
}

export function reportRepeatedIds(list: readonly { readonly id: string }[], path: string, report: Report): void {
  const seen = new Set<string>();
  list.forEach(({ id }, index) => {
    if (seen.has(id)) report(`${path}[${index}].id`, say`is "${id}", which another of the list has already; each id stands once`);
    seen.add(id);
  });
}

/** The covering of that id, or undefined after a fault that lists what there is. */
export function findCovering(id: string, house: House, path: string, report: Report): Covering | undefined {
  const covering = house.coverings.find((candidate) => candidate.id === id);
  if (!covering) report(path, say`is "${id}", which is not a covering of this house; its coverings are ${sayKnown(house.coverings)}`);
  return covering;
}

export function reportPrice(price: string | undefined, house: House, path: string, report: Report): void {
  if (price === undefined) return;
  const parsed = parseMoney(price, house.currency);
  if (!parsed.ok) for (const { message } of parsed.faults) report(path, say`is "${price}": ${message}`);
}

/** Reports a length outside of what it may be; true if it is good. */
export function reportRange(
  path: string,
  measure: { readonly length: Length; readonly typed: string },
  bounds: { readonly above?: Length; readonly least?: Length; readonly most: Length },
  report: Report,
): boolean {
  const { length, typed } = measure;
  if (bounds.above !== undefined && length <= bounds.above) {
    report(path, say`is ${typed}; it takes a length above ${shownBound(bounds.above)}`);
    return false;
  }
  if (bounds.least !== undefined && length < bounds.least) {
    report(path, say`is ${typed}; it takes a length of ${shownBound(bounds.least)} or more`);
    return false;
  }
  if (length > bounds.most) {
    report(path, say`is ${typed}; the most it takes is ${shownBound(bounds.most)}. Check the unit`);
    return false;
  }
  return true;
}

function shownBound(bound: Length): string {
  return bound === ZERO_LENGTH ? '0' : sayLength(bound, 'metric');
}
