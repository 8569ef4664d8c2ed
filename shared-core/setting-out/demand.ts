import { type HungBand, laidWidthOf, type Rules, type Wallcovering } from '../house/index.ts';
import { type Length, modulo } from '../units/index.ts';
import type { Axis, AxisWall } from './axis.ts';
import { type Cover, coversOf } from './covers.ts';
import { bottomOf, topOf } from './heights.ts';
import { cutOf, partsOf, patternOn, type StripSpan } from './cut-strips.ts';

/** So many pieces of one length at one phase. */
export interface PieceDemand {
  readonly length: Length;
  readonly phase: Length;
  readonly count: number;
}

export interface Demand {
  /** The same for the same pieces. */
  readonly key: string;
  readonly pieces: () => readonly PieceDemand[];
}

/** Where on the axis a wall and its openings lie, and whether its edges are level. */
function levelWall({ wall, from, to }: AxisWall, band: HungBand) {
  const openings = wall.openings.map((opening) => ({ from: from + opening.from, to: from + opening.to, hasReveal: opening.reveal !== null }));
  return { from, to, isLevel: [topOf(band, wall), bottomOf(band, wall)].every(({ left, right }) => left === right), openings, reveals: openings.filter(({ hasReveal }) => hasReveal) };
}

/**
 * Counts what strips take by length and phase, without setting them out; for layouts of one stretch that share seams.
 *
 * Shapes: spans on the axis in. What a strip covers is remembered by where it stands, so that a search asks once.
 * Example: 27 strips of 8' 4" that all begin alike are one demand of 27.
 */
export function demandCounter(axis: Axis, band: HungBand, covering: Wallcovering, rules: Rules): (spans: readonly StripSpan[]) => Demand {
  const pattern = patternOn(axis, band, covering, rules);
  const cycle = pattern.drop.denominator;
  const kinds: (readonly Cover[])[] = [];
  const kindOf = new Map<string, number>();
  const known = new Map<number, number>();
  const widest = 1 + laidWidthOf(covering);
  const walls = axis.walls.map((wall) => levelWall(wall, band));

  function kindAt(from: number, to: number): number {
    const u = axis.isClosed ? modulo(from, axis.length) : from;
    const place = wallsUnder(u, u + to - from) ?? u * widest + (to - from) + walls.length ** 2;
    const before = known.get(place);
    if (before !== undefined) return before;
    const covers = coversOf(partsOf(axis, from, to), band);
    const signature = covers.map(({ lowest, highest, over, under }) => `${lowest} ${highest} ${over} ${under}`).join(',');
    const kind = kindOf.get(signature) ?? kinds.push(covers) - 1;
    kindOf.set(signature, kind);
    known.set(place, kind);
    return kind;
  }

  /** The level walls that a strip stands on, as a number, where it covers all their height: it does so wherever it stands on them. */
  function wallsUnder(from: number, to: number): number | null {
    if (from === to) return null;
    let first = 0;
    while (first < walls.length - 1 && from >= walls[first + 1]!.from) first += 1;
    if (from >= walls[first]!.to) return null;
    let shift = 0;
    for (let index = first; ; index += 1) {
      if (index === walls.length) [index, shift] = [0, axis.length];
      const wall = walls[index]!;
      if (!wall.isLevel || wall.openings.some((opening) => opening.from + shift <= from && opening.to + shift > from)) return null;
      if (wall.reveals.some((opening) => opening.from + shift <= to && opening.to + shift >= from)) return null;
      const next = walls[index + 1]?.from ?? axis.length;
      if (to <= next + shift) return first * walls.length + index;
    }
  }

  return (spans) => {
    const counts: number[] = [];
    for (const { number, from, to } of spans) {
      const slot = kindAt(from, to) * cycle + modulo(number, cycle);
      counts[slot] = (counts[slot] ?? 0) + 1;
    }
    return { key: counts.join(' '), pieces: () => piecesIn(counts) };
  };

  function piecesIn(counts: readonly (number | undefined)[]): readonly PieceDemand[] {
    const pieces = new Map<string, PieceDemand>();
    counts.forEach((count, slot) => {
      if (count === undefined) return;
      for (const cover of kinds[(slot - (slot % cycle)) / cycle]!) {
        const cut = cutOf(pattern, slot % cycle, cover);
        const key = `${cut.length} ${cut.phase}`;
        pieces.set(key, { ...cut, count: (pieces.get(key)?.count ?? 0) + count });
      }
    });
    return [...pieces.values()].sort((one, other) => one.length - other.length || one.phase - other.phase);
  }
}
