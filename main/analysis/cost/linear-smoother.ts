import { interpolate } from '../smoothing/interpolate.ts';
import { prepareLowess } from '../smoothing/lowess.ts';

/** Up to this many points the smoother's matrix is worth its memory; beyond, leverage is below 1 % and fits are direct, at 20 places. */
const MOST_FOR_MATRIX = 500;

/** LOWESS without its robust rounds: fitted values are then a fixed matrix times the data (the "hat matrix"). */
export type LinearSmoother = {
  /** Trace of the matrix: the fit's parameters, so to speak (Hastie & Tibshirani 1990, Generalized Additive Models, 3.5). */
  readonly degrees: number;
  /** What residual i is to be multiplied by to have the noise's variance: 1 / sqrt(1 - 2 h_ii + sum_j h_ij^2). */
  readonly residualInflation: (i: number) => number;
  /** Prepares smoothing of values at the points, read off at the given places. The answer's array is used again. */
  readonly prepare: (places: readonly number[]) => (values: Float64Array) => Float64Array;
};

/** The linear smoother over points x; null where they are none or out of order. */
export function linearSmoother(x: readonly number[]): LinearSmoother | null {
  const n = x.length;
  const range = (x[n - 1] ?? 0) - (x[0] ?? 0);
  const prepared = prepareLowess(x, n > MOST_FOR_MATRIX ? { iterations: 0, delta: range / 20 } : { iterations: 0 });
  if (!prepared.ok) return null;
  const smooth = prepared.value;
  if (n > MOST_FOR_MATRIX) {
    return {
      degrees: 0,
      residualInflation: () => 1,
      prepare: (places) => {
        const out = new Float64Array(places.length);
        return (values) => {
          const fitted = smooth(values);
          for (let p = 0; p < places.length; p += 1) out[p] = interpolate(x, fitted, places[p] ?? 0) ?? 0;
          return out;
        };
      },
    };
  }
  // Column j is the fit to data that are 1 at point j and 0 elsewhere.
  const columns = x.map((_, j) => {
    const unit = new Float64Array(n);
    unit[j] = 1;
    return smooth(unit);
  });
  const squares = new Float64Array(n);
  for (const column of columns) {
    for (let i = 0; i < n; i += 1) squares[i] = (squares[i] ?? 0) + (column[i] ?? 0) ** 2;
  }
  const leverage = columns.map((column, j) => column[j] ?? 0);
  return {
    degrees: leverage.reduce((sum, value) => sum + value, 0),
    residualInflation: (i) => 1 / Math.sqrt(Math.max(0.1, 1 - 2 * (leverage[i] ?? 0) + (squares[i] ?? 0))),
    prepare: (places) => {
      const rows = places.map((place) => Float64Array.from(columns, (column) => interpolate(x, column, place) ?? 0));
      const out = new Float64Array(places.length);
      return (values) => {
        for (let p = 0; p < rows.length; p += 1) {
          const row = rows[p];
          let sum = 0;
          for (let j = 0; row !== undefined && j < n; j += 1) sum += (row[j] ?? 0) * (values[j] ?? 0);
          out[p] = sum;
        }
        return out;
      };
    },
  };
}
