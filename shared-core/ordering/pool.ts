import type { CuttingPlan, CuttingProblem, Effort } from '../cutting/index.ts';
import type { Border, Covering, Lining, Wallcovering } from '../house/index.ts';
import { matchOf } from '../house/index.ts';
import { type Length, lengthOf } from '../units/index.ts';
import type { CutRoll, PlacedPiece } from './cut-roll.ts';
import { cutInSequence } from './in-sequence.ts';
import { knownArrangement, knownCuts, type Watch } from './known-cuts.ts';
import { rowsOfNeighbours } from './neighbours.ts';

/** A covering that comes in rolls and is cut piece by piece. */
export type RollGoods = (Wallcovering | Border | Lining) & { readonly rollLength: NonNullable<Wallcovering['rollLength']> };

export function isRollGoods(covering: Covering): covering is RollGoods {
  return (covering.kind === 'wallcovering' || covering.kind === 'border' || covering.kind === 'lining') && covering.rollLength !== undefined;
}

/** A covering as it is cut: goods by the length come in pieces as long as their supplier cuts them. */
export function asCut(covering: Covering): Covering {
  return covering.kind === 'wallcovering' && covering.soldBy ? { ...covering, rollLength: covering.soldBy.pieceLength } : covering;
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

/** Pieces cut from rolls of one covering: the problem, how many rolls it takes, and the rolls themselves. */
export interface Cutting {
  readonly problem: CuttingProblem;
  readonly plan: Pick<CuttingPlan, 'rollCount' | 'lowerBound' | 'isProven'>;
  readonly rolls: () => readonly CutRoll[];
  readonly impossible: readonly PlacedPiece[];
  /** What pieces and a roll count for: pieces never come from fewer rolls than their worth makes. Null in sequence. */
  readonly prices: { readonly mostPerRoll: number; of(placed: PlacedPiece): number } | null;
}

/** As few rolls as are found; goods that must hang in the sequence of the roll are cut in hanging order. */
export function cutPieces(covering: RollGoods, pieces: readonly PlacedPiece[], effort: Effort, watch?: Watch): Cutting {
  const { problem, members } = cuttingProblem(covering, pieces);
  if (isInSequence(covering)) {
    const { rolls, impossible } = cutInSequence(problem, pieces);
    return { problem, plan: { rollCount: rolls.length, lowerBound: rolls.length, isProven: true }, rolls: () => rolls, impossible, prices: null };
  }
  const plan = knownCuts(problem, effort, watch);
  const { duals, mostPerRoll } = plan.certificate;
  const typeOf = once(() => new Map(members.flatMap((group, type) => group.map((placed) => [placed, type] as const))));
  return {
    problem,
    plan,
    rolls: once(() => nameCuts(problem, plan, members, pieces, watch)),
    impossible: plan.impossible.flatMap((index) => members[index]!),
    prices: { mostPerRoll, of: (placed) => duals[typeOf().get(placed)!]! },
  };
}

export function isInSequence(covering: Covering): boolean {
  return covering.kind === 'wallcovering' && covering.sequence === 'required';
}

function once<Value>(find: () => Value): () => Value {
  let found: { readonly value: Value } | null = null;
  return () => (found ??= { value: find() }).value;
}

/** The rolls one by one, each cut with the piece it gives; neighbours on the wall from one roll as far as may be. */
function nameCuts(problem: CuttingProblem, plan: CuttingPlan, members: readonly (readonly PlacedPiece[])[], pieces: readonly PlacedPiece[], watch?: Watch): readonly CutRoll[] {
  const types = new Map(members.flatMap((group, type) => group.map((placed) => [placed, type] as const)));
  const rows = rowsOfNeighbours(pieces.filter((placed) => !plan.impossible.includes(types.get(placed)!)));
  const { rolls } = knownArrangement(problem, plan, rows.map((row) => row.map((placed) => types.get(placed)!)), watch);
  return rolls.map(({ cuts }, roll) => ({ number: roll + 1, cuts: cuts.map(({ stretch, index, from }) => ({ placed: rows[stretch]![index]!, from: lengthOf(from) })) }));
}
