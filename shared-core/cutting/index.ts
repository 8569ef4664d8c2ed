export { arrangeCuts, type ArrangedCut, type ArrangedRoll, type ArrangedRolls } from './arrange-cuts.ts';
export { checkCuts } from './check-cuts.ts';
export { explainCount, type CountExplained, type LikeStrips, type Yield } from './explain.ts';
export { leastWhenLooking } from './looking-first.ts';
export { planCuts, rollCounter } from './plan-cuts.ts';
export type { Certificate, Cut, CutFault, CuttingPlan, CuttingProblem, Effort, PieceType, RollCuts, RollStart } from './problem.ts';
