import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { matchOf } from '../house/index.ts';
import { floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, type AxisPart, onWall, unroll } from './axis.ts';
import { type Cover, coversOf } from './covers.ts';
import { topOf } from './heights.ts';
import { leanAfter } from './stretch.ts';
import { say } from '../words/index.ts';

/** A piece to be cut: all of it covering, trims included. */
export interface Piece {
  /** Wall, running number on it and, at an opening, where, as it is said: `A1`, `A3 above`, `A2 window left`. */
  readonly label: string;
  /** Number of the strip it belongs to; of the length, for a border. */
  readonly strip: number;
  /** `side` and `patch` line a covered reveal; `length` and `joined` are a border's. */
  readonly part: Cover['part'] | 'length' | 'joined';
  readonly length: Length;
  /** Where its top edge lies in the repeat; 0 for a free match. */
  readonly phase: Length;
  /** What it covers of the wall, above the room's level datum, without trims and what goes into a reveal. */
  readonly top: Length;
  readonly bottom: Length;
  /** Where its own upper edge would stand, trim and what goes into a reveal included. */
  readonly upperEdge: Length;
  /** How wide it is where it is narrower than its strip. */
  readonly width?: Length;
  /** Hung upside down. */
  readonly isTurned?: boolean;
}

export interface StripPart {
  readonly wall: string;
  /** From the wall's left end. */
  readonly from: Length;
  readonly to: Length;
  /** What it spends on the corner at its right, round it or lapped, and how much of that is only for the corner's lean. */
  readonly wrap: Length;
  readonly lean: Length;
}

export interface Strip {
  /** 0 at the start, counted up to the right and down to the left. */
  readonly number: number;
  /** On the expanded axis. */
  readonly from: number;
  readonly to: number;
  /** The width to cut, a lap at the kill point included. */
  readonly cutWidth: Length;
  /** More than one where the strip is split at a corner. */
  readonly parts: readonly StripPart[];
  readonly pieces: readonly Piece[];
}

/** Where a strip stands on the axis, and how wide it is cut. */
export interface StripSpan {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly cutWidth: number;
}

/**
 * Cuts the strips of a stretch to their pieces: what each covers, how long it is with its trims, where its top lies.
 *
 * Shapes: spans on the axis in, strips and the datum (the highest top of the stretch) out, in units.
 * Example: a strip of a wall 8 ft high under a trim of 2 in is one piece of 8' 4"; its top lies 2 in before the repeat.
 */
export function cutStrips(axis: Axis, spans: readonly StripSpan[], band: HungBand, covering: Wallcovering, rules: Rules): { readonly datum: Length; readonly strips: readonly Strip[] } {
  const pattern = patternOn(axis, band, covering, rules);
  const label = labeller();
  const strips = spans.map(({ number, from, to, cutWidth }): Strip => {
    const parts = partsOf(axis, from, to);
    const name = label(onWall(axis, from).wall);
    return {
      number,
      from,
      to,
      cutWidth: lengthOf(cutWidth),
      parts: parts.map((part) => stripPart(axis, part, to, rules)),
      pieces: coversOf(parts, band).map((cover) => {
        const { part, width, lowest, highest } = cover;
        return {
          label: nameOfPiece(name, cover),
          strip: number,
          part,
          ...cutOf(pattern, number, cover),
          top: lengthOf(highest),
          bottom: lengthOf(lowest),
          upperEdge: upperEdgeOf(pattern, cover),
          ...(width === null ? {} : { width: lengthOf(width) }),
          ...(covering.reverseAlternate && number % 2 !== 0 ? { isTurned: true } : {}),
        };
      }),
    };
  });
  return { datum: pattern.datum, strips };
}

function nameOfPiece(strip: string, { part, of }: Cover): string {
  const name = nameOfPart(strip, part);
  return of === '' ? name : `${name} ${of}`;
}

function nameOfPart(strip: string, part: Cover['part']): string {
  switch (part) {
    case 'full':
    case 'side':
      return strip;
    case 'above':
      return say`${strip} above`;
    case 'between':
      return say`${strip} between`;
    case 'below':
      return say`${strip} below`;
    case 'patch':
      return say`${strip} patch`;
  }
}

function stripPart(axis: Axis, { wall, from, to, shift }: AxisPart, end: number, rules: Rules): StripPart {
  const wrap = to === shift + wall.length && end > to ? axis.walls.find((one) => one.wall.id === wall.id)!.wrap : 0;
  return { wall: wall.id, from: lengthOf(from - shift), to: lengthOf(to - shift), wrap: lengthOf(wrap), lean: lengthOf(leanAfter(wall, wrap, rules)) };
}

export function cutOf(pattern: Pattern, strip: number, cover: Cover): { readonly length: Length; readonly phase: Length } {
  const { lowest, highest, over, under } = cover;
  return { length: lengthOf(highest - lowest + over + under + 2 * pattern.trim), phase: phaseOf(pattern, strip, upperEdgeOf(pattern, cover)) };
}

function upperEdgeOf(pattern: Pattern, { highest, over }: Cover): Length {
  return lengthOf(highest + over + pattern.trim);
}

export function patternOn(axis: Axis, band: HungBand, covering: Wallcovering, rules: Rules): Pattern {
  const datum = band.datum?.length ?? lengthOf(Math.max(...axis.walls.map(({ wall }) => Math.max(topOf(band, wall).left, topOf(band, wall).right))));
  return { datum, position: band.position.length, trim: rules.trim.length, ...patternOf(covering) };
}

interface Pattern {
  readonly datum: Length;
  readonly position: Length;
  readonly trim: Length;
  /** 0 for a free match, which has no phase. */
  readonly repeat: number;
  readonly drop: { readonly numerator: number; readonly denominator: number };
}

export function patternOf(covering: Wallcovering): Pick<Pattern, 'repeat' | 'drop'> {
  const match = matchOf(covering);
  return {
    repeat: match === 'free' ? 0 : covering.repeat.length,
    drop: match === 'drop' && covering.dropBy ? covering.dropBy : { numerator: 0, denominator: 1 },
  };
}

/**
 * How much further into the repeat strip i begins than strip 0, and so how much higher its pattern stands on the wall: the
 * repeat times the part of a cycle that i drops make.
 *
 * Example: a half-drop of 21 in begins strip 3, like strip 1, 10 1/2 in further into the repeat.
 */
export function dropOf(repeat: number, drop: { readonly numerator: number; readonly denominator: number }, strip: number): number {
  return floorDivide(repeat * modulo(strip * drop.numerator, drop.denominator), drop.denominator);
}

function phaseOf(pattern: Pattern, strip: number, topEdge: number): Length {
  if (pattern.repeat === 0) return lengthOf(0);
  return lengthOf(modulo(pattern.position + pattern.datum - topEdge + dropOf(pattern.repeat, pattern.drop, strip), pattern.repeat));
}

/** A strip that only turns a lap in its corner stands on neither wall; it is cut for the one beside it. */
export function partsOf(axis: Axis, from: number, to: number): readonly AxisPart[] {
  const parts = unroll(axis, from, to);
  const widestWrap = Math.max(...axis.walls.map(({ wrap }) => wrap));
  return parts.length > 0 ? parts : unroll(axis, from - widestWrap - 1, to + widestWrap + 1).slice(0, 1);
}

/** Names pieces by their wall and a running number on it. */
function labeller(): (wall: string) => string {
  const counts = new Map<string, number>();
  return (wall) => {
    const count = (counts.get(wall) ?? 0) + 1;
    counts.set(wall, count);
    return `${wall}${count}`;
  };
}
