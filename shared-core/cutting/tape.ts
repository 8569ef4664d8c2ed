import type { CuttingProblem, PieceType } from './problem.ts';

/** A piece type that is wanted and that a roll can give. */
export interface Kind extends PieceType {
  /** Index in the problem. */
  readonly piece: number;
  /** Index in the tape's kinds. */
  readonly rank: number;
  /** The waste above it where it is a roll's first cut. */
  readonly lead: number;
}

/** A piece that may be cut next, and the waste between the end before it and its top. */
export interface Follower {
  readonly kind: Kind;
  readonly gap: number;
}

/** The length of a roll that can be relied on, with what may follow what on it. */
export interface Tape {
  readonly capacity: number;
  readonly repeat: number;
  /** Longest first. */
  readonly kinds: readonly Kind[];
  /** What may be cut first, least waste first and then longest. */
  readonly firsts: readonly Follower[];
  /** By rank: what may be cut next, least waste first and then longest. */
  readonly followers: readonly (readonly Follower[])[];
  readonly impossible: readonly number[];
}

/** So many rolls with the same pieces, in cutting order. */
export interface Packing {
  readonly times: number;
  readonly kinds: readonly Kind[];
}

/**
 * Rolls that start anywhere are planned before their start phase is seen. Up to, but never
 * quite, one repeat is lost above the first piece; from there on everything lies rigidly. So one
 * repeat is set aside and the tape is measured from the first piece's top.
 */
export function layTape(problem: CuttingProblem): Tape {
  const { rollLength, repeat, rollStart, pieces } = problem;
  const capacity = rollStart === 'anywhere' ? rollLength - repeat : rollLength;
  const types = pieces.map((type, piece) => ({ ...type, piece, lead: rollStart === 'anywhere' ? 0 : type.phase }));
  const isPossible = (type: { length: number; lead: number }): boolean => type.length <= capacity - type.lead;
  const kinds: readonly Kind[] = types
    .filter((type) => type.count > 0 && isPossible(type))
    .sort((a, b) => b.length - a.length || a.phase - b.phase || b.count - a.count || a.piece - b.piece)
    .map((type, rank) => ({ ...type, rank }));
  return {
    capacity,
    repeat,
    kinds,
    firsts: leastGapFirst(kinds, undefined, repeat),
    followers: kinds.map((kind) => leastGapFirst(kinds, kind, repeat)),
    impossible: types.filter((type) => !isPossible(type)).map((type) => type.piece),
  };
}

function leastGapFirst(kinds: readonly Kind[], last: Kind | undefined, repeat: number): readonly Follower[] {
  return kinds
    .map((kind) => ({ kind, gap: gapBefore(kind, last, repeat) }))
    .sort((a, b) => a.gap - b.gap || a.kind.rank - b.kind.rank);
}

/** Every cut lies in phase, so the gap depends on the piece and the last one only and never on where they lie. */
export function gapBefore(kind: Kind, last: Kind | undefined, repeat: number): number {
  if (last === undefined) return kind.lead;
  if (repeat === 0) return 0;
  const gap = (kind.phase - last.phase - last.length) % repeat;
  return gap < 0 ? gap + repeat : gap;
}

export function floorDivide(dividend: number, divisor: number): number {
  return (dividend - (dividend % divisor)) / divisor;
}

export function ceilDivide(dividend: number, divisor: number): number {
  return floorDivide(dividend, divisor) + (dividend % divisor === 0 ? 0 : 1);
}
