import type { RandomGenerator } from '../random/generator.ts';
import { randomInteger } from '../random/variates.ts';

/**
 * Moving-block bootstrap (Kuensch 1989, Annals of Statistics 17:1217-1241): positions of one resample of a series of
 * `length` values, made of blocks of `blockLength` neighbours (clamped to 1..length) that start anywhere they fit;
 * the last block is cut off. Block length 1 is the ordinary bootstrap (Efron 1979). An empty series gives none.
 */
export function movingBlockIndices(length: number, blockLength: number, generator: RandomGenerator): Int32Array {
  const indices = new Int32Array(length);
  if (length === 0) return indices;
  const block = Math.min(Math.max(1, Math.floor(blockLength)), length);
  for (let filled = 0; filled < length; filled += block) {
    const start = randomInteger(generator, length - block + 1);
    for (let offset = 0; offset < block && filled + offset < length; offset += 1) {
      indices[filled + offset] = start + offset;
    }
  }
  return indices;
}

/**
 * One resample of a fitted series: the fit plus centred residuals drawn in moving blocks, so that noise which hangs
 * together over a few neighbours stays so (Davison & Hinkley 1997, Bootstrap Methods and their Application, ch. 8).
 *
 * @param fitted fit at each position
 * @param residuals observed minus fitted, same length
 */
export function residualBlockResample(
  fitted: ArrayLike<number>,
  residuals: ArrayLike<number>,
  blockLength: number,
  generator: RandomGenerator,
): Float64Array {
  const length = fitted.length;
  let mean = 0;
  for (let i = 0; i < length; i += 1) mean += (residuals[i] ?? 0) / length;
  const drawn = movingBlockIndices(length, blockLength, generator);
  const resample = new Float64Array(length);
  for (let i = 0; i < length; i += 1) {
    resample[i] = (fitted[i] ?? 0) + (residuals[drawn[i] ?? 0] ?? 0) - mean;
  }
  return resample;
}

/** Usual block length for a series of n values, n^(1/3) rounded up (order of Hall, Horowitz & Jing 1995, Biometrika 82:561-574). */
export function usualBlockLength(length: number): number {
  return Math.max(1, Math.ceil(Math.cbrt(length)));
}
