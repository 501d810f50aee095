import { DEFAULT_LEVEL, type EstimateWithInterval, twoSidedDeviate } from '../interval.ts';
import { bisect } from '../numeric/bisect.ts';
import { type Computed, computed } from '../result.ts';
import { differenceError, type Proportion } from './difference.ts';

export type ScoreDifferenceOptions = {
  readonly level?: number;
  /** `true` (Miettinen & Nurminen): the variance times N / (N - 1); `false` (Mee): without. */
  readonly varianceCorrection?: boolean;
};

/**
 * Score interval for the difference `first - second` of two independent proportions: all differences that a score test
 * with the variance at the constrained maximum-likelihood rates does not reject (Mee 1984, Biometrics 40:1175-1176;
 * Miettinen & Nurminen 1985, Statistics in Medicine 4:213-226, whose closed form of the cubic is used).
 * Errors: `no-data` when a total is 0, `invalid-input`.
 */
export function scoreDifference(
  first: Proportion,
  second: Proportion,
  { level = DEFAULT_LEVEL, varianceCorrection = true }: ScoreDifferenceOptions = {},
): Computed<EstimateWithInterval> {
  const error = differenceError(first, second, level);
  if (error) return error;
  const z = twoSidedDeviate(level);
  const estimate = first.count / first.total - second.count / second.total;
  const all = first.total + second.total;
  const factor = varianceCorrection ? all / (all - 1) : 1;
  // Positive inside the interval: z^2 times the variance less the squared distance, so that no division by 0 is met.
  const inside = (difference: number) => {
    const [p1, p2] = constrainedRates(first, second, difference);
    const variance = factor * ((p1 * (1 - p1)) / first.total + (p2 * (1 - p2)) / second.total);
    return z * z * variance - (estimate - difference) ** 2;
  };
  // Where even the extreme difference is not rejected, the interval ends there.
  const limit = (extreme: number) =>
    estimate === extreme || inside(extreme) > 0 ? extreme : bisect(inside, extreme, estimate);
  return computed({ estimate, lower: limit(-1), upper: limit(1), level });
}

/** Maximum-likelihood rates of the two groups when their difference is held at `difference`. */
function constrainedRates(first: Proportion, second: Proportion, difference: number): [number, number] {
  const { count: x1, total: n1 } = first;
  const { count: x2, total: n2 } = second;
  const all = n1 + n2;
  // Cubic in p2: (all) p2^3 + b p2^2 + c p2 + d = 0, Miettinen & Nurminen 1985, appendix.
  const b = (n1 + 2 * n2) * difference - all - x1 - x2;
  const c = (n2 * difference - all - 2 * x2) * difference + x1 + x2;
  const d = x2 * difference * (1 - difference);
  const third = b / (3 * all);
  const v = third ** 3 - (b * c) / (6 * all * all) + d / (2 * all);
  const u = (v < 0 ? -1 : 1) * Math.sqrt(Math.max(0, third * third - c / (3 * all)));
  const cosine = u === 0 ? 0 : Math.min(1, Math.max(-1, v / u ** 3));
  const p2 = 2 * u * Math.cos((Math.PI + Math.acos(cosine)) / 3) - third;
  const lowest = Math.max(0, -difference);
  const highest = Math.min(1, 1 - difference);
  const rate = Math.min(highest, Math.max(lowest, p2));
  return [rate + difference, rate];
}
