import type { FilledRoll, KnownOrders } from './cut-order.ts';
import { partAnew } from './exchange-pieces.ts';
import { handOut } from './hand-out.ts';
import { areNeighbours, type HungPieces, layOutPieces, topAfter } from './hanging-order.ts';
import type { CuttingPlan, CuttingProblem } from './problem.ts';

export interface ArrangedCut {
  readonly stretch: number;
  readonly index: number;
  readonly from: number;
}
export interface ArrangedRoll {
  readonly cuts: readonly ArrangedCut[];
}
export interface ArrangedRolls {
  readonly rolls: readonly ArrangedRoll[];
}

export const tune = { two: true };
export function arrangeCuts(problem: CuttingProblem, plan: CuttingPlan, hanging: readonly (readonly number[])[], stop: () => boolean = () => false): ArrangedRolls {
  const hung = layOutPieces(problem, plan, hanging);
  const known: KnownOrders = new Map();
  const rolls = [...handOut(hung, plan, known)];
  if (tune.two) joinNeighbours(hung, rolls, known, stop);
  rolls.sort((one, other) => one.pieces[0]! - other.pieces[0]!);
  return { rolls: rolls.map((roll) => placeCuts(hung, roll)) };
}

function joinNeighbours(hung: HungPieces, rolls: FilledRoll[], known: KnownOrders, stop: () => boolean): void {
  const rollOf: number[] = hung.typeOf.map(() => 0);
  rolls.forEach((roll, index) => roll.pieces.forEach((piece) => (rollOf[piece] = index)));
  const waiting: number[] = hung.typeOf.map((_, piece) => piece);
  const isWaiting = hung.typeOf.map(() => true);
  const failed = new Map<string, readonly [FilledRoll, FilledRoll]>();
  let left = 4 * hung.typeOf.length;
  for (let at = 0; at < waiting.length && left > 0; at += 1) {
    const piece = waiting[at]!;
    isWaiting[piece] = false;
    if (!areNeighbours(hung, piece, piece + 1) || piece + 1 >= hung.typeOf.length) continue;
    const [one, other] = [rollOf[piece]!, rollOf[piece + 1]!];
    if (one === other) continue;
    const key = `${Math.min(one, other)} ${Math.max(one, other)}`;
    const pair = failed.get(key);
    const [a, b] = [rolls[Math.min(one, other)]!, rolls[Math.max(one, other)]!];
    if (pair && pair[0] === a && pair[1] === b) continue;
    left -= 1;
    if (left % 64 === 0 && stop()) return;
    const found = partAnew(hung, [a, b], known);
    if (!found) {
      failed.set(key, [a, b]);
      continue;
    }
    [one, other].forEach((roll, index) => {
      rolls[roll] = found[index]!;
      for (const moved of found[index]!.pieces) {
        rollOf[moved] = roll;
        for (const next of [moved - 1, moved]) if (next >= 0 && !isWaiting[next]) { isWaiting[next] = true; waiting.push(next); }
      }
    });
  }
}

function placeCuts(hung: HungPieces, { order }: FilledRoll): ArrangedRoll {
  let end = 0;
  let last = null;
  const cuts: ArrangedCut[] = [];
  for (const piece of order) {
    const type = hung.types[hung.typeOf[piece]!]!;
    const from = topAfter(hung, last, end, type);
    const stretch = hung.stretchOf[piece]!;
    cuts.push({ stretch, index: piece - hung.firstOf[stretch]!, from });
    end = from + type.length;
    last = type;
  }
  return { cuts };
}
