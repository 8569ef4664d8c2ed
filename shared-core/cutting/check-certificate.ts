import { mostOfAnyRoll, mostWithinDemand } from './check-most.ts';
import { type Sort, sortPieces } from './check-places.ts';
import { tryToCover } from './check-ruled-out.ts';
import { STEPS_OF_A_SEARCH } from './check-steps.ts';
import type { Certificate, CutFault, CuttingPlan, CuttingProblem } from './problem.ts';

type Report = (kind: CutFault['kind'], path: string, message: string) => void;

/**
 * Checks that a plan's certificate holds and bears out its lower bound; `wanted` are the counts of the types that a roll can give.
 *
 * Rule: whatever the pieces count for, the rolls of any plan share out their total, and no roll
 * takes more than the most a roll can hold; so there are at least ceil(total / most). One more
 * than `ruledOut` where a search finds that so many rolls cannot hold all pieces.
 *
 * Example: half drop, rolls of 10050 with a repeat of 640 that start anywhere, ten pieces of 2230
 * at phase 0 and ten at 320. With each counting for 1 the total is 20 and a roll holds 4 at most:
 * 5 rolls or more.
 */
export function checkCertificate(problem: CuttingProblem, wanted: readonly number[], plan: CuttingPlan, report: Report): void {
  const { certificate, lowerBound } = plan;
  if (!areDualsInOrder(wanted, certificate, report)) return;
  const total = wanted.reduce((sum, count, piece) => sum + count * (certificate.duals[piece] ?? 0), 0);
  const sorts = sortPieces(problem, wanted, certificate.duals);
  if (!areSumsExact(problem, sorts, total, certificate, report)) return;
  if (certificate.total !== total) report('bound', 'certificate.total', `is ${certificate.total}; the wanted pieces count for ${total}`);
  const isMostRight = total === 0 ? isOfNothing(certificate, sorts.length > 0, report) : checkMost(problem, sorts.filter(({ worth }) => worth > 0), certificate, report);
  if (!isMostRight) return;
  const byTotal = total === 0 ? 0 : timesNeeded(total, certificate.mostPerRoll);
  const borneOut = certificate.ruledOut === null ? byTotal : certificate.ruledOut + 1;
  if (lowerBound !== borneOut) report('bound', 'lowerBound', `is ${lowerBound}; its certificate bears out ${borneOut}`);
  if (certificate.ruledOut !== null) checkRuledOut(problem, sorts, plan, certificate.ruledOut, byTotal, report);
}

function areDualsInOrder(wanted: readonly number[], { duals }: Certificate, report: Report): boolean {
  if (duals.length !== wanted.length) {
    report('malformed', 'certificate.duals', `are ${duals.length}; the problem has ${wanted.length} piece types`);
    return false;
  }
  let areInOrder = true;
  duals.forEach((dual, piece) => {
    const isInOrder = Number.isSafeInteger(dual) && dual >= 0 && (dual === 0 || (wanted[piece] ?? 0) > 0);
    if (!isInOrder) report('malformed', `certificate.duals[${piece}]`, (wanted[piece] ?? 0) > 0 ? `is ${dual}, not a whole number of at least 0` : `is ${dual}; of this type no piece is wanted that a roll can give, so it is 0`);
    areInOrder &&= isInOrder;
  });
  return areInOrder;
}

/** No sum that the check makes may round: neither those of all pieces nor those of a roll. */
function areSumsExact({ rollLength }: CuttingProblem, sorts: readonly Sort[], total: number, { mostPerRoll, ruledOut }: Certificate, report: Report): boolean {
  const onARoll = sorts.reduce((most, { worth }) => Math.max(most, worth), 0) * sorts.reduce((most, { length }) => Math.max(most, rollLength / length), 0);
  const areExact = [total, onARoll, (ruledOut ?? 0) * mostPerRoll].every((sum) => Math.abs(sum) < Number.MAX_SAFE_INTEGER);
  if (!areExact) report('malformed', 'certificate', 'counts too high to reckon with');
  return areExact;
}

function isOfNothing({ mostPerRoll, isWithinDemand, ruledOut }: Certificate, isAnyWanted: boolean, report: Report): boolean {
  if (isAnyWanted) report('bound', 'certificate.duals', 'are all 0; pieces are wanted');
  if (mostPerRoll !== 0) report('bound', 'certificate.mostPerRoll', `is ${mostPerRoll}; no piece counts for anything`);
  if (isWithinDemand) report('bound', 'certificate.isWithinDemand', 'is true; no roll holds more than 0 in any case');
  if (ruledOut !== null) report('bound', 'certificate.ruledOut', `is ${ruledOut}; no piece counts for anything`);
  return !isAnyWanted && mostPerRoll === 0 && !isWithinDemand && ruledOut === null;
}

function checkMost(problem: CuttingProblem, sorts: readonly Sort[], { mostPerRoll, isWithinDemand }: Certificate, report: Report): boolean {
  if (!Number.isSafeInteger(mostPerRoll) || mostPerRoll < 1) {
    report('malformed', 'certificate.mostPerRoll', `is ${mostPerRoll}, not a whole number of at least 1`);
    return false;
  }
  const most = isWithinDemand ? mostWithinDemand(problem, sorts, mostPerRoll) : mostOfAnyRoll(problem, sorts, mostPerRoll);
  if (most === 'unsettled') report('proof', 'certificate.mostPerRoll', `is ${mostPerRoll}; to make sure takes more steps than the check is allowed`);
  else if (most === 'less') report('bound', 'certificate.mostPerRoll', `is ${mostPerRoll}; no roll's pieces count for so much`);
  else if (most !== mostPerRoll) report('bound', 'certificate.mostPerRoll', `is ${mostPerRoll}; a roll's pieces count for up to ${most}`);
  if (most !== mostPerRoll || !isWithinDemand) return most === mostPerRoll;
  const ofAny = mostOfAnyRoll(problem, sorts, mostPerRoll + 1);
  if (ofAny === 'unsettled') report('proof', 'certificate.isWithinDemand', 'is true; to make sure that it matters takes more steps than the check is allowed');
  if (ofAny === 'less') report('bound', 'certificate.isWithinDemand', `is true; ${mostPerRoll} is the most of all rolls`);
  return typeof ofAny === 'number';
}

function checkRuledOut(problem: CuttingProblem, sorts: readonly Sort[], plan: CuttingPlan, ruledOut: number, byTotal: number, report: Report): void {
  if (!Number.isSafeInteger(ruledOut) || ruledOut < byTotal) return report('bound', 'certificate.ruledOut', `is ${ruledOut}; by their total alone ${byTotal} rolls are needed`);
  // A plan for so many rolls needs no search to show that they do; whether it holds is checked elsewhere.
  if (ruledOut >= plan.rollCount) return report('bound', 'certificate.ruledOut', `is ${ruledOut}; the plan takes ${plan.rollCount}`);
  const answer = tryToCover(problem, sorts, ruledOut, plan.certificate.mostPerRoll, { left: STEPS_OF_A_SEARCH });
  if (answer === 'covered') report('bound', 'certificate.ruledOut', `is ${ruledOut}; so many rolls can hold all pieces`);
  if (answer === 'unsettled') report('proof', 'certificate.ruledOut', `is ${ruledOut}; to make sure takes more steps than the check is allowed`);
}

function timesNeeded(total: number, held: number): number {
  const over = total % held;
  return (total - over) / held + (over > 0 ? 1 : 0);
}
