import type { Answer } from '../../../shared-types/drills/eye.ts';
import { soleFault } from '../../../shared-types/drills/plan.ts';
import { shownRange, toleranceOf } from '../../../shared-types/drills/range.ts';
import type { FaultCode } from '../../../shared-types/motion/specification.ts';
import type { DetectionCounts } from '../detection/signal-detection.ts';
import { answered, type JudgedTrial } from './outcomes.ts';

/**
 * How a rep was called as to one fault; null where that can't be told: no call, another fault there as well (one reason is
 * enough for a no-rep), or a no-rep without a reason where several faults may come.
 */
export function calledFor(one: JudgedTrial, fault: FaultCode): boolean | null {
  if (!answered(one) || one.call === null) return null;
  if (one.trial.broken.some((code) => code !== fault)) return null;
  if (one.call.verdict !== 'no-rep') return false;
  if (soleFault(one.drill) === fault) return true;
  return one.call.faults.length === 0 ? null : one.call.faults.includes(fault);
}

/** The calls that tell of a fault's line, with the rep's margin counted from the tolerance. */
export function answersFor(trials: readonly JudgedTrial[], fault: FaultCode): Answer[] {
  return trials.flatMap((one): Answer[] => {
    const margin = one.trial.margins[fault];
    const noRep = calledFor(one, fault);
    if (margin === null || margin === undefined || noRep === null) return [];
    return [{ margin: margin + toleranceOf(one.drill, fault), noRep }];
  });
}

/** Hits and misses on reps with the fault; false alarms and the rest on reps with none. */
export function countsFor(trials: readonly JudgedTrial[], fault: FaultCode): DetectionCounts {
  const counts = { hits: 0, misses: 0, falseAlarms: 0, correctRejections: 0 };
  for (const one of trials) {
    const noRep = calledFor(one, fault);
    // A rep that gives no occasion for the fault is no test of it.
    const margin = one.trial.margins[fault];
    if (noRep === null || margin === null || margin === undefined) continue;
    if (one.trial.broken.includes(fault)) counts[noRep ? 'hits' : 'misses'] += 1;
    else counts[noRep ? 'falseAlarms' : 'correctRejections'] += 1;
  }
  return counts;
}

/** The same over all faults, by the verdicts alone. */
export function countsOf(trials: readonly JudgedTrial[]): DetectionCounts {
  const count = (outcome: JudgedTrial['outcome']) => trials.filter((one) => one.outcome === outcome).length;
  return {
    hits: count('hit'),
    misses: count('miss'),
    falseAlarms: count('false-alarm'),
    correctRejections: count('correct-rejection'),
  };
}

/** The margins that the figure can show in any of the drills; undefined without a drill. */
export function rangeOver(trials: readonly JudgedTrial[], fault: FaultCode): { low: number; high: number } | undefined {
  const ranges = [...new Set(trials.map((one) => one.drill))].map((drill) => shownRange(drill, fault));
  if (ranges.length === 0) return undefined;
  return { low: Math.min(...ranges.map((r) => r.low)), high: Math.max(...ranges.map((r) => r.high)) };
}
