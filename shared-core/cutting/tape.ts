import type { CuttingProblem } from './problem.ts';

/** Pieces of one length and phase that are wanted and that a roll can give. */
export interface Kind {
  readonly length: number;
  readonly phase: number;
  readonly count: number;
  /** Index in the tape's kinds. */
  readonly rank: number;
  /** The problem's piece types that are of this kind, in their order. */
  readonly types: readonly number[];
}

/** One way of measuring along a roll: the phase of the pattern at position 0, and where the last piece must end. */
export interface Lane {
  readonly origin: number;
  readonly capacity: number;
}

/** What a roll gives, in terms that no longer tell the two roll starts apart. */
export interface Tape {
  readonly repeat: number;
  /** Longest first. */
  readonly kinds: readonly Kind[];
  readonly lanes: readonly Lane[];
  /** Indexes of the problem's piece types that no roll can be relied on to give. */
  readonly impossible: readonly number[];
}

/** The pieces of one roll: ranks of kinds in cutting order, and the lane they are measured in. */
export interface Roll {
  readonly lane: number;
  readonly order: readonly number[];
}

/** So many rolls cut alike. */
export interface Packing {
  readonly times: number;
  readonly roll: Roll;
}

/**
 * Lays out a problem's rolls as lanes and its pieces as kinds.
 *
 * Rule: rolls that start at a repeat are one lane, with the pattern's top at position 0. Rolls that start anywhere are
 * planned before their start is seen: up to, but never quite, one repeat is lost above the first piece, and from there
 * on everything lies rigidly. So one repeat is set aside and the roll is measured from its first piece's top, one lane
 * for each phase that a first piece may have. A free match needs one lane only.
 *
 * Example: rolls of 1000, repeat 100, pieces at phases 0 and 30: at a repeat one lane of 1000 from phase 0; anywhere
 * two lanes of 900, from phase 0 and from phase 30.
 */
export function layTape({ rollLength, repeat, rollStart, pieces }: CuttingProblem): Tape {
  const isAnywhere = rollStart === 'anywhere' && repeat > 0;
  const capacity = isAnywhere ? rollLength - repeat : rollLength;
  const isPossible = ({ length, phase }: { length: number; phase: number }): boolean => length <= capacity - (isAnywhere ? 0 : phase);
  const kinds = gatherKinds(pieces, isPossible);
  const phases = [...new Set(kinds.map(({ phase }) => phase))].sort((one, other) => one - other);
  return {
    repeat,
    kinds,
    lanes: isAnywhere ? phases.map((origin) => ({ origin, capacity })) : [{ origin: 0, capacity }],
    impossible: pieces.flatMap((type, index) => (isPossible(type) ? [] : [index])),
  };
}

function gatherKinds(pieces: CuttingProblem['pieces'], isPossible: (type: { length: number; phase: number }) => boolean): readonly Kind[] {
  const types = new Map<string, number[]>();
  pieces.forEach((type, index) => {
    if (type.count === 0 || !isPossible(type)) return;
    const key = `${type.length} ${type.phase}`;
    const alike = types.get(key);
    if (alike) alike.push(index);
    else types.set(key, [index]);
  });
  return [...types.values()]
    .map((alike) => {
      const { length, phase } = pieces[alike[0]!]!;
      return { length, phase, count: alike.reduce((sum, type) => sum + pieces[type]!.count, 0), types: alike };
    })
    .sort((one, other) => other.length - one.length || one.phase - other.phase)
    .map((kind, rank) => ({ ...kind, rank }));
}

/** The pieces of a roll that are still wanted, in their order: taking pieces away never breaks a roll. */
export function within(order: readonly number[], counts: ArrayLike<number>): readonly number[] {
  const held = new Map<number, number>();
  return order.filter((rank) => {
    const before = held.get(rank) ?? 0;
    held.set(rank, before + 1);
    return before < counts[rank]!;
  });
}

/** How many of each rank. */
export function countsOf(order: readonly number[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const rank of order) counts.set(rank, (counts.get(rank) ?? 0) + 1);
  return counts;
}

/** The same for rolls that hold the same pieces, in whatever order. */
export function contentsOf(order: readonly number[]): string {
  return [...order].sort((one, other) => one - other).join(' ');
}

/** The lane of a roll whose first piece has this phase. */
export function laneFrom({ lanes }: Tape, phase: number): number {
  return Math.max(0, lanes.findIndex(({ origin }) => origin === phase));
}

/** What a roll that is cut up to `end` still gives of one kind. */
export interface Room {
  readonly top: number;
  /** From top to top of pieces of the kind. */
  readonly step: number;
  readonly most: number;
}

export function roomFor({ lanes, repeat }: Tape, lane: number, end: number, { phase, length }: Kind): Room {
  const { origin, capacity } = lanes[lane]!;
  const top = end + gapBefore(phase, origin, end, repeat);
  const step = length + gapBefore(phase, phase, length, repeat);
  const room = capacity - top - length;
  return { top, step, most: room < 0 ? 0 : floorDivide(room, step) + 1 };
}

/** The waste between the end of the last cut, at `end` of a lane that begins at phase `origin`, and the top of the next. */
export function gapBefore(phase: number, origin: number, end: number, repeat: number): number {
  if (repeat === 0) return 0;
  return (((phase - origin - end) % repeat) + repeat) % repeat;
}

export function floorDivide(dividend: number, divisor: number): number {
  return (dividend - (dividend % divisor)) / divisor;
}

export function ceilDivide(dividend: number, divisor: number): number {
  return floorDivide(dividend, divisor) + (dividend % divisor === 0 ? 0 : 1);
}
