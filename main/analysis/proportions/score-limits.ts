/**
 * Wilson's limits (1927, JASA 22:209-212) for a proportion `estimate` in a sample of the given size, which need not be a
 * whole number: samples of clusters are divided by their design effect. `deviate`: the two-sided normal deviate.
 */
export function scoreLimits(estimate: number, size: number, deviate: number): { lower: number; upper: number } {
  const square = deviate * deviate;
  const denominator = 1 + square / size;
  const centre = (estimate + square / (2 * size)) / denominator;
  const half = (deviate * Math.sqrt((estimate * (1 - estimate)) / size + square / (4 * size * size))) / denominator;
  return {
    lower: estimate === 0 ? 0 : Math.max(0, centre - half),
    upper: estimate === 1 ? 1 : Math.min(1, centre + half),
  };
}
