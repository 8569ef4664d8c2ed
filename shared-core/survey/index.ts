export { mirrorRoom } from './mirror-room.ts';
export { CLOSING_ERROR_WORTH_A_LOOK, drawOutline, goesAllRound, type Outline, type Point } from './outline.ts';
export type { CellTrouble, ReadRow } from './read-cells.ts';
export { ROOM_COLUMNS, type RoomColumn } from './room-columns.ts';
export { readRoomTable, type RoomTable } from './room-table.ts';
export { writeRoomTable } from './write-room-table.ts';
export { readWallTable, WALL_COLUMNS, type WallColumn, type WallTable, type WallsTaken } from './wall-table.ts';
export { type Ends, heightText, nextWallId, readEndsTyped, readTurnTyped, TURN_HELP } from './typed-walls.ts';
export { type Corner, type CornerKind, readTurn } from './turn.ts';
