import { cutRolls } from './cut-rolls.ts';
import type { FindDearest } from './dearest.ts';
import { type Pool, relax } from './relax.ts';
import { floorDivide, type Packing, type Tape, within } from './tape.ts';
import { partOf, type Work } from './work.ts';

/** A number from 0 up to, not including, the given one; the same ones in turn each time a plan is made. */
export type Draw = (below: number) => number;

export interface Dive {
  /** So many rolls are aimed at. */
  readonly aim: number;
  /** It is given up as soon as it can no longer keep to so many rolls. */
  readonly atMost: number;
  readonly patience: number;
  /** To stray a little from what seems best, so that another try goes another way: at times half of what is cut wholly stays open. */
  readonly draw: Draw | null;
}

/** Of very many kinds the rest is not solved to its optimum each time. */
const STEPS_A_ROUND = 200_000_000;
/** Parts this close below a whole roll are taken for one. */
const ROUNDING = 1e-6;
/** Of so many kinds of rolls in parts, one becomes a whole roll before the rest is solved again. */
const PARTS_A_ROLL = 12;

/**
 * Whole rolls from rolls in parts, or null where that takes too many.
 *
 * Rule: what the linear program cuts wholly is cut, and what is left is solved again; where nothing is cut wholly, the
 * largest part, or of many parts the few largest, become whole rolls. No roll is given a piece that is no longer wanted.
 *
 * Example: rolls of 10, free match, five pieces of 4 and one of 2, 4 + 4 + 2 cut once and 4 + 4 one and a half times: a
 * roll of each is cut; what is left is one piece of 4, half a roll, which becomes the third.
 */
export function dive(tape: Tape, find: FindDearest, pool: Pool, work: Work, { aim, atMost, patience, draw }: Dive): readonly Packing[] | null {
  const { wanted, packings, isAnyWanted, cut } = cutRolls(tape);
  let used = 0;
  while (isAnyWanted()) {
    const relaxed = relax(tape, find, pool, partOf(work, STEPS_A_ROUND), { wanted, isWithinDemand: true, patience, bound: Infinity, rolls: aim - used });
    if (used + relaxed.rolls > atMost + ROUNDING || work.isOver()) return null;
    const before = used;
    const share = draw !== null && draw(2) === 1 ? 0.5 : 1;
    for (const { roll, times } of relaxed.used) used += cut(roll, Math.floor(times * share + ROUNDING));
    if (used > before) continue;
    const parts = relaxed.used
      .map(({ roll, times }) => ({ roll, weight: draw === null ? times : times * (1 + draw(1_000) / 500) }))
      .sort((one, other) => other.weight - one.weight)
      .slice(0, 1 + floorDivide(relaxed.used.length, PARTS_A_ROLL));
    for (const { roll } of parts) if (used === before || within(roll.order, wanted).length === roll.order.length) used += cut(roll, 1);
  }
  return used > atMost ? null : packings;
}
