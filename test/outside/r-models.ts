import { psychometricFunction } from '../../main/analysis/detection/psychometric-function.ts';
import { betaCdf, betaQuantile } from '../../main/analysis/distributions/beta.ts';
import { betaBinomialProbability } from '../../main/analysis/distributions/beta-binomial.ts';
import { betaNegativeBinomialProbability } from '../../main/analysis/distributions/beta-negative-binomial.ts';
import { binomialCdf, binomialProbability, binomialUpperTail } from '../../main/analysis/distributions/binomial.ts';
import { chiSquareQuantile, chiSquareUpperTail } from '../../main/analysis/distributions/chi-square.ts';
import {
  negativeBinomialCdf,
  negativeBinomialProbability,
  negativeBinomialQuantile,
} from '../../main/analysis/distributions/negative-binomial.ts';
import { normalCdf, normalQuantile } from '../../main/analysis/distributions/normal.ts';
import { sampleQuantile } from '../../main/analysis/distributions/sample-quantile.ts';
import { studentTQuantile, studentTTwoSidedTail } from '../../main/analysis/distributions/student-t.ts';
import { powerTwoProportions, sampleSizeTwoProportions } from '../../main/analysis/power/two-proportions.ts';
import { type BinomialFit, binomialRegression } from '../../main/analysis/regression/binomial-regression.ts';
import { firthInterval, firthLogistic } from '../../main/analysis/regression/firth.ts';
import { cloglog, type Link, logit, probit } from '../../main/analysis/regression/links.ts';
import { logisticRegression } from '../../main/analysis/regression/logistic-regression.ts';
import { theilSen } from '../../main/analysis/regression/theil-sen.ts';
import { waldTest } from '../../main/analysis/regression/wald.ts';
import { lowess } from '../../main/analysis/smoothing/lowess.ts';
import { mannKendall } from '../../main/analysis/tests/mann-kendall.ts';
import type { RComparison } from './r-comparison.ts';
import { type Draw, vector } from './random-cases.ts';
import { valueFrom } from './test-sums.ts';

const errors = ({ covariance }: BinomialFit) => covariance.map((row, i) => Math.sqrt(row[i] ?? Number.NaN));

const grouped = (draw: Draw) => {
  const x = draw.list(draw.whole(6, 15), () => draw.between(-2, 3));
  const z = x.map(() => draw.normal());
  const trials = x.map(() => draw.whole(5, 60));
  const chance = x.map((at, i) => 1 / (1 + Math.exp(1 - 0.6 * at - 0.3 * (z[i] ?? 0))));
  const successes = trials.map(
    (n, i) => draw.list(n, () => draw.between(0, 1) < (chance[i] ?? 0)).filter(Boolean).length,
  );
  return { x, z, trials, successes };
};

const glm = (link: Link): RComparison => ({
  method: `binomial regression, ${link.name}`,
  reference: 'glm',
  cases: 8,
  allowed: 1e-8,
  next: (draw) => {
    const { x, z, trials, successes } = grouped(draw);
    const fit = valueFrom(binomialRegression({ successes, trials, predictors: [x, z] }, { link }));
    const data = `y<-${vector(successes)};n<-${vector(trials)};x<-${vector(x)};z<-${vector(z)}`;
    return {
      r: `{${data};f<-settled_glm(cbind(y,n-y)~x+z,'${link.name}');s<-summary(f);c(coef(f),s$cov.unscaled[c(1,5,9)]^.5,deviance(f),f$null.deviance,s$dispersion)}`,
      ours: [...fit.coefficients, ...errors(fit), fit.deviance, fit.nullDeviance, fit.dispersion],
    };
  },
});

const distribution = (method: string, reference: string, next: (draw: Draw) => { r: string; ours: number[] }) => ({
  method,
  reference,
  cases: 60,
  allowed: 1e-9,
  next,
});

