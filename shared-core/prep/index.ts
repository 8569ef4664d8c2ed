export { CAUTION_KINDS, type CautionKind } from './caution-kinds.ts';
export { MATERIALS, MATERIAL_IDS, type MaterialId } from './material-table.ts';
export type { RoomToPrepare } from './met-surface.ts';
export { planPrep } from './plan-prep.ts';
export type { Caution, MaterialNeed, MaterialUse, PaintNeed, PrepPlan, SurfaceOf, Task } from './prep-plan.ts';
export { PHASES, type Rule } from './rule.ts';
export { RULES } from './rules.ts';
