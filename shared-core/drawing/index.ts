export { type BorderElevationFacts, drawBorder, drawElevation, type ElevationFacts, type ElevationOptions } from './elevation-drawing.ts';
export { drawRoomPlan, type RoomPlanOptions } from './plan-drawing.ts';
export type { Bounds, Drawing, DrawnPoint, Fill, Pen, Shape, Spot, Subject, SubjectKind } from './shapes.ts';
export { textWidth } from './text-size.ts';
