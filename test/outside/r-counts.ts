import { cohenKappa } from '../../main/analysis/agreement/cohen-kappa.ts';
import { fleissKappa } from '../../main/analysis/agreement/fleiss-kappa.ts';
import { gwetAC1 } from '../../main/analysis/agreement/gwet-ac1.ts';
import { krippendorffAlpha } from '../../main/analysis/agreement/krippendorff-alpha.ts';
import { laneyChart } from '../../main/analysis/charts/p-chart.ts';
import { signalDetection } from '../../main/analysis/detection/signal-detection.ts';
import type { EstimateWithInterval } from '../../main/analysis/interval.ts';
import { agrestiCaffoDifference } from '../../main/analysis/proportions/agresti-caffo.ts';
import { clopperPearsonInterval } from '../../main/analysis/proportions/clopper-pearson.ts';
import { jeffreysInterval } from '../../main/analysis/proportions/jeffreys.ts';
import { midPInterval } from '../../main/analysis/proportions/mid-p.ts';
import { newcombeDifference } from '../../main/analysis/proportions/newcombe.ts';
import { pairedDifference } from '../../main/analysis/proportions/paired-difference.ts';
import { scoreDifference } from '../../main/analysis/proportions/score-difference.ts';
import { wilsonContinuityInterval, wilsonInterval } from '../../main/analysis/proportions/wilson.ts';
import type { Computed } from '../../main/analysis/result.ts';
import { binomialTest } from '../../main/analysis/tests/binomial-test.ts';
import { chiSquareTest } from '../../main/analysis/tests/chi-square.ts';
import { cochranArmitage } from '../../main/analysis/tests/cochran-armitage.ts';
import { fisherExact } from '../../main/analysis/tests/fisher-exact.ts';
import { mcNemar } from '../../main/analysis/tests/mcnemar.ts';
import type { RComparison } from './r-comparison.ts';
import { type Draw, matrix, vector } from './random-cases.ts';
import { valueFrom } from './test-sums.ts';

const limits = (interval: Computed<EstimateWithInterval>) => {
  const { lower, upper } = valueFrom(interval);
  return [lower, upper];
};

const proportion = (draw: Draw) => {
  const n = draw.whole(1, 400);
  return { x: draw.whole(0, n), n };
};

const pair = (draw: Draw) => {
  const [first, second] = [proportion(draw), proportion(draw)];
  return {
    inR: [first.x, first.n, second.x, second.n].join(','),
    first: { count: first.x, total: first.n },
    second: { count: second.x, total: second.n },
  };
};

const table = (draw: Draw, rows: number, columns: number, most: number) =>
  draw.list(rows, () => draw.list(columns, () => draw.whole(1, most)));

const interval = (ours: typeof wilsonInterval, r: (x: number, n: number) => string) => (draw: Draw) => {
  const { x, n } = proportion(draw);
  return { r: r(x, n), ours: limits(ours(x, n)) };
};

