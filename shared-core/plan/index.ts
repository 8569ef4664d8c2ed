export { explainOrderLine, type OrderWorking, type WorkingLine } from './explain-order.ts';
export { sayLayout } from './say-layout.ts';
export { sayUnits } from './say-units.ts';
export type { BandPlan, CeilingPlan, HousePlan, PlannedStretch, Remark, RoomPlan } from './house-plan.ts';
export { countStrips, planDocument } from './plan-document.ts';
export { CEILING, piecesOf, planHouse } from './plan-house.ts';
export { nameRoom } from './remarks.ts';
export { explainPiece, explainStrip, type PieceFacts } from './explain-piece.ts';
export { type PieceRoll, rollsOfBand } from './roll-of-piece.ts';
