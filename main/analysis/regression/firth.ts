import { chiSquareQuantile } from '../distributions/chi-square.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError } from '../interval.ts';
import { bisect } from '../numeric/bisect.ts';
import { positiveDefinite, sandwich } from '../numeric/positive-definite.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type BinomialFit, designError, inDataOrder, nullDeviance } from './binomial-regression.ts';
import {
  type BinomialData,
  crossProduct,
  type Design,
  linearPredictor,
  originalCoefficients,
  prepareDesign,
  projection,
} from './design.ts';
import { logit } from './links.ts';

const MOST_ITERATIONS = 200;
const LARGEST_STEP = 5;

/**
 * Logistic regression by penalised likelihood (Firth 1993, Biometrika 80:27-38; for separation Heinze & Schemper 2002,
 * Statistics in Medicine 21:2409-2419): adds half the log determinant of the information, so that the estimates stay
 * finite whatever the data. Wald limits from its covariance are poor under separation: use `firthInterval`.
 *
 * Errors: as `binomialRegression`, without `separation` and without `one-category`.
 */
export function firthLogistic(data: BinomialData): Computed<BinomialFit> {
  const prepared = prepareDesign(data, true);
  if (!prepared.ok) return prepared;
  const design = prepared.value;
  const error = designError(design, false);
  if (error) return error;
  const best = maximise(design);
  if (!best) return failed('no-convergence', 'The penalised regression did not settle on an estimate.');
  const degrees = design.rows - design.columns.length;
  return computed({
    method: 'Firth penalised likelihood',
    link: logit,
    coefficients: originalCoefficients(design, best.coefficients),
    covariance: sandwich(design.back, best.inverse),
    deviance: best.deviance,
    nullDeviance: nullDeviance(design, logit, true),
    degrees,
    dispersion: degrees > 0 ? best.pearson / degrees : 1,
    scores: inDataOrder(data, design, best.scores),
  });
}

/**
 * Profile penalised-likelihood interval of the slope of predictor `index` (0 for the first): all values whose penalised
 * likelihood, maximised over the other coefficients, is within the chi-square distance of the best (Heinze & Schemper
 * 2002). A limit that is not reached within a thousand standard deviations of the predictor is infinite.
 * Errors: as `firthLogistic`.
 */
export function firthInterval(
  data: BinomialData,
  index: number,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const levelFault = levelError(level);
  if (levelFault) return levelFault;
  const prepared = prepareDesign(data, true);
  if (!prepared.ok) return prepared;
  const design = prepared.value;
  const error = designError(design, false);
  if (error) return error;
  const held = index + 1;
  const scale = design.back[held]?.[held];
  if (scale === undefined) return failed('invalid-input', `There is no predictor ${index}.`);
  const best = maximise(design);
  if (!best) return failed('no-convergence', 'The penalised regression did not settle on an estimate.');
  const estimate = best.coefficients[held] ?? 0;
  const wanted = best.penalised - chiSquareQuantile(level, 1) / 2;
  // Largest penalised likelihood with the slope held, short of the wanted one; NaN where it cannot be found.
  const beyond = (value: number) => {
    const ratio = estimate === 0 ? 1 : value / estimate;
    // Scaling all coefficients keeps the place where the curve crosses one half, which far limits need.
    const scaled = best.coefficients.map((coefficient) => coefficient * ratio);
    const shifted = best.coefficients.map((coefficient, j) => (j === held ? value : coefficient));
    const [likely, other] = ratio > 1 ? [scaled, shifted] : [shifted, scaled];
    const profile = maximise(design, likely, held) ?? maximise(design, other, held);
    return (profile?.penalised ?? Number.NaN) - wanted;
  };
  const limit = (direction: number): number => {
    for (let reach = 1; reach <= 1024; reach *= 2) {
      const far = estimate + direction * reach;
      const short = beyond(far);
      if (Number.isNaN(short)) return Number.NaN;
      if (short < 0) return bisectTo(beyond, far, reach === 1 ? estimate : estimate + (direction * reach) / 2);
    }
    return direction * Number.POSITIVE_INFINITY;
  };
  const lower = limit(-1) * scale;
  const upper = limit(1) * scale;
  if (Number.isNaN(lower) || Number.isNaN(upper)) {
    return failed('no-convergence', 'The limits of the penalised regression could not be found.');
  }
  return computed({ estimate: estimate * scale, lower, upper, level });
}

/** Bisection rounded to 1e-10, since each value is a fit of its own. */
function bisectTo(f: (x: number) => number, low: number, high: number): number {
  const grid = 1e-10;
  const cache = new Map<number, number>();
  const onGrid = (x: number) => {
    const key = Math.round(x / grid);
    const known = cache.get(key) ?? f(key * grid);
    cache.set(key, known);
    return known;
  };
  return bisect(onGrid, low, high);
}

