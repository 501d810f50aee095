import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { binomialRegression } from '../../main/analysis/regression/binomial-regression.ts';
import { publishedEntries } from './published-entry.ts';
import { compareWithR, rComparisons } from './r-comparison.ts';
import { type RSession, startR } from './r-session.ts';
import { valueFrom } from './test-sums.ts';

let r: RSession;
beforeAll(async () => {
  r = await startR();
});
afterAll(() => r.close());

describe('random inputs, next to R', () => {
  for (const comparison of rComparisons) {
    test(`${comparison.method} against ${comparison.reference}`, async () => {
      const { largest, worst, figures } = await compareWithR(r, comparison);
      expect(figures).toBeGreaterThanOrEqual(comparison.cases);
      expect(largest, worst).toBeLessThanOrEqual(comparison.allowed);
    });
  }

  test('oesophageal cancer (Breslow & Day 1980): the fit printed in the R distribution, data from R itself', async () => {
    const entry = publishedEntries.find(({ id }) => id === '9-esoph');
    const published = entry?.published as Record<string, string>;
    const column = (expression: string) => r.numbers(`with(esoph,${expression})`);
    const cases = await column('ncases');
    const controls = await column('ncontrols');
    const contrasts = await r.numbers('contr.poly(6)');
    const age = await column('unclass(agegp)');
    const polynomial = [0, 1, 2, 3, 4].map((power) =>
      age.map((group) => contrasts[power * 6 + group - 1] ?? Number.NaN),
    );
    const predictors = [...polynomial, await column('unclass(tobgp)'), await column('unclass(alcgp)')];
    const trials = cases.map((count, i) => count + (controls[i] ?? 0));
    const fit = valueFrom(binomialRegression({ successes: cases, trials, predictors }));
    const error = (i: number) => Math.sqrt(fit.covariance[i]?.[i] ?? Number.NaN);
    const ours = [fit.coefficients[6], fit.coefficients[7], error(6), error(7), fit.deviance, fit.nullDeviance];
    const digits = [5, 5, 5, 5, 3, 3];
    const printed = ['tob', 'alc', 'stob', 'salc', 'dev', 'null'].map((key) => published[key]);
    expect(ours.map((value, i) => value?.toFixed(digits[i]))).toEqual(printed);
  });
});
