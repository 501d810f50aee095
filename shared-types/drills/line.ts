import type { FaultCode } from '../motion/specification.ts';
import { mostTellingMargin } from './adapt.ts';
import type { Drill, TaskOf } from './drill.ts';
import { type Answer, type Belief, type EyeGrid, eyeGrid, learn, openBelief, readBelief } from './eye.ts';
import { shownRange, toleranceOf } from './range.ts';
import type { DrillTrial } from './state.ts';

/** Margins from which the next one is chosen. */
const STEPS = 29;

/** What the calls say of one fault: a rep without a measured margin, or a no-rep without a reason among several faults, says nothing. */
export function answersOf(drill: Drill, fault: FaultCode, trials: readonly DrillTrial[]): Answer[] {
  return trials.flatMap((trial): Answer[] => {
    const margin = trial.margins[fault];
    if (margin === null || margin === undefined || trial.call === null || trial.spoilt) return [];
    return [{ margin: margin + toleranceOf(drill, fault), noRep: trial.call.verdict === 'no-rep' }];
  });
}

function believed(drill: Drill, fault: FaultCode, trials: readonly DrillTrial[]): { grid: EyeGrid; belief: Belief } {
  const { low, high } = shownRange(drill, fault);
  const grid = eyeGrid(low, high);
  return { grid, belief: learn(grid, openBelief(grid), answersOf(drill, fault, trials)) };
}

/** The margin to show next, counted from the tolerance. */
export function lineMargin(drill: Drill, task: TaskOf<'line'>, trials: readonly DrillTrial[]): number {
  const { low, high } = shownRange(drill, task.fault);
  const margins = Array.from({ length: STEPS }, (_, i) => low + ((high - low) * i) / (STEPS - 1));
  const { grid, belief } = believed(drill, task.fault, trials);
  return mostTellingMargin(grid, belief, margins);
}

/** Why the drill is over, or null while it goes on. */
export function lineEnded(
  drill: Drill,
  task: TaskOf<'line'>,
  trials: readonly DrillTrial[],
): 'narrow-enough' | 'most-trials' | null {
  if (trials.length >= task.mostTrials) return 'most-trials';
  if (trials.length < task.leastTrials) return null;
  const { strictness, precision } = lineReading(drill, task.fault, trials);
  return strictness.high - strictness.low <= task.narrow * precision.value ? 'narrow-enough' : null;
}

/** What is known of the judge's line so far: strictness and precision, each with 95 % limits, in the fault's unit. */
export function lineReading(drill: Drill, fault: FaultCode, trials: readonly DrillTrial[]) {
  const { grid, belief } = believed(drill, fault, trials);
  return readBelief(grid, belief);
}
