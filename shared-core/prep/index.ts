export { explainPaintedSurface, explainPaintNeed, explainSpreading, explainTins, type PaintLine } from './explain-paint.ts';
export { COAT_FACTORS, type CoatFactors, coatFactors } from './paint-coats.ts';
export { chooseTins, type Tin, type TinPurchase } from './paint-tins.ts';
export { type MeasuredOpening, type MeasuredSurface, paintedArea, paintedSurfaces } from './paint-surfaces.ts';
export { DEDUCTION_RULES, type DeductionRule, stepFor } from './opening-rules.ts';
export { planPaint, spreadingOf } from './plan-paint.ts';
export type { Caution, MaterialNeed, MaterialUse, PaintedSurface, PaintNeed, PrepPlan, SurfaceOf, Task } from './prep-plan.ts';
