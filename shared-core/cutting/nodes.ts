import { floorDivide, gapBefore, type Kind, type Tape } from './tape.ts';

/**
 * The places of a patterned roll at which a piece can begin: those in phase with some kind.
 *
 * Rule: with F distinct phases and a repeat R, place q = k F + r of a lane lies k repeats below its r-th place. A piece
 * always passes the same number of places, wherever it begins, so a roll is a walk over whole numbers: some
 * F (roll length / R) of them, whatever the unit.
 *
 * Example: phases 0 and 320 of a repeat of 640, a piece of 2230 at phase 0: it passes the places 0, 320, ... 1920 and
 * ends before 2240 (7 x 320), so 7 places, and the next piece in reach is one at phase 320.
 */
export interface Nodes {
  readonly phases: number;
  /** By rank: which of the phases it is, and how many places it passes. */
  readonly phaseOf: Int32Array;
  readonly jumpOf: Int32Array;
  /** By phase: the ranks of the kinds there. */
  readonly ranksAt: readonly Int32Array[];
  readonly lanes: readonly LaneNodes[];
  readonly longestJump: number;
}

export interface LaneNodes {
  /** Places at which some piece still fits. */
  readonly count: number;
  /** Which phase place 0 has. */
  readonly first: number;
  /** By rank: the last place at which it still fits, -1 where there is none. */
  readonly lastOf: Int32Array;
  /** The first place at or behind an end. */
  readonly placeAt: (end: number) => number;
}

export function placeNodes({ repeat, kinds, lanes }: Tape): Nodes {
  const values = [...new Set(kinds.map(({ phase }) => phase))].sort((one, other) => one - other);
  const indexOf = new Map(values.map((phase, index) => [phase, index]));
  const F = values.length;
  /** How many places lie from 0 up to, not including, a position, counted in the pattern's own repeat. */
  const placesBefore = (position: number): number => {
    const over = position % repeat;
    return floorDivide(position - over, repeat) * F + values.filter((phase) => phase < over).length;
  };
  const phaseOf = Int32Array.from(kinds, ({ phase }) => indexOf.get(phase)!);
  const jumpOf = Int32Array.from(kinds, ({ phase, length, rank }) => placesBefore(phase + length) - phaseOf[rank]!);
  return {
    phases: F,
    phaseOf,
    jumpOf,
    ranksAt: values.map((phase) => Int32Array.from(kinds.filter((kind) => kind.phase === phase).map(({ rank }) => rank))),
    lanes: lanes.map(({ origin, capacity }) => {
      const first = values.findIndex((phase) => phase >= origin);
      const roomOf = values.map((phase) => capacity - gapBefore(phase, origin, 0, repeat));
      const lastOf = new Int32Array(kinds.length);
      for (let rank = 0; rank < kinds.length; rank += 1) {
        const phase = phaseOf[rank]!;
        const room = roomOf[phase]! - kinds[rank]!.length;
        lastOf[rank] = room < 0 ? -1 : floorDivide(room, repeat) * F + ((phase - first + F) % F);
      }
      const before = placesBefore(origin);
      return {
        count: lastOf.reduce((most, last) => Math.max(most, last + 1), 0),
        first,
        lastOf,
        placeAt: (end) => placesBefore(origin + end) - before,
      };
    }),
    longestJump: jumpOf.reduce((most, jump) => Math.max(most, jump), 0),
  };
}

/**
 * Makes one kind of those that no roll can tell apart: same phase, same places passed, same last place in every lane.
 * A free match has none.
 *
 * Example: repeat 640, one phase: pieces of 2401 and of 2540 both pass four places of 2560, and fit up to the same one
 * in a roll of 10050; they are one kind, as long as its longest.
 */
export function mergeKinds(tape: Tape): Tape {
  if (tape.repeat === 0) return tape;
  const { jumpOf, lanes } = placeNodes(tape);
  const areAlike = (one: Kind, other: Kind): boolean => lanes.every(({ lastOf }) => lastOf[one.rank] === lastOf[other.rank]);
  const groups: Kind[][] = [];
  const passingAlike = new Map<string, Kind[][]>();
  for (const kind of tape.kinds) {
    const key = `${kind.phase} ${jumpOf[kind.rank]}`;
    const candidates = passingAlike.get(key) ?? [];
    const group = candidates.find(([first]) => areAlike(first!, kind));
    if (group) {
      group.push(kind);
      continue;
    }
    const begun = [kind];
    groups.push(begun);
    passingAlike.set(key, [...candidates, begun]);
  }
  return {
    ...tape,
    kinds: groups.map((group, rank) => ({
      ...group[0]!,
      count: group.reduce((sum, { count }) => sum + count, 0),
      types: group.flatMap(({ types }) => types),
      rank,
    })),
  };
}
