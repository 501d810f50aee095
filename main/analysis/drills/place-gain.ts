import type { FaultScore, PlaceGain } from '../../../shared-types/contract/drills/scores.ts';
import type { Estimate } from '../../../shared-types/contract/reports.ts';
import { pairedDifference } from '../proportions/paired-difference.ts';
import { mcNemar } from '../tests/mcnemar.ts';
import { asEstimate, share } from './detection-score.ts';
import { type FaultNamed, faultScore } from './fault-score.ts';
import { answered, calledRight, type JudgedTrial } from './outcomes.ts';

const LEAST_PAIRS = 10;

/** The same reps from the poor and from the advised place: which was judged better, and by how much. */
export function placeGain(trials: readonly JudgedTrial[], fault: FaultNamed): PlaceGain {
  const counts = { both: 0, firstOnly: 0, secondOnly: 0, neither: 0 };
  for (const { advised, poor } of pairsOf(trials)) {
    const kind = advised ? (poor ? 'both' : 'firstOnly') : poor ? 'secondOnly' : 'neither';
    counts[kind] += 1;
  }
  const pairs = counts.both + counts.firstOnly + counts.secondOnly + counts.neither;
  const gain = pairedDifference(counts);
  const test = mcNemar(counts.firstOnly, counts.secondOnly);
  const poor = faultScore(trials, fault, 'poor');
  const advised = faultScore(trials, fault, 'advised');
  const precisionRatio = ratio(poor, advised);
  return {
    code: fault.code,
    unit: fault.unit,
    pairs,
    poor,
    advised,
    rightPoor: share(counts.both + counts.secondOnly, pairs),
    rightAdvised: share(counts.both + counts.firstOnly, pairs),
    gain: gain.ok ? asEstimate(gain.value) : null,
    pValue: test.ok ? test.value.exactPValue : null,
    precisionRatio,
    verdict: pairs < LEAST_PAIRS ? 'too-few' : verdictOf(gain.ok ? asEstimate(gain.value) : null, precisionRatio),
  };
}

/** Either measure may show it: right calls tell of line and sharpness together, the ratio of sharpness alone. */
function verdictOf(gain: Estimate | null, precisionRatio: Estimate | null): PlaceGain['verdict'] {
  const better = (gain !== null && gain.low > 0) || (precisionRatio !== null && precisionRatio.low > 1);
  const worse = (gain !== null && gain.high < 0) || (precisionRatio !== null && precisionRatio.high < 1);
  return better === worse ? 'unclear' : better ? 'advised-better' : 'poor-better';
}

/** Reps seen from both places, by their seed, and whether each call was right. */
function pairsOf(trials: readonly JudgedTrial[]): { advised: boolean; poor: boolean }[] {
  const seen = new Map<string, Partial<Record<JudgedTrial['place'], boolean>>>();
  for (const one of trials) {
    const seed = one.trial.specification?.seed;
    if (seed === undefined || !answered(one)) continue;
    const key = `${one.drill.id} ${seed}`;
    seen.set(key, { ...seen.get(key), [one.place]: calledRight(one) });
  }
  return [...seen.values()].flatMap(({ advised, poor }) =>
    advised === undefined || poor === undefined ? [] : [{ advised, poor }],
  );
}

/** Ratio of two precisions; limits joined in the logarithm, each side on its own (Zou & Donner 2008, Statistics in Medicine 27:1693-1702). */
function ratio(poor: FaultScore, advised: FaultScore): Estimate | null {
  const [p, a] = [poor.precision, advised.precision];
  if (p === null || a === null) return null;
  const value = p.value / a.value;
  return {
    value,
    low: value * Math.exp(-Math.hypot(Math.log(p.value / p.low), Math.log(a.high / a.value))),
    high: value * Math.exp(Math.hypot(Math.log(p.high / p.value), Math.log(a.value / a.low))),
  };
}