/** Methods on counts: next to R's own tests, and to the plain formulas of helpers.R where R has none. */
export const onCounts: readonly RComparison[] = [
  {
    method: 'Wilson interval',
    reference: 'prop.test(correct = FALSE)',
    cases: 60,
    allowed: 1e-10,
    next: interval(wilsonInterval, (x, n) => `prop.test(${x},${n},correct=FALSE)$conf.int`),
  },
  {
    method: 'Wilson interval, continuity correction',
    reference: 'formula',
    cases: 60,
    allowed: 1e-10,
    next: interval(wilsonContinuityInterval, (x, n) => `wilson_cc(${x},${n})`),
  },
  {
    method: 'exact interval (Clopper-Pearson)',
    reference: 'binom.test',
    cases: 60,
    allowed: 1e-10,
    next: interval(clopperPearsonInterval, (x, n) => `binom.test(${x},${n})$conf.int`),
  },
  {
    method: 'Jeffreys interval',
    reference: 'qbeta',
    cases: 60,
    allowed: 1e-10,
    next: interval(jeffreysInterval, (x, n) => `jeffreys(${x},${n})`),
  },
  {
    method: 'mid-p interval',
    reference: 'uniroot on pbinom',
    cases: 40,
    allowed: 1e-8,
    next: interval(midPInterval, (x, n) => `midp(${x},${n})`),
  },
  {
    method: 'exact binomial test',
    reference: 'binom.test',
    cases: 60,
    allowed: 1e-9,
    next: (draw) => {
      const { x, n } = proportion(draw);
      const rate = Math.min(0.99, Math.max(0.01, x / n + draw.between(-0.1, 0.1)));
      return { r: `binom.test(${x},${n},${rate})$p.value`, ours: [valueFrom(binomialTest(x, n, rate))] };
    },
  },
  {
    method: 'difference, Newcombe 10',
    reference: 'formula',
    cases: 60,
    allowed: 1e-10,
    next: (draw) => {
      const { inR, first, second } = pair(draw);
      return { r: `newcombe(${inR})[2:3]`, ours: limits(newcombeDifference(first, second)) };
    },
  },
  {
    method: 'difference, Agresti-Caffo',
    reference: 'formula',
    cases: 30,
    allowed: 1e-10,
    next: (draw) => {
      const n = draw.whole(50, 200);
      const [a, b] = [draw.whole(20, n - 20), draw.whole(20, n - 20)];
      const ours = agrestiCaffoDifference({ count: a, total: n }, { count: b, total: n });
      return { r: `agresti_caffo(${a},${n},${b},${n})`, ours: limits(ours) };
    },
  },
  {
    method: 'difference, Miettinen-Nurminen and Mee',
    reference: 'optimize and uniroot',
    cases: 30,
    // R's optimize stops at about the root of the rounding error.
    allowed: 2e-6,
    next: (draw) => {
      const { inR, first, second } = pair(draw);
      const mee = scoreDifference(first, second, { varianceCorrection: false });
      return {
        r: `c(mn_ci(${inR})[2:3],mn_ci(${inR},mn=FALSE)[2:3])`,
        ours: [...limits(scoreDifference(first, second)), ...limits(mee)],
      };
    },
  },
  {
    method: 'paired difference, Newcombe 10',
    reference: 'formula',
    cases: 40,
    allowed: 1e-10,
    next: (draw) => {
      const [both = 0, firstOnly = 0, secondOnly = 0, neither = 0] = draw.list(4, () => draw.whole(1, 80));
      return {
        r: `paired_newcombe(${both},${firstOnly},${secondOnly},${neither})[2:3]`,
        ours: limits(pairedDifference({ both, firstOnly, secondOnly, neither })),
      };
    },
  },
  {
    method: "McNemar's test",
    reference: 'mcnemar.test, binom.test',
    cases: 40,
    allowed: 1e-10,
    next: (draw) => {
      const [b, c] = [draw.whole(1, 60), draw.whole(1, 60)];
      const test = valueFrom(mcNemar(b, c));
      const both = `matrix(c(9,${c},${b},9),2)`;
      return {
        r: `c(mcnemar.test(${both},correct=FALSE)$p.value,binom.test(${b},${b + c})$p.value)`,
        ours: [test.pValue, test.exactPValue],
      };
    },
  },
  {
    method: 'Cochran-Armitage trend',
    reference: 'prop.trend.test',
    cases: 40,
    allowed: 1e-10,
    next: (draw) => {
      const totals = draw.list(draw.whole(3, 8), () => draw.whole(20, 120));
      const counts = totals.map((n) => draw.whole(1, Math.floor(n / 2)));
      const scores = totals.map((_, i) => i + draw.between(0, 0.5));
      const { chiSquare, pValue } = valueFrom(cochranArmitage(counts, totals, scores));
      const test = `prop.trend.test(${vector(counts)},${vector(totals)},${vector(scores)})`;
      return { r: `{t<-${test};c(t$statistic,t$p.value)}`, ours: [chiSquare, pValue] };
    },
  },
  {
    method: 'chi-square test',
    reference: 'chisq.test',
    cases: 40,
    allowed: 1e-10,
    next: (draw) => {
      const counts = table(draw, draw.whole(2, 4), draw.whole(2, 5), 40);
      const test = valueFrom(chiSquareTest(counts, { continuity: true }));
      return {
        r: `{t<-chisq.test(${matrix(counts)});c(t$statistic,t$p.value,t$stdres[1,1])}`,
        ours: [test.statistic, test.pValue, test.standardisedResiduals[0]?.[0] ?? Number.NaN],
      };
    },
  },
  {
    method: "Fisher's exact test",
    reference: 'fisher.test',
    cases: 40,
    allowed: 1e-7,
    next: (draw) => {
      const counts = table(draw, draw.whole(2, 3), draw.whole(2, 4), 9);
      return { r: `fisher.test(${matrix(counts)})$p.value`, ours: [valueFrom(fisherExact(counts))] };
    },
  },
  {
    method: "Cohen's kappa",
    reference: 'formula',
    cases: 40,
    allowed: 1e-9,
    next: (draw) => {
      const size = draw.whole(2, 4);
      const counts = table(draw, size, size, 30);
      const { estimate, standardError, nullStandardError } = valueFrom(cohenKappa(counts));
      return {
        r: `kappa2(${matrix(counts)})[c('kappa','se','se0')]`,
        ours: [estimate, standardError, nullStandardError],
      };
    },
  },
  {
    method: "Gwet's AC1",
    reference: 'formula',
    cases: 40,
    allowed: 1e-9,
    next: (draw) => {
      const size = draw.whole(2, 4);
      const counts = table(draw, size, size, 30);
      const { estimate, standardError } = valueFrom(gwetAC1(counts));
      return { r: `ac1_2(${matrix(counts)})[c('ac1','se')]`, ours: [estimate, standardError] };
    },
  },
  {
    method: "Fleiss' kappa",
    reference: 'formula',
    cases: 20,
    allowed: 1e-9,
    next: (draw) => {
      const judges = draw.whole(3, 6);
      const counts = draw.list(12, () => {
        const first = draw.whole(0, judges);
        const second = draw.whole(0, judges - first);
        return [first, second, judges - first - second];
      });
      const { kappa, z } = valueFrom(fleissKappa(counts));
      return { r: `fleiss(${matrix(counts)})[c('kappa','z')]`, ours: [kappa, z] };
    },
  },
  {
    method: "Krippendorff's alpha",
    reference: 'formula',
    cases: 20,
    allowed: 1e-9,
    next: (draw) => {
      const units = draw.list(15, () => draw.list(4, () => (draw.between(0, 1) < 0.25 ? null : draw.whole(1, 3))));
      const rows = units.map((unit) => [1, 2, 3].map((value) => unit.filter((given) => given === value).length));
      return { r: `kripp_nominal(${matrix(rows)})['alpha']`, ours: [valueFrom(krippendorffAlpha(units)).alpha] };
    },
  },
  {
    method: "d' and criterion, log-linear correction",
    reference: 'qnorm',
    cases: 40,
    allowed: 1e-9,
    next: (draw) => {
      const [hits = 0, misses = 0, falseAlarms = 0, correctRejections = 0] = draw.list(4, () => draw.whole(0, 30));
      const counts = { hits: hits + 1, misses, falseAlarms, correctRejections: correctRejections + 1 };
      const scores = valueFrom(signalDetection(counts));
      return {
        r: `sdt(${hits + 1},${misses},${falseAlarms},${correctRejections + 1},TRUE)[c('dprime','c')]`,
        ours: [scores.dPrime.estimate, scores.criterion.estimate],
      };
    },
  },
  {
    method: "Laney's p'-chart",
    reference: 'formula',
    cases: 20,
    allowed: 1e-9,
    next: (draw) => {
      const totals = draw.list(12, () => draw.whole(30, 120));
      const counts = totals.map(() => draw.whole(1, 15));
      const { sigmaZ, points } = valueFrom(laneyChart(counts, totals));
      return {
        r: `{l<-laney(${vector(counts)},${vector(totals)});c(l$sigma_z,l$lcl,l$ucl)}`,
        ours: [sigmaZ, ...points.map(({ lower }) => lower), ...points.map(({ upper }) => upper)],
      };
    },
  },
];
