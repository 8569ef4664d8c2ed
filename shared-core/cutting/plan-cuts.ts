import { boundRolls } from './bounds.ts';
import { fillByLeastGap, fillFullest } from './fill-rolls.ts';
import { fitFirst } from './first-fit.ts';
import { assertCuttingProblem, type Cut, type CuttingPlan, type CuttingProblem, type Effort, type RollCuts } from './problem.ts';
import { gapBefore, layTape, type Packing, type Tape } from './tape.ts';

/** Steps of looking ahead for each roll, in the order tried. */
const LOOK_AHEADS: Readonly<Record<Effort, readonly number[]>> = {
  instant: [],
  usual: [2_000],
  patient: [2_000, 50_000],
};

/**
 * Plans how the pieces are cut from as few rolls as can be found, with a bound below which no plan can go.
 *
 * Lengths, phases and positions are whole numbers of one unit of the caller's choice; phases lie
 * in [0, repeat). The best of several orders is kept: first-fit-decreasing and least gap at
 * 'instant', at 'usual' and 'patient' also rolls filled as full as a short or a long look ahead
 * finds. The same problem always gives the same plan; the order of the piece types does not
 * change the number of rolls. Piece types that no roll can be relied on to give, wanted or not,
 * come back in `impossible`; plan, count and bound are those of the others. A problem with numbers
 * that are not whole or out of range is a bug of the caller and throws.
 *
 * Rule: a piece starts only where the tape's pattern has its phase; rolls that start anywhere keep
 * one whole repeat in reserve, so the plan fits whatever their start (own derivation, see `layTape`).
 *
 * Example: rolls of 10050 mm, half-drop, repeat 640: ten pieces of 2230 at phase 0 and ten at
 * phase 320 alternate four to a roll, 5 rolls for rolls that start anywhere, proved by length.
 */
export function planCuts(problem: CuttingProblem, effort: Effort = 'usual', _stop?: () => boolean): CuttingPlan {
  assertCuttingProblem(problem);
  const tape = layTape(problem);
  const certificate = boundRolls(tape);
  const attempts: readonly ((tape: Tape) => readonly Packing[])[] = [
    fitFirst,
    fillByLeastGap,
    ...LOOK_AHEADS[effort].map((steps) => (wanted: Tape) => fillFullest(wanted, steps)),
  ];
  let packings: readonly Packing[] = [];
  let rollCount = Number.MAX_SAFE_INTEGER;
  for (const attempt of attempts) {
    const found = attempt(tape);
    const rolls = found.reduce((sum, { times }) => sum + times, 0);
    if (rolls < rollCount) {
      packings = found;
      rollCount = rolls;
    }
    if (rollCount === certificate.bound) break;
  }
  return {
    rolls: packings.map((packing) => placeCuts(tape, packing)),
    rollCount,
    lowerBound: certificate.bound,
    isProven: rollCount === certificate.bound,
    certificate,
    impossible: tape.impossible,
  };
}

function placeCuts(tape: Tape, { times, kinds }: Packing): RollCuts {
  const cuts: Cut[] = [];
  let end = 0;
  kinds.forEach((kind, index) => {
    const from = end + gapBefore(kind, kinds[index - 1], tape.repeat);
    cuts.push({ piece: kind.piece, from });
    end = from + kind.length;
  });
  return { times, cuts };
}
