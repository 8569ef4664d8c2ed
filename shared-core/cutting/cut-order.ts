import { areNeighbours, type HungPieces, type HungType, topAfter } from './hanging-order.ts';

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

/** Orders in which pieces of these types fit one roll, where hanging order may not; null where none was found. */
export type KnownOrders = Map<string, readonly number[] | null>;

const PAIR = 2 ** 28;
const DIRECT = 2 ** 14;
/** Pieces this far apart in hanging order have nothing to do with each other. */
const FAR = 64;

/** Orders tried for one roll before it is given up. */
const MOST_TRIES = 120;
/** With more blocks than these no other order than the known ones is looked for. */
const MOST_BLOCKS = 40;

/**
 * Orders the cuts of one roll: strips as they hang and then the short pieces where that fits, else all as they hang, else
 * neighbours together in another order, else any order.
 *
 * What hangs over and under openings is cut from the end, as one does at the table: should a strip be spoilt, there is
 * still enough to cut it again and the short pieces come from another roll's end. Pieces in hanging order in; null where no order is found in which all of them fit. In a free match the order is all
 * one; else the gaps that the pattern forces depend on it.
 */
export function orderCuts(hung: HungPieces, pieces: readonly number[], known: KnownOrders): FilledRoll | null {
  if (leastSpan(hung, pieces) > hung.capacity) return null;
  for (const order of [shortLast(hung, pieces), pieces]) {
    const end = endOf(hung, order);
    if (end <= hung.capacity) return { pieces, order, rest: hung.capacity - end, worth: worthOf(hung, pieces, null) };
  }
  if (hung.repeat === 0) return null;
  const byTypes = orderByTypes(hung, pieces, known);
  if (byTypes === null) return null;
  const order = orderInBlocks(hung, blocksOf(hung, pieces)) ?? byTypes;
  return { pieces, order, rest: hung.capacity - endOf(hung, order), worth: worthOf(hung, pieces, order) };
}

/** What is at most half as long as the longest comes last, the longest of it first. */
function shortLast({ types, typeOf }: HungPieces, pieces: readonly number[]): readonly number[] {
  const lengthOf = (piece: number): number => types[typeOf[piece]!]!.length;
  const longest = pieces.reduce((most, piece) => Math.max(most, lengthOf(piece)), 0);
  const isShort = (piece: number): boolean => 2 * lengthOf(piece) <= longest;
  const short = pieces.filter(isShort);
  return short.length === 0 ? pieces : [...pieces.filter((piece) => !isShort(piece)), ...short.sort((one, other) => lengthOf(other) - lengthOf(one) || one - other)];
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
function blocksOf(hung: HungPieces, pieces: readonly number[]): readonly (readonly number[])[] {
  const blocks: number[][] = [];
  for (const piece of pieces) {
    const block = blocks.at(-1);
    if (block && areNeighbours(hung, block.at(-1)!, piece)) block.push(piece);
    else blocks.push([piece]);
  }
  return blocks;
}

/** A run of pieces that stay together in one roll. */
interface Block {
  readonly pieces: readonly number[];
  readonly first: HungType;
  readonly last: HungType;
  /** From the first piece's top to the last one's end. */
  readonly span: number;
}

function blockOf(hung: HungPieces, pieces: readonly number[]): Block {
  const first = hung.types[hung.typeOf[pieces[0]!]!]!;
  return { pieces, first, last: hung.types[hung.typeOf[pieces.at(-1)!]!]!, span: endOf(hung, pieces) - first.lead };
}

/** Neighbours in a row, or in a row but for one place. */
function orderInBlocks(hung: HungPieces, blocks: readonly (readonly number[])[]): readonly number[] | null {
  const whole = blocks.length > 1 ? orderBlocks(hung, blocks) : null;
  if (whole) return whole;
  for (const [index, block] of blocks.slice(0, MOST_BLOCKS).entries()) {
    for (let cut = 1; cut < Math.min(block.length, MOST_BLOCKS); cut += 1) {
      const order = orderBlocks(hung, blocks.toSpliced(index, 1, block.slice(0, cut), block.slice(cut)));
      if (order) return order;
    }
  }
  return null;
}

/** An order that fits, looked for by the least gaps first, as far as the tries reach. */
function orderBlocks(hung: HungPieces, runs: readonly (readonly number[])[]): readonly number[] | null {
  if (runs.length > MOST_BLOCKS) return null;
  const blocks = runs.map((pieces) => blockOf(hung, pieces));
  const gaps = blocks.map((before) => blocks.map((after) => topAfter(hung, before.last, 0, after.first)));
  const leastGaps = gaps.map((row, index) => row.reduce((least, gap, other) => (other === index ? least : Math.min(least, gap)), hung.repeat));
  const greatestGap = Math.max(...leastGaps);
  const isUsed = blocks.map(() => false);
  const order: number[] = [];
  let tries = 0;
  // `rest` is what the blocks not yet placed take at least: their spans, and a gap after all of them but the last.
  const extend = (last: number, end: number, rest: number): boolean => {
    if (order.length === blocks.length) return true;
    const options: { readonly index: number; readonly top: number }[] = [];
    blocks.forEach((block, index) => {
      if (isUsed[index]) return;
      const top = last < 0 ? block.first.lead : end + gaps[last]![index]!;
      if (top + Math.max(block.span, rest - greatestGap) > hung.capacity) return;
      if (block.pieces.length === 1 && options.some((option) => isAlike(blocks[option.index]!, block))) return;
      options.push({ index, top });
    });
    options.sort((one, other) => one.top - other.top || one.index - other.index);
    for (const { index, top } of options) {
      tries += 1;
      if (tries > MOST_TRIES) return false;
      isUsed[index] = true;
      order.push(index);
      if (extend(index, top + blocks[index]!.span, rest - blocks[index]!.span - leastGaps[index]!)) return true;
      order.pop();
      isUsed[index] = false;
    }
    return false;
  };
  const least = blocks.reduce((sum, { span }, index) => sum + span + leastGaps[index]!, 0);
  return extend(-1, 0, least) ? order.flatMap((index) => blocks[index]!.pieces) : null;
}

function isAlike(one: Block, other: Block): boolean {
  return one.pieces.length === 1 && one.first === other.first;
}

/** An order that these types are known to fit in, found once for all pieces of the same types. */
function orderByTypes(hung: HungPieces, pieces: readonly number[], known: KnownOrders): readonly number[] | null {
  const { typeOf } = hung;
  const key = keyOf(pieces.map((piece) => typeOf[piece]!));
  let types = known.get(key);
  if (types === undefined) {
    types = orderBlocks(hung, pieces.map((piece) => [piece]))?.map((piece) => typeOf[piece]!) ?? null;
    known.set(key, types);
  }
  if (types === null) return null;
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

/** The order is null where the cuts come as they hang, but for short pieces at the end. */
function worthOf(hung: HungPieces, pieces: readonly number[], order: readonly number[] | null): number {
  let worth = 0;
  for (let index = 1; index < pieces.length; index += 1) {
    const [before, piece] = [pieces[index - 1]!, pieces[index]!];
    if (areNeighbours(hung, before, piece)) worth += PAIR;
    else worth += Math.max(0, FAR - (piece - before));
    if (order === null ? areNeighbours(hung, before, piece) : areNeighbours(hung, order[index - 1]!, order[index]!)) worth += DIRECT;
  }
  return worth;
}
