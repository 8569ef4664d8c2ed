import type { Piece } from '../setting-out/index.ts';
import type { Length } from '../units/index.ts';

/** A piece, and where in the house it hangs. */
export interface PlacedPiece {
  readonly room: string;
  readonly band: string;
  readonly piece: Piece;
}

export interface RollCut {
  readonly placed: PlacedPiece;
  /** Top of the cut: from the roll's start, or from the first cut's top where rolls may begin anywhere. */
  readonly from: Length;
}

export interface CutRoll {
  readonly number: number;
  readonly cuts: readonly RollCut[];
}
