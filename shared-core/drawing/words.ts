import type { Opening } from '../house/index.ts';
import type { Mismatch, StretchWall, WallPlace } from '../setting-out/index.ts';
import { type Length, type LengthStyle, lengthOf, showLength } from '../units/index.ts';

/** `A, B and C`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

export function wallsNamed(ids: readonly string[]): string {
  return ids.length === 1 ? `wall ${ids[0]}` : `walls ${listed(ids)}`;
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** A number with a minus sign that reads as one. */
export function signed(number: number): string {
  return number < 0 ? `−${-number}` : String(number);
}

export function openingWord(kind: Opening['kind'] | string): string {
  return kind === 'furniture' ? 'fitted furniture' : kind;
}

export function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** A measured number of a drawing as a length to read. */
export function sized(units: number, style: LengthStyle): string {
  return showLength(lengthOf(Math.round(units)), style);
}

/** `at the left end of wall A`, `1' 2" from the left end of wall B`. */
export function placeNamed(place: WallPlace, style: LengthStyle): string {
  return place.at === 0 ? `at the left end of wall ${place.wall}` : `${showLength(place.at, style)} from the left end of wall ${place.wall}`;
}

/** How the pattern meets at the kill point: `the pattern runs 7 3/8 in over a whole repeat`. */
export function mismatchSaid(mismatch: Mismatch, hasPattern: boolean, style: LengthStyle): string {
  if (!hasPattern) return 'there is no pattern to match';
  const across =
    mismatch.side === 'none'
      ? 'the pattern meets across'
      : mismatch.side === 'over'
        ? `the pattern runs ${showLength(mismatch.amount, style)} over a whole repeat`
        : `the pattern stops ${showLength(mismatch.amount, style)} short of a whole repeat`;
  return mismatch.vertical === 0 ? across : `${across}, and the two strips stand ${showLength(mismatch.vertical, style)} apart in height`;
}

/** The mismatch as it stands beside its sign, a line each. */
export function mismatchNoted(mismatch: Mismatch, hasPattern: boolean, style: LengthStyle): readonly string[] {
  if (!hasPattern) return ['no match'];
  const across = mismatch.side === 'none' ? ['meets'] : [showLength(mismatch.amount, style), mismatch.side];
  return mismatch.vertical === 0 ? across : [...across, `${showLength(mismatch.vertical, style)} drop`];
}

/** `8' high`, or `8' high at the left, 10' at the right`. */
export function heightSaid(height: { readonly left: Length; readonly right: Length }, style: LengthStyle): string {
  const left = `${showLength(height.left, style)} high`;
  return height.left === height.right ? left : `${left} at the left, ${showLength(height.right, style)} at the right`;
}

export function openingSaid(opening: StretchWall['openings'][number], wall: string, style: LengthStyle): string {
  const show = (length: Length) => showLength(length, style);
  const foot = opening.sill === 0 ? 'the floor' : show(opening.sill);
  return `${capital(openingWord(opening.kind))} on wall ${wall}, ${show(opening.from)} from its left end, ${show(lengthOf(opening.to - opening.from))} wide, from ${foot} to ${show(opening.head)} high.`;
}
