import type { Drill, PlaceName } from '../../../shared-types/drills/drill.ts';
import type { DrillCall, DrillState, DrillTrial } from '../../../shared-types/drills/state.ts';
import { alignSpans } from '../agreement/align.ts';

export type Outcome = 'hit' | 'miss' | 'false-alarm' | 'correct-rejection' | 'unanswered' | 'spoilt';

/** One rep of a drill with the call that belongs to it and what that makes of it. */
export type JudgedTrial = {
  readonly drill: Drill;
  readonly trial: DrillTrial;
  readonly call: DrillCall | null;
  /** Where the judge stood. */
  readonly place: PlaceName;
  readonly outcome: Outcome;
  /** Milliseconds from when the verdict could be seen to the call; null without a call. */
  readonly reaction: number | null;
  /** Of a hit with a reason: every fault named is there. Null where there is none to judge. */
  readonly reasonRight: boolean | null;
};

export type JudgedDrill = { readonly trials: readonly JudgedTrial[]; readonly extraCalls: readonly DrillCall[] };

/** A call this late after all of a rep has been seen is still on time; earlier or later ones count their distance. */
const ON_TIME_MS = 800;
const TOLERANCE_MS = 1_000;

/** Every rep of a drill with its call; in a stream calls and reps are aligned first. */
export function judged(drill: Drill, state: DrillState): JudgedDrill {
  if (drill.task.kind !== 'stream') {
    return { trials: state.trials.map((trial) => outcomeOf(drill, trial, trial.call)), extraCalls: [] };
  }
  const { pairs, onlySecond } = alignSpans(
    state.trials.map(({ dueMs, seenMs }) => ({ from: dueMs, to: seenMs + ON_TIME_MS })),
    state.calls.map(({ afterMs }) => ({ from: afterMs, to: afterMs })),
    TOLERANCE_MS,
  );
  const callOf = new Map(pairs);
  return {
    trials: state.trials.map((trial, i) => {
      const j = callOf.get(i);
      return outcomeOf(drill, trial, j === undefined ? null : (state.calls[j] ?? null));
    }),
    extraCalls: onlySecond.flatMap((j) => state.calls[j] ?? []),
  };
}

function outcomeOf(drill: Drill, trial: DrillTrial, call: DrillCall | null): JudgedTrial {
  const faulty = trial.broken.length > 0;
  const noRep = call?.verdict === 'no-rep';
  const named = noRep ? call.faults : [];
  return {
    drill,
    trial,
    call,
    place: call?.place?.name ?? trial.place.name,
    outcome: trial.spoilt ? 'spoilt' : call === null ? 'unanswered' : verdictOf(faulty, noRep),
    reaction: call === null || trial.spoilt ? null : call.afterMs - trial.dueMs,
    reasonRight:
      trial.spoilt || !faulty || named.length === 0
        ? null
        : named.every((code) => trial.broken.some((broken) => broken === code)),
  };
}

function verdictOf(faulty: boolean, noRep: boolean): Outcome {
  if (faulty) return noRep ? 'hit' : 'miss';
  return noRep ? 'false-alarm' : 'correct-rejection';
}

/** Whether the rep was called, and can be scored. */
export function answered(one: JudgedTrial): boolean {
  return one.outcome !== 'unanswered' && one.outcome !== 'spoilt';
}

/** Whether the call was right. */
export function calledRight(one: JudgedTrial): boolean {
  return one.outcome === 'hit' || one.outcome === 'correct-rejection';
}
