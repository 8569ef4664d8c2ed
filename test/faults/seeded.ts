/** What chance gives, the same for the same seed. */
export interface Chance {
  /** A whole number from 0 to below `count`. */
  below(count: number): number;
  /** True once in so many times. */
  oneIn(count: number): boolean;
  pick<Value>(values: readonly Value[]): Value;
}

/** Source: mulberry32, public domain (from memory); any generator would do. */
export function chanceOf(seed: number): Chance {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (count: number) => Math.floor(next() * count);
  return { below, oneIn: (count) => below(count) === 0, pick: (values) => values[below(values.length)]! };
}

/** The seeds of a set: those that failed once first, then as many new ones as are asked for. */
export function seedsOf(failed: readonly number[], count: number): readonly number[] {
  return [...failed, ...Array.from({ length: count }, (_, index) => index)];
}
