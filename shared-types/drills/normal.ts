/**
 * P(Z <= z) of the standard normal distribution: Taylor series about 0 (Marsaglia 2004, Journal of Statistical Software
 * 11(4)), absolute error below 1e-14. Beyond 7 standard deviations 0 or 1.
 */
export function normalCdf(z: number): number {
  if (z > 7) return 1;
  if (z < -7) return 0;
  let sum = z;
  let term = z;
  for (let i = 3; ; i += 2) {
    term *= (z * z) / i;
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return 0.5 + sum * Math.exp(-0.5 * z * z - 0.9189385332046728);
}
