import { capital } from '../base/index.ts';
import { OPENING_WORDS } from '../house/index.ts';
import type { Mismatch, StretchWall, WallPlace } from '../setting-out/index.ts';
import { type Length, type LengthStyle, lengthOf, showLength } from '../units/index.ts';
import { say, sayList } from '../words/index.ts';

export function wallsNamed(ids: readonly string[]): string {
  return ids.length === 1 ? say`wall ${ids[0]!}` : say`walls ${sayList(ids)}`;
}

export function stripsCounted(count: number): string {
  return count === 1 ? say`${count} strip` : say`${count} strips`;
}

/** A number with a minus sign that reads as one. */
export function signed(number: number): string {
  return number < 0 ? `−${-number}` : String(number);
}

export function hangFromStart(direction: 'left' | 'right'): string {
  return direction === 'left' ? say`Hang from the start to the left.` : say`Hang from the start to the right.`;
}

/** A measured number of a drawing as a length to read. */
export function sized(units: number, style: LengthStyle): string {
  return showLength(lengthOf(Math.round(units)), style);
}

/** `at the left end of wall A`, `1' 2" from the left end of wall B`. */
export function placeNamed(place: WallPlace, style: LengthStyle): string {
  return place.at === 0 ? say`at the left end of wall ${place.wall}` : say`${showLength(place.at, style)} from the left end of wall ${place.wall}`;
}

/** How the pattern meets at the kill point: `the pattern runs 7 3/8 in over a whole repeat`. */
export function mismatchSaid(mismatch: Mismatch, hasPattern: boolean, style: LengthStyle): string {
  if (!hasPattern) return say`there is no pattern to match`;
  const across =
    mismatch.side === 'none'
      ? say`the pattern meets across`
      : mismatch.side === 'over'
        ? say`the pattern runs ${showLength(mismatch.amount, style)} over a whole repeat`
        : say`the pattern stops ${showLength(mismatch.amount, style)} short of a whole repeat`;
  return mismatch.vertical === 0 ? across : say`${across}, and the two strips stand ${showLength(mismatch.vertical, style)} apart in height`;
}

/** The mismatch as it stands beside its sign, a line each. */
export function mismatchNoted(mismatch: Mismatch, hasPattern: boolean, style: LengthStyle): readonly string[] {
  if (!hasPattern) return [say`no match`];
  const across = mismatch.side === 'none' ? [say`meets`] : [showLength(mismatch.amount, style), mismatch.side === 'over' ? say`over` : say`short`];
  return mismatch.vertical === 0 ? across : [...across, say`${showLength(mismatch.vertical, style)} drop`];
}

/** `8' high`, or `8' high at the left, 10' at the right`. */
export function heightSaid(height: { readonly left: Length; readonly right: Length }, style: LengthStyle): string {
  const [left, right] = [showLength(height.left, style), showLength(height.right, style)];
  return height.left === height.right ? say`${left} high` : say`${left} high at the left, ${right} at the right`;
}

/** `Door on wall A, 1' from its left end, 3' wide, from the floor to 7' high.` */
export function openingSaid({ kind, from, to, sill, head }: Pick<StretchWall['openings'][number], 'kind' | 'from' | 'to' | 'sill' | 'head'>, wall: string, style: LengthStyle, isEntrance = false): string {
  const opening = capital(OPENING_WORDS[kind]);
  const name = isEntrance ? say`${opening} on wall ${wall}, the entrance` : say`${opening} on wall ${wall}`;
  const show = (length: Length) => showLength(length, style);
  const heights = sill === 0 ? say`from the floor to ${show(head)} high` : say`from ${show(sill)} to ${show(head)} high`;
  return say`${name}, ${show(from)} from its left end, ${show(lengthOf(to - from))} wide, ${heights}.`;
}
