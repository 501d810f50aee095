import type { EstimateWithInterval } from '../../main/analysis/interval.ts';
import { agrestiCaffoDifference } from '../../main/analysis/proportions/agresti-caffo.ts';
import { agrestiCoullInterval } from '../../main/analysis/proportions/agresti-coull.ts';
import { clopperPearsonInterval } from '../../main/analysis/proportions/clopper-pearson.ts';
import { jeffreysInterval } from '../../main/analysis/proportions/jeffreys.ts';
import { midPInterval } from '../../main/analysis/proportions/mid-p.ts';
import { newcombeDifference } from '../../main/analysis/proportions/newcombe.ts';
import { pairedDifference } from '../../main/analysis/proportions/paired-difference.ts';
import { scoreDifference } from '../../main/analysis/proportions/score-difference.ts';
import { wilsonContinuityInterval, wilsonInterval } from '../../main/analysis/proportions/wilson.ts';
import { binomialTest } from '../../main/analysis/tests/binomial-test.ts';
import { chiSquareTest } from '../../main/analysis/tests/chi-square.ts';
import { cochranArmitage } from '../../main/analysis/tests/cochran-armitage.ts';
import { fisherExact } from '../../main/analysis/tests/fisher-exact.ts';
import { mcNemar } from '../../main/analysis/tests/mcnemar.ts';
import type { OurValues } from './our-values.ts';
import { list, number, table } from './published-entry.ts';
import { valueFrom } from './test-sums.ts';

type Input = Record<string, unknown>;
type Values = Record<string, number>;

const limits = ({ lower, upper }: EstimateWithInterval): Values => ({ lower, upper });
const ofProportion = (interval: typeof wilsonInterval) => (input: Input) =>
  limits(valueFrom(interval(number(input, 'x'), number(input, 'n'))));
const groups = (input: Input) =>
  [
    { count: number(input, 'x1'), total: number(input, 'n1') },
    { count: number(input, 'x2'), total: number(input, 'n2') },
  ] as const;
