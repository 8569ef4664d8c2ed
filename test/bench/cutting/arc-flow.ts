import type { CuttingProblem, PieceType } from '../../../shared-core/cutting/index.ts';

/** A number to be chosen from 0 to `upper`; `entries` say which rows it counts in, and how much. */
export interface Column {
  readonly cost: 0 | 1;
  /** Waste needs no rule to be whole: it is, where the pieces are. */
  readonly isWhole: boolean;
  readonly upper: number;
  readonly entries: readonly (readonly [row: number, value: number])[];
}

/** Choose the columns so that each row comes to at least what it needs, at the least cost, which is the number of rolls. */
export interface ArcFlow {
  readonly columns: readonly Column[];
  readonly needs: readonly number[];
}

interface Draft {
  readonly columns: Column[];
  readonly needs: number[];
}

/**
 * A cutting problem as a flow of rolls along the tape, written afresh from the model so as to share nothing with the solver.
 *
 * Rule: a node is a place where a piece can begin; an arc is a piece that begins there, or waste up to the next such
 * place. What leaves a node has come to it, the rolls that begin feed the first node, and the arcs of a type are at
 * least as many as are wanted. Rolls that start anywhere have a tape for each phase a first piece can have, one repeat
 * shorter than the roll and measured from that piece's top. Without a repeat the pieces of a roll can stand longest
 * first, so a longer piece never follows a shorter one (Valério de Carvalho's reduction). An arc is used no more often
 * than its type is wanted. Every wanted type must be one that a roll can give.
 *
 * Example: two pieces of 60 from rolls of 100, free: the need of 2 pieces and the beginning of the tape are the 2 rows,
 * and the rolls that begin and the piece that begins there the 2 columns; 2 rolls.
 */
export function arcFlow(problem: CuttingProblem): ArcFlow {
  const wanted = problem.pieces.filter(({ count }) => count > 0);
  const draft: Draft = { columns: [], needs: wanted.map(({ count }) => count) };
  if (problem.repeat === 0) addFreeTape(draft, problem.rollLength, wanted);
  else for (const tape of tapesOf(problem, wanted)) addMatchedTape(draft, problem.repeat, tape, wanted);
  return draft;
}

/** A tape from its first node to its end, in positions at which the pattern begins with each multiple of the repeat. */
interface MatchedTape {
  readonly start: number;
  readonly end: number;
  readonly mayBeginWithWaste: boolean;
}

function tapesOf({ rollLength, repeat, rollStart }: CuttingProblem, wanted: readonly PieceType[]): readonly MatchedTape[] {
  const phases = phasesOf(wanted);
  if (rollStart === 'at-repeat') return [{ start: phases[0] ?? 0, end: rollLength, mayBeginWithWaste: true }];
  return phases.map((phase) => ({ start: phase, end: phase + rollLength - repeat, mayBeginWithWaste: false }));
}

function addMatchedTape(draft: Draft, repeat: number, { start, end, mayBeginWithWaste }: MatchedTape, wanted: readonly PieceType[]): void {
  const phases = phasesOf(wanted);
  const shortest = Math.min(...wanted.map(({ length }) => length));
  const nodes = new Map<number, number>();
  const open: number[] = [];
  /** The row of the first node from a position on, or null where no piece fits any more. */
  const rowFrom = (position: number): number | null => {
    const within = position % repeat;
    const phase = phases.find((each) => each >= within);
    const node = position - within + (phase ?? phases[0]! + repeat);
    if (node + shortest > end) return null;
    if (!nodes.has(node)) {
      nodes.set(node, draft.needs.push(0) - 1);
      open.push(node);
    }
    return nodes.get(node)!;
  };
  const first = rowFrom(start);
  if (first === null) return;
  draft.columns.push({ cost: 1, isWhole: true, upper: Infinity, entries: [[first, 1]] });
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const row = nodes.get(node)!;
    wanted.forEach(({ length, phase, count }, type) => {
      if (phase === node! % repeat && node! + length <= end) addPiece(draft, type, count, row, rowFrom(node! + length));
    });
    if (node === start && !mayBeginWithWaste) continue;
    const next = rowFrom(node + 1);
    if (next !== null) draft.columns.push({ cost: 0, isWhole: false, upper: Infinity, entries: [[row, -1], [next, 1]] });
  }
}

function addFreeTape(draft: Draft, rollLength: number, wanted: readonly PieceType[]): void {
  const nodes = new Map<number, number>();
  const rowAt = (node: number): number => {
    if (!nodes.has(node)) nodes.set(node, draft.needs.push(0) - 1);
    return nodes.get(node)!;
  };
  draft.columns.push({ cost: 1, isWhole: true, upper: Infinity, entries: [[rowAt(0), 1]] });
  const longestFirst = wanted.map((piece, type) => ({ ...piece, type })).sort((one, other) => other.length - one.length);
  const shortest = longestFirst.at(-1)?.length ?? 0;
  for (const { length, count, type } of longestFirst) {
    const begun = new Set<number>();
    // From the furthest node back: where another row of pieces of this type has begun before, it goes on at least as far.
    for (const from of [...nodes.keys()].sort((one, other) => other - one)) {
      for (let copy = 0, node = from; copy < count && node + length <= rollLength && !begun.has(node); copy += 1, node += length) {
        begun.add(node);
        addPiece(draft, type, count, rowAt(node), node + length + shortest > rollLength ? null : rowAt(node + length));
      }
    }
  }
}

function addPiece(draft: Draft, type: number, count: number, row: number, next: number | null): void {
  const flow = next === null ? [] : ([[next, 1]] as const);
  draft.columns.push({ cost: 0, isWhole: true, upper: count, entries: [[type, 1], [row, -1], ...flow] });
}

function phasesOf(wanted: readonly PieceType[]): readonly number[] {
  return [...new Set(wanted.map(({ phase }) => phase))].sort((one, other) => one - other);
}
