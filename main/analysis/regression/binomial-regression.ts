import { positiveDefinite, sandwich } from '../numeric/positive-definite.ts';
import { type Computed, computed, failed } from '../result.ts';
import {
  type BinomialData,
  crossProduct,
  type Design,
  linearPredictor,
  originalCoefficients,
  prepareDesign,
  projection,
  scaledCoefficients,
} from './design.ts';
import { type Link, logit } from './links.ts';
import { separates } from './separation.ts';

export type BinomialFit = {
  readonly method: 'maximum likelihood' | 'Firth penalised likelihood';
  readonly link: Link;
  /** Intercept first (where there is one), then one a predictor, in the predictors' own units. */
  readonly coefficients: readonly number[];
  /** Inverse expected information, same order. */
  readonly covariance: readonly (readonly number[])[];
  /** Twice the log-likelihood short of a perfect fit; that of the model with the intercept alone. */
  readonly deviance: number;
  readonly nullDeviance: number;
  /** Rows with trials less coefficients. */
  readonly degrees: number;
  /** Pearson's chi-square over `degrees`; about 1 for binomial rows, above it with over-dispersion. 1 when degrees is 0. */
  readonly dispersion: number;
  /** Each row's derivative of the log-likelihood by its linear predictor, as long as the data given. */
  readonly scores: Float64Array;
};

export type BinomialRegressionOptions = {
  readonly link?: Link;
  readonly intercept?: boolean;
  /** Coefficients to begin from, in the predictors' own units; a least-squares fit unless given. */
  readonly start?: readonly number[];
};

const MOST_ITERATIONS = 100;
const FIRST_SEPARATION_CHECK = 8;

/**
 * Regression of a proportion on predictors by maximum likelihood, Fisher scoring with halved steps (McCullagh & Nelder
 * 1989, Generalized Linear Models, ch. 2 and 4). Logit link unless another is given.
 *
 * Errors: `one-category` when every trial ended alike (intercept models), `separation` when the estimate is infinite,
 * `collinear`, `no-variation`, `no-data`, `too-few-data` (fewer rows than coefficients), `no-convergence`,
 * `invalid-input`.
 */
export function binomialRegression(
  data: BinomialData,
  { link = logit, intercept = true, start }: BinomialRegressionOptions = {},
): Computed<BinomialFit> {
  const prepared = prepareDesign(data, intercept);
  if (!prepared.ok) return prepared;
  const design = prepared.value;
  const error = designError(design, intercept);
  if (error) return error;
  let coefficients = start ? scaledCoefficients(design, start) : startingCoefficients(design, link);
  let state = evaluate(design, link, coefficients);
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration += 1) {
    const information = positiveDefinite(crossProduct(design.columns, state.weights));
    const step = information?.solve(projection(design.columns, state.scores));
    if (!information || !step) break;
    if (iteration >= FIRST_SEPARATION_CHECK && separates(design, step) && growing(step)) return separated();
    let share = 1;
    let next = moved(coefficients, step, share);
    let nextState = evaluate(design, link, next);
    while (!(nextState.deviance <= state.deviance * (1 + 1e-12) + 1e-12) && share > 1e-6) {
      share /= 2;
      next = moved(coefficients, step, share);
      nextState = evaluate(design, link, next);
    }
    const largestStep = Math.max(...step.map((change, j) => Math.abs(change) / (1 + Math.abs(coefficients[j] ?? 0))));
    if (share <= 1e-6 && largestStep > 1e-6) break;
    coefficients = next;
    state = nextState;
    if (largestStep < 1e-9) return finish(data, design, link, intercept, coefficients, state);
  }
  return failed('no-convergence', 'The regression did not settle on an estimate.');
}

function separated(): Computed<never> {
  return failed('separation', 'The predictors part the two outcomes perfectly, so the estimate would be infinite.');
}

/** A step of the scoring algorithm under separation keeps its size; near an estimate it vanishes. */
function growing(step: readonly number[]): boolean {
  return Math.max(...step.map(Math.abs)) > 1e-3;
}

/** A typed error when the design cannot be fitted by any method, else nothing. */
export function designError(design: Design, intercept: boolean): Computed<never> | undefined {
  if (design.rows < design.columns.length) return failed('too-few-data', 'There are fewer rows than coefficients.');
  if (design.columns.length === 0) return failed('invalid-input', 'There is nothing to estimate.');
  if (!positiveDefinite(crossProduct(design.columns, design.trials))) {
    return failed('collinear', 'A predictor is a mixture of the others, so their shares cannot be told apart.');
  }
  if (!intercept) return undefined;
  let successes = 0;
  let trials = 0;
  for (let i = 0; i < design.rows; i += 1) {
    successes += design.successes[i] ?? 0;
    trials += design.trials[i] ?? 0;
  }
  const alike = successes === 0 || successes === trials;
  return alike ? failed('one-category', 'Every trial ended alike, so nothing can be explained.') : undefined;
}

