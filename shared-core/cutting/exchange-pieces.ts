import { type FilledRoll, type KnownOrders, orderCuts } from './cut-order.ts';
import { areNeighbours, type HungPieces } from './hanging-order.ts';

/** Pieces put into one roll or the other, one by one, for one parting of rolls. */
const MOST_NODES = 3_000;
/** Ways that are looked at closely, for one parting of rolls. */
const MOST_WAYS = 60;

/**
 * Parts the pieces of these rolls anew among as many rolls, so that more neighbours come from one roll; null where
 * nothing better is found.
 *
 * Rule: neighbours are kept together first, then parted in one place, and so on while that is no worse than now. Better
 * is what is worth more, then what leaves the longest offcut.
 */
export function partAnew(hung: HungPieces, rolls: readonly FilledRoll[], known: KnownOrders): readonly FilledRoll[] | null {
  const pieces = rolls.flatMap((roll) => roll.pieces).sort((one, other) => one - other);
  const ties = pieces.map((piece, index) => index > 0 && areNeighbours(hung, pieces[index - 1]!, piece));
  const rollOf = new Map(rolls.flatMap((roll, index) => roll.pieces.map((piece) => [piece, index] as const)));
  const mostParted = ties.filter((isTied, index) => isTied && rollOf.get(pieces[index]!) !== rollOf.get(pieces[index - 1]!)).length;
  const types = pieces.map((piece) => hung.types[hung.typeOf[piece]!]!);

  let best: readonly FilledRoll[] = rolls;
  let nodes = 0;
  let ways = 0;
  const bins: number[][] = rolls.map(() => []);
  const lengths = rolls.map(() => 0);
  const judge = (): void => {
    ways += 1;
    const found: FilledRoll[] = [];
    for (const bin of bins) {
      const roll = bin.length > 0 ? orderCuts(hung, bin, known) : null;
      if (roll === null) return;
      found.push({ ...roll, pieces: roll.pieces === bin ? [...bin] : roll.pieces, order: roll.order === bin ? [...bin] : roll.order });
    }
    if (isBetter(found, best)) best = found;
  };
  const place = (index: number, opened: number, last: number, parted: number): void => {
    if (nodes >= MOST_NODES || ways >= MOST_WAYS) return;
    nodes += 1;
    if (index === pieces.length) {
      if (parted === 0) judge();
      return;
    }
    const { length } = types[index]!;
    for (let bin = 0; bin < Math.min(opened + 1, bins.length); bin += 1) {
      const isParted = ties[index]! && bin !== last;
      if (isParted && parted === 0) continue;
      if (lengths[bin]! + length > hung.capacity) continue;
      lengths[bin]! += length;
      bins[bin]!.push(pieces[index]!);
      place(index + 1, Math.max(opened, bin + 1), bin, isParted ? parted - 1 : parted);
      bins[bin]!.pop();
      lengths[bin]! -= length;
    }
  };
  for (let parted = 0; parted <= mostParted && nodes < MOST_NODES && best === rolls; parted += 1) place(0, 0, -1, parted);
  return best === rolls ? null : best;
}

function isBetter(one: readonly FilledRoll[], other: readonly FilledRoll[]): boolean {
  const [worthOne, worthOther] = [worthOf(one), worthOf(other)];
  if (worthOne !== worthOther) return worthOne > worthOther;
  const [rests, otherRests] = [restsOf(one), restsOf(other)];
  const place = rests.findIndex((rest, index) => rest !== otherRests[index]);
  return place >= 0 && rests[place]! > otherRests[place]!;
}

function worthOf(rolls: readonly FilledRoll[]): number {
  return rolls.reduce((sum, { worth }) => sum + worth, 0);
}

function restsOf(rolls: readonly FilledRoll[]): readonly number[] {
  return rolls.map(({ rest }) => rest).sort((one, other) => other - one);
}
