import { type FilledRoll, keyOf, type KnownOrders, orderCuts } from './cut-order.ts';
import type { HungPieces } from './hanging-order.ts';
import type { CuttingPlan } from './problem.ts';

/** A roll of the plan, partly handed out. */
interface OpenRoll {
  readonly pieces: number[];
  /** The types of the plan's cuts, in cutting order. */
  readonly types: readonly number[];
}

/** Rolls with the same cuts still to be handed out. */
interface Alike {
  /** By type: how many of it. */
  readonly free: ReadonlyMap<number, number>;
  readonly freeCount: number;
  readonly rolls: OpenRoll[];
}

/**
 * Hands the pieces out to the plan's rolls along the wall, as many neighbours as possible from one roll at a time.
 *
 * Rule: from the first piece still wanted on, the roll is taken whose cuts give the most pieces that follow; of several
 * the one with the fewest other cuts, then the one begun last. Pieces of a type are alike, so every roll keeps its cuts.
 */
export function handOutAlongWalls(hung: HungPieces, plan: CuttingPlan, known: KnownOrders): readonly FilledRoll[] {
  const rolls: OpenRoll[] = [];
  const alike = new Map<string, Alike>();
  const withType = hung.types.map(() => new Set<Alike>());
  const put = (free: ReadonlyMap<number, number>, roll: OpenRoll): void => {
    const key = [...free].map(([type, count]) => `${type}:${count}`).join(' ');
    let group = alike.get(key);
    if (!group) alike.set(key, (group = { free, freeCount: [...free.values()].reduce((sum, count) => sum + count, 0), rolls: [] }));
    group.rolls.push(roll);
    if (group.rolls.length === 1) for (const type of free.keys()) withType[type]!.add(group);
  };
  for (const { times, cuts } of plan.rolls) {
    const types = cuts.map(({ piece }) => piece);
    const free = new Map<number, number>();
    for (const type of types.toSorted((one, other) => one - other)) free.set(type, (free.get(type) ?? 0) + 1);
    for (let time = 0; time < times; time += 1) {
      const roll = { pieces: [], types };
      rolls.push(roll);
      put(free, roll);
    }
  }

  for (let piece = 0; piece < hung.typeOf.length; ) {
    let best: { readonly group: Alike; readonly pieces: number } | null = null;
    for (const group of withType[hung.typeOf[piece]!]!) {
      const pieces = following(hung, piece, group.free);
      if (best === null || pieces > best.pieces || (pieces === best.pieces && isFitter(group, best.group))) best = { group, pieces };
    }
    const { group, pieces } = best!;
    const roll = group.rolls.pop()!;
    if (group.rolls.length === 0) for (const type of group.free.keys()) withType[type]!.delete(group);
    const free = new Map(group.free);
    for (const end = piece + pieces; piece < end; piece += 1) {
      roll.pieces.push(piece);
      const type = hung.typeOf[piece]!;
      const left = free.get(type)! - 1;
      if (left > 0) free.set(type, left);
      else free.delete(type);
    }
    if (free.size > 0) put(free, roll);
  }
  return fillRolls(hung, rolls, known);
}

/** Hands the pieces out roll by roll as the plan has them, of each type along the wall. */
export function handOutInTurn(hung: HungPieces, plan: CuttingPlan, known: KnownOrders): readonly FilledRoll[] {
  const left = hung.types.map((): number[] => []);
  for (let piece = hung.typeOf.length - 1; piece >= 0; piece -= 1) left[hung.typeOf[piece]!]!.push(piece);
  const rolls: OpenRoll[] = [];
  for (const { times, cuts } of plan.rolls) {
    const types = cuts.map(({ piece }) => piece);
    for (let time = 0; time < times; time += 1) rolls.push({ pieces: types.flatMap((type) => left[type]!.pop() ?? []).sort((one, other) => one - other), types });
  }
  return fillRolls(hung, rolls, known);
}

function fillRolls(hung: HungPieces, rolls: readonly OpenRoll[], known: KnownOrders): readonly FilledRoll[] {
  return rolls
    .filter(({ pieces }) => pieces.length > 0)
    .map(({ pieces, types }) => {
      learnOrder(hung, pieces, types, known);
      return orderCuts(hung, pieces, known)!;
    });
}

/** A plan may have cuts to spare; without them the others still fit in their order. */
function learnOrder({ typeOf }: HungPieces, pieces: readonly number[], types: readonly number[], known: KnownOrders): void {
  const wanted = new Map<number, number>();
  for (const piece of pieces) wanted.set(typeOf[piece]!, (wanted.get(typeOf[piece]!) ?? 0) + 1);
  const order = types.filter((type) => {
    const count = wanted.get(type) ?? 0;
    wanted.set(type, count - 1);
    return count > 0;
  });
  const key = keyOf(order);
  if (!known.has(key)) known.set(key, order);
}

/** How many pieces of its stretch from this one on the cuts give. */
function following({ typeOf, stretchOf }: HungPieces, first: number, free: ReadonlyMap<number, number>): number {
  const used = new Map<number, number>();
  let piece = first;
  for (; stretchOf[piece] === stretchOf[first]; piece += 1) {
    const type = typeOf[piece]!;
    const count = (used.get(type) ?? 0) + 1;
    if (count > (free.get(type) ?? 0)) break;
    used.set(type, count);
  }
  return piece - first;
}

function isFitter(one: Alike, other: Alike): boolean {
  if (one.freeCount !== other.freeCount) return one.freeCount < other.freeCount;
  return lastOf(one) > lastOf(other);
}

function lastOf({ rolls }: Alike): number {
  return rolls.at(-1)?.pieces.at(-1) ?? -1;
}
