import { brennanPrediger, scottPi, specificAgreement } from '../../main/analysis/agreement/chance-corrected.ts';
import { cohenKappa } from '../../main/analysis/agreement/cohen-kappa.ts';
import { fleissKappa } from '../../main/analysis/agreement/fleiss-kappa.ts';
import { gwetAC1 } from '../../main/analysis/agreement/gwet-ac1.ts';
import { krippendorffAlpha } from '../../main/analysis/agreement/krippendorff-alpha.ts';
import { detectionFromRates, signalDetection } from '../../main/analysis/detection/signal-detection.ts';
import type { OurValues } from './our-values.ts';
import { list, number, table } from './published-entry.ts';
import { valueFrom } from './test-sums.ts';

type Input = Record<string, unknown>;

const fromShares = (input: Input) => table(input, 'p').map((row) => row.map((share) => share * number(input, 'n')));
const kappa = (ratings: number[][], weights?: number[][]) => {
  const result = valueFrom(cohenKappa(ratings, weights ? { weights } : {}));
  const { observed, expected, estimate, standardError, lower, upper, nullStandardError } = result;
  const z = estimate / nullStandardError;
  return { po: observed, pe: expected, kappa: estimate, se: standardError, lower, upper, se0: nullStandardError, z };
};
const paradox = (input: Input) => {
  const ratings = [
    [number(input, 'a'), number(input, 'b')],
    [number(input, 'c'), number(input, 'd')],
  ];
  const specific = valueFrom(specificAgreement(ratings));
  return {
    ...kappa(ratings),
    pabak: valueFrom(brennanPrediger(ratings)),
    ac1: valueFrom(gwetAC1(ratings)).estimate,
    scott: valueFrom(scottPi(ratings)),
    prevalence_index: specific.prevalenceIndex,
    bias_index: specific.biasIndex,
    p_pos: specific.first ?? Number.NaN,
    p_neg: specific.second ?? Number.NaN,
  };
};
const fleiss = (input: Input) => {
  const result = valueFrom(fleissKappa(table(input, 'counts')));
  return {
    Pbar: result.observed,
    Pe: result.expected,
    kappa: result.kappa,
    kappa7: result.kappa,
    se0: result.nullStandardError,
    z: result.z,
    P1: result.perUnit[0] ?? Number.NaN,
    P2: result.perUnit[1] ?? Number.NaN,
    P10: result.perUnit[9] ?? Number.NaN,
  };
};
const alpha = (units: (string | number | null)[][]) => {
  const result = valueFrom(krippendorffAlpha(units));
  return {
    alpha: result.alpha,
    n: result.pairable,
    Do: result.observedDisagreement,
    De: result.expectedDisagreement,
  };
};
const transposed = <T>(columns: T[][]) => (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] as T));
const detection = (logLinear: boolean, falseAlarms: string, rejections: string) => (input: Input) => {
  const counts = {
    hits: number(input, 'hits'),
    misses: number(input, 'misses'),
    falseAlarms: number(input, falseAlarms),
    correctRejections: number(input, rejections),
  };
  const scores = valueFrom(signalDetection(counts, { logLinear }));
  const dPrime = scores.dPrime.estimate;
  const criterion = scores.criterion.estimate;
  const lnbeta = scores.logBeta;
  const rates = { H: scores.hitRate, F: scores.falseAlarmRate };
  return { ...rates, dprime: dPrime, dPrime, c: criterion, criterion, lnbeta, beta: Math.exp(lnbeta) };
};
/** Our figures for the published examples on judges' agreement and detection scores. */
export const ourJudges: OurValues = {
  '5-cohen1960': (input) => {
    const { kappa: estimate, se, se0 } = kappa(fromShares(input));
    return { kappa: estimate, se_fleiss1969: se, se0_fleiss1969: se0 };
  },
  '5-cohen1968-weighted': (input) => {
    const disagreement = table(input, 'disagreement');
    const most = Math.max(...disagreement.flat());
    return kappa(
      fromShares(input),
      disagreement.map((row) => row.map((value) => 1 - value / most)),
    );
  },
  '5-fce1969': (input) => kappa(table(input, 'tab')),
  '5-fleiss1981': (input) => kappa(table(input, 'tab')),
  '5-paradox-a': paradox,
  '5-paradox-b': paradox,
  '5-paradox-d': paradox,
  '5-ac1-abstractors': (input) => {
    const ratings = table(input, 'tab');
    const ac1 = valueFrom(gwetAC1(ratings));
    return {
      kappa: kappa(ratings).kappa,
      scott: valueFrom(scottPi(ratings)),
      ac1: ac1.estimate,
      bp: valueFrom(brennanPrediger(ratings)),
      se_ac1: ac1.standardError,
      pa: ac1.observed,
    };
  },
  '6-fleiss1971': fleiss,
  '6-small-10x14x5': fleiss,
  '0-fleiss-14-raters': fleiss,
  '7-4x12': (input) => alpha(input.units_by_observers as (number | null)[][]),
  '7-binary': (input) => alpha(transposed([list(input, 'Meg'), list(input, 'Owen')])),
  '7-strings': (input) => alpha(transposed(['r1', 'r2', 'r3'].map((judge) => input[judge] as (string | null)[]))),
  '8-mc-face': detection(false, 'fa', 'cr'),
  '8-schneider': (input) =>
    Object.fromEntries(
      list(input, 'H').flatMap((hitRate, i) => {
        const scores = valueFrom(detectionFromRates(hitRate, list(input, 'F')[i] ?? 0));
        return [
          [`d${i + 1}`, scores.dPrime],
          [`b${i + 1}`, Math.exp(scores.logBeta)],
        ];
      }),
    ),
  '8-hautus-extreme': detection(true, 'fa', 'cr'),
  '0-dprime-80-40': (input) => valueFrom(detectionFromRates(number(input, 'hitRate'), number(input, 'falseAlarmRate'))),
  '0-dprime-loglinear': (input) => {
    const scores = detection(true, 'falseAlarms', 'correctRejections')(input);
    return { ...scores, 'recomputed[0]': scores.dPrime, 'recomputed[1]': scores.criterion };
  },
};
