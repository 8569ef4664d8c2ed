/** What a search may still do: steps of its own, and units that are cut to be counted. */
export interface Budget {
  spend(steps: number): void;
  /** Counts a cutting of so many units. */
  cut(units: number): void;
  /** How many units have been cut. */
  cutSoFar(): number;
  /** How many units may still be cut. */
  cutsLeft(): number;
  isOver(): boolean;
  /** Somebody has stopped it from outside. */
  isStopped(): boolean;
}

const STEPS_BETWEEN_QUESTIONS = 100_000;

/**
 * A budget of steps and of cut units, so that the same problem gives the same answer on any machine.
 *
 * A step is about one comparison of an innermost loop. The watch is asked at once, before each cutting and now and then.
 * Example: with 10 steps, 10 spent are over; with 3 units to cut, a cutting of 2 leaves one more.
 */
export function assignBudget(steps: number, units: number, watch?: { isStopped(): boolean }): Budget {
  let [spent, cut, askAt] = [0, 0, 0];
  let isStopped = watch?.isStopped() ?? false;
  const look = () => (isStopped ||= watch?.isStopped() ?? false);
  return {
    spend(more) {
      spent += more;
      if (spent < askAt) return;
      askAt = spent + STEPS_BETWEEN_QUESTIONS;
      look();
    },
    cut(more) {
      cut += more;
      look();
    },
    cutSoFar: () => cut,
    cutsLeft: () => units - cut,
    isOver: () => isStopped || spent >= steps || cut >= units,
    isStopped: () => isStopped,
  };
}

/**
 * A part of a budget: over after so many steps and cut units from here on, or with the whole.
 *
 * What is cut may be told to the part or to the whole. Example: a part of 3 steps of a budget of 10 is over after 3 and
 * leaves 7.
 */
export function partOfBudget(whole: Budget, steps: number, units: number): Budget {
  const part = assignBudget(steps, Infinity);
  const before = whole.cutSoFar();
  return {
    ...whole,
    spend(more) {
      part.spend(more);
      whole.spend(more);
    },
    isOver: () => part.isOver() || whole.cutSoFar() - before >= units || whole.isOver(),
  };
}
