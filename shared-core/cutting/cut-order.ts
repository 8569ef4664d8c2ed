import { areNeighbours, type HungPieces, topAfter } from './hanging-order.ts';

/** A roll with the pieces it gives. */
export interface FilledRoll {
  /** In hanging order. */
  readonly pieces: readonly number[];
  /** In cutting order. */
  readonly order: readonly number[];
  /** What is surely left after the last cut. */
  readonly rest: number;
  /** How well the pieces belong together: neighbours, then those cut one after the other, then others that hang near. */
  readonly worth: number;
}

/** Orders in which pieces of these types fit one roll, where hanging order may not. */
export type KnownOrders = Map<string, readonly number[]>;

const PAIR = 2 ** 28;
const DIRECT = 2 ** 14;
/** Pieces this far apart in hanging order have nothing to do with each other. */
const FAR = 16;

/** Orders tried for one roll before it is given up. */
const MOST_TRIES = 120;

/**
 * Orders the cuts of one roll: as they hang where that fits, else neighbours together in another order, else any order.
 *
 * Pieces in hanging order in; null where no order is found in which all of them fit. In a free match the order is all
 * one; else the gaps that the pattern forces depend on it.
 */
export function orderCuts(hung: HungPieces, pieces: readonly number[], known: KnownOrders): FilledRoll | null {
  if (leastSpan(hung, pieces) > hung.capacity) return null;
  const end = endOf(hung, pieces);
  if (end <= hung.capacity) return filled(hung, pieces, pieces, end);
  if (hung.repeat === 0) return null;
  const blocks = blocksOf(hung, pieces);
  const order =
    (blocks.length > 1 ? orderBlocks(hung, blocks) : null) ??
    orderByTypes(hung, pieces, known) ??
    (blocks.length < pieces.length ? orderBlocks(hung, pieces.map((piece) => [piece])) : null);
  return order && filled(hung, pieces, order, endOf(hung, order));
}

/** No order takes less. */
function leastSpan({ types, typeOf }: HungPieces, pieces: readonly number[]): number {
  let sum = 0;
  let slack = 0;
  let lead = Number.MAX_SAFE_INTEGER;
  for (const piece of pieces) {
    const type = types[typeOf[piece]!]!;
    sum += type.least;
    slack = Math.max(slack, type.least - type.length);
    lead = Math.min(lead, type.lead);
  }
  return lead + sum - slack;
}

function endOf(hung: HungPieces, order: readonly number[]): number {
  let end = 0;
  let last = null;
  for (const piece of order) {
    const type = hung.types[hung.typeOf[piece]!]!;
    end = topAfter(hung, last, end, type) + type.length;
    last = type;
  }
  return end;
}

/** Pieces in hanging order, parted where they are not neighbours. */
export function blocksOf(hung: HungPieces, pieces: readonly number[]): readonly (readonly number[])[] {
  const blocks: number[][] = [];
  for (const piece of pieces) {
    const block = blocks.at(-1);
    if (block && areNeighbours(hung, block.at(-1)!, piece)) block.push(piece);
    else blocks.push([piece]);
  }
  return blocks;
}

/** The first order that fits, nearest to hanging order, as far as the tries reach. */
function orderBlocks(hung: HungPieces, blocks: readonly (readonly number[])[]): readonly number[] | null {
  const isUsed = blocks.map(() => false);
  const order: number[] = [];
  let tries = 0;
  const extend = (used: number, end: number): boolean => {
    if (used === blocks.length) return true;
    const last = order.length === 0 ? null : hung.types[hung.typeOf[order.at(-1)!]!]!;
    const tried = new Set<number>();
    for (const [index, block] of blocks.entries()) {
      if (isUsed[index] || tries >= MOST_TRIES) continue;
      if (block.length === 1) {
        if (tried.has(hung.typeOf[block[0]!]!)) continue;
        tried.add(hung.typeOf[block[0]!]!);
      }
      tries += 1;
      let [to, before] = [end, last];
      for (const piece of block) {
        const type = hung.types[hung.typeOf[piece]!]!;
        to = topAfter(hung, before, to, type) + type.length;
        before = type;
      }
      if (to > hung.capacity) continue;
      isUsed[index] = true;
      order.push(...block);
      if (extend(used + 1, to)) return true;
      order.length -= block.length;
      isUsed[index] = false;
    }
    return false;
  };
  return extend(0, 0) ? order : null;
}

function orderByTypes({ typeOf }: HungPieces, pieces: readonly number[], known: KnownOrders): readonly number[] | null {
  const types = known.get(keyOf(pieces.map((piece) => typeOf[piece]!)));
  if (!types) return null;
  const left = new Map<number, number[]>();
  for (const piece of pieces.toReversed()) {
    const ofType = left.get(typeOf[piece]!);
    if (ofType) ofType.push(piece);
    else left.set(typeOf[piece]!, [piece]);
  }
  return types.map((type) => left.get(type)!.pop()!);
}

/** The same for the same types in any order. */
export function keyOf(types: readonly number[]): string {
  return types.toSorted((one, other) => one - other).join(' ');
}

function filled(hung: HungPieces, pieces: readonly number[], order: readonly number[], end: number): FilledRoll {
  let worth = 0;
  for (let index = 1; index < pieces.length; index += 1) {
    const [before, piece] = [pieces[index - 1]!, pieces[index]!];
    if (areNeighbours(hung, before, piece)) worth += PAIR;
    else worth += Math.max(0, FAR - (piece - before));
    if (areNeighbours(hung, order[index - 1]!, order[index]!)) worth += DIRECT;
  }
  return { pieces, order, rest: hung.capacity - end, worth };
}
