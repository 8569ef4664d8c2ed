export { type Axis, type AxisWall, cornersWithin, layAxis, onAxis, onWall, unroll, type WallPlace } from './axis.ts';
export { type BorderLayout, type BorderLength, setOutBorder } from './borders.ts';
export { firstStart, type Grid, placeGrid } from './grid.ts';
export { aboveFloor, bottomOf, edgeOver, interrupts, swallows, topOf } from './heights.ts';
export { countSlivers } from './slivers.ts';
export { findStretches, type Stretch, type StretchOpening, type StretchWall } from './stretch.ts';
export { dropOf, type Mismatch, type Piece, setOutStrips, type StretchLayout, type Strip, type StripPart } from './strips.ts';
