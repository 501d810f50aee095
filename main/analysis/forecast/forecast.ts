import { percentileInterval } from '../bootstrap/percentile-interval.ts';
import { sampleMedian } from '../distributions/sample-quantile.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError } from '../interval.ts';
import { type RandomGenerator, seededGenerator } from '../random/generator.ts';
import { randomNegativeBinomial } from '../random/variates.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type CostDraw, costDraws } from './no-rep-costs.ts';
import { type RateModel, rateModel, type SetCount } from './no-rep-rate.ts';

/** What a forecast needs of an earlier set. */
export type EarlierSet = SetCount & {
  /** Seconds of each of its no-reps whose cost was estimable. */
  readonly costs: readonly number[];
  /** Its clean cycles, seconds: they set the pace of a goal against the clock. */
  readonly cleanCycles: readonly number[];
};

export type ForecastGoal =
  | { readonly kind: 'reps'; readonly reps: number }
  /** Metres of a jump, and metres that a no-rep takes back (0 for none). */
  | { readonly kind: 'metres'; readonly metres: number; readonly perJump: number; readonly back: number }
  | { readonly kind: 'clock'; readonly seconds: number };

export type ForecastOptions = {
  readonly level?: number;
  /** Draws of the set to come; 4,000. */
  readonly draws?: number;
  readonly seed?: number;
  /** "If the rate were r": no-reps of attempts, at least 0 and below 1. */
  readonly rate?: number;
};

/** What a set to come will cost: each figure is the mean over draws with their percentile interval. */
export type Forecast = {
  /** Athlete's mean no-rep rate, 0 to 1; without width when it was given. */
  readonly rate: EstimateWithInterval;
  /** How sets differ beyond chance (intraclass correlation); null with fewer than three sets: then the interval leaves it out. */
  readonly correlation: number | null;
  /** Counted reps that the goal takes; against the clock, those that will be made. */
  readonly counted: EstimateWithInterval;
  readonly noReps: EstimateWithInterval;
  /** Attempts beyond those that a set without no-reps would take; repeated metres are in it. Null against the clock. */
  readonly extraAttempts: EstimateWithInterval | null;
  /** Seconds that the no-reps will cost; null with fewer than three observed costs. */
  readonly seconds: EstimateWithInterval | null;
  /** Against the clock: reps that the no-reps will cost; null for other goals. */
  readonly repsLost: EstimateWithInterval | null;
  /** Chance of a set without a no-rep, 0 to 1. */
  readonly chanceOfNone: number;
};

type Draw = { counted: number; noReps: number; extra: number; seconds: number; repsLost: number };

const DEFAULT_DRAWS = 4_000;
/** Beyond this rate a set would hardly end; draws are held below it. */
const GREATEST_RATE = 0.95;
/** With metres taken back a rate can lose more than it gains and never arrive; such a draw ends at this many times the plan. */
const LONGEST_DETOUR = 20;

/**
 * Attempts and seconds that the no-reps of a set to come will cost, at the present rate or at a given one: rate from a
 * Beta posterior with sets that differ, no-reps from the negative binomial, costs resampled from those observed.
 * Errors: `no-data` without an attempt; `too-few-data` against the clock with no clean cycle or fewer than three costs;
 * `invalid-input` for goals, counts or rates that are none.
 */
export function forecast(
  sets: readonly EarlierSet[],
  goal: ForecastGoal,
  { level = DEFAULT_LEVEL, draws = DEFAULT_DRAWS, seed = 1, rate }: ForecastOptions = {},
): Computed<Forecast> {
  const error = inputError(sets, goal, rate, draws) ?? levelError(level);
  if (error) return error;
  const rates = rateModel(sets);
  const costs = costDraws(sets.map((set) => set.costs));
  const cycle = sampleMedian(sets.flatMap((set) => set.cleanCycles));
  if (goal.kind === 'clock' && (cycle === undefined || cycle <= 0 || costs === null)) {
    return failed('too-few-data', 'Reps against the clock need an earlier clean cycle and three no-reps with a cost.');
  }
  const generator = seededGenerator(seed);
  const means: number[] = [];
  const all: Draw[] = [];
  for (let i = 0; i < draws; i += 1) {
    const { mean, ofSet } = rates.draw(generator, rate);
    means.push(mean);
    const bounded = Math.min(GREATEST_RATE, ofSet);
    all.push(
      goal.kind === 'clock'
        ? drawClock(goal.seconds, cycle ?? 1, bounded, costs, generator)
        : drawTarget(goal, bounded, costs, generator),
    );
  }
  return computed(summary(all, { means, given: rate }, goal, rates, costs !== null, level));
}

