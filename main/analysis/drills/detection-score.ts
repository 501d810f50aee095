import type { Detection } from '../../../shared-types/contract/drills/scores.ts';
import type { Estimate } from '../../../shared-types/contract/reports.ts';
import { type DetectionCounts, signalDetection } from '../detection/signal-detection.ts';
import type { EstimateWithInterval } from '../interval.ts';
import { wilsonInterval } from '../proportions/wilson.ts';

/** An estimate as the screens take it. */
export function asEstimate({ estimate, lower, upper }: EstimateWithInterval): Estimate {
  return { value: estimate, low: lower, high: upper };
}

/** A proportion with its Wilson interval; null of nothing. */
export function share(count: number, of: number): Estimate | null {
  const found = wilsonInterval(count, of);
  return found.ok ? asEstimate(found.value) : null;
}

/** Rates, d' and criterion of these counts. */
export function detectionScore(counts: DetectionCounts): Detection {
  const { hits, misses, falseAlarms, correctRejections } = counts;
  const scores = signalDetection(counts);
  return {
    ...counts,
    hitRate: share(hits, hits + misses),
    falseAlarmRate: share(falseAlarms, falseAlarms + correctRejections),
    dPrime: scores.ok ? asEstimate(scores.value.dPrime) : null,
    criterion: scores.ok ? asEstimate(scores.value.criterion) : null,
  };
}
