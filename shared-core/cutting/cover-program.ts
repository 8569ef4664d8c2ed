import { invert } from './invert.ts';
import type { Work } from './work.ts';

/** A way of cutting one roll, as the linear program sees it: rows of kinds, and how many pieces of each it gives. */
export interface Column {
  readonly rows: readonly number[];
  readonly times: readonly number[];
}

/** What is taken for nothing: a difference of that size is not seen. */
const NOTHING = 1e-9;
const PIVOTS_BEFORE_REFACTORING = 400;
const MOST_PIVOTS = 20_000;

/**
 * The linear program of cutting: how often to cut each column, in parts of a roll too, so that every kind is covered.
 *
 * Minimise the sum of x over the columns where, for every kind, the pieces of all columns times x are at least what is
 * wanted, x >= 0. Solved by the revised simplex method with the whole inverse of the basis, beginning with one column
 * for each kind, which `singles` gives: so many pieces of that kind alone. Floats decide here, so nothing that comes
 * from here is a proof: prices are rounded to whole numbers and judged anew by who uses them.
 *
 * Example: two kinds, 10 of each wanted, columns (2, 0), (0, 2) and (1, 1): 10 rolls, a price of 1/2 for either kind.
 */
export interface CoverProgram {
  add(column: Column): void;
  /** Solves from where it stands; false where the floats got lost or the work is over, and what is there covers all the same. */
  minimise(): boolean;
  rolls(): number;
  /** By row: what one more piece would cost, in rolls. */
  readonly prices: Float64Array;
  /** Indexes of the columns in use, the singles first, and how often each is cut. */
  used(): readonly { readonly column: number; readonly times: number }[];
}

