import type { FilledRoll, KnownOrders } from './cut-order.ts';
import { type Allowance, partAnew } from './exchange-pieces.ts';
import { areNeighbours, type HungPieces } from './hanging-order.ts';

/** Times that all parted neighbours are gone through; what is gained later is next to nothing. */
const MOST_ROUNDS = 6;
/** Third rolls that are tried with the two of parted neighbours. */
const MOST_THIRDS = 12;

/**
 * Exchanges pieces between rolls so that more neighbours come from the same roll; the number of rolls stays.
 *
 * Rule: for each pair of neighbours from different rolls, along the wall, the pieces of both rolls are parted anew; once
 * nothing is gained so, with a third roll that gives a neighbour of what one of the two gives.
 */
export function joinNeighbours(hung: HungPieces, filled: readonly FilledRoll[], known: KnownOrders, allowance: Allowance, stop: () => boolean): readonly FilledRoll[] {
  const rolls = [...filled];
  const rollOf = hung.typeOf.map(() => 0);
  rolls.forEach((roll, index) => roll.pieces.forEach((piece) => (rollOf[piece] = index)));
  const isParted = (piece: number): boolean => areNeighbours(hung, piece, piece + 1) && rollOf[piece] !== rollOf[piece + 1];
  const partedAlong = (pieces: readonly number[]): readonly number[] => pieces.flatMap((piece) => [...(isParted(piece - 1) ? [rollOf[piece - 1]!] : []), ...(isParted(piece) ? [rollOf[piece + 1]!] : [])]);

  const inVain = new Map<string, readonly FilledRoll[]>();
  const exchange = (unsorted: readonly number[]): boolean => {
    const indexes = unsorted.toSorted((one, other) => one - other);
    const now = indexes.map((index) => rolls[index]!);
    const key = indexes.join(' ');
    if (inVain.get(key)?.every((roll, at) => roll === now[at])) return false;
    const found = partAnew(hung, now, known, allowance);
    if (!found) inVain.set(key, now);
    found?.forEach((roll, at) => {
      rolls[indexes[at]!] = roll;
      for (const piece of roll.pieces) rollOf[piece] = indexes[at]!;
    });
    return found !== null;
  };
  const exchangeWithThird = (one: number, other: number): boolean =>
    [...new Set(partedAlong([...rolls[one]!.pieces, ...rolls[other]!.pieces]))]
      .filter((third) => third !== one && third !== other)
      .slice(0, MOST_THIRDS)
      .some((third) => exchange([one, other, third]));

  let isWithThird = false;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let isChanged = false;
    for (let piece = 0; piece < rollOf.length; piece += 1) {
      if (!isParted(piece)) continue;
      if (allowance.steps <= 0 || stop()) return rolls;
      const [one, other] = [rollOf[piece]!, rollOf[piece + 1]!];
      isChanged = (exchange([one, other]) || (isWithThird && exchangeWithThird(one, other))) || isChanged;
    }
    if (!isChanged && isWithThird) break;
    isWithThird = isWithThird || !isChanged || round > 0;
  }
  return rolls;
}
