import { countsOf, floorDivide, type Packing, type Roll, type Tape, within } from './tape.ts';

/** Rolls being cut, and what is still wanted. */
export interface CutRolls {
  readonly packings: readonly Packing[];
  /** By rank. */
  readonly wanted: Int32Array;
  readonly isAnyWanted: () => boolean;
  /** Cuts rolls alike, of what is still wanted of them, as often as that all is wanted but no more than `most` times; returns how many. */
  readonly cut: (roll: Roll, most: number) => number;
}

/**
 * No roll yet, and all pieces wanted.
 *
 * Example: five pieces of one kind wanted, rolls of two: two rolls are cut; the next holds one piece only.
 */
export function cutRolls({ kinds }: Tape): CutRolls {
  const wanted = Int32Array.from(kinds, ({ count }) => count);
  const packings: Packing[] = [];
  return {
    packings,
    wanted,
    isAnyWanted: () => wanted.some((count) => count > 0),
    cut({ lane, order }, most) {
      const held = within(order, wanted);
      if (held.length === 0 || most === 0) return 0;
      const times = [...countsOf(held)].reduce((least, [rank, copies]) => Math.min(least, floorDivide(wanted[rank]!, copies)), most);
      for (const rank of held) wanted[rank]! -= times;
      packings.push({ times, roll: { lane, order: held } });
      return times;
    },
  };
}
