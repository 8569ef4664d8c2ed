import type { PlacedPiece } from './cut-roll.ts';

interface Row {
  readonly pieces: PlacedPiece[];
  strip: number;
}

/**
 * Pieces of the house in rows of neighbours: those that hang side by side on consecutive strips of a room's band.
 *
 * Rule: the uppermost piece of each strip goes on the row of the strip before, so that full strips and the pieces over
 * openings between them are one row, as their pattern is seen to run on along the top; of what hangs lower each part, as
 * the pieces under a window, is a row of its own and ends where a strip has none (own choice).
 * Example: strips 1, 2 above, 2 below, 3 above, 3 below, 4 are the rows 1, 2 above, 3 above, 4 and 2 below, 3 below.
 */
export function rowsOfNeighbours(pieces: readonly PlacedPiece[]): readonly (readonly PlacedPiece[])[] {
  const rows: Row[] = [];
  let open = new Map<string, Row>();
  let before: PlacedPiece | null = null;
  for (const placed of pieces) {
    const { strip, part } = placed.piece;
    const isSameBand = before?.room === placed.room && before.band === placed.band;
    if (!isSameBand) open = new Map();
    const key = isSameBand && before?.piece.strip === strip ? part : 'uppermost';
    let row = open.get(key);
    if (row?.strip === strip - 1) {
      row.strip = strip;
    } else {
      row = { pieces: [], strip };
      rows.push(row);
      open.set(key, row);
    }
    row.pieces.push(placed);
    before = placed;
  }
  return rows.map((row) => row.pieces);
}