type State = {
  readonly deviance: number;
  readonly weights: Float64Array;
  readonly scores: Float64Array;
  readonly pearson: number;
};

function evaluate(design: Design, link: Link, coefficients: readonly number[]): State {
  const predictor = linearPredictor(design.columns, coefficients, design.rows);
  const weights = new Float64Array(design.rows);
  const scores = new Float64Array(design.rows);
  let deviance = 0;
  let pearson = 0;
  for (let i = 0; i < design.rows; i += 1) {
    const n = design.trials[i] ?? 0;
    const y = design.successes[i] ?? 0;
    const p = inside(link.probability(predictor[i] ?? 0));
    const variance = p * (1 - p);
    // The logit's slope is the variance itself: half the work for the million attempts of a gym.
    const slope = link === logit ? variance : link.derivative(predictor[i] ?? 0);
    weights[i] = (n * slope * slope) / variance;
    scores[i] = ((y - n * p) * slope) / variance;
    deviance += rowDeviance(y, n, p);
    pearson += (y - n * p) ** 2 / (n * variance);
  }
  return { deviance, weights, scores, pearson };
}

function inside(probability: number): number {
  return Math.min(1 - Number.EPSILON, Math.max(Number.EPSILON, probability));
}

function rowDeviance(y: number, n: number, p: number): number {
  if (y === 0) return -2 * n * Math.log1p(-p);
  if (y === n) return -2 * n * Math.log(p);
  return 2 * (y * Math.log(y / (n * p)) + (n - y) * Math.log((n - y) / (n - n * p)));
}

function moved(coefficients: readonly number[], step: readonly number[], share: number): number[] {
  return coefficients.map((coefficient, j) => coefficient + share * (step[j] ?? 0));
}

/** Weighted least squares on the shrunken observed proportions: a start inside the range of the link. */
function startingCoefficients(design: Design, link: Link): number[] {
  const [low, high] = link.range;
  const weights = new Float64Array(design.rows);
  const targets = new Float64Array(design.rows);
  for (let i = 0; i < design.rows; i += 1) {
    const n = design.trials[i] ?? 0;
    const observed = ((design.successes[i] ?? 0) + 0.5) / (n + 1);
    const margin = (high - low) / (2 * n + 2);
    const predictor = link.predictor(Math.min(high - margin, Math.max(low + margin, observed)));
    const p = link.probability(predictor);
    const slope = link.derivative(predictor);
    weights[i] = (n * slope * slope) / (p * (1 - p));
    targets[i] = (weights[i] ?? 0) * predictor;
  }
  const factor = positiveDefinite(crossProduct(design.columns, weights));
  return factor ? factor.solve(projection(design.columns, targets)) : design.columns.map(() => 0);
}

function finish(
  data: BinomialData,
  design: Design,
  link: Link,
  intercept: boolean,
  coefficients: readonly number[],
  state: State,
): Computed<BinomialFit> {
  const information = positiveDefinite(crossProduct(design.columns, state.weights));
  if (!information) return separated();
  const degrees = design.rows - design.columns.length;
  return computed({
    method: 'maximum likelihood',
    link,
    coefficients: originalCoefficients(design, coefficients),
    covariance: sandwich(design.back, information.inverse()),
    deviance: state.deviance,
    nullDeviance: nullDeviance(design, link, intercept),
    degrees,
    dispersion: degrees > 0 ? state.pearson / degrees : 1,
    scores: inDataOrder(data, design, state.scores),
  });
}

/** Deviance of the intercept alone, or of a predictor of 0 everywhere in a model without one. */
export function nullDeviance(design: Design, link: Link, intercept: boolean): number {
  let successes = 0;
  let trials = 0;
  for (let i = 0; i < design.rows; i += 1) {
    successes += design.successes[i] ?? 0;
    trials += design.trials[i] ?? 0;
  }
  const p = inside(intercept ? successes / trials : link.probability(0));
  let deviance = 0;
  for (let i = 0; i < design.rows; i += 1) deviance += rowDeviance(design.successes[i] ?? 0, design.trials[i] ?? 0, p);
  return deviance;
}

/** Values of the rows used, put at their places in the data as given (0 elsewhere). */
export function inDataOrder(data: BinomialData, design: Design, values: Float64Array): Float64Array {
  const ordered = new Float64Array(data.successes.length);
  for (let i = 0; i < design.rows; i += 1) ordered[design.origin[i] ?? 0] = values[i] ?? 0;
  return ordered;
}
