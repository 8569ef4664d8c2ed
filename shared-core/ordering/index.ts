export { type CoveringOrder, type CutList, orderCovering, type OrderLine, orderMural } from './order.ts';
export { choosePacks, type Purchase, type SaleUnit } from './packs.ts';
export { asCut, type Cutting, cutPieces, cuttingProblem, isInSequence, isRollGoods, longestPiece, type RollGoods, rollOf } from './pool.ts';
export { cutInSequence, type SequencePlan } from './in-sequence.ts';
export { knownCuts, type Watch } from './known-cuts.ts';
export { addTextbookCounts, chanceOfShort, countByTextbook, type TextbookCount, type TextbookCounts, type TextbookRoom, usableYield } from './textbook.ts';
export { assignRuns, findRuns, type RunAssignment, type RunStock } from './runs.ts';
export type { CutRoll, PlacedPiece, RollCut } from './cut-roll.ts';
