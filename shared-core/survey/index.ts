export { mirrorRoom } from './mirror-room.ts';
export { CLOSING_ERROR_WORTH_A_LOOK, drawOutline, goesAllRound, type Outline, type Point } from './outline.ts';
export { type Corner, type CornerKind, readTurn } from './turn.ts';
export { dragEdges, drawEdges, type DraggedOpening, type Guide, type Hand, stepFrom } from './drag-opening.ts';
export { edgesOf, factsOfEdges, GRAINS, grainAt, type Grip, gripUnder, handlesOf, LEAST_DRAWN, type OpeningEdge, type OpeningEdges, standsOnFloor, wholeGrip, type WallSpot } from './opening-edges.ts';
