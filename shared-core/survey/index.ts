export { mirrorRoom } from './mirror-room.ts';
export { CLOSING_ERROR_WORTH_A_LOOK, drawOutline, goesAllRound, type Outline, type Point } from './outline.ts';
export { type Ends, heightText, nextWallId, readEndsTyped, readTurnTyped, TURN_HELP } from './typed-walls.ts';
export { type Corner, type CornerKind, readTurn } from './turn.ts';