function summary(
  all: readonly Draw[],
  { means, given }: { means: readonly number[]; given: number | undefined },
  goal: ForecastGoal,
  rates: RateModel,
  hasCosts: boolean,
  level: number,
): Forecast {
  const of = (read: (draw: Draw) => number) => meanAndInterval(all.map(read), level);
  const isClock = goal.kind === 'clock';
  return {
    rate: given === undefined ? meanAndInterval(means, level) : { estimate: given, lower: given, upper: given, level },
    correlation: rates.correlation,
    counted: of((draw) => draw.counted),
    noReps: of((draw) => draw.noReps),
    extraAttempts: isClock ? null : of((draw) => draw.extra),
    seconds: hasCosts ? of((draw) => draw.seconds) : null,
    repsLost: isClock ? of((draw) => draw.repsLost) : null,
    chanceOfNone: all.filter((draw) => draw.noReps === 0).length / all.length,
  };
}

/** Reps or metres: no-reps until the goal's reps have counted. Metres taken back need further jumps, which may fail too. */
function drawTarget(
  goal: Exclude<ForecastGoal, { kind: 'clock' }>,
  rate: number,
  costs: CostDraw | null,
  generator: RandomGenerator,
): Draw {
  const planned = goal.kind === 'reps' ? goal.reps : Math.ceil(goal.metres / goal.perJump);
  const back = goal.kind === 'metres' ? goal.back / goal.perJump : 0;
  let counted = planned;
  let noReps = randomNegativeBinomial(generator, planned, 1 - rate);
  // Each round makes up for the metres lost in the round before.
  while (back > 0 && counted < LONGEST_DETOUR * planned) {
    const further = Math.ceil(planned + back * noReps) - counted;
    if (further <= 0) break;
    counted += further;
    noReps += randomNegativeBinomial(generator, further, 1 - rate);
  }
  return {
    counted,
    noReps,
    extra: noReps + counted - planned,
    seconds: costs?.(noReps, generator) ?? 0,
    repsLost: 0,
  };
}

/** Against the clock: no-reps in as many attempts as the time holds, found by letting the lost time shrink the count. */
function drawClock(
  seconds: number,
  cycle: number,
  rate: number,
  costs: CostDraw | null,
  generator: RandomGenerator,
): Draw {
  const without = seconds / cycle;
  const oneCost = costs ? costs(20, generator) / 20 : cycle;
  // Reps n with n cycles and the cost of their n r / (1 - r) no-reps filling the time.
  const expected = seconds / (cycle + (rate / (1 - rate)) * oneCost);
  const noReps = expected >= 1 ? randomNegativeBinomial(generator, expected, 1 - rate) : 0;
  const lost = Math.min(seconds, costs?.(noReps, generator) ?? 0);
  return {
    counted: Math.floor((seconds - lost) / cycle),
    noReps,
    extra: 0,
    seconds: lost,
    repsLost: Math.min(without, lost / cycle),
  };
}

function meanAndInterval(values: readonly number[], level: number): EstimateWithInterval {
  const estimate = values.reduce((sum, value) => sum + value, 0) / values.length;
  const interval = percentileInterval(values, level);
  return interval.ok ? { estimate, ...interval.value } : { estimate, lower: estimate, upper: estimate, level };
}

function inputError(
  sets: readonly EarlierSet[],
  goal: ForecastGoal,
  rate: number | undefined,
  draws: number,
): Computed<never> | undefined {
  const counts = sets.every(
    ({ noReps, attempts }) =>
      Number.isSafeInteger(noReps) && Number.isSafeInteger(attempts) && 0 <= noReps && noReps <= attempts,
  );
  const values = sets.every((set) => [...set.costs, ...set.cleanCycles].every(Number.isFinite));
  if (!counts || !values) return failed('invalid-input', 'Counts must be whole and times finite.');
  if (rate !== undefined && !(rate >= 0 && rate < 1)) {
    return failed('invalid-input', `A no-rep rate lies from 0 to below 1, not at ${rate}.`);
  }
  if (!(draws >= 1)) return failed('invalid-input', 'There must be at least one draw.');
  const sizes =
    goal.kind === 'reps' ? [goal.reps] : goal.kind === 'clock' ? [goal.seconds] : [goal.metres, goal.perJump];
  const isGoal = sizes.every((size) => size > 0 && Number.isFinite(size)) && (goal.kind !== 'metres' || goal.back >= 0);
  if (!isGoal) return failed('invalid-input', 'A goal must be above zero.');
  return sets.some((set) => set.attempts > 0) ? undefined : failed('no-data', 'There is no earlier attempt.');
}
