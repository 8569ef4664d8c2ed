import { ALL_STAGES, type Extent, fewestRolls, leastOf, rollsOf } from './fewest-rolls.ts';
import { mergeKinds } from './nodes.ts';
import { placeCuts } from './place-cuts.ts';
import { assertCuttingProblem, type Certificate, type CuttingPlan, type CuttingProblem, type Effort, type PieceType } from './problem.ts';
import type { Pricing } from './pricing.ts';
import { layTape, type Tape } from './tape.ts';
import { budgetOf, partOf } from './work.ts';

const EXTENTS: Readonly<Record<Effort, Extent & { readonly steps: number }>> = {
  instant: { steps: 1_500_000, stages: 1, stepsInParts: 1_500_000 },
  brief: { steps: 40_000_000, stages: 3, stepsInParts: 40_000_000 },
  usual: { steps: 4_000_000_000, stages: ALL_STAGES, stepsInParts: 1_000_000_000 },
  patient: { steps: 60_000_000_000, stages: ALL_STAGES, stepsInParts: 40_000_000_000 },
};

/**
 * Plans how the pieces are cut from as few rolls as can be found, with a bound below which no plan can go.
 *
 * Lengths, phases and positions are whole numbers of one unit of the caller's choice; phases lie in [0, repeat). The
 * same problem always gives the same plan, unless `stop`, asked now and then, says true: then the best found so far
 * comes back. The order of the piece types does not change the number of rolls. Piece types that no roll can be relied
 * on to give, wanted or not, come back in `impossible`; plan, count and bound are those of the others. A problem with
 * numbers that are not whole or out of range is a bug of the caller and throws.
 *
 * 'instant' tries once for whole rolls and is done within some milliseconds; 'brief', for asking about very many
 * selections of pieces, within some hundredths of a second; 'usual' goes on until the fewest are proved
 * or some two to four seconds of work are done, 'patient' fifteen times that.
 *
 * Rule: a piece starts only where the tape's pattern has its phase; rolls that start anywhere keep one whole repeat in
 * reserve, so the plan fits whatever their start (own derivation, see `layTape`). Rolls in parts give prices and with
 * them the bound (see `relax`), whole rolls are sought along them (see `dive`), and where those two do not meet, every
 * way is tried (see `tryAll`); `fewestRolls` leads through it.
 *
 * Example: rolls of 10050 mm, half-drop, repeat 640: ten pieces of 2230 at phase 0 and ten at phase 320 alternate four
 * to a roll, 5 rolls for rolls that start anywhere, proved.
 */
export function planCuts(problem: CuttingProblem, effort: Effort = 'usual', stop?: () => boolean): CuttingPlan {
  assertCuttingProblem(problem);
  const tape = mergeKinds(layTape(problem));
  const found = fewestRolls(tape, budgetOf(EXTENTS[effort].steps, stop), EXTENTS[effort]);
  const rollCount = rollsOf(found.packings);
  const lowerBound = leastOf(found);
  return {
    rolls: placeCuts(problem, tape, found.packings),
    rollCount,
    lowerBound,
    isProven: rollCount === lowerBound,
    certificate: certify(problem, tape, found.pricing, found.ruledOut),
    impossible: tape.impossible,
  };
}

/**
 * Counts the rolls for one set of pieces after the other at the 'instant' effort, with a limit to the work of all together.
 *
 * A step is about one comparison of the innermost loops. Once the limit is reached each further answer is null.
 *
 * Example: rolls of 10, free match: 3 pieces of 6 take 3 rolls. With a limit of 0 steps the answer is null.
 */
export function rollCounter(goods: Omit<CuttingProblem, 'pieces'>, mostSteps: number): (pieces: readonly PieceType[]) => number | null {
  const work = budgetOf(mostSteps);
  return (pieces) => {
    const problem = { ...goods, pieces };
    assertCuttingProblem(problem);
    if (work.isOver()) return null;
    const { packings } = fewestRolls(mergeKinds(layTape(problem)), partOf(work, EXTENTS.instant.steps), EXTENTS.instant);
    return work.isOver() ? null : rollsOf(packings);
  };
}

function certify(problem: CuttingProblem, tape: Tape, pricing: Pricing, ruledOut: number | null): Certificate {
  const duals = problem.pieces.map(() => 0);
  for (const { types, rank } of tape.kinds) for (const type of types) duals[type] = pricing.duals[rank]!;
  return { duals, total: pricing.total, mostPerRoll: pricing.most, isWithinDemand: pricing.isWithinDemand, ruledOut };
}
