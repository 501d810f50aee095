import { logGamma } from '../distributions/gamma-functions.ts';
import { normalQuantile } from '../distributions/normal.ts';
import type { RandomGenerator } from './generator.ts';

/** Whole number in [0, below), 1 <= below <= 2^32, without modulo bias (rejection of the uneven rest). */
export function randomInteger(generator: RandomGenerator, below: number): number {
  const limit = 0x100000000 - (0x100000000 % below);
  let bits = generator.uint32();
  while (bits >= limit) bits = generator.uint32();
  return bits % below;
}

/** Standard normal variate, by inversion of the cdf. */
export function randomNormal(generator: RandomGenerator): number {
  // The half step keeps the argument off 0, where the quantile is infinite.
  return normalQuantile(generator.uniform() + 2 ** -54);
}

/** Exponential variate of mean 1. */
export function randomExponential(generator: RandomGenerator): number {
  return -Math.log1p(-generator.uniform());
}

/** Gamma variate of shape > 0 and scale 1 (Marsaglia & Tsang 2000, ACM Transactions on Mathematical Software 26:363-372). */
export function randomGamma(generator: RandomGenerator, shape: number): number {
  if (shape < 1) return randomGamma(generator, shape + 1) * (1 - generator.uniform()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = randomNormal(generator);
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    const u = 1 - generator.uniform();
    if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Beta(a, b) variate, a > 0, b > 0, as a ratio of gamma variates. */
export function randomBeta(generator: RandomGenerator, a: number, b: number): number {
  const x = randomGamma(generator, a);
  const y = randomGamma(generator, b);
  // Both can underflow for tiny a and b; the variable then sits at one end with chance a / (a + b).
  if (x + y === 0) return generator.uniform() < a / (a + b) ? 1 : 0;
  return x / (x + y);
}

/** Poisson variate: by products below mean 10, else PTRS (Hoermann 1993, Insurance: Mathematics and Economics 12:39-45). */
export function randomPoisson(generator: RandomGenerator, mean: number): number {
  if (mean < 10) {
    const limit = Math.exp(-mean);
    let count = 0;
    for (let product = generator.uniform(); product > limit; product *= generator.uniform()) count += 1;
    return count;
  }
  const b = 0.931 + 2.53 * Math.sqrt(mean);
  const a = -0.059 + 0.02483 * b;
  const inverseAlpha = 1.1239 + 1.1328 / (b - 3.4);
  const accepted = 0.9277 - 3.6224 / (b - 2);
  for (;;) {
    const u = generator.uniform() - 0.5;
    const v = 1 - generator.uniform();
    const us = 0.5 - Math.abs(u);
    const k = Math.floor(((2 * a) / us + b) * u + mean + 0.43);
    if (us >= 0.07 && v <= accepted) return k;
    if (k < 0 || (us < 0.013 && v > us)) continue;
    const logRatio = Math.log((v * inverseAlpha) / (a / (us * us) + b));
    if (logRatio <= -mean + k * Math.log(mean) - logGamma(k + 1)) return k;
  }
}

/** Failures before the `successes`-th success of chance `probability`, as a gamma mixture of Poisson variates. */
export function randomNegativeBinomial(generator: RandomGenerator, successes: number, probability: number): number {
  if (probability >= 1) return 0;
  return randomPoisson(generator, (randomGamma(generator, successes) * (1 - probability)) / probability);
}
