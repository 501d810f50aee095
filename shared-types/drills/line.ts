import type { FaultCode } from '../motion/specification.ts';
import { type Choices, choices, mostTellingMargin } from './adapt.ts';
import type { Drill, TaskOf } from './drill.ts';
import { type Answer, type Belief, type EyeGrid, eyeGrid, learn, openBelief, readBelief } from './eye.ts';
import { shownRange, toleranceOf } from './range.ts';
import type { DrillTrial } from './state.ts';

/** Margins from which the next one is chosen. */
const STEPS = 29;

/**
 * What was worked out for the calls so far, so that one more call costs no more than one. Never needed: without it everything
 * is worked out again, to the same result.
 */
export interface LineMemory {
  learnt?: { readonly key: string; readonly answers: readonly Answer[]; readonly belief: Belief };
  choices?: { readonly key: string; readonly choices: Choices };
}

/** What the calls of a drill on one fault say of it. @internal for the proof, which compares designs on the same calls */
export function answersOf(drill: Drill, fault: FaultCode, trials: readonly DrillTrial[]): Answer[] {
  return trials.flatMap((trial): Answer[] => {
    const margin = trial.margins[fault];
    if (margin === null || margin === undefined || trial.call === null || trial.spoilt) return [];
    return [{ margin: margin + toleranceOf(drill, fault), noRep: trial.call.verdict === 'no-rep' }];
  });
}

interface Believed {
  readonly grid: EyeGrid;
  readonly belief: Belief;
  readonly key: string;
}

function believed(drill: Drill, fault: FaultCode, trials: readonly DrillTrial[], memory: LineMemory): Believed {
  const { low, high } = shownRange(drill, fault);
  const key = `${drill.id} ${low} ${high}`;
  const grid = eyeGrid(low, high);
  const answers = answersOf(drill, fault, trials);
  const known = memory.learnt?.key === key && beginsWith(answers, memory.learnt.answers) ? memory.learnt : undefined;
  const belief = learn(grid, known?.belief ?? openBelief(grid), answers.slice(known?.answers.length ?? 0));
  memory.learnt = { key, answers, belief };
  return { grid, belief, key };
}

function beginsWith(answers: readonly Answer[], start: readonly Answer[]): boolean {
  return start.every(({ margin, noRep }, i) => answers[i]?.margin === margin && answers[i]?.noRep === noRep);
}

/** The margin to show next, counted from the tolerance; or why the drill is over. */
export function lineNext(
  drill: Drill,
  task: TaskOf<'line'>,
  trials: readonly DrillTrial[],
  memory: LineMemory = {},
): { readonly margin: number } | { readonly why: 'narrow-enough' | 'most-trials' } {
  if (trials.length >= task.mostTrials) return { why: 'most-trials' };
  const { grid, belief, key } = believed(drill, task.fault, trials, memory);
  if (trials.length >= task.leastTrials) {
    const { strictness, precision } = readBelief(grid, belief);
    if (strictness.high - strictness.low <= task.narrow * precision.value) return { why: 'narrow-enough' };
  }
  const { low, high } = shownRange(drill, task.fault);
  const known = memory.choices?.key === key ? memory.choices.choices : undefined;
  const among =
    known ??
    choices(
      grid,
      Array.from({ length: STEPS }, (_, i) => low + ((high - low) * i) / (STEPS - 1)),
    );
  memory.choices = { key, choices: among };
  return { margin: mostTellingMargin(grid, belief, among) };
}
