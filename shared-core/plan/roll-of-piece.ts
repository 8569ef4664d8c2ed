import type { CutRoll } from '../ordering/index.ts';
import type { Length } from '../units/index.ts';
import type { HousePlan } from './house-plan.ts';

/** Where a piece is cut from. */
export interface PieceRoll {
  readonly number: number;
  /** Null while no run is known. */
  readonly run: string | null;
  /** Top of the cut, as the cut list gives it. */
  readonly from: Length;
  /** Cut from what the roll's longest pieces leave. */
  readonly isOffcut: boolean;
}

/**
 * The rolls that the pieces of a band, or of a ceiling, are cut from, by the pieces' labels.
 *
 * Example: a roll of 33 ft that gives three strips of 8' 4" and then a piece of 1' 8" over a door gives that as an offcut.
 */
export function rollsOfBand(plan: HousePlan, room: string, band: string): ReadonlyMap<string, PieceRoll> {
  return new Map(
    plan.cuts.flatMap(({ run, rolls }) =>
      rolls.flatMap((roll) =>
        roll.cuts.flatMap(({ placed, from }, index): readonly (readonly [string, PieceRoll])[] =>
          placed.room === room && placed.band === band ? [[placed.piece.label, { number: roll.number, run, from, isOffcut: isOffcut(roll, index) }]] : [],
        ),
      ),
    ),
  );
}

/** Cut from what the longest pieces of its roll leave. */
export function isOffcut({ cuts }: CutRoll, index: number): boolean {
  const { length } = cuts[index]!.placed.piece;
  return cuts.slice(0, index).some(({ placed }) => placed.piece.length > length) && cuts.slice(index).every(({ placed }) => placed.piece.length <= length);
}
