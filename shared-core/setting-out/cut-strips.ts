import type { HungBand, Rules, Wallcovering } from '../house/index.ts';
import { matchOf } from '../house/index.ts';
import { floorDivide, type Length, lengthOf, modulo } from '../units/index.ts';
import { type Axis, onWall, unroll } from './axis.ts';
import { aboveFloor, bottomOf, type EdgeRange, edgeOver, topOf } from './heights.ts';
import type { StretchWall } from './stretch.ts';

/** A piece to be cut: all of it covering, trims included. */
export interface Piece {
  /** Wall, running number on it and, at an opening, where: `A1`, `A3 above`. */
  readonly label: string;
  /** Number of the strip it belongs to; of the length, for a border. */
  readonly strip: number;
  readonly part: 'full' | 'above' | 'between' | 'below' | 'length' | 'joined';
  readonly length: Length;
  /** Where its top edge lies in the repeat; 0 for a free match. */
  readonly phase: Length;
  /** What it covers of the wall, above the room's level datum, without trims. */
  readonly top: Length;
  readonly bottom: Length;
}

export interface StripPart {
  readonly wall: string;
  /** From the wall's left end. */
  readonly from: Length;
  readonly to: Length;
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
      parts: parts.map((part) => ({ wall: part.wall.id, from: lengthOf(part.from - part.shift), to: lengthOf(part.to - part.shift) })),
      pieces: coveredRanges(parts, band).map(({ part, lowest, highest }, index, all) => ({
        label: part === 'full' ? name : `${name} ${part}${part === 'between' && all.length > 3 ? ` ${index}` : ''}`,
        strip: number,
        part,
        length: lengthOf(highest - lowest + 2 * pattern.trim),
        phase: phaseOf(pattern, number, highest + pattern.trim),
        top: lengthOf(highest),
        bottom: lengthOf(lowest),
      })),
    };
  });
  return { datum: pattern.datum, strips };
}

/** So many pieces of one length at one phase. */
export interface PieceDemand {
  readonly length: Length;
  readonly phase: Length;
  readonly count: number;
}

/**
 * What strips take, counted by length and phase, without setting them out.
 *
 * Shapes: `known` remembers what full strips cover by where they stand on the axis, for layouts that share seams.
 * Example: 27 strips of 8' 4" that all begin alike are one demand of 27.
 */
export function demandOf(axis: Axis, spans: readonly StripSpan[], band: HungBand, covering: Wallcovering, rules: Rules, known: Map<string, readonly EdgeRange[]>): readonly PieceDemand[] {
  const pattern = patternOn(axis, band, covering, rules);
  const counts = new Map<number, PieceDemand & { count: number }>();
  for (const { number, from, to } of spans) {
    const place = `${axis.isClosed ? modulo(from, axis.length) : from} ${to - from}`;
    const ranges = known.get(place) ?? coveredRanges(partsOf(axis, from, to), band);
    known.set(place, ranges);
    for (const { lowest, highest } of ranges) {
      const length = lengthOf(highest - lowest + 2 * pattern.trim);
      const phase = phaseOf(pattern, number, highest + pattern.trim);
      const key = length * MOST_PHASES + phase;
      const before = counts.get(key);
      if (before) before.count += 1;
      else counts.set(key, { length, phase, count: 1 });
    }
  }
  return [...counts.values()];
}

/** A repeat is no longer than a wall, 100 m; a piece no longer than 100 m and its trims. */
const MOST_PHASES = 2 ** 25;

function patternOn(axis: Axis, band: HungBand, covering: Wallcovering, rules: Rules): Pattern {
  const datum = lengthOf(Math.max(...axis.walls.map(({ wall }) => Math.max(topOf(band, wall).left, topOf(band, wall).right))));
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
 * How far strip i's pattern stands lower than strip 0's: the repeat times the part of a cycle that i drops make.
 *
 * Example: a half-drop of 21 in puts strip 3, like strip 1, 10 1/2 in lower.
 */
export function dropOf(repeat: number, drop: { readonly numerator: number; readonly denominator: number }, strip: number): number {
  return floorDivide(repeat * modulo(strip * drop.numerator, drop.denominator), drop.denominator);
}

function phaseOf(pattern: Pattern, strip: number, topEdge: number): Length {
  if (pattern.repeat === 0) return lengthOf(0);
  return lengthOf(modulo(pattern.position + pattern.datum - topEdge + dropOf(pattern.repeat, pattern.drop, strip), pattern.repeat));
}

/** A strip that only turns a lap in its corner stands on neither wall; it is cut for the one beside it. */
function partsOf(axis: Axis, from: number, to: number): readonly AxisPart[] {
  const parts = unroll(axis, from, to);
  const widestWrap = Math.max(...axis.walls.map(({ wrap }) => wrap));
  return parts.length > 0 ? parts : unroll(axis, from - widestWrap - 1, to + widestWrap + 1).slice(0, 1);
}

type AxisPart = ReturnType<typeof unroll>[number];
interface CoveredRange extends EdgeRange {
  readonly part: Piece['part'];
}

/** What a strip covers in height: all of it, or what openings that take its whole width leave of it. */
function coveredRanges(parts: readonly AxisPart[], band: HungBand): readonly CoveredRange[] {
  const ranges = parts.map((part) => {
    const [left, right] = [part.from - part.shift, part.to - part.shift];
    const top = edgeOver(topOf(band, part.wall), part.wall.length, left, right).highest;
    const bottom = edgeOver(bottomOf(band, part.wall), part.wall.length, left, right).lowest;
    return { wall: part.wall, left, right, top, bottom };
  });
  const whole = { highest: Math.max(...ranges.map(({ top }) => top)), lowest: Math.min(...ranges.map(({ bottom }) => bottom)) };
  const [only] = ranges;
  const holes = only && ranges.length === 1 ? holesOver(only.wall, only.left, only.right) : [];
  const left = holes.reduce<readonly EdgeRange[]>(
    (kept, hole) => kept.flatMap((range) => [{ lowest: Math.max(range.lowest, hole.highest), highest: range.highest }, { lowest: range.lowest, highest: Math.min(range.highest, hole.lowest) }].filter(({ lowest, highest }) => highest > lowest)),
    [whole],
  );
  if (left.length === 1 && left[0]!.lowest === whole.lowest && left[0]!.highest === whole.highest) return [{ part: 'full', ...whole }];
  return left.map((range) => ({
    part: range.highest === whole.highest ? 'above' : range.lowest === whole.lowest ? 'below' : 'between',
    ...range,
  }));
}

/** Heights at which openings, one or several side by side, take a strip's whole width; the highest first. */
function holesOver(wall: StretchWall, left: number, right: number): readonly EdgeRange[] {
  const open = wall.openings
    .filter(({ from, to }) => from < right && to > left)
    .map(({ from, to, sill, head }) => ({
      from,
      to,
      lowest: edgeOver(aboveFloor(wall, sill), wall.length, left, right).highest,
      highest: edgeOver(aboveFloor(wall, head), wall.length, left, right).lowest,
    }));
  const heights = [...new Set(open.flatMap(({ lowest, highest }) => [lowest, highest]))].sort((one, other) => other - one);
  return heights.slice(1).flatMap((lowest, index) => {
    const highest = heights[index]!;
    const across = open.filter((opening) => opening.lowest <= lowest && opening.highest >= highest).sort((one, other) => one.from - other.from);
    const reached = across.reduce((end, { from, to }) => (from <= end ? Math.max(end, to) : end), left);
    return reached >= right ? [{ lowest, highest }] : [];
  });
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
