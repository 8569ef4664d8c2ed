import { fewestRolls, leastOf } from './fewest-rolls.ts';
import { mergeKinds } from './nodes.ts';
import { assertCuttingProblem, type CuttingProblem } from './problem.ts';
import { layTape, type Tape } from './tape.ts';
import { budgetOf } from './work.ts';

const STEPS = 200_000_000;
const EXTENT = { stages: 2, stepsInParts: STEPS };

/**
 * The rolls that may be needed even by who looks at where a roll's pattern starts before cutting it.
 *
 * A plan for rolls that start anywhere fixes the order of cutting before a roll is seen. Who looks at each roll first
 * may choose, and might do with fewer rolls than planned, but not surely with fewer than this. `stop` is asked now and
 * then; the sooner it says true the less may be proved.
 *
 * Rule: all rolls may start alike, and the worst start is just after a phase, where nearly a whole repeat passes before
 * a piece of that phase can be cut. For each phase the rolls that start just after it are bounded like any others, and
 * the highest of those bounds holds (own derivation; tested against every start of small rolls).
 *
 * Example: rolls of 1000, repeat 100, a piece of 460 at phase 0 and one of 400 at phase 50. In either order, fixed before
 * the roll is seen, they take more than the 900 that are sure: two rolls. Just after phase 0 the shorter comes first, at
 * 50, and the other from 500 to 960; just after phase 50 the longer first, at 50, and the other from 600 to 1000: who
 * looks does with one.
 */
export function leastWhenLooking(problem: CuttingProblem, stop?: () => boolean): number {
  assertCuttingProblem(problem);
  const { repeat, rollLength } = problem;
  const tape = layTape(problem);
  const work = budgetOf(STEPS, stop);
  const boundOf = (lanes: Tape['lanes']): number => leastOf(fewestRolls(mergeKinds({ ...tape, lanes }), work, EXTENT));
  if (repeat === 0 || problem.rollStart === 'at-repeat') return boundOf(tape.lanes);
  const phases = tape.lanes.map(({ origin }) => origin);
  return phases.reduce((most, phase, index) => {
    const next = phases[index + 1] ?? phases[0]! + repeat;
    return Math.max(most, boundOf([{ origin: next % repeat, capacity: rollLength - (next - phase) }]));
  }, 0);
}
