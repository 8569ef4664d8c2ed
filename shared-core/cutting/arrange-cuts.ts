import type { FilledRoll, KnownOrders } from './cut-order.ts';
import { gatherOffcuts } from './gather-offcuts.ts';
import { handOutAlongWalls, handOutInTurn } from './hand-out.ts';
import { type HungPieces, type HungType, layOutPieces, topAfter } from './hanging-order.ts';
import { joinNeighbours } from './join-neighbours.ts';
import type { CuttingPlan, CuttingProblem } from './problem.ts';

/** A piece of the house, and where it is cut. */
export interface ArrangedCut {
  readonly stretch: number;
  /** Its place in the stretch, in hanging order. */
  readonly index: number;
  /** As in the plan: from the roll's start, or for 'anywhere' from the top of the roll's first cut. */
  readonly from: number;
}

/** One roll, with its cuts from the start onwards. */
export interface ArrangedRoll {
  readonly cuts: readonly ArrangedCut[];
}

export interface ArrangedRolls {
  readonly rolls: readonly ArrangedRoll[];
}

/** What is exchanged takes so much for each piece, and no more than so much in all. */
const STEPS_A_PIECE = 1_000;
const MOST_STEPS = 3_000_000;
/** Kept for the offcuts. */
const OFFCUT_STEPS = 200_000;

/**
 * Says which piece of the house each cut gives: neighbours on the wall from the same roll, one after the other as they
 * hang; where that is all one, few long offcuts rather than many short ones.
 *
 * `hanging` names for each stretch the types of its pieces in hanging order, those that no roll gives left out; lengths
 * as in the problem. As many rolls as the plan has, numbered as their first pieces hang; they need not be cut as the plan
 * has them. `stop` is asked now and then and ends the search with what is found. The same input always gives the same
 * result, if it is not stopped.
 *
 * Rule: the plan's cuts are handed out along the walls, then pieces are exchanged between few rolls at a time while that
 * gains (own derivation). Never fewer neighbours share a roll than when each cut gets the next piece of its type.
 *
 * Example: nine strips, three to a roll: strips 1 to 3 from roll 1, 4 to 6 from roll 2, 7 to 9 from roll 3.
 */
export function arrangeCuts(problem: CuttingProblem, plan: CuttingPlan, hanging: readonly (readonly number[])[], stop: () => boolean = () => false): ArrangedRolls {
  const hung = layOutPieces(problem, plan, hanging);
  const known: KnownOrders = new Map();
  const [alongWalls, inTurn] = [handOutAlongWalls(hung, plan, known), handOutInTurn(hung, plan, known)];
  const handedOut = worthOf(alongWalls) >= worthOf(inTurn) ? alongWalls : inTurn;
  const joined = joinNeighbours(hung, handedOut, known, { steps: Math.min(MOST_STEPS, STEPS_A_PIECE * hung.typeOf.length) }, stop);
  const gathered = gatherOffcuts(hung, joined, known, { steps: OFFCUT_STEPS }, stop);
  const numbered = gathered.toSorted((one, other) => one.pieces[0]! - other.pieces[0]!);
  return { rolls: numbered.map((roll) => layCuts(hung, roll)) };
}

function worthOf(rolls: readonly FilledRoll[]): number {
  return rolls.reduce((sum, { worth }) => sum + worth, 0);
}

function layCuts(hung: HungPieces, { order }: FilledRoll): ArrangedRoll {
  const { types, typeOf, stretchOf, firstOf } = hung;
  let end = 0;
  let last: HungType | null = null;
  return {
    cuts: order.map((piece) => {
      const type: HungType = types[typeOf[piece]!]!;
      const from = topAfter(hung, last, end, type);
      const stretch = stretchOf[piece]!;
      end = from + type.length;
      last = type;
      return { stretch, index: piece - firstOf[stretch]!, from };
    }),
  };
}
