import { type CuttingPlan, type CuttingProblem, type Effort, planCuts } from '../cutting/index.ts';
import type { Border, Covering, Lining, Wallcovering } from '../house/index.ts';
import { matchOf } from '../house/index.ts';
import type { Piece } from '../setting-out/index.ts';
import { type Length, lengthOf } from '../units/index.ts';

/** A covering that comes in rolls and is cut piece by piece. */
export type RollGoods = (Wallcovering | Border | Lining) & { readonly rollLength: NonNullable<Wallcovering['rollLength']> };

export function isRollGoods(covering: Covering): covering is RollGoods {
  return (covering.kind === 'wallcovering' || covering.kind === 'border' || covering.kind === 'lining') && covering.rollLength !== undefined;
}

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

/** The cutting problem of pieces from rolls of one covering: equal lengths at equal phases are one type. */
export function cuttingProblem(covering: RollGoods, pieces: readonly PlacedPiece[]): { readonly problem: CuttingProblem; readonly members: readonly (readonly PlacedPiece[])[] } {
  const types = new Map<string, PlacedPiece[]>();
  for (const placed of pieces) {
    const key = `${placed.piece.length} ${placed.piece.phase}`;
    const members = types.get(key);
    if (members) members.push(placed);
    else types.set(key, [placed]);
  }
  const members = [...types.values()];
  return {
    problem: {
      ...rollOf(covering),
      pieces: members.map((group) => ({ length: group[0]!.piece.length, phase: group[0]!.piece.phase, count: group.length })),
    },
    members,
  };
}

/** A roll of a covering as cutting sees it; a free match and lining have no repeat. */
export function rollOf(covering: RollGoods): Omit<CuttingProblem, 'pieces'> {
  const rollLength = covering.rollLength.length;
  if (covering.kind === 'lining' || (covering.kind === 'wallcovering' && matchOf(covering) === 'free')) return { rollLength, repeat: 0, rollStart: 'at-repeat' };
  return { rollLength, repeat: covering.repeat.length, rollStart: covering.rollStart };
}

/**
 * The longest piece that any roll of a covering surely gives; of rolls that begin at their repeat, from a phase on.
 *
 * Example: a roll of 33 ft with a repeat of 21 in that may begin anywhere surely gives 31' 3"; one that begins at its
 * repeat gives 31' 5" of a piece whose top lies 19 in into it.
 */
export function longestPiece(covering: RollGoods, phase = 0): Length {
  const { rollLength, repeat, rollStart } = rollOf(covering);
  return lengthOf(rollLength - (rollStart === 'anywhere' ? repeat : phase));
}

export function cutPieces(covering: RollGoods, pieces: readonly PlacedPiece[], effort: Effort) {
  const { problem, members } = cuttingProblem(covering, pieces);
  const plan = planCuts(problem, effort);
  return { problem, plan, rolls: () => nameCuts(plan, members), impossible: plan.impossible.flatMap((index) => members[index]!) };
}

/** The plan's rolls one by one, each cut with the piece it gives; rooms are served in their order. */
function nameCuts(plan: CuttingPlan, members: readonly (readonly PlacedPiece[])[]): readonly CutRoll[] {
  const next = members.map(() => 0);
  const rolls: CutRoll[] = [];
  for (const roll of plan.rolls) {
    for (let time = 0; time < roll.times; time += 1) {
      const cuts = roll.cuts.flatMap(({ piece, from }) => {
        const placed = members[piece]![next[piece]!];
        next[piece]! += 1;
        return placed ? [{ placed, from: lengthOf(from) }] : [];
      });
      rolls.push({ number: rolls.length + 1, cuts });
    }
  }
  return rolls;
}
