export { explainOrderLine, type OrderWorking, type WorkingLine } from './explain-order.ts';
export { sayLayout } from './say-layout.ts';
export { sayUnits } from './say-units.ts';
export type { BandPlan, HousePlan, PlannedStretch, Remark, RoomPlan } from './house-plan.ts';
export { countStrips, planDocument } from './plan-document.ts';
export { nameRoom, piecesOf, planHouse } from './plan-house.ts';
