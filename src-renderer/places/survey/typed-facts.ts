import type { Edit } from '../../../shared-core/house/index.ts';
import { type LengthStyle, type Measure, parseMeasure } from '../../../shared-core/units/index.ts';

/** Changed facts by their keys, as an edit carries them. */
export type Facts = Extract<Edit, { facts: unknown }>['facts'];

/** One length as text, or two for the left and the right end. */
export type Height = string | [string, string];

const TURN_WORDS = ['inside', 'outside', 'straight'] as const;

export const TURN_HELP = 'A corner is inside, outside or straight on, or its inner angle in degrees, such as 135.';

/** A turn as typed: a word or its beginning, or the inner angle in degrees with or without its mark. */
export function readTurnTyped(typed: string): string | null {
  const plain = typed.trim().toLowerCase().replace(/\s*(°|deg|degrees)$/, '');
  const word = plain === '' ? undefined : TURN_WORDS.find((candidate) => candidate.startsWith(plain));
  if (word) return word;
  return /^\d{1,3}([.,]\d{1,2})?$/.test(plain) ? plain.replace(',', '.') : null;
}

export function heightText(height: Measure | readonly [Measure, Measure]): string {
  return 'typed' in height ? height.typed : `${height[0].typed} to ${height[1].typed}`;
}

type HeightRead = { readonly height: Height } | { readonly trouble: string };

/** A height as typed: one length, or two with 'to' between them where the ceiling slopes along the wall. */
export function readHeightTyped(typed: string, style: LengthStyle, what = 'A height', example = "8' to 9' 6\""): HeightRead {
  const ends = typed.split(/\s+to\s+/i).map((end) => parseMeasure(end, style));
  const [left, right] = ends;
  const wrong = ends.find((end) => !end.ok);
  if (wrong && !wrong.ok) return { trouble: `${wrong.faults.map(({ message }) => message).join(' ')}. Nothing was changed.` };
  if (ends.length > 2) return { trouble: `${what} is one length, or two for the left and the right end, such as ${example}.` };
  if (!left?.ok) return { trouble: `${what} takes a length.` };
  return { height: right?.ok ? [left.value.typed, right.value.typed] : left.value.typed };
}

type FloorLine = Measure | readonly [Measure, Measure];

/** A floor line as its field shows it: empty where the floor lies at the room's level, as most do. */
export function floorLineText(base: FloorLine): string {
  const ends = 'typed' in base ? [base] : base;
  return ends.every(({ length }) => length === 0) ? '' : heightText(base);
}

/** A floor line as typed; null, for none, where nothing is. */
export function readFloorLineTyped(typed: string, style: LengthStyle): { readonly base: Height | null } | { readonly trouble: string } {
  if (typed.trim() === '') return { base: null };
  const read = readHeightTyped(typed, style, 'A floor line', '0 in to 1 1/2"');
  return 'trouble' in read ? read : { base: read.height };
}

export function wallsText(walls: readonly string[] | undefined): string {
  return walls?.join(', ') ?? 'all';
}

/** Walls as typed: 'all' or nothing for every wall, which is null, or their ids in any order and case. */
export function readWallsTyped(typed: string, ids: readonly string[]): { readonly walls: string[] | null } | { readonly trouble: string } {
  const plain = typed.trim();
  if (plain === '' || plain.toLowerCase() === 'all') return { walls: null };
  const words = plain.split(/[\s,;]+/).filter((word) => word !== '' && word !== 'and');
  const idOf = (word: string) => ids.find((id) => id === word) ?? ids.find((id) => id.toLowerCase() === word.toLowerCase());
  const unknown = words.find((word) => idOf(word) === undefined);
  if (unknown !== undefined || words.length === 0) {
    return { trouble: `‘${unknown ?? plain}’ is no wall of this room. This takes ‘all’, or some of ${ids.join(', ')}. Nothing was changed.` };
  }
  const named = new Set(words.map(idOf));
  return { walls: ids.filter((id) => named.has(id)) };
}

/** A thing of a list as the exchange document writes it, each length as it was typed. */
export function writeFacts(thing: object): Facts {
  const write = (value: unknown) => (typeof value === 'object' && value !== null && 'typed' in value ? value.typed : value);
  return Object.fromEntries(Object.entries(thing).map(([key, value]) => [key, write(value)])) as Facts;
}
