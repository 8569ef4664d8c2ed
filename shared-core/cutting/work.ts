/** Stops the work from inside: the steps are used up, or somebody asked for it. */
export interface Work {
  /** Counts steps done. */
  spend(steps: number): void;
  readonly isOver: () => boolean;
}

/** How many steps lie between two questions whether to stop. */
const STEPS_BETWEEN_QUESTIONS = 500_000;

/**
 * A budget of steps, so that the same problem gives the same plan on a slow machine as on a fast one.
 *
 * One step is about one comparison of the innermost loops. `stop` is asked now and then; once it says true the work is over.
 *
 * Example: a budget of 10 with 10 steps spent is over.
 */
export function budgetOf(steps: number, stop: () => boolean = () => false): Work {
  let spent = 0;
  let askAt = 0;
  let isStopped = false;
  return {
    spend(more) {
      spent += more;
      if (spent < askAt) return;
      askAt = spent + STEPS_BETWEEN_QUESTIONS;
      isStopped ||= stop();
    },
    isOver: () => isStopped || spent >= steps,
  };
}

/**
 * A part of a budget: over after so many steps of its own, or with the whole.
 *
 * Example: a part of 3 of a budget of 10 is over after 3 steps, and leaves 7.
 */
export function partOf(whole: Work, steps: number): Work {
  const part = budgetOf(steps);
  return {
    spend(more) {
      part.spend(more);
      whole.spend(more);
    },
    isOver: () => part.isOver() || whole.isOver(),
  };
}
