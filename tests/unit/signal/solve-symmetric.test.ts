import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solveSymmetric } from '../../../src-core/signal/solve-symmetric.ts';

describe('normal equations', () => {
  test('are solved for any positive matrix, from its upper triangle alone', () => {
    const numbers = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 20, maxLength: 20 });
    fc.assert(
      fc.property(numbers, (values) => {
        const factor = (row: number, column: number) => values[row * 4 + column] ?? 0;
        const matrix = new Float64Array(16);
        const wanted = values.slice(16);
        const right = new Float64Array(4);
        for (let row = 0; row < 4; row++) {
          for (let column = 0; column < 4; column++) {
            let sum = row === column ? 0.5 : 0;
            for (let inner = 0; inner < 4; inner++) sum += factor(row, inner) * factor(column, inner);
            right[row] = (right[row] ?? 0) + sum * (wanted[column] ?? 0);
            if (column >= row) matrix[row * 4 + column] = sum;
          }
        }
        solveSymmetric(matrix, right, 4);
        for (let row = 0; row < 4; row++) expect(right[row]).toBeCloseTo(wanted[row] ?? 0, 5);
      }),
    );
  });

  test('leave at 0 what nothing speaks for', () => {
    const right = Float64Array.from([4, 0]);
    solveSymmetric(Float64Array.from([2, 0, 0, 0]), right, 2);
    expect([...right]).toEqual([2, 0]);
  });
});
