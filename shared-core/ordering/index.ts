export { type CoveringOrder, type CutList, orderCovering, type OrderLine, orderMural } from './order.ts';
export { choosePacks, type Purchase, type SaleUnit } from './packs.ts';
export { type CutRoll, cutPieces, cuttingProblem, isRollGoods, longestPiece, type PlacedPiece, type RollCut, type RollGoods, rollOf } from './pool.ts';
export { assignRuns, findRuns, type RunAssignment, type RunStock } from './runs.ts';
