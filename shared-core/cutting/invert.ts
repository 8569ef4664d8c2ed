/**
 * The inverse of a square matrix with m rows, by elimination with the largest pivot.
 *
 * The matrix comes row by row and is used up; the inverse goes out column by column.
 *
 * Example: (2 1; 0 4), given as 2 1 0 4, has the inverse (0.5 -0.125; 0 0.25), given back as 0.5 0 -0.125 0.25.
 */
export function invert(matrix: Float64Array, m: number): Float64Array {
  const inverse = new Float64Array(m * m);
  for (let row = 0; row < m; row += 1) inverse[row * m + row] = 1;
  for (let column = 0; column < m; column += 1) {
    let largest = column;
    for (let row = column + 1; row < m; row += 1) if (Math.abs(matrix[row * m + column]!) > Math.abs(matrix[largest * m + column]!)) largest = row;
    if (largest !== column) for (const each of [matrix, inverse]) swapRows(each, m, column, largest);
    const divisor = matrix[column * m + column]!;
    for (let at = 0; at < m; at += 1) {
      matrix[column * m + at]! /= divisor;
      inverse[column * m + at]! /= divisor;
    }
    for (let row = 0; row < m; row += 1) {
      const factor = matrix[row * m + column]!;
      if (row === column || factor === 0) continue;
      for (let at = column; at < m; at += 1) matrix[row * m + at]! -= factor * matrix[column * m + at]!;
      for (let at = 0; at < m; at += 1) inverse[row * m + at]! -= factor * inverse[column * m + at]!;
    }
  }
  const turned = new Float64Array(m * m);
  for (let row = 0; row < m; row += 1) for (let column = 0; column < m; column += 1) turned[column * m + row] = inverse[row * m + column]!;
  return turned;
}

function swapRows(matrix: Float64Array, m: number, one: number, other: number): void {
  const kept = matrix.slice(one * m, (one + 1) * m);
  matrix.copyWithin(one * m, other * m, (other + 1) * m);
  matrix.set(kept, other * m);
}
