import type { DrillWhy, FaultScore, LineVerdict } from '../../../shared-types/contract/drills/scores.ts';
import type { PlaceName } from '../../../shared-types/drills/drill.ts';
import { type Answer, type EyeReadings, noRepChance } from '../../../shared-types/drills/eye.ts';
import type { FaultCode, MarginUnit } from '../../../shared-types/motion/specification.ts';
import type { ComputationErrorKind, Computed } from '../result.ts';
import { answersFor, countsFor, rangeOver } from './answers.ts';
import { detectionScore } from './detection-score.ts';
import { fitEye } from './eye-fit.ts';
import type { JudgedTrial } from './outcomes.ts';

export type FaultNamed = { readonly code: FaultCode; readonly name: string; readonly unit: MarginUnit };

const CURVE_POINTS = 41;
const BINS = 12;

const WHY: Partial<Record<ComputationErrorKind, DrillWhy>> = {
  'no-data': 'no-calls',
  'too-few-data': 'few-calls',
  'one-category': 'all-alike',
  'no-variation': 'no-slope',
  'out-of-reach': 'beyond-shown',
};

/** All that the calls say of one fault, from places of one name or (`place` null) from all of them. */
export function faultScore(all: readonly JudgedTrial[], fault: FaultNamed, place: PlaceName | null): FaultScore {
  const trials = place === null ? all : all.filter((one) => one.place === place);
  const answers = answersFor(trials, fault.code);
  const range = rangeOver(trials, fault.code) ?? { low: -1, high: 1 };
  const fit = fitEye(answers, range);
  return {
    code: fault.code,
    name: fault.name,
    unit: fault.unit,
    place,
    trials: answers.length,
    detection: detectionScore(countsFor(trials, fault.code)),
    strictness: fit.ok ? { ...fit.value.strictness } : null,
    precision: fit.ok ? { ...fit.value.precision } : null,
    verdict: lineVerdict(fit, answers.length),
    curve: fit.ok ? curveOf(fit.value, answers) : [],
    bins: binsOf(answers),
  };
}

/** What the strictness says. */
export function lineVerdict(fit: Computed<EyeReadings>, trials: number): LineVerdict {
  if (!fit.ok) return { kind: 'cannot-tell', why: WHY[fit.error.kind] ?? 'few-calls' };
  const { strictness, precision } = fit.value;
  if (strictness.high < 0) return { kind: 'lenient', by: -strictness.value };
  if (strictness.low > 0) return { kind: 'strict', by: strictness.value };
  const half = (strictness.high - strictness.low) / 2;
  // Half the width takes four times the reps.
  return half <= precision.value ? { kind: 'on-the-line' } : { kind: 'unclear', stillNeeded: 3 * trials };
}

function span(answers: readonly Answer[]): { low: number; high: number } {
  const margins = answers.map((answer) => answer.margin);
  return { low: Math.min(...margins), high: Math.max(...margins) };
}

function curveOf({ strictness, precision }: EyeReadings, answers: readonly Answer[]): FaultScore['curve'] {
  const { low, high } = span(answers);
  return Array.from({ length: CURVE_POINTS }, (_, i) => {
    const margin = low + ((high - low) * i) / (CURVE_POINTS - 1);
    const eye = { strictness: strictness.value, precision: precision.value, lapse: 0 };
    return { margin, chance: noRepChance(eye, margin) };
  });
}

function binsOf(answers: readonly Answer[]): FaultScore['bins'] {
  if (answers.length === 0) return [];
  const { low, high } = span(answers);
  const width = (high - low) / BINS;
  const bins = Array.from({ length: width > 0 ? BINS : 1 }, (_, i) => ({
    from: low + i * width,
    to: low + (i + 1) * width,
    calls: 0,
    noReps: 0,
  }));
  for (const { margin, noRep } of answers) {
    const bin = bins[width > 0 ? Math.min(BINS - 1, Math.floor((margin - low) / width)) : 0];
    if (bin === undefined) continue;
    bin.calls += 1;
    if (noRep) bin.noReps += 1;
  }
  return bins;
}
