import type { FindDearest } from './dearest.ts';
import { dive, type Draw } from './dive.ts';
import { findDearest } from './find-dearest.ts';
import { fitFirst } from './first-fit.ts';
import { mergeKinds } from './nodes.ts';
import { placeCuts } from './place-cuts.ts';
import { assertCuttingProblem, type Certificate, type CuttingPlan, type CuttingProblem, type Effort } from './problem.ts';
import { better, boundOf, priceByCount, type Pricing } from './pricing.ts';
import { poolOf, relax } from './relax.ts';
import { layTape, type Packing, type Tape } from './tape.ts';
import { tryAll } from './try-all.ts';
import { budgetOf, partOf, type Work } from './work.ts';

const STEPS: Readonly<Record<Effort, number>> = { instant: 5_000_000, usual: 4_000_000_000, patient: 40_000_000_000 };

interface Stage {
  /** How many beginnings of rolls are kept in mind. */
  readonly patience: number;
  /** How often whole rolls are tried for. */
  readonly dives: number;
  /** Steps of trying every way there is. */
  readonly steps: number;
}

/** Ever more is done where less was not enough. */
const STAGES: readonly Stage[] = [
  { patience: 0, dives: 1, steps: 200_000 },
  { patience: 2_000, dives: 4, steps: 4_000_000 },
  { patience: 6_000, dives: 8, steps: 20_000_000 },
  { patience: 20_000, dives: 16, steps: 100_000_000 },
  { patience: 100_000, dives: 1_000, steps: 1_000_000_000 },
];

/**
 * Plans how the pieces are cut from as few rolls as can be found, with a bound below which no plan can go.
 *
 * Lengths, phases and positions are whole numbers of one unit of the caller's choice; phases lie in [0, repeat). The
 * same problem always gives the same plan, unless `stop`, asked now and then, says true: then the best found so far
 * comes back. The order of the piece types does not change the number of rolls. Piece types that no roll can be relied
 * on to give, wanted or not, come back in `impossible`; plan, count and bound are those of the others. A problem with
 * numbers that are not whole or out of range is a bug of the caller and throws.
 *
 * 'instant' tries once for whole rolls and is done within some milliseconds; 'usual' goes on until the fewest are proved
 * or some two to four seconds of work are done, 'patient' until ten times that.
 *
 * Rule: a piece starts only where the tape's pattern has its phase; rolls that start anywhere keep one whole repeat in
 * reserve, so the plan fits whatever their start (own derivation, see `layTape`). Rolls in parts give prices and with
 * them the bound (see `relax`), whole rolls are sought along them (see `dive`), and where those two do not meet, every
 * way is tried (see `tryAll`).
 *
 * Example: rolls of 10050 mm, half-drop, repeat 640: ten pieces of 2230 at phase 0 and ten at phase 320 alternate four
 * to a roll, 5 rolls for rolls that start anywhere, proved.
 */
export function planCuts(problem: CuttingProblem, effort: Effort = 'usual', stop?: () => boolean): CuttingPlan {
  assertCuttingProblem(problem);
  const laid = layTape(problem);
  const tape = problem.repeat > 0 ? mergeKinds(laid) : laid;
  const work = budgetOf(STEPS[effort], stop);
  const find = findDearest(tape, work);
  const { packings, pricing, ruledOut } = fewestRolls(tape, find, work, effort === 'instant' ? STAGES.slice(0, 1) : STAGES);
  const rollCount = rollsOf(packings);
  const lowerBound = ruledOut === null ? boundOf(pricing) : ruledOut + 1;
  return {
    rolls: placeCuts(problem, tape, packings),
    rollCount,
    lowerBound,
    isProven: rollCount === lowerBound,
    certificate: certify(problem, tape, pricing, ruledOut),
    impossible: tape.impossible,
  };
}

interface Found {
  readonly packings: readonly Packing[];
  readonly pricing: Pricing;
  readonly ruledOut: number | null;
}

function fewestRolls(tape: Tape, find: FindDearest, work: Work, stages: readonly Stage[]): Found {
  let packings = fitFirst(tape);
  let pricing = priceByCount(tape);
  let ruledOut: number | null = null;
  let isBoundSharp = false;
  const pool = poolOf(packings.map(({ roll }) => roll));
  const wanted = tape.kinds.map(({ count }) => count);
  const take = (found: readonly Packing[] | null): void => {
    if (found && rollsOf(found) < rollsOf(packings)) packings = found;
  };
  const least = (): number => Math.max(pricing.bound, ruledOut === null ? 0 : ruledOut + 1);
  const isDone = (): boolean => rollsOf(packings) === least() || work.isOver();
  const bound = (isWithinDemand: boolean, patience: number): void => {
    const relaxed = relax(tape, find, pool, work, { wanted, isWithinDemand, patience, bound: rollsOf(packings), rolls: 0 });
    pricing = better(pricing, relaxed.pricing)!;
    isBoundSharp ||= isWithinDemand && relaxed.isOptimal;
  };

  if (!isDone()) bound(false, 0);
  const draw = drawing();
  for (const { patience, dives, steps } of stages) {
    if (patience > 0 && !isDone() && !isBoundSharp) bound(true, patience);
    for (let attempt = 0; attempt < dives && !isDone(); attempt += 1) {
      const isFirst = attempt === 0;
      const atMost = isFirst ? rollsOf(packings) - 1 : least();
      take(dive(tape, find, pool, work, { aim: least(), atMost, patience, draw: isFirst ? null : draw }));
    }
    while (!isDone()) {
      const tried = tryAll(tape, find, pricing, least(), partOf(work, steps));
      if (tried === null) break;
      if (tried === 'there is none') ruledOut = least();
      else take(tried);
    }
  }
  return { packings, pricing, ruledOut };
}

function rollsOf(packings: readonly Packing[]): number {
  return packings.reduce((sum, { times }) => sum + times, 0);
}

/** The same numbers each time a plan is made, by Lehmer's generator with the multiplier 48271 (Park and Miller). */
function drawing(): Draw {
  let state = 1;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

function certify(problem: CuttingProblem, tape: Tape, pricing: Pricing, ruledOut: number | null): Certificate {
  const duals = problem.pieces.map(() => 0);
  for (const { types, rank } of tape.kinds) for (const type of types) duals[type] = pricing.duals[rank]!;
  return { duals, total: pricing.total, mostPerRoll: pricing.most, isWithinDemand: pricing.isWithinDemand, ruledOut };
}
