/** A table of sums larger than this is not worked out. */
const MOST_SUMS = 20_000_000;

/**
 * For every limit the fullest that some of the sizes can fill.
 *
 * Shapes: whole sizes; limits up to `most`. Where the table would be too long, the limit itself, which is never less.
 * Example: sizes 7 and 8: of 14 rolls 8 can be filled, of 15 all.
 */
export function fullestFill(sizes: readonly number[], most: number): (limit: number) => number {
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const longest = Math.min(most, all);
  if (sizes.length * longest > MOST_SUMS) return (limit) => Math.min(limit, all);
  const last = reachSums(sizes, longest);
  const fullest = new Int32Array(longest + 1);
  for (let sum = 1; sum <= longest; sum += 1) fullest[sum] = last[sum]! >= 0 ? sum : fullest[sum - 1]!;
  return (limit) => (limit < 0 ? limit : fullest[Math.min(limit, longest)]!);
}

/** For every sum up to `most` the index of the size that first makes it up, its last; -1 where none does, and for 0. */
export function reachSums(sizes: readonly number[], most: number): Int32Array {
  const last = new Int32Array(most + 1).fill(-1);
  let highest = 0;
  sizes.forEach((size, index) => {
    if (size === 0) return;
    highest = Math.min(most, highest + size);
    for (let sum = highest; sum >= size; sum -= 1) {
      if (last[sum]! < 0 && (sum === size || last[sum - size]! >= 0)) last[sum] = index;
    }
  });
  return last;
}

/** The indexes of sizes that make up a sum which `reachSums` reached. */
export function sizesOfSum(sizes: readonly number[], last: Int32Array, sum: number): readonly number[] {
  const chosen: number[] = [];
  for (let left = sum; left > 0; left -= sizes[last[left]!]!) chosen.push(last[left]!);
  return chosen;
}

/**
 * The indexes of sizes that fill a limit as far as can be, the large ones among them where they come first.
 *
 * Example: sizes 8, 7, 5, 3 fill 11 with the 8 and the 3.
 */
export function fillUpTo(sizes: readonly number[], limit: number): readonly number[] {
  const longest = Math.min(limit, sizes.reduce((sum, size) => sum + size, 0));
  if (longest <= 0) return [];
  if (sizes.length * longest > MOST_SUMS) return fillGreedily(sizes, limit);
  const last = reachSums(sizes, longest);
  let sum = longest;
  while (sum > 0 && last[sum]! < 0) sum -= 1;
  return sizesOfSum(sizes, last, sum);
}

function fillGreedily(sizes: readonly number[], limit: number): readonly number[] {
  let left = limit;
  return sizes.flatMap((size, index) => {
    if (size === 0 || size > left) return [];
    left -= size;
    return [index];
  });
}
