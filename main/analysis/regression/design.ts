import { type Computed, computed, failed } from '../result.ts';

/** Rows of successes out of trials with the columns that are to explain them. */
export type BinomialData = {
  /** Successes of each row; 0 or 1 for single attempts. */
  readonly successes: ArrayLike<number>;
  /** Trials of each row; 1 each unless given. Rows of 0 trials do not count. */
  readonly trials?: ArrayLike<number>;
  /** One column a predictor, each as long as `successes`. */
  readonly predictors: readonly ArrayLike<number>[];
};

/** The data as the fits use it: columns centred and scaled so that dates in milliseconds do no harm. */
export type Design = {
  readonly rows: number;
  readonly successes: Float64Array;
  readonly trials: Float64Array;
  /** Columns, the constant first where there is one. */
  readonly columns: readonly Float64Array[];
  /** Turns coefficients of `columns` into those of the predictors as given, one row a coefficient. */
  readonly back: readonly (readonly number[])[];
  /** Position of each row used in the data as given. */
  readonly origin: Int32Array;
};

/** Checks the data and prepares it. Errors: `invalid-input`, `no-data`, `no-variation` for a constant predictor. */
export function prepareDesign(data: BinomialData, intercept: boolean): Computed<Design> {
  const { successes, trials, predictors } = data;
  const given = successes.length;
  if ((trials && trials.length !== given) || predictors.some((column) => column.length !== given)) {
    return failed('invalid-input', 'All columns must have one length.');
  }
  const used: number[] = [];
  for (let i = 0; i < given; i += 1) {
    const success = successes[i] ?? Number.NaN;
    const trial = trials ? (trials[i] ?? Number.NaN) : 1;
    if (!(success >= 0 && success <= trial && Number.isFinite(trial))) {
      return failed('invalid-input', `Row ${i + 1} holds ${success} successes of ${trial} trials.`);
    }
    if (trial > 0) used.push(i);
  }
  if (used.length === 0) return failed('no-data', 'There are no trials.');
  const pick = (column: ArrayLike<number>) => {
    const picked = new Float64Array(used.length);
    for (let row = 0; row < picked.length; row += 1) picked[row] = column[used[row] ?? 0] ?? Number.NaN;
    return picked;
  };
  const columns: Float64Array[] = intercept ? [new Float64Array(used.length).fill(1)] : [];
  const centres: number[] = [];
  const scales: number[] = [];
  for (const predictor of predictors) {
    const column = pick(predictor);
    let mean = 0;
    for (const value of column) mean += value / column.length;
    if (!Number.isFinite(mean)) return failed('invalid-input', 'A predictor is not a finite number everywhere.');
    const centre = intercept ? mean : 0;
    let square = 0;
    for (const value of column) square += (value - centre) ** 2 / column.length;
    const scale = Math.sqrt(square);
    if (!(scale > 1e-12 * Math.abs(mean))) return failed('no-variation', 'A predictor has the same value everywhere.');
    for (let i = 0; i < column.length; i += 1) column[i] = ((column[i] ?? 0) - centre) / scale;
    columns.push(column);
    centres.push(centre);
    scales.push(scale);
  }
  return computed({
    rows: used.length,
    successes: pick(successes),
    trials: trials ? pick(trials) : new Float64Array(used.length).fill(1),
    columns,
    back: backTransformation(intercept, centres, scales),
    origin: Int32Array.from(used),
  });
}

function backTransformation(intercept: boolean, centres: readonly number[], scales: readonly number[]): number[][] {
  const slopes = scales.map((scale, row) => [
    ...(intercept ? [0] : []),
    ...scales.map((_, column) => (row === column ? 1 / scale : 0)),
  ]);
  if (!intercept) return slopes;
  return [[1, ...scales.map((scale, i) => -(centres[i] ?? 0) / scale)], ...slopes];
}

/** Sum over the columns of coefficient times value, for every row. */
export function linearPredictor(
  columns: readonly Float64Array[],
  coefficients: readonly number[],
  rows: number,
): Float64Array {
  const sum = new Float64Array(rows);
  for (const [j, column] of columns.entries()) {
    const coefficient = coefficients[j] ?? 0;
    for (let i = 0; i < rows; i += 1) sum[i] = (sum[i] ?? 0) + coefficient * (column[i] ?? 0);
  }
  return sum;
}

/** Transpose(X) diag(weights) X. */
export function crossProduct(columns: readonly Float64Array[], weights: Float64Array): number[][] {
  const product = columns.map(() => new Array<number>(columns.length).fill(0));
  for (const [a, left] of columns.entries()) {
    for (const [b, right] of columns.entries()) {
      if (b > a) break;
      let sum = 0;
      for (let i = 0; i < weights.length; i += 1) sum += (weights[i] ?? 0) * (left[i] ?? 0) * (right[i] ?? 0);
      const rowA = product[a];
      const rowB = product[b];
      if (rowA) rowA[b] = sum;
      if (rowB) rowB[a] = sum;
    }
  }
  return product;
}

/** Transpose(X) values. */
export function projection(columns: readonly Float64Array[], values: Float64Array): number[] {
  return columns.map((column) => {
    let sum = 0;
    for (let i = 0; i < values.length; i += 1) sum += (values[i] ?? 0) * (column[i] ?? 0);
    return sum;
  });
}

/** The inverse of `originalCoefficients`. */
export function scaledCoefficients(design: Design, coefficients: readonly number[]): number[] {
  const scaled = coefficients.map((coefficient, j) => coefficient / (design.back[j]?.[j] ?? 1));
  const [first = []] = design.back;
  const shift = first.reduce((sum, share, j) => (j === 0 ? 0 : sum + share * (scaled[j] ?? 0)), 0);
  return scaled.map((coefficient, j) => (j === 0 ? coefficient - shift / (first[0] ?? 1) : coefficient));
}

/** Coefficients in the units of the predictors as given. */
export function originalCoefficients(design: Design, coefficients: readonly number[]): number[] {
  return design.back.map((row) => row.reduce((sum, share, j) => sum + share * (coefficients[j] ?? 0), 0));
}
