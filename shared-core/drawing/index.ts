export { type CeilingFacts, drawCeiling } from './ceiling-drawing.ts';
export { type BorderElevationFacts, drawBorder, drawElevation, type ElevationFacts, type ElevationOptions, type OtherBand } from './elevation-drawing.ts';
export { drawPatternTop, type PatternTopFacts } from './pattern-top.ts';
export { type Tile, tileOf } from './picture.ts';
export { drawRoomPlan, type RoomPlanOptions } from './plan-drawing.ts';
export { type Bounds, type Drawing, type DrawnPoint, type Fill, type Pen, type PictureShape, type Shape, type Spot, type Subject, subjectKey, type SubjectKind } from './shapes.ts';
export type { RollsOfPieces } from './elevation-strips.ts';
export { textWidth } from './text-size.ts';
export { drawWall, type WallDrawingOptions } from './wall-drawing.ts';
