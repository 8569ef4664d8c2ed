import type { CuttingPlan, CuttingProblem, PieceType } from '../../shared-core/cutting/index.ts';

/** The top of the next cut, found by walking down the tape unit by unit. */
function nextTop(from: number, startPhase: number, phase: number, repeat: number): number {
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

/** The fewest rolls: every order of the single pieces, each roll cut until the next piece does not fit. */
export function fewestRolls(problem: CuttingProblem): number {
  const { rollLength, repeat, rollStart } = problem;
  const limit = rollStart === 'anywhere' ? rollLength - repeat : rollLength;
  const fits = (roll: readonly PieceType[]): boolean => {
    const { tops, end } = cutRoll(roll, rollStart === 'anywhere' ? (roll[0]?.phase ?? 0) : 0, repeat);
    return end - (rollStart === 'anywhere' ? (tops[0] ?? 0) : 0) <= limit;
  };
  const singles = problem.pieces.filter((type) => fits([type])).flatMap((type) => Array<PieceType>(type.count).fill(type));
  let fewest = singles.length;
  const extend = (left: readonly PieceType[], roll: readonly PieceType[], rolls: number): void => {
    if (left.length === 0) fewest = Math.min(fewest, rolls);
    left.forEach((piece, index) => {
      const others = left.filter((_, other) => other !== index);
      const longer = [...roll, piece];
      if (rolls > 0 && fits(longer)) extend(others, longer, rolls);
      else extend(others, [piece], rolls + 1);
    });
  };
  extend(singles, [], 0);
  return fewest;
}