const newcombe = (continuity: boolean) => (input: Input) => {
  const [first, second] = groups(input);
  const { estimate, ...rest } = valueFrom(newcombeDifference(first, second, { continuity }));
  return { diff: estimate, lower: rest.lower, upper: rest.upper };
};
const score = (varianceCorrection: boolean) => (input: Input) => {
  const [first, second] = groups(input);
  const { estimate, lower, upper } = valueFrom(scoreDifference(first, second, { varianceCorrection }));
  return { diff: estimate, lower, upper };
};
const paired = (plainCorrelation: boolean) => (input: Input) => {
  const pairs = {
    both: number(input, 'n11'),
    firstOnly: number(input, 'n12'),
    secondOnly: number(input, 'n21'),
    neither: number(input, 'n22'),
  };
  const { estimate, lower, upper } = valueFrom(pairedDifference(pairs, { plainCorrelation }));
  return { diff: estimate, lower, upper };
};
const mcnemar = (input: Input) => {
  const test = valueFrom(mcNemar(number(input, 'n12'), number(input, 'n21')));
  return {
    chisq: test.statistic,
    p: test.pValue,
    chisq_cc: test.correctedStatistic,
    p_cc: test.correctedPValue,
    p_exact: test.exactPValue,
    p_mid: test.midPValue,
  };
};
const trend = (counts: readonly number[], totals: readonly number[], scores?: readonly number[]) => {
  const { slope, z, chiSquare, pValue } = valueFrom(cochranArmitage(counts, totals, scores));
  return { slope, z, chisq: chiSquare, p: pValue };
};
const malformation = (input: Input) => {
  const present = list(input, 'present');
  const absent = list(input, 'absent');
  const totals = present.map((count, i) => count + (absent[i] ?? 0));
  return trend(present, totals, list(input, 'scores'));
};
/** Our figures for the published examples on proportions, their differences, and tables of counts. */
export const ourProportions: OurValues = {
  '1-wilson-a': ofProportion(wilsonInterval),
  '1-wilson-b': ofProportion(wilsonInterval),
  '1-wilson-c': ofProportion(wilsonInterval),
  '1-wilsoncc-a': ofProportion(wilsonContinuityInterval),
  '1-wilsoncc-c': ofProportion(wilsonContinuityInterval),
  '1-wilsoncc-d': ofProportion(wilsonContinuityInterval),
  '1-clopper-a': ofProportion(clopperPearsonInterval),
  '1-clopper-b': ofProportion(clopperPearsonInterval),
  '1-clopper-d': ofProportion(clopperPearsonInterval),
  '1-midp-b': ofProportion(midPInterval),
  '1-midp-c': ofProportion(midPInterval),
  '1-jeffreys-n10': (input) =>
    Object.fromEntries(
      list(input, 'x').flatMap((x) => {
        const { lower, upper } = valueFrom(jeffreysInterval(x, number(input, 'n')));
        return [
          [`l${x}`, lower],
          [`u${x}`, upper],
        ];
      }),
    ),
  '1-agresticoull': (input) =>
    Object.fromEntries(
      list(input, 'x').flatMap((x, i) => {
        const n = list(input, 'n')[i] ?? 0;
        const { lower, upper } = valueFrom(agrestiCoullInterval(x, n));
        // The reference leaves limits below 0 as they are; ours are cut off, so those are not compared.
        return lower > 0
          ? [
              [`l_${x}of${n}`, lower],
              [`u_${x}of${n}`, upper],
            ]
          : [[`u_${x}of${n}`, upper]];
      }),
    ),
  '1-binomtest-conover': (input) => ({
    ...ofProportion(clopperPearsonInterval)(input),
    p: valueFrom(binomialTest(number(input, 'x'), number(input, 'n'), number(input, 'p0'))),
  }),
  '2-newcombe10-a': newcombe(false),
  '2-newcombe11-a': newcombe(true),
  '2-newcombe10-b': newcombe(false),
  '2-newcombe11-b': newcombe(true),
  '2-newcombe11-c': newcombe(true),
  '2-newcombe10-d': newcombe(false),
  '2-newcombe11-e': newcombe(true),
  '2-newcombe10-f': newcombe(false),
  '2-newcombe10-g': newcombe(false),
  '2-newcombe11-g': newcombe(true),
  '2-newcombe11-h': newcombe(true),
  '2-mn-a': score(true),
  '2-mee-a': score(false),
  '2-mn-b': score(true),
  '2-mee-d': score(false),
  '2-mn-g': score(true),
  '2-mee-g': score(false),
  '2-perondi': (input) => {
    const [first, second] = groups(input);
    const hybrid = newcombe(false)(input);
    const mee = score(false)(input);
    const caffo = valueFrom(agrestiCaffoDifference(first, second));
    return {
      diff: hybrid.diff,
      nl: hybrid.lower,
      nu: hybrid.upper,
      ml: mee.lower,
      mu: mee.upper,
      acl: caffo.lower,
      acu: caffo.upper,
    };
  },
  '3-mcnemar-approval': mcnemar,
  '3-mcnemar-cavo': mcnemar,
  '3-paired-newcombe10': paired(false),
  '3-paired-newcombe8': paired(true),
  '3-ezra': paired(false),
  '4-smokers': (input) => {
    const counts = list(input, 'x');
    const totals = list(input, 'n');
    const test = valueFrom(chiSquareTest([counts, totals.map((n, i) => n - (counts[i] ?? 0))]));
    return { ...trend(counts, totals, list(input, 'scores')), het: test.statistic, het_p: test.pValue };
  },
  '4-malformation': malformation,
  '4-malformation-equal': malformation,
  '13-tea': (input) => ({ p_two: valueFrom(fisherExact(table(input, 'tab'))) }),
  '13-tea-chisq': (input) => {
    const plain = valueFrom(chiSquareTest(table(input, 'tab')));
    const corrected = valueFrom(chiSquareTest(table(input, 'tab'), { continuity: true }));
    return { x2: plain.statistic, p: plain.pValue, x2c: corrected.statistic, pc: corrected.pValue };
  },
  '13-job': (input) => ({ p: valueFrom(fisherExact(table(input, 'tab_by_column'))) }),
  '13-party': (input) => {
    const test = valueFrom(chiSquareTest(table(input, 'tab')));
    const corner = (cells: readonly (readonly number[])[]) => cells[0]?.[0] ?? Number.NaN;
    return {
      x2: test.statistic,
      p: test.pValue,
      e11: corner(test.expected),
      r11: corner(test.residuals),
      s11: corner(test.standardisedResiduals),
    };
  },
};
