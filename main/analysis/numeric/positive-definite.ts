import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** Share of a diagonal entry below which its pivot counts as rounding: the column depends on the ones before it. */
const SMALLEST_PIVOT = 1e-11;

/** Cholesky factor of a symmetric positive definite matrix, ready to solve with. */
export type PositiveDefinite = {
  /** x with matrix x = right. */
  readonly solve: (right: readonly number[]) => number[];
  readonly inverse: () => number[][];
  readonly logDeterminant: number;
};

/** Factorises `matrix` (symmetric, rows); undefined when it is not positive definite to working precision, or not finite. */
export function positiveDefinite(matrix: readonly (readonly number[])[]): PositiveDefinite | undefined {
  if (!matrix.every((row) => row.every(Number.isFinite))) return undefined;
  const decomposition = new CholeskyDecomposition(new Matrix(matrix.map((row) => [...row])));
  if (!decomposition.isPositiveDefinite()) return undefined;
  const pivots = decomposition.lowerTriangularMatrix.diagonal();
  const sound = pivots.every(
    (pivot, i) => pivot * pivot > SMALLEST_PIVOT * (matrix[i]?.[i] ?? Number.POSITIVE_INFINITY),
  );
  if (!sound) return undefined;
  return {
    solve: (right) => decomposition.solve(Matrix.columnVector([...right])).to1DArray(),
    inverse: () => decomposition.solve(Matrix.eye(matrix.length)).to2DArray(),
    logDeterminant: pivots.reduce((sum, pivot) => sum + 2 * Math.log(pivot), 0),
  };
}

/** left * middle * transpose(left). */
export function sandwich(left: readonly (readonly number[])[], middle: readonly (readonly number[])[]): number[][] {
  const outer = new Matrix(left.map((row) => [...row]));
  return outer
    .mmul(new Matrix(middle.map((row) => [...row])))
    .mmul(outer.transpose())
    .to2DArray();
}
