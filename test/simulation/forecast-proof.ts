import { type EarlierSet, forecast } from '../../main/analysis/forecast/forecast.ts';
import { type RandomGenerator, seededGenerator } from '../../main/analysis/random/generator.ts';
import { randomBeta, randomNegativeBinomial, randomNormal } from '../../main/analysis/random/variates.ts';
import { spreadLogNormal } from '../../main/analysis/simulator/clean-cycles.ts';

/** An athlete whose sets differ by `correlation`, with some earlier sets to forecast the next one from. */
export type ForecastCase = {
  readonly name: string;
  readonly rate: number;
  readonly earlier: number;
  readonly correlation: number;
  /** Deviation between sets of the mean cost of a no-rep, seconds. */
  readonly costDeviation: number;
};

export const FORECAST_CASES: readonly ForecastCase[] = [0.02, 0.05, 0.1, 0.15].flatMap((rate) => [
  { name: '1 earlier set, sets alike', rate, earlier: 1, correlation: 0, costDeviation: 0 },
  { name: '8 earlier sets, alike', rate, earlier: 8, correlation: 0, costDeviation: 0 },
  { name: '8 earlier sets that differ', rate, earlier: 8, correlation: 0.02, costDeviation: 0.4 },
  { name: '20 earlier sets that differ', rate, earlier: 20, correlation: 0.02, costDeviation: 0.4 },
]);

const REPS = 100;

function oneSet(one: ForecastCase, generator: RandomGenerator): EarlierSet {
  const { rate, correlation } = one;
  const precision = 1 / correlation - 1;
  const own = correlation > 0 ? randomBeta(generator, rate * precision, (1 - rate) * precision) : rate;
  const noReps = randomNegativeBinomial(generator, REPS, 1 - own);
  const level = 4 + one.costDeviation * randomNormal(generator);
  const costs = Array.from(
    { length: noReps },
    () => level - 4 + spreadLogNormal({ mean: 4, deviation: 1.2 }, generator),
  );
  return { noReps, attempts: REPS + noReps, costs, cleanCycles: [] };
}

export type ForecastLine = {
  readonly case: ForecastCase;
  readonly athletes: number;
  readonly noRepsCovered: number;
  readonly secondsCovered: number;
  /** Forecasts without seconds, for want of three observed costs. */
  readonly withoutSeconds: number;
  readonly meanSeconds: number;
  readonly width: number;
};

/** How often the intervals of a forecast hold what the athlete's next set then brings. */
export function proveForecast(one: ForecastCase, athletes: number, seed: number, draws = 800): ForecastLine {
  const sums = { noReps: 0, seconds: 0, width: 0, without: 0, lost: 0 };
  for (let i = 0; i < athletes; i += 1) {
    const generator = seededGenerator(seed + i);
    const sets = Array.from({ length: one.earlier }, () => oneSet(one, generator));
    const next = oneSet(one, generator);
    const made = forecast(sets, { kind: 'reps', reps: REPS }, { draws, seed: i + 1 });
    if (!made.ok) throw new Error(made.error.message);
    const { noReps, seconds } = made.value;
    if (noReps.lower <= next.noReps && next.noReps <= noReps.upper) sums.noReps += 1;
    if (seconds === null) {
      sums.without += 1;
      continue;
    }
    const lost = next.costs.reduce((sum, cost) => sum + cost, 0);
    sums.lost += lost;
    sums.width += seconds.upper - seconds.lower;
    if (seconds.lower <= lost && lost <= seconds.upper) sums.seconds += 1;
  }
  const known = athletes - sums.without;
  return {
    case: one,
    athletes,
    noRepsCovered: sums.noReps / athletes,
    secondsCovered: known > 0 ? sums.seconds / known : 0,
    withoutSeconds: sums.without,
    meanSeconds: known > 0 ? sums.lost / known : 0,
    width: known > 0 ? sums.width / known : 0,
  };
}