/** Methods on measurements, models and distributions, next to R's own. */
export const onModels: readonly RComparison[] = [
  distribution('normal distribution', 'pnorm, qnorm', (draw) => {
    const [z, p] = [draw.between(-9, 5), draw.between(0, 1) ** 4];
    return { r: `c(pnorm(${z}),qnorm(${p}))`, ours: [normalCdf(z), normalQuantile(p)] };
  }),
  distribution("Student's t", 'pt, qt', (draw) => {
    const [t, p, df] = [draw.between(-6, 6), draw.between(0.001, 0.999), draw.whole(1, 60)];
    return {
      r: `c(2*pt(-abs(${t}),${df}),qt(${p},${df}))`,
      ours: [studentTTwoSidedTail(t, df), studentTQuantile(p, df)],
    };
  }),
  distribution('chi-square', 'pchisq, qchisq', (draw) => {
    const [x, p, df] = [draw.between(0, 120), draw.between(0.001, 0.999), draw.whole(1, 30)];
    return {
      r: `c(pchisq(${x},${df},lower.tail=FALSE),qchisq(${p},${df}))`,
      ours: [chiSquareUpperTail(x, df), chiSquareQuantile(p, df)],
    };
  }),
  distribution('beta', 'pbeta, qbeta', (draw) => {
    const [a, b, p] = [draw.between(0.5, 400), draw.between(0.5, 4000), draw.between(0.001, 0.999)];
    const x = (a / (a + b)) * draw.between(0.8, 1.2);
    return { r: `c(pbeta(${x},${a},${b}),qbeta(${p},${a},${b}))`, ours: [betaCdf(x, a, b), betaQuantile(p, a, b)] };
  }),
  distribution('binomial', 'dbinom, pbinom', (draw) => {
    const n = draw.whole(1, 2000);
    const p = draw.between(0.01, 0.99);
    const k = Math.min(n, Math.max(0, Math.round(n * p + 3 * draw.normal() * Math.sqrt(n * p * (1 - p)))));
    return {
      r: `c(dbinom(${k},${n},${p}),pbinom(${k},${n},${p}),pbinom(${k - 1},${n},${p},lower.tail=FALSE))`,
      ours: [binomialProbability(k, n, p), binomialCdf(k, n, p), binomialUpperTail(k, n, p)],
    };
  }),
  distribution('negative binomial', 'dnbinom, pnbinom, qnbinom', (draw) => {
    const [size, p, level] = [draw.whole(1, 300), draw.between(0.5, 0.99), draw.between(0.01, 0.99)];
    const k = Math.round(((size * (1 - p)) / p) * draw.between(0.5, 1.5));
    return {
      r: `c(dnbinom(${k},${size},${p}),pnbinom(${k},${size},${p}),qnbinom(${level},${size},${p}))`,
      ours: [
        negativeBinomialProbability(k, size, p),
        negativeBinomialCdf(k, size, p),
        negativeBinomialQuantile(level, size, p),
      ],
    };
  }),
  {
    method: 'beta-binomial, beta negative binomial',
    reference: 'integrate over dbeta',
    cases: 20,
    allowed: 1e-6,
    next: (draw) => {
      const [a, b, n] = [draw.between(2, 60), draw.between(2, 20), draw.whole(5, 60)];
      const k = draw.whole(0, 5);
      const over = (density: string) => `integrate(function(p)${density}*dbeta(p,${a},${b}),0,1,rel.tol=1e-10)$value`;
      return {
        r: `c(${over(`dbinom(${k},${n},p)`)},${over(`dnbinom(${k},${n},p)`)})`,
        ours: [betaBinomialProbability(k, n, a, b), betaNegativeBinomialProbability(k, n, a, b)],
      };
    },
  },
  {
    method: 'sample quantile, type 7',
    reference: 'quantile',
    cases: 30,
    allowed: 1e-12,
    next: (draw) => {
      const values = draw.list(draw.whole(1, 40), () => draw.normal());
      const p = draw.between(0, 1);
      return { r: `quantile(${vector(values)},${p})`, ours: [sampleQuantile(values, p) ?? Number.NaN] };
    },
  },
  {
    method: 'LOWESS',
    reference: 'lowess',
    cases: 30,
    allowed: 1e-8,
    next: (draw) => {
      const n = draw.whole(5, 80);
      const x = draw.list(n, () => Math.round(draw.between(0, 60))).sort((a, b) => a - b);
      const y = x.map((at) => Math.sin(at / 9) + draw.normal() * (draw.between(0, 1) < 0.1 ? 4 : 0.3));
      const [span, iterations, delta] = [draw.between(0.2, 1), draw.whole(0, 4), draw.whole(0, 4)];
      return {
        r: `lowess(${vector(x)},${vector(y)},f=${span},iter=${iterations},delta=${delta})$y`,
        ours: Array.from(valueFrom(lowess(x, y, { span, iterations, delta }))),
      };
    },
  },
  glm(logit),
  glm(probit),
  glm(cloglog),
  {
    method: 'quasi-binomial t-test',
    reference: 'summary.glm',
    cases: 8,
    allowed: 1e-7,
    next: (draw) => {
      const { x, trials, successes } = grouped(draw);
      const fit = valueFrom(binomialRegression({ successes, trials, predictors: [x] }));
      const { dispersion, degrees } = fit;
      const slope = valueFrom(waldTest(fit, [0, 1], { dispersion, degrees }));
      const data = `y<-${vector(successes)};n<-${vector(trials)};x<-${vector(x)}`;
      return {
        r: `{${data};summary(settled_glm(cbind(y,n-y)~x))$coefficients[2,]}`,
        ours: [slope.estimate, slope.standardError, slope.statistic, slope.pValue],
      };
    },
  },
  {
    method: 'cluster-robust covariance (Liang-Zeger)',
    reference: 'glm and matrix algebra',
    cases: 10,
    allowed: 1e-8,
    next: (draw) => {
      const n = 120;
      const clusters = draw.list(n, (i) => Math.floor(i / 8));
      const shift = draw.list(15, () => draw.normal());
      const x = draw.list(n, (i) => (i % 8) / 8);
      const y = x.map((at, i) =>
        Number(draw.between(0, 1) < 1 / (1 + Math.exp(1 - at - (shift[clusters[i] ?? 0] ?? 0)))),
      );
      const { fit, covariance } = valueFrom(logisticRegression({ successes: y, predictors: [x] }, clusters));
      return {
        r: `cluster_logit(${vector(y)},${vector(x)},${vector(clusters)})`,
        ours: [...fit.coefficients, ...covariance.map((row, i) => Math.sqrt(row[i] ?? Number.NaN))],
      };
    },
  },
  {
    method: "Firth's penalised likelihood, separated data",
    reference: 'optim and Newton steps',
    cases: 6,
    allowed: 1e-6,
    next: (draw) => {
      const trials = draw.list(draw.whole(6, 12), () => draw.whole(1, 4));
      const x = trials.map((_, i) => i + draw.between(0, 0.8));
      const border = draw.whole(2, trials.length - 2);
      const successes = trials.map((n, i) => (i < border ? 0 : n));
      const data = { successes, trials, predictors: [x] };
      const { lower, upper } = valueFrom(firthInterval(data, 0));
      const given = [successes, trials, x].map(vector).join(',');
      return {
        r: `c(firth_logit(${given})[1:2],firth_profile_limits(${given}))`,
        ours: [...valueFrom(firthLogistic(data)).coefficients, lower, upper],
      };
    },
  },
  {
    method: 'psychometric function, normal shape',
    reference: 'glm(probit)',
    cases: 6,
    allowed: 1e-7,
    next: (draw) => {
      const { x, trials, successes } = grouped(draw);
      const fit = valueFrom(psychometricFunction({ margins: x, successes, trials }));
      const found = fit.kind === 'curve' ? [fit.centre, fit.slope.estimate] : [];
      const data = `y<-${vector(successes)};n<-${vector(trials)};x<-${vector(x)}`;
      return {
        r: `{${data};b<-coef(settled_glm(cbind(y,n-y)~x,'probit'));c(-b[1]/b[2],b[2])}`,
        ours: found,
      };
    },
  },
  {
    method: 'Mann-Kendall',
    reference: "cor.test(method = 'kendall')",
    cases: 30,
    allowed: 1e-9,
    next: (draw) => {
      const values = draw.list(draw.whole(4, 30), (i) => draw.normal() + 0.05 * i);
      const { pValue, tau } = valueFrom(mannKendall(values));
      return {
        r: `{t<-cor.test(seq_len(${values.length}),${vector(values)},method='kendall',exact=TRUE);c(t$p.value,t$estimate)}`,
        ours: [pValue, tau],
      };
    },
  },
  {
    method: 'Mann-Kendall with ties',
    reference: 'formula; cor.test for tau',
    cases: 30,
    allowed: 1e-9,
    next: (draw) => {
      const values = draw.list(draw.whole(6, 40), () => draw.whole(0, 5));
      if (new Set(values).size < 2) values[0] = 9;
      const { s, z, tau } = valueFrom(mannKendall(values));
      const list = vector(values);
      return { r: `c(mk(${list})[c('S','z')],cor(seq_along(${list}),${list},method='kendall'))`, ours: [s, z, tau] };
    },
  },
  {
    method: 'Theil-Sen slope',
    reference: 'formula',
    cases: 20,
    allowed: 1e-10,
    next: (draw) => {
      const x = draw.list(draw.whole(4, 25), () => draw.between(0, 50));
      const y = x.map((at) => 0.3 * at + draw.normal());
      const { slope, intercept } = valueFrom(theilSen(x, y));
      return {
        r: `{t<-theilsen(${vector(x)},${vector(y)});c(t$slope,t$int_resid)}`,
        ours: [slope.estimate, intercept],
      };
    },
  },
  {
    method: 'power and sample size of two proportions',
    reference: 'power.prop.test(tol = 1e-14)',
    cases: 20,
    allowed: 1e-7,
    next: (draw) => {
      const [first, n] = [draw.between(0.05, 0.45), draw.whole(10, 400)];
      const second = first + draw.between(0.05, 0.4);
      return {
        r: `c(power.prop.test(n=${n},p1=${first},p2=${second})$power,power.prop.test(p1=${first},p2=${second},power=.8,tol=1e-14)$n)`,
        ours: [valueFrom(powerTwoProportions(n, first, second)), valueFrom(sampleSizeTwoProportions(first, second))],
      };
    },
  },
];