export function coverProgram(wanted: readonly number[], singles: readonly number[], { spend, isOver }: Work): CoverProgram {
  const m = wanted.length;
  /** Column after column: the rows of column c are `rowsOf` from `starts[c]` up to `starts[c + 1]`. */
  let starts = new Int32Array(4 * m + 2);
  let rowsOf = new Int32Array(16 * m + 16);
  let timesOf = new Float64Array(16 * m + 16);
  let isBasic = new Uint8Array(4 * m + 2);
  let columns = 0;
  /** By row: the column that is cut there, or -1 - kind for what is given beyond the demand of that kind. */
  const basis = new Int32Array(m);
  /** Column by column: the entry of row r in column c at c m + r. */
  const inverse = new Float64Array(m * m);
  const values = new Float64Array(m);
  const prices = new Float64Array(m);
  const direction = new Float64Array(m);
  /** The rows at which the direction is not nothing, the first `changing` of them. */
  const changes = new Int32Array(m);
  let changing = 0;
  let pivots = 0;

  const add = ({ rows, times }: Column): void => {
    const start = starts[columns]!;
    if (columns + 2 > starts.length) {
      starts = grown(starts);
      isBasic = grown(isBasic);
    }
    if (start + rows.length > rowsOf.length) {
      rowsOf = grown(rowsOf);
      timesOf = grown(timesOf);
    }
    for (let index = 0; index < rows.length; index += 1) {
      rowsOf[start + index] = rows[index]!;
      timesOf[start + index] = times[index]!;
    }
    columns += 1;
    starts[columns] = start + rows.length;
  };
  const worthOf = (column: number): number => {
    let worth = 0;
    for (let at = starts[column]!; at < starts[column + 1]!; at += 1) worth += prices[rowsOf[at]!]! * timesOf[at]!;
    return worth;
  };
  const takeDirection = (entry: number): void => {
    direction.fill(0);
    if (entry < 0) {
      const start = (-1 - entry) * m;
      for (let row = 0; row < m; row += 1) direction[row] = -inverse[start + row]!;
    } else {
      for (let at = starts[entry]!; at < starts[entry + 1]!; at += 1) {
        const factor = timesOf[at]!;
        const start = rowsOf[at]! * m;
        for (let row = 0; row < m; row += 1) direction[row]! += factor * inverse[start + row]!;
      }
    }
    changing = 0;
    for (let row = 0; row < m; row += 1) if (Math.abs(direction[row]!) > NOTHING) changes[changing++] = row;
  };
  const takeValuesAndPrices = (): void => {
    values.fill(0);
    for (let column = 0; column < m; column += 1) {
      const factor = wanted[column]!;
      let price = 0;
      for (let row = 0; row < m; row += 1) {
        const entry = inverse[column * m + row]!;
        values[row]! += factor * entry;
        if (basis[row]! >= 0) price += entry;
      }
      prices[column] = price;
    }
  };
  const pivot = (row: number, entering: number, gain: number): void => {
    const divisor = direction[row]!;
    for (let column = 0; column < m; column += 1) {
      const start = column * m;
      const factor = inverse[start + row]! / divisor;
      if (factor === 0) continue;
      for (let index = 0; index < changing; index += 1) inverse[start + changes[index]!]! -= factor * direction[changes[index]!]!;
      inverse[start + row] = factor;
      prices[column]! -= gain * factor;
    }
    const step = values[row]! / divisor;
    for (let index = 0; index < changing; index += 1) values[changes[index]!]! -= step * direction[changes[index]!]!;
    values[row] = step;
    const leaving = basis[row]!;
    if (leaving >= 0) isBasic[leaving] = 0;
    if (entering >= 0) isBasic[entering] = 1;
    basis[row] = entering;
    pivots += 1;
    spend(2 * m * (changing + 10));
    if (pivots % PIVOTS_BEFORE_REFACTORING === 0) refactor();
  };
  const refactor = (): void => {
    spend(m * m * m);
    const matrix = new Float64Array(m * m);
    basis.forEach((entry, index) => {
      if (entry < 0) matrix[(-1 - entry) * m + index] = -1;
      else for (let at = starts[entry]!; at < starts[entry + 1]!; at += 1) matrix[rowsOf[at]! * m + index] = timesOf[at]!;
    });
    inverse.set(invert(matrix, m));
    takeValuesAndPrices();
  };
  /** The column, or the kind given beyond its demand as -1 - kind, that a roll's worth gains most from; null where none gains. */
  const mostGain = (): { readonly entry: number; readonly gain: number } | null => {
    let entry = 0;
    let gain = 1e-7;
    for (let column = 0; column < columns; column += 1) {
      if (isBasic[column] === 1) continue;
      const more = worthOf(column) - 1;
      if (more > gain) {
        gain = more;
        entry = column;
      }
    }
    for (let kind = 0; kind < m; kind += 1) {
      if (-prices[kind]! > gain) {
        gain = -prices[kind]!;
        entry = -1 - kind;
      }
    }
    spend(starts[columns]!);
    return gain > 1e-7 ? { entry, gain } : null;
  };
  /** The row that runs out first along the direction; of equals the one with the largest pivot. */
  const firstOut = (): number => {
    let row = -1;
    let least = Infinity;
    for (let index = 0; index < changing; index += 1) {
      const at = changes[index]!;
      if (direction[at]! <= 1e-8) continue;
      const ratio = Math.max(values[at]!, 0) / direction[at]!;
      if (ratio < least - NOTHING || (ratio < least + NOTHING && direction[at]! > direction[row]!)) {
        least = Math.min(least, ratio);
        row = at;
      }
    }
    return row;
  };

  for (let row = 0; row < m; row += 1) {
    add({ rows: [row], times: [singles[row]!] });
    basis[row] = row;
    isBasic[row] = 1;
    inverse[row * m + row] = 1 / singles[row]!;
  }
  takeValuesAndPrices();

  return {
    add,
    minimise() {
      for (let most = pivots + MOST_PIVOTS; pivots < most && !isOver(); ) {
        const entering = mostGain();
        if (!entering) return true;
        takeDirection(entering.entry);
        const row = firstOut();
        if (row < 0) return false;
        pivot(row, entering.entry, entering.gain);
      }
      return false;
    },
    rolls: () => basis.reduce((sum, entry, row) => sum + (entry >= 0 ? values[row]! : 0), 0),
    prices,
    used: () => [...basis].flatMap((column, row) => (column >= 0 && values[row]! > NOTHING ? [{ column, times: values[row]! }] : [])),
  };
}

function grown<Numbers extends Int32Array<ArrayBuffer> | Float64Array<ArrayBuffer> | Uint8Array<ArrayBuffer>>(numbers: Numbers): Numbers {
  const larger = new (numbers.constructor as new (length: number) => Numbers)(numbers.length * 2);
  larger.set(numbers);
  return larger;
}
