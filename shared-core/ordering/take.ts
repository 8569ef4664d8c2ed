import type { CuttingProblem, Effort } from '../cutting/index.ts';
import type { House } from '../house/index.ts';
import type { CutRoll, PlacedPiece } from './cut-roll.ts';
import type { Watch } from './known-cuts.ts';
import { type Cutting, cutPieces, longestPiece, type RollGoods } from './pool.ts';
import type { RoomPieces, Unit } from './units.ts';

/** What units take of a covering when they are cut from one run. */
export interface Taken {
  readonly rolls: number;
  readonly lowerBound: number;
  readonly isProven: boolean;
  /** What the rooms take when each is cut on its own. */
  readonly rollsByRoom: number;
  readonly problems: readonly CuttingProblem[];
  /** Pieces that no roll can give. */
  readonly impossible: readonly PlacedPiece[];
  cutRolls(): readonly CutRoll[];
}

/** Counts what units take, and says what they are worth at the least. */
export interface Counter {
  take(units: readonly Unit[]): Taken;
  /** Whether units of different rooms always take what they take apart. */
  readonly isAdditive: boolean;
  /** For each unit a whole value, with what a roll is worth at most: units never take fewer rolls than their values make. */
  bounds(units: readonly Unit[]): readonly { readonly values: readonly number[]; readonly worth: number }[];
}

/**
 * Counts what rooms take of goods that are cut from rolls: pooled over all of them where the house's rule says so.
 *
 * Shapes: rolls as delivered. A strip in the corner where two parts of a room meet is cut once where one run hangs both.
 * Example: 14 strips in one room and 13 in another, 3 to a roll: 5 and 5 room by room, 9 together.
 */
export function countCuts(house: House, covering: RollGoods, hangings: readonly RoomPieces[], effort: Effort, watch?: Watch): Counter {
  const isPooled = house.rules.pooling === 'house';
  const all = hangings.flatMap(({ parts }) => [...new Set(parts.flat())]);
  const cut = (pieces: readonly PlacedPiece[]) => cutPieces(covering, pieces, effort, watch);
  const whole = new Map(hangings.map(({ room, parts }) => [room, new Set(parts.flat()).size]));
  const known = new Map<string, Cutting>();
  const cutAlone = (room: string, pieces: readonly PlacedPiece[]): Cutting => {
    if (pieces.length < whole.get(room)!) return cut(pieces);
    const cutting = known.get(room) ?? cut(pieces);
    known.set(room, cutting);
    return cutting;
  };
  return {
    isAdditive: !isPooled && hangings.every(({ parts }) => parts.length === 1),
    take(units) {
      const wanted = new Set(units.flatMap(piecesOf));
      const pieces = wanted.size === all.length ? all : all.filter((placed) => wanted.has(placed));
      const apart = [...Map.groupBy(pieces, ({ room }) => room)].map(([room, own]) => cutAlone(room, own));
      const pooled = isPooled ? cut(pieces) : null;
      // Rooms cut together need never take more than apart; where no better way was found in time, they are cut apart.
      const cuttings = pooled && pooled.plan.rollCount <= rollsOf(apart) ? [pooled] : apart;
      const rolls = rollsOf(cuttings);
      const lowerBound = pooled ? pooled.plan.lowerBound : apart.reduce((sum, { plan }) => sum + plan.lowerBound, 0);
      return {
        rolls,
        lowerBound,
        isProven: rolls === lowerBound,
        rollsByRoom: rollsOf(apart),
        problems: cuttings.map(({ problem }) => problem),
        impossible: apart.flatMap(({ impossible }) => impossible),
        cutRolls: () => cuttings.flatMap((cutting) => cutting.rolls()).map((roll, index) => ({ ...roll, number: index + 1 })),
      };
    },
    bounds(units) {
      if (this.isAdditive) return [{ values: units.map((unit) => this.take([unit]).rolls), worth: 1 }];
      const pieces = units.map(piecesOf);
      // A strip in a corner counts for both its units, which is too much where one run hangs them.
      const areApart = new Set(pieces.flat()).size === pieces.reduce((sum, own) => sum + own.length, 0);
      if (!isPooled || !areApart) return [];
      const { prices, impossible } = cut(all);
      const lost = new Set(impossible);
      const scale = (worth: number, of: (placed: PlacedPiece) => number) => ({ values: pieces.map((own) => own.reduce((sum, placed) => sum + (lost.has(placed) ? 0 : of(placed)), 0)), worth });
      const byLength = scale(longestPiece(covering), ({ piece }) => piece.length);
      return prices && prices.mostPerRoll > 0 ? [scale(prices.mostPerRoll, (placed) => prices.of(placed)), byLength] : [byLength];
    },
  };
}

function piecesOf({ hangings }: Unit): readonly PlacedPiece[] {
  return [...new Set(hangings.flatMap(({ parts }) => parts.flat()))];
}

/**
 * Counts murals, which are not cut: one for each place.
 *
 * Example: a mural on one wall of each of two rooms is two.
 */
export function countMurals(): Counter {
  return {
    isAdditive: true,
    take(units) {
      const rolls = units.reduce((sum, { hangings }) => sum + hangings.reduce((count, { murals = 0 }) => count + murals, 0), 0);
      return { rolls, lowerBound: rolls, isProven: true, rollsByRoom: rolls, problems: [], impossible: [], cutRolls: () => [] };
    },
    bounds(units) {
      return [{ values: units.map((unit) => this.take([unit]).rolls), worth: 1 }];
    },
  };
}

function rollsOf(cuttings: readonly Pick<Cutting, 'plan'>[]): number {
  return cuttings.reduce((sum, { plan }) => sum + plan.rollCount, 0);
}
