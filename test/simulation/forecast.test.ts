import { describe, expect, it } from 'vitest';
import { FORECAST_CASES, proveForecast } from './forecast-proof.ts';

// A short form of `npm run simulate`: four standard errors of 95 % over 150 athletes are 7.1 points. Counts of few
// no-reps are held by more than 95 %, so that only the lower side is a promise there.
const ATHLETES = 150;
const SLACK = 4 * Math.sqrt((0.95 * 0.05) / ATHLETES);

describe('forecast against the next set', { timeout: 60_000 }, () => {
  for (const one of FORECAST_CASES.filter((item) => item.rate === 0.05)) {
    it(`covers: ${one.name}, ${100 * one.rate} % no-reps`, () => {
      const line = proveForecast(one, ATHLETES, 40_000, 300);
      expect(line.noRepsCovered).toBeGreaterThan(0.95 - SLACK);
      expect(line.secondsCovered).toBeGreaterThan(0.95 - SLACK);
      // Useful besides: by far narrower than "anything from none to four times as much".
      expect(line.width).toBeLessThan(4 * line.meanSeconds);
    });
  }
});
