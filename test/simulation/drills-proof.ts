import { fitEye } from '../../main/analysis/drills/eye-fit.ts';
import { faultScore } from '../../main/analysis/drills/fault-score.ts';
import { judged } from '../../main/analysis/drills/outcomes.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import type { Task } from '../../shared-types/drills/drill.ts';
import { type Answer, type Eye, noRepChance } from '../../shared-types/drills/eye.ts';
import { answersOf } from '../../shared-types/drills/line.ts';
import { advisedPlace, poorPlace } from '../../shared-types/drills/places.ts';
import { shownRange, triedRange } from '../../shared-types/drills/range.ts';
import { aboutTheLine } from '../../shared-types/drills/stand.ts';
import { type FaultCode, type MovementName, unitOf } from '../../shared-types/motion/specification.ts';
import { drillOf, playDrill } from './simulated-judge.ts';

/** A judge with a known eye in one kind of drill. */
export interface EyeCase {
  readonly name: string;
  readonly movement: MovementName;
  readonly fault: FaultCode;
  readonly eye: Eye;
  /** The eye from the poor place; scored in its place where the drill has one. */
  readonly poorEye?: Eye;
  readonly task: (movement: MovementName, fault: FaultCode) => Task;
}

const line = (movement: MovementName, fault: FaultCode): Task => ({
  kind: 'line',
  fault,
  leastTrials: 30,
  mostTrials: 60,
  narrow: 1,
  place: advisedPlace(movement, fault),
});
const single = (movement: MovementName, fault: FaultCode): Task => ({
  kind: 'single',
  reps: 100,
  faults: [fault],
  faultShare: 0.5,
  size: 'usual',
  place: advisedPlace(movement, fault),
});
const stream = (movement: MovementName, fault: FaultCode): Task => ({
  kind: 'stream',
  reps: 150,
  faults: [fault],
  faultShare: 0.5,
  faultShareAtEnd: 0.5,
  size: 'usual',
  fatigue: 0.5,
  place: advisedPlace(movement, fault),
});
const stand = (movement: MovementName, fault: FaultCode): Task => ({
  kind: 'place',
  fault,
  reps: 80,
  poor: poorPlace(movement, fault),
  advised: advisedPlace(movement, fault),
});

const eye = (strictness: number, precision: number, lapse = 0.01): Eye => ({ strictness, precision, lapse });

export const EYE_CASES: readonly EyeCase[] = [
  { name: 'find your line, sharp and lenient', movement: 'wall-throw', fault: 'depth', eye: eye(-3, 1.5), task: line },
  { name: 'find your line, usual', movement: 'wall-throw', fault: 'depth', eye: eye(0, 3), task: line },
  {
    name: 'find your line, usual, more lapses',
    movement: 'wall-throw',
    fault: 'depth',
    eye: eye(0, 3, 0.03),
    task: line,
  },
  { name: 'find your line, dull and lenient', movement: 'wall-throw', fault: 'depth', eye: eye(-4, 6), task: line },
  { name: 'find your line, dull, no lapses', movement: 'wall-throw', fault: 'depth', eye: eye(-4, 6, 0), task: line },
  { name: 'find your line, strict', movement: 'wall-throw', fault: 'line', eye: eye(5, 4), task: line },
  { name: 'find your line, milliseconds', movement: 'jump-burpee', fault: 'off', eye: eye(-40, 30), task: line },
  { name: 'find your line, degrees', movement: 'box-jump-over', fault: 'tall', eye: eye(-6, 5), task: line },
  { name: 'single reps (100)', movement: 'wall-throw', fault: 'depth', eye: eye(-3, 3), task: single },
  { name: 'live stream (150 reps)', movement: 'wall-throw', fault: 'depth', eye: eye(-3, 3), task: stream },
  { name: 'place to stand, advised (80)', movement: 'wall-throw', fault: 'depth', eye: eye(-2, 3), task: stand },
  {
    name: 'place to stand, poor (80)',
    movement: 'wall-throw',
    fault: 'depth',
    eye: eye(-2, 3),
    poorEye: eye(-4, 6),
    task: stand,
  },
];

export interface EyeLine {
  readonly case: EyeCase;
  readonly unit: string;
  readonly runs: number;
  readonly trials: number;
  /** Mean error of the strictness over the true precision, and its standard error. */
  readonly strictnessBias: number;
  readonly biasError: number;
  readonly strictnessCovered: number;
  /** Mean error of the precision over the true one. */
  readonly precisionBias: number;
  readonly precisionCovered: number;
  /** Runs in which it was not told. */
  readonly notTold: number;
}

