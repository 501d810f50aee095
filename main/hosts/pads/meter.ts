/**
 * Counts messages against a burst that refills steadily (a token bucket); answers whether one more may come.
 * @param burst how many may come at once
 * @param perSecond how many more each second
 */
export function messageMeter(burst: number, perSecond: number): (nowMs: number) => boolean {
  let left = burst;
  let last: number | null = null;
  return (nowMs) => {
    left = Math.min(burst, left + ((nowMs - (last ?? nowMs)) / 1_000) * perSecond);
    last = nowMs;
    left -= 1;
    return left >= 0;
  };
}
