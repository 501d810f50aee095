import type { RandomGenerator } from '../random/generator.ts';
import { randomNormal } from '../random/variates.ts';
import type { PaceModel, Spread } from './models.ts';

/** Reps after which a fast start has faded to 37 %. */
const FAST_START_REPS = 12;

/** A clean cycle at some attempt: `pace` without noise, `seconds` with it. */
export type CycleAt = { readonly pace: number; readonly seconds: number };

/**
 * The stream of what a clean rep would take at attempt 1, 2, …: each call gives the next one.
 *
 * @param fatigue how far the fade has gone, 0 to 1
 */
export function cleanCycleStream(model: PaceModel, generator: RandomGenerator): (fatigue: number) => CycleAt {
  const { autocorrelation: rho } = model;
  const phase = generator.uniform() * 2 * Math.PI;
  let attempt = 0;
  let noise = randomNormal(generator);
  return (fatigue) => {
    if (attempt > 0) noise = rho * noise + Math.sqrt(1 - rho * rho) * randomNormal(generator);
    const rhythm = model.rhythm.share * Math.sin(phase + (2 * Math.PI * attempt) / model.rhythm.period);
    const fast = model.fastStart * Math.exp(-attempt / FAST_START_REPS);
    attempt += 1;
    const pace = model.cycle * (1 + model.fade * fatigue - fast);
    // A cycle cannot fall below a third of the pace, however wild the noise.
    return { pace, seconds: Math.max(pace / 3, pace + model.cycle * (rhythm + model.noise * noise)) };
  };
}

/** Normal variate, not below zero. */
export function spreadNormal(spread: Spread, generator: RandomGenerator): number {
  return Math.max(0, spread.mean + spread.deviation * randomNormal(generator));
}

/** Log-normal variate of the given mean and standard deviation; zero for mean zero. */
export function spreadLogNormal({ mean, deviation }: Spread, generator: RandomGenerator): number {
  if (mean <= 0) return 0;
  const variance = Math.log1p((deviation / mean) ** 2);
  return Math.exp(Math.log(mean) - variance / 2 + Math.sqrt(variance) * randomNormal(generator));
}
