import type { Certificate, Cut, CuttingPlan, CuttingProblem } from '../../shared-core/cutting/problem.ts';

/** By piece type: how many are wanted that a roll can be relied on to give. */
export function wantedOf(problem: CuttingProblem): readonly number[] {
  const impossible = impossibleOf(problem);
  return problem.pieces.map(({ count }, piece) => (impossible.includes(piece) ? 0 : count));
}

function impossibleOf({ rollLength, repeat, rollStart, pieces }: CuttingProblem): readonly number[] {
  return pieces.flatMap(({ length, phase }, piece) => ((rollStart === 'at-repeat' ? phase + length > rollLength : length + repeat > rollLength) ? [piece] : []));
}

/** Where the cut lies that follows those of a roll; null where the roll cannot be relied on for it. */
function cutBehind({ rollLength, repeat, rollStart, pieces }: CuttingProblem, cuts: readonly Cut[], piece: number): Cut | null {
  const last = cuts.at(-1);
  const phaseAtZero = rollStart === 'at-repeat' ? 0 : (pieces[(cuts[0]?.piece ?? piece)]?.phase ?? 0);
  const wanted = pieces[piece];
  if (!wanted) return null;
  let from = last ? last.from + (pieces[last.piece]?.length ?? 0) : 0;
  while (repeat > 0 && (phaseAtZero + from) % repeat !== wanted.phase) from += 1;
  return from + wanted.length <= (rollStart === 'at-repeat' ? rollLength : rollLength - repeat) ? { piece, from } : null;
}

/** By piece type: what it counts for. */
type Worths = readonly number[];

/** The most that the pieces of one roll count for, by trying every order of cuts. */
export function mostOnARoll(problem: CuttingProblem, worths: Worths, isWithinDemand: boolean): number {
  const wanted = wantedOf(problem);
  const known = new Map<string, number>();
  const mostBehind = (cuts: readonly Cut[], left: readonly number[]): number => {
    const last = cuts.at(-1);
    const end = last ? last.from + (problem.pieces[last.piece]?.length ?? 0) : 0;
    const phase = problem.pieces[cuts[0]?.piece ?? -1]?.phase ?? -1;
    const name = `${phase} ${end} ${isWithinDemand ? left.join() : ''}`;
    const before = known.get(name);
    if (before !== undefined) return before;
    let most = 0;
    problem.pieces.forEach((_, piece) => {
      const cut = (wanted[piece] ?? 0) > 0 && (!isWithinDemand || (left[piece] ?? 0) > 0) ? cutBehind(problem, cuts, piece) : null;
      if (cut) most = Math.max(most, (worths[piece] ?? 0) + mostBehind([...cuts.slice(0, 1), cut], left.map((count, other) => (other === piece ? count - 1 : count))));
    });
    known.set(name, most);
    return most;
  };
  return mostBehind([], wanted);
}

export function certificateOf(problem: CuttingProblem, worths: Worths, isWithinDemand: boolean): Certificate {
  const wanted = wantedOf(problem);
  const duals = worths.map((worth, piece) => ((wanted[piece] ?? 0) > 0 ? worth : 0));
  const total = duals.reduce((sum, dual, piece) => sum + dual * (wanted[piece] ?? 0), 0);
  return { duals, total, mostPerRoll: mostOnARoll(problem, duals, isWithinDemand), isWithinDemand, ruledOut: null };
}

/** Each piece behind the last cut of the first roll that has room for it, in the order of the types. */
export function planFirstFit(problem: CuttingProblem): Pick<CuttingPlan, 'rolls' | 'rollCount' | 'impossible'> {
  const rolls: Cut[][] = [];
  wantedOf(problem).forEach((count, piece) => {
    for (let left = count; left > 0; left -= 1) {
      const roll = rolls.find((cuts) => cutBehind(problem, cuts, piece) !== null) ?? rolls[rolls.push([]) - 1];
      const cut = roll && cutBehind(problem, roll, piece);
      if (cut) roll.push(cut);
    }
  });
  const alike = new Map<string, { times: number; readonly cuts: readonly Cut[] }>();
  for (const cuts of rolls) {
    const name = JSON.stringify(cuts);
    const same = alike.get(name);
    if (same) same.times += 1;
    else alike.set(name, { times: 1, cuts });
  }
  return { rolls: [...alike.values()], rollCount: rolls.length, impossible: impossibleOf(problem) };
}

/** The plan with its certificate and what that bears out. */
export function certify(plan: Pick<CuttingPlan, 'rolls' | 'rollCount' | 'impossible'>, certificate: Certificate): CuttingPlan {
  const { total, mostPerRoll, ruledOut } = certificate;
  const byTotal = total === 0 ? 0 : (total - (total % mostPerRoll)) / mostPerRoll + (total % mostPerRoll > 0 ? 1 : 0);
  const lowerBound = ruledOut === null ? byTotal : ruledOut + 1;
  return { ...plan, lowerBound, isProven: lowerBound === plan.rollCount, certificate };
}
