/**
 * Solves `matrix · x = right` by Gaussian elimination with diagonal pivots, in place; the answer replaces `right`.
 * For small, symmetric, positive systems of normal equations: `matrix` holds `size × size` numbers row by row, of which
 * the lower triangle need not be filled. A vanishing pivot leaves its unknown at 0.
 */
export function solveSymmetric(matrix: Float64Array, right: Float64Array, size: number): void {
  for (let pivot = 0; pivot < size; pivot++) eliminate(matrix, right, size, pivot);
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row] as number;
    for (let column = row + 1; column < size; column++) {
      sum -= (matrix[row * size + column] as number) * (right[column] as number);
    }
    const diagonal = matrix[row * size + row] as number;
    right[row] = diagonal > VANISHING ? sum / diagonal : 0;
  }
}

const VANISHING = 1e-9;

function eliminate(matrix: Float64Array, right: Float64Array, size: number, pivot: number): void {
  const diagonal = matrix[pivot * size + pivot] as number;
  const scale = diagonal > VANISHING ? 1 / diagonal : 0;
  for (let row = pivot + 1; row < size; row++) {
    const factor = (matrix[pivot * size + row] as number) * scale;
    for (let column = row; column < size; column++) {
      const at = row * size + column;
      matrix[at] = (matrix[at] as number) - factor * (matrix[pivot * size + column] as number);
    }
    right[row] = (right[row] as number) - factor * (right[pivot] as number);
  }
}
