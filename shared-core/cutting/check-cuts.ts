import { checkCertificate } from './check-certificate.ts';
import { assertCuttingProblem, type CutFault, type CuttingPlan, type CuttingProblem, type PieceType, type RollCuts } from './problem.ts';

type Report = (kind: CutFault['kind'], path: string, message: string) => void;

/**
 * Checks a plan against its problem, from the rules alone and by none of the planner's code.
 *
 * Same units as the problem. Returns every fault found, none for a good plan: numbers that are not
 * whole, cuts that overlap, leave the pattern or run past what the roll gives, pieces short of or
 * beyond the demand, a wrong roll count, a certificate that does not bear out the lower bound, a
 * wrong claim of proof, a wrong list of impossible types. The certificate is worked out anew; where
 * that would take more steps than `check-steps.ts` allows, this is a fault of kind 'proof'. A
 * problem that is out of range is a bug of the caller and throws.
 *
 * Rule: on a roll that starts at phase s the first cut, of phase p, has its top at (p - s) mod R,
 * which over all s is any distance below R and never R itself. Cuts measured from the first one's
 * top are in phase for every s if they differ from it by their difference in phase (mod R), and
 * they fit for every s if, and only if, the last one's end is at most roll length - R away.
 *
 * Example: rolls of 1000, repeat 100, start anywhere, two pieces of 450 at phase 0: cuts from 0
 * and 500 end at 950, and 950 > 900 is one fault, 'past-the-end'; on rolls that start at a repeat
 * the same cuts have none.
 */
export function checkCuts(problem: CuttingProblem, plan: CuttingPlan): readonly CutFault[] {
  assertCuttingProblem(problem);
  const faults: CutFault[] = [];
  const report: Report = (kind, path, message) => faults.push({ kind, path, message });
  plan.rolls.forEach((roll, index) => checkRoll(problem, roll, `rolls[${index}]`, report));
  checkImpossible(problem, plan, report);
  checkDemand(problem, plan, report);
  checkCounts(plan, report);
  const wanted = problem.pieces.map((type) => (fitsARoll(problem, type) ? type.count : 0));
  checkCertificate(problem, wanted, plan, report);
  return faults;
}

function checkRoll(problem: CuttingProblem, roll: RollCuts, path: string, report: Report): void {
  const { rollLength, repeat, rollStart, pieces } = problem;
  if (!Number.isSafeInteger(roll.times) || roll.times < 1) report('malformed', `${path}.times`, `is ${roll.times}, not a whole number of rolls`);
  if (roll.cuts.length === 0) report('malformed', `${path}.cuts`, 'is empty; a roll that gives nothing is not needed');
  const limit = rollStart === 'at-repeat' ? rollLength : rollLength - repeat;
  const firstPhase = pieces[roll.cuts[0]?.piece ?? -1]?.phase ?? 0;
  const phaseAtZero = rollStart === 'at-repeat' ? 0 : firstPhase;
  let free = 0;
  roll.cuts.forEach(({ piece, from }, index) => {
    const at = `${path}.cuts[${index}]`;
    const type = pieces[piece];
    if (type === undefined) return report('malformed', `${at}.piece`, `is ${piece}; the problem has ${pieces.length} piece types`);
    if (!Number.isSafeInteger(from)) return report('malformed', `${at}.from`, `is ${from}, not a whole number`);
    if (index === 0 && rollStart === 'anywhere' && from !== 0) report('malformed', `${at}.from`, `is ${from}; positions are measured from the first cut's top, so it is 0`);
    if (from < free) report('overlap', `${at}.from`, `is ${from}; the tape is free from ${free}`);
    if (repeat > 0 && (phaseAtZero + from - type.phase) % repeat !== 0) report('off-pattern', `${at}.from`, `is ${from}, which is not at phase ${type.phase} of the repeat`);
    free = Math.max(free, from + type.length);
    if (from + type.length > limit) report('past-the-end', at, `ends at ${from + type.length}; the roll can be relied on up to ${limit}`);
  });
}

function checkImpossible(problem: CuttingProblem, plan: CuttingPlan, report: Report): void {
  const expected = problem.pieces.flatMap((type, index) => (fitsARoll(problem, type) ? [] : [index]));
  const isSame = expected.length === plan.impossible.length && expected.every((piece, index) => plan.impossible[index] === piece);
  if (!isSame) report('impossible', 'impossible', `is [${plan.impossible.join(', ')}]; no roll can give piece types [${expected.join(', ')}]`);
}

function checkDemand(problem: CuttingProblem, plan: CuttingPlan, report: Report): void {
  const given = problem.pieces.map(() => 0);
  for (const { times, cuts } of plan.rolls) for (const { piece } of cuts) given[piece] = (given[piece] ?? 0) + times;
  problem.pieces.forEach((type, piece) => {
    const got = given[piece] ?? 0;
    const wanted = fitsARoll(problem, type) ? type.count : 0;
    if (got > wanted) report('over-supply', 'rolls', `give ${got} pieces of type ${piece}; only ${wanted} are wanted`);
    else if (got !== wanted) report('short-of-demand', 'rolls', `give ${got} pieces of type ${piece}; ${wanted} are wanted`);
  });
}

function checkCounts({ rolls, rollCount, lowerBound, isProven }: CuttingPlan, report: Report): void {
  const counted = rolls.reduce((sum, roll) => sum + roll.times, 0);
  if (rollCount !== counted) report('roll-count', 'rollCount', `is ${rollCount}; the rolls are ${counted}`);
  if (!(lowerBound <= rollCount)) report('bound', 'lowerBound', `is ${lowerBound}, more than the ${rollCount} rolls that do`);
  if (isProven !== (lowerBound === rollCount)) report('proof', 'isProven', `is ${isProven} with ${rollCount} rolls and a lower bound of ${lowerBound}`);
}

/** The first place in phase on a roll that starts at a repeat is the phase itself. */
function fitsARoll({ rollLength, repeat, rollStart }: CuttingProblem, { length, phase }: PieceType): boolean {
  return rollStart === 'at-repeat' ? phase + length <= rollLength : length <= rollLength - repeat;
}
