import type { RandomGenerator } from '../random/generator.ts';
import { randomBeta, randomGamma } from '../random/variates.ts';

/** No-reps of the attempts of one set. */
export type SetCount = { readonly noReps: number; readonly attempts: number };

/** Sets differ at most by this intraclass correlation; a draw beyond it would be noise of too few sets. */
const GREATEST_CORRELATION = 0.3;
/** Fewer sets than this say nothing of how sets differ. */
const FEWEST_SETS_FOR_SPREAD = 3;

/** Draws of the no-rep rate of a set to come, 0 to 1, and of the athlete's mean rate behind it. */
export type RateDraw = { readonly mean: number; readonly ofSet: number };

export type RateModel = {
  readonly noReps: number;
  readonly attempts: number;
  /** Intraclass correlation between the attempts of a set, 0 to 1, by moments; null with fewer than three sets. */
  readonly correlation: number | null;
  /** `mean` fixes the athlete's rate: "if the rate were r". */
  readonly draw: (generator: RandomGenerator, mean?: number) => RateDraw;
};

/**
 * The no-rep rate of sets to come from earlier ones: a Beta(1/2, 1/2) prior (Jeffreys) on the mean rate; sets vary about it
 * beta-binomially. The over-dispersion is Pearson's chi-square over its degrees of freedom (McCullagh & Nelder 1989,
 * 4.5), the counts are divided by it, and each draw takes it anew as X^2 / chi-square, since few sets tell little of it.
 *
 * @param sets with at least one attempt in all
 */
export function rateModel(sets: readonly SetCount[]): RateModel {
  const used = sets.filter((set) => set.attempts > 0);
  const attempts = used.reduce((sum, set) => sum + set.attempts, 0);
  const noReps = used.reduce((sum, set) => sum + set.noReps, 0);
  const pooled = noReps / attempts;
  const size = attempts / used.length;
  const known = used.length >= FEWEST_SETS_FOR_SPREAD && noReps > 0 && noReps < attempts && size > 1;
  const chiSquare = known
    ? used.reduce(
        (sum, set) => sum + (set.noReps - set.attempts * pooled) ** 2 / (set.attempts * pooled * (1 - pooled)),
        0,
      )
    : 0;
  const degrees = used.length - 1;
  const correlationOf = (dispersion: number) =>
    Math.min(GREATEST_CORRELATION, Math.max(0, (dispersion - 1) / (size - 1)));
  return {
    noReps,
    attempts,
    correlation: known ? correlationOf(chiSquare / degrees) : null,
    draw: (generator, fixed) => {
      const correlation = known ? correlationOf(chiSquare / (2 * randomGamma(generator, degrees / 2))) : 0;
      const dispersion = 1 + correlation * (size - 1);
      const a = noReps / dispersion + 0.5;
      const b = (attempts - noReps) / dispersion + 0.5;
      const mean = fixed ?? randomBeta(generator, a, b);
      if (correlation === 0 || mean <= 0 || mean >= 1) return { mean, ofSet: mean };
      const precision = 1 / correlation - 1;
      return { mean, ofSet: randomBeta(generator, mean * precision, (1 - mean) * precision) };
    },
  };
}
