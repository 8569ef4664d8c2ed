import { assert, type Fault } from '../base/index.ts';

/**
 * Where a roll's pattern starts: at any point of the repeat, unknown until the roll is open,
 * or exactly at the top of a repeat.
 */
export type RollStart = 'anywhere' | 'at-repeat';

export interface PieceType {
  readonly length: number;
  /** Where in the repeat the top of the piece has to lie: from 0 up to, not including, the repeat. */
  readonly phase: number;
  readonly count: number;
}

/** All lengths are whole numbers of any one unit. */
export interface CuttingProblem {
  readonly rollLength: number;
  /** 0 for a free match, where no piece has to keep to the pattern. */
  readonly repeat: number;
  readonly rollStart: RollStart;
  readonly pieces: readonly PieceType[];
}

export interface Cut {
  /** Index of the piece type in the problem. */
  readonly piece: number;
  /** The top of the cut: from the roll's start, or for 'anywhere' from the top of the roll's first cut. */
  readonly from: number;
}

/** So many rolls cut alike, with the cuts from the roll's start onwards. */
export interface RollCuts {
  readonly times: number;
  readonly cuts: readonly Cut[];
}

/**
 * The grounds of a lower bound: what a piece of each type counts for, and the most that one roll's pieces count for.
 *
 * The rolls share out `total` and none takes more than `mostPerRoll`, so at least
 * ceil(total / mostPerRoll) rolls are needed; with `ruledOut`, one more than that. The bound is 0
 * where nothing is wanted. Every sum stays below 2^53.
 */
export interface Certificate {
  /** By piece type of the problem: whole, at least 0; 0 for types that are impossible or not wanted. */
  readonly duals: readonly number[];
  /** What all the wanted pieces count for together. */
  readonly total: number;
  /** Exactly the most that any one roll's pieces count for; 0 where nothing is wanted. */
  readonly mostPerRoll: number;
  /** `mostPerRoll` is over the rolls that hold no more of a type than is wanted; claimed only where that is less. */
  readonly isWithinDemand: boolean;
  /**
   * So many rolls were tried in every way and do not do. The search may leave out every roll that
   * falls too short of `mostPerRoll`: N rolls together fall short by N * mostPerRoll - total. Null where not needed.
   */
  readonly ruledOut: number | null;
}

export interface CuttingPlan {
  readonly rolls: readonly RollCuts[];
  readonly rollCount: number;
  /** No plan for the same pieces takes fewer rolls. */
  readonly lowerBound: number;
  /** The plan is known to take the fewest rolls there are. */
  readonly isProven: boolean;
  readonly certificate: Certificate;
  /** Indexes of the piece types that no roll can be relied on to give; the plan holds none of their pieces. */
  readonly impossible: readonly number[];
}

export type Effort = 'instant' | 'brief' | 'usual' | 'patient';

/** One thing wrong with a plan; `path` says where in the plan. */
export interface CutFault extends Fault {
  readonly kind:
    | 'malformed'
    | 'overlap'
    | 'off-pattern'
    | 'past-the-end'
    | 'short-of-demand'
    | 'over-supply'
    | 'roll-count'
    | 'bound'
    | 'proof'
    | 'impossible';
}

/** Holds callers to whole numbers in range, small enough that every sum made of them is exact. */
export function assertCuttingProblem(problem: CuttingProblem): void {
  const { rollLength, repeat, pieces } = problem;
  assertWhole(rollLength, 1, 'the roll length');
  assertWhole(repeat, 0, 'the repeat');
  assert(Number.isSafeInteger(rollLength + repeat), `a roll of ${rollLength} with a repeat of ${repeat} is too long to reckon with`);
  let total = 0;
  pieces.forEach(({ length, phase, count }, index) => {
    assertWhole(length, 1, `the length of piece type ${index}`);
    assertWhole(count, 0, `the count of piece type ${index}`);
    assertPhase(phase, repeat, index);
    total += count * (length + repeat);
  });
  assert(Number.isSafeInteger(total), 'the pieces together are too long to reckon with');
}

function assertWhole(value: number, least: number, what: string): void {
  assert(Number.isSafeInteger(value) && value >= least, `${what} is ${value}, not a whole number of at least ${least}`);
}

function assertPhase(phase: number, repeat: number, index: number): void {
  const isInRepeat = Number.isSafeInteger(phase) && phase >= 0 && (phase < repeat || phase === 0);
  assert(isInRepeat, `the phase of piece type ${index} is ${phase}, not a whole number within the repeat of ${repeat}`);
}
