export interface AssignmentProblem {
  /**
   * What hangs from one run: a room, several rooms tied together, or a part of a room. `rooms` are room numbers; a room
   * hangs only where every unit that names it hangs, and a unit only where each of its rooms does. `run` is the run that
   * the user pinned it to.
   */
  readonly units: readonly { readonly rooms: readonly number[]; readonly run?: number }[];
  /** Whole rolls; of what is offered, what can be bought in sale units. */
  readonly runs: readonly { readonly inHand: number; readonly offered: number }[];
  /**
   * The rolls that these units take when cut together from one run: never less for more units, never more than the sum of
   * each alone, or exactly that sum where `isAdditive`. Dear, so each set is asked once.
   */
  readonly count: (units: readonly number[]) => number;
  /** For any set of units, count >= ceil(sum of their values / worth). Whole numbers, sums up to 2^52. */
  readonly bounds: readonly { readonly values: readonly number[]; readonly worth: number }[];
  /** One of the bounds has worth 1 and says exactly what each unit takes alone. */
  readonly isAdditive: boolean;
  /** Rolls bought for so many beyond those in hand, rounded up to sale units: never less for more, 0 for 0. */
  readonly bought: (rolls: number) => number;
}

/**
 * What an assignment is judged by: most rooms hung, then fewest rolls bought, then least left over in the runs used; where
 * rooms are cut together `leftOver` is what was in hand of the runs used, since a worse cutting would leave less of it.
 */
export interface AssignmentScore {
  readonly hung: number;
  readonly bought: number;
  readonly leftOver: number;
}

export interface Assignment {
  /** For each unit the run it hangs from, null where none can hang it. */
  readonly runs: readonly (number | null)[];
  readonly score: AssignmentScore;
  /** No other assignment scores better. */
  readonly isProven: boolean;
}
