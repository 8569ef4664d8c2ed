import type { CuttingPlan, CuttingProblem, PieceType } from '../../shared-core/cutting/index.ts';

/** The top of the next cut, found by walking down the tape unit by unit. */
export function nextTop(from: number, startPhase: number, phase: number, repeat: number): number {
  let top = from;
  while (repeat > 0 && (startPhase + top) % repeat !== phase) top += 1;
  return top;
}

/** The tops of these pieces cut in this order from a roll that starts at this phase, and where the last ends. */
export function cutRoll(pieces: readonly PieceType[], startPhase: number, repeat: number): { tops: readonly number[]; end: number } {
  const tops: number[] = [];
  let end = 0;
  for (const { length, phase } of pieces) {
    const top = nextTop(end, startPhase, phase, repeat);
    tops.push(top);
    end = top + length;
  }
  return { tops, end };
}

/** What is wrong when every roll of the plan is cut, from every whole start phase it may have. */
export function simulate(problem: CuttingProblem, plan: CuttingPlan): readonly string[] {
  const { rollLength, repeat, rollStart, pieces } = problem;
  const startPhases = rollStart === 'anywhere' ? Array.from({ length: Math.max(repeat, 1) }, (_, phase) => phase) : [0];
  const wrong: string[] = [];
  for (const { cuts } of plan.rolls) {
    const wanted = cuts.map(({ piece }) => pieces[piece] as PieceType);
    for (const startPhase of startPhases) {
      const { tops, end } = cutRoll(wanted, startPhase, repeat);
      const origin = rollStart === 'anywhere' ? (tops[0] ?? 0) : 0;
      if (end > rollLength) wrong.push(`start phase ${startPhase}: ends at ${end} of ${rollLength}`);
      if (cuts.some(({ from }, index) => origin + from !== tops[index])) wrong.push(`start phase ${startPhase}: cuts are elsewhere`);
    }
  }
  return wrong;
}