/** How well a drill's scores recover the judge's eye, over `runs` drills. */
export function proveEye(one: EyeCase, runs: number, seed: number): EyeLine {
  const { movement, fault } = one;
  const truth = one.poorEye ?? one.eye;
  const place = one.poorEye === undefined ? 'advised' : 'poor';
  const unit = unitOf(movement, fault);
  const sums = { trials: 0, strictness: 0, squares: 0, precision: 0, inStrictness: 0, inPrecision: 0, notTold: 0 };
  for (let run = 0; run < runs; run += 1) {
    const drill = drillOf(movement, one.task(movement, fault), seed + run);
    const judge = {
      eyes: { [fault]: one.eye },
      ...(one.poorEye === undefined ? {} : { poorEyes: { [fault]: one.poorEye } }),
      forgets: 0.02,
    };
    const { trials } = judged(drill, playDrill(drill, judge, seededGenerator(seed + run)));
    const score = faultScore(trials, { code: fault, name: fault, unit }, place);
    sums.trials += score.trials;
    const { strictness, precision } = score;
    if (strictness === null || precision === null) {
      sums.notTold += 1;
      continue;
    }
    const error = (strictness.value - truth.strictness) / truth.precision;
    sums.strictness += error;
    sums.squares += error * error;
    sums.precision += precision.value / truth.precision - 1;
    sums.inStrictness += holds(strictness, truth.strictness);
    sums.inPrecision += holds(precision, truth.precision);
  }
  const told = runs - sums.notTold;
  return {
    case: one,
    unit,
    runs,
    trials: sums.trials / runs,
    strictnessBias: sums.strictness / told,
    biasError: Math.sqrt(sums.squares) / told,
    strictnessCovered: sums.inStrictness / told,
    precisionBias: sums.precision / told,
    precisionCovered: sums.inPrecision / told,
    notTold: sums.notTold,
  };
}

function holds({ low, high }: { low: number; high: number }, value: number): number {
  return low <= value && value <= high ? 1 : 0;
}

/** Root mean square errors: of the strictness over the true precision, and of the logarithm of the precision. */
export interface Errors {
  readonly strictness: number;
  readonly precision: number;
}

export interface EfficiencyLine {
  readonly eye: Eye;
  readonly trials: number;
  readonly runs: number;
  readonly adaptive: Errors;
  /** Constant stimuli, even over the range tried; and the nearer to the sheet's own line the closer together. */
  readonly even: Errors;
  readonly about: Errors;
}

/** How many times as many reps it takes for the same error: squared errors go with 1 / trials. */
export function timesAsMany(constant: Errors, adaptive: Errors): Errors {
  return {
    strictness: (constant.strictness / adaptive.strictness) ** 2,
    precision: (constant.precision / adaptive.precision) ** 2,
  };
}

/**
 * The adapting drill against constant stimuli: the same number of reps and the same fit. A run that can't be told counts with
 * the middle of the range.
 */
export function proveEfficiency(truth: Eye, trials: number, runs: number, seed: number): EfficiencyLine {
  const [adaptive, even, about] = [new ErrorSum(truth), new ErrorSum(truth), new ErrorSum(truth)];
  for (let run = 0; run < runs; run += 1) {
    const task = { ...line('wall-throw', 'depth'), leastTrials: trials, mostTrials: trials } as Task;
    const drill = drillOf('wall-throw', task, seed + run);
    const [shown, tried] = [shownRange(drill, 'depth'), triedRange(drill, 'depth')];
    const generator = seededGenerator(seed + run);
    const state = playDrill(drill, { eyes: { depth: truth } }, generator);
    adaptive.add(answersOf(drill, 'depth', state.trials), shown);
    const constant = (margin: (i: number) => number) =>
      Array.from({ length: trials }, (_, i): Answer => {
        return { margin: margin(i), noRep: generator.uniform() < noRepChance(truth, margin(i)) };
      });
    even.add(
      constant((i) => tried.low + ((tried.high - tried.low) * (i + 0.5)) / trials),
      shown,
    );
    about.add(
      constant((i) => aboutTheLine(tried, i, trials)),
      shown,
    );
  }
  return { eye: truth, trials, runs, adaptive: adaptive.errors(), even: even.errors(), about: about.errors() };
}

class ErrorSum {
  private readonly truth: Eye;
  private runs = 0;
  private strictness = 0;
  private precision = 0;

  constructor(truth: Eye) {
    this.truth = truth;
  }

  add(answers: readonly Answer[], range: { low: number; high: number }): void {
    const fit = fitEye(answers, range);
    const strictness = fit.ok ? fit.value.strictness.value : (range.low + range.high) / 2;
    const precision = fit.ok ? fit.value.precision.value : (range.high - range.low) / 4;
    this.runs += 1;
    this.strictness += ((strictness - this.truth.strictness) / this.truth.precision) ** 2;
    this.precision += Math.log(precision / this.truth.precision) ** 2;
  }

  errors(): Errors {
    return { strictness: Math.sqrt(this.strictness / this.runs), precision: Math.sqrt(this.precision / this.runs) };
  }
}

export const EFFICIENCY_EYES: readonly Eye[] = [eye(-3, 1.5), eye(0, 3), eye(-3, 3), eye(-4, 6)];
