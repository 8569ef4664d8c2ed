import { assertCuttingProblem, type Certificate, type CutFault, type CuttingPlan, type CuttingProblem, type PieceType, type RollCuts } from './problem.ts';

type Report = (kind: CutFault['kind'], path: string, message: string) => void;

/**
 * Checks a plan against its problem, from the rules alone and by none of the planner's code.
 *
 * Same units as the problem. Returns every fault found, none for a good plan: numbers that are not
 * whole, cuts that overlap, leave the pattern or run past what the roll gives, pieces short of the
 * demand (more than the demand is allowed), a wrong roll count, a bound that its certificate does
 * not bear out, a wrong claim of proof, a wrong list of impossible types. A problem that is out of
 * range is a bug of the caller and throws.
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
  checkCounts(problem, plan, report);
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
    if (fitsARoll(problem, type) && !(got >= type.count)) report('short-of-demand', 'rolls', `give ${got} pieces of type ${piece}; ${type.count} are wanted`);
  });
}

function checkCounts(problem: CuttingProblem, plan: CuttingPlan, report: Report): void {
  const { rolls, rollCount, lowerBound, isProven, certificate } = plan;
  const counted = rolls.reduce((sum, roll) => sum + roll.times, 0);
  if (rollCount !== counted) report('roll-count', 'rollCount', `is ${rollCount}; the rolls are ${counted}`);
  const borneOut = boundByRule(problem, certificate);
  if (!Number.isSafeInteger(certificate.bound) || certificate.bound > borneOut) report('bound', 'certificate.bound', `is ${certificate.bound}; its rule bears out ${borneOut}`);
  if (lowerBound !== certificate.bound) report('bound', 'lowerBound', `is ${lowerBound}; its certificate says ${certificate.bound}`);
  if (!(lowerBound <= rollCount)) report('bound', 'lowerBound', `is ${lowerBound}, more than the ${rollCount} rolls that do`);
  if (isProven !== (lowerBound === rollCount)) report('proof', 'isProven', `is ${isProven} with ${rollCount} rolls and a lower bound of ${lowerBound}`);
}

/** The first place in phase on a roll that starts at a repeat is the phase itself. */
function fitsARoll({ rollLength, repeat, rollStart }: CuttingProblem, { length, phase }: PieceType): boolean {
  return rollStart === 'at-repeat' ? phase + length <= rollLength : length <= rollLength - repeat;
}

/** The rules are those told at `Certificate`; why they hold is told in bounds.ts. */
function boundByRule(problem: CuttingProblem, { rule, shortest }: Certificate): number {
  const { rollLength, repeat, rollStart } = problem;
  const wanted = problem.pieces.filter((type) => type.count > 0 && type.length >= shortest && fitsARoll(problem, type));
  if (wanted.length === 0 || rule === 'none') return 0;
  const usable = rollStart === 'at-repeat' ? rollLength - Math.min(...wanted.map((type) => type.phase)) : rollLength - repeat;
  const spaced = wanted
    .map((type) => ({ ...type, distance: Math.min(...wanted.map((next) => distanceTo(next, type, repeat))) }))
    .sort((a, b) => a.distance - b.distance);
  const room = usable + Math.max(...spaced.map((type) => type.distance - type.length));
  const total = (sizeOf: (type: (typeof spaced)[number]) => number): number => spaced.reduce((sum, type) => sum + type.count * sizeOf(type), 0);
  switch (rule) {
    case 'length':
      return timesNeeded(total((type) => type.length), usable);
    case 'spacing':
      return timesNeeded(total((type) => type.distance), room);
    case 'count':
      return timesNeeded(total(() => 1), mostOf(spaced, room));
  }
}

function timesNeeded(total: number, held: number): number {
  const over = total % held;
  return (total - over) / held + (over > 0 ? 1 : 0);
}

/** The least distance of two tops that leaves room for the earlier piece and is in phase for the later. */
function distanceTo(later: PieceType, earlier: PieceType, repeat: number): number {
  if (repeat === 0) return earlier.length;
  const inPhase = (repeat + later.phase - earlier.phase) % repeat;
  if (inPhase >= earlier.length) return inPhase;
  const over = (earlier.length - inPhase) % repeat;
  return earlier.length + (over === 0 ? 0 : repeat - over);
}

function mostOf(nearestFirst: readonly { count: number; distance: number }[], room: number): number {
  let most = 0;
  let left = room;
  for (const { count, distance } of nearestFirst) {
    const fitting = Math.min(count, (left - (left % distance)) / distance);
    most += fitting;
    left -= fitting * distance;
  }
  return most;
}
