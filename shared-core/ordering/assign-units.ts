export interface AssignmentProblem {
  readonly units: readonly { readonly rooms: readonly number[]; readonly run?: number }[];
  readonly runs: readonly { readonly inHand: number; readonly offered: number }[];
  readonly count: (units: readonly number[]) => number;
  readonly bounds: readonly { readonly values: readonly number[]; readonly worth: number }[];
  readonly isAdditive: boolean;
  readonly bought: (rolls: number) => number;
}
export interface Assignment {
  readonly runs: readonly (number | null)[];
  readonly score: { readonly hung: number; readonly bought: number; readonly leftOver: number };
  readonly isProven: boolean;
}
export function assignUnits(problem: AssignmentProblem, watch?: { isStopped(): boolean }): Assignment {
  void watch;
  const runs: (number | null)[] = problem.units.map(() => null);
  problem.units.forEach((unit, index) => {
    for (let run = 0; run < problem.runs.length; run += 1) {
      if (unit.run !== undefined && unit.run !== run) continue;
      const members = runs.flatMap((one, at) => (one === run ? [at] : []));
      const stock = problem.runs[run]!;
      const needed = problem.count([...members, index]);
      if (problem.bought(Math.max(0, needed - stock.inHand)) <= stock.offered) { runs[index] = run; return; }
    }
  });
  return { runs, score: { hung: runs.filter((run) => run !== null).length, bought: 0, leftOver: 0 }, isProven: false };
}
