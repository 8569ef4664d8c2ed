import type { Edit } from '../../../shared-core/house/index.ts';
import { type Ends, heightText, readEndsTyped } from '../../../shared-core/survey/index.ts';
import type { LengthStyle, Measure } from '../../../shared-core/units/index.ts';
import { say } from '../../../shared-core/words/index.ts';

/** Changed facts by their keys, as an edit carries them. */
export type Facts = Extract<Edit, { facts: unknown }>['facts'];

type HeightRead = { readonly height: Ends } | { readonly trouble: string };

/** A height as typed: one length, or two with 'to' between them where the ceiling slopes along the wall. */
export function readHeightTyped(typed: string, style: LengthStyle, what?: string, example?: string): HeightRead {
  const read = readEndsTyped(typed, style, what, example);
  return read.ok ? { height: read.value } : { trouble: `${read.faults}. ${say`Nothing was changed.`}` };
}

type FloorLine = Measure | readonly [Measure, Measure];

/** A floor line as its field shows it: empty where the floor lies at the room's level, as most do. */
export function floorLineText(base: FloorLine): string {
  const ends = 'typed' in base ? [base] : base;
  return ends.every(({ length }) => length === 0) ? '' : heightText(base);
}

/** A floor line as typed; null, for none, where nothing is. */
export function readFloorLineTyped(typed: string, style: LengthStyle): { readonly base: Ends | null } | { readonly trouble: string } {
  if (typed.trim() === '') return { base: null };
  const read = readHeightTyped(typed, style, say`A floor line`, say`0 in to 1 1/2"`);
  return 'trouble' in read ? read : { base: read.height };
}

/** What may stand for every wall, and between two walls, in every language in English too. */
const ALL = ['all', say`all`];
const AND = ['and', say`and`];

export function wallsText(walls: readonly string[] | undefined): string {
  return walls?.join(', ') ?? say`all`;
}

/** The wall of that name, in any case where none is spelled so. */
export function wallCalled(word: string, ids: readonly string[]): string | undefined {
  return ids.find((id) => id === word) ?? ids.find((id) => id.toLowerCase() === word.toLowerCase());
}

/** Walls as typed: 'all' or nothing for every wall, which is null, or their ids in any order and case. */
export function readWallsTyped(typed: string, ids: readonly string[]): { readonly walls: string[] | null } | { readonly trouble: string } {
  const plain = typed.trim();
  if (plain === '' || ALL.includes(plain.toLowerCase())) return { walls: null };
  const words = plain.split(/[\s,;]+/).filter((word) => word !== '' && !AND.includes(word));
  const idOf = (word: string) => wallCalled(word, ids);
  const unknown = words.find((word) => idOf(word) === undefined);
  if (unknown !== undefined || words.length === 0) {
    return { trouble: `${say`‘${unknown ?? plain}’ is no wall of this room. This takes ‘all’, or some of ${ids.join(', ')}.`} ${say`Nothing was changed.`}` };
  }
  const named = new Set(words.map(idOf));
  return { walls: ids.filter((id) => named.has(id)) };
}

/** A thing of a list as the exchange document writes it, each length as it was typed. */
export function writeFacts(thing: object): Facts {
  const write = (value: unknown) => (typeof value === 'object' && value !== null && 'typed' in value ? value.typed : value);
  return Object.fromEntries(Object.entries(thing).map(([key, value]) => [key, write(value)])) as Facts;
}