type Maximum = {
  readonly coefficients: number[];
  readonly penalised: number;
  readonly inverse: number[][];
  readonly scores: Float64Array;
  readonly deviance: number;
  readonly pearson: number;
};

type Position = Maximum & { readonly gradient: number[]; readonly stepWeights: Float64Array };

/** Maximum of the penalised likelihood; with `held`, over all coefficients but that one. */
function maximise(design: Design, from?: readonly number[], held?: number): Maximum | undefined {
  const start = from ?? design.columns.map(() => 0);
  let position = evaluate(design, start);
  for (let iteration = 0; position && iteration < MOST_ITERATIONS; iteration += 1) {
    const step = scoringStep(design, position, held);
    if (!step) return undefined;
    const largest = Math.max(...step.map(Math.abs));
    if (largest < 1e-10) return position;
    let share = Math.min(1, LARGEST_STEP / largest);
    let next: Position | undefined;
    for (; share > 1e-8; share /= 2) {
      const taken: number = share;
      const candidate = evaluate(
        design,
        position.coefficients.map((coefficient, j) => coefficient + taken * (step[j] ?? 0)),
      );
      if (candidate && candidate.penalised >= position.penalised - 1e-12 * (1 + Math.abs(position.penalised))) {
        next = candidate;
        break;
      }
    }
    // No step uphill is left within rounding: this is the top if the step was small.
    if (!next) return largest < 1e-5 ? position : undefined;
    position = next;
  }
  return undefined;
}

/**
 * Scoring step on the data with their leverages added as half successes, half failures: the same maximum as the plain
 * information's steps, reached where those would swing to and fro on a handful of attempts.
 */
function scoringStep(design: Design, position: Position, held: number | undefined): number[] | undefined {
  const free = design.columns.map((_, j) => j).filter((j) => j !== held);
  const columns = free.map((j) => design.columns[j] ?? new Float64Array(design.rows));
  const factor = positiveDefinite(crossProduct(columns, position.stepWeights));
  const part = factor?.solve(free.map((j) => position.gradient[j] ?? 0));
  return part && design.columns.map((_, j) => part[free.indexOf(j)] ?? 0);
}

function informationWeights(design: Design, coefficients: readonly number[]): Float64Array {
  const predictor = linearPredictor(design.columns, coefficients, design.rows);
  return predictor.map((value, i) => (design.trials[i] ?? 0) * logit.derivative(value));
}

function evaluate(design: Design, coefficients: readonly number[]): Position | undefined {
  const predictor = linearPredictor(design.columns, coefficients, design.rows);
  const weights = informationWeights(design, coefficients);
  const factor = positiveDefinite(crossProduct(design.columns, weights));
  if (!factor) return undefined;
  const inverse = factor.inverse();
  const scores = new Float64Array(design.rows);
  const modified = new Float64Array(design.rows);
  const stepWeights = new Float64Array(design.rows);
  let logLikelihood = 0;
  let deviance = 0;
  let pearson = 0;
  for (let i = 0; i < design.rows; i += 1) {
    const n = design.trials[i] ?? 0;
    const y = design.successes[i] ?? 0;
    const value = predictor[i] ?? 0;
    const p = logit.probability(value);
    let leverage = 0;
    for (const [a, row] of inverse.entries()) {
      const left = (design.columns[a]?.[i] ?? 0) * (weights[i] ?? 0);
      for (const [b, entry] of row.entries()) leverage += left * entry * (design.columns[b]?.[i] ?? 0);
    }
    scores[i] = y - n * p;
    modified[i] = y - n * p + leverage * (0.5 - p);
    stepWeights[i] = (n + leverage) * logit.derivative(value);
    // log p = -log(1 + exp(-value)), without overflow on either side.
    const logSuccess = value > 0 ? -Math.log1p(Math.exp(-value)) : value - Math.log1p(Math.exp(value));
    const row = y * logSuccess + (n - y) * (logSuccess - value);
    logLikelihood += row;
    deviance += 2 * (entropy(y, n) - row);
    pearson += (y - n * p) ** 2 / Math.max(n * p * (1 - p), Number.MIN_VALUE);
  }
  return {
    coefficients: [...coefficients],
    penalised: logLikelihood + factor.logDeterminant / 2,
    inverse,
    scores,
    deviance,
    pearson,
    gradient: projection(design.columns, modified),
    stepWeights,
  };
}

/** Log-likelihood of a row under its own observed proportion. */
function entropy(y: number, n: number): number {
  return (y > 0 ? y * Math.log(y / n) : 0) + (n - y > 0 ? (n - y) * Math.log((n - y) / n) : 0);
}
