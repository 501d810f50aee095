import betainc from '@stdlib/math-base-special-betainc';
import betaincinv from '@stdlib/math-base-special-betaincinv';

/**
 * P(|T| > |t|) of Student's t with `degrees` > 0 degrees of freedom (Abramowitz & Stegun 1964, 26.7.1): a two-sided
 * p-value.
 */
export function studentTTwoSidedTail(t: number, degrees: number): number {
  return t === 0 ? 1 : betainc(degrees / (degrees + t * t), degrees / 2, 0.5);
}

/** t with P(T <= t) = probability, 0 < probability < 1, by the inverse of the incomplete beta function. */
export function studentTQuantile(probability: number, degrees: number): number {
  if (probability === 0.5) return 0;
  const tail = 2 * Math.min(probability, 1 - probability);
  // Near the centre x = df / (df + t^2) is close to 1 and loses digits, so its complement is inverted there.
  const complement = betaincinv(1 - tail, 0.5, degrees / 2);
  const squared =
    tail > 0.5 ? (degrees * complement) / (1 - complement) : degrees * (1 / betaincinv(tail, degrees / 2, 0.5) - 1);
  return Math.sign(probability - 0.5) * Math.sqrt(squared);
}
