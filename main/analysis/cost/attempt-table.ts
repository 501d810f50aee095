import type { Verdict } from '../../../shared-types/log/events.ts';
import type { Goal } from '../../../shared-types/log/setup.ts';
import type { SetState } from '../../../shared-types/log/state.ts';
import type { SetCost } from './report.ts';
import { costOfReading, readSet, type SetCostOptions, type SetReading } from './set-cost.ts';

/** One attempt that stands, flat and plain, so that later reports can read stored rows instead of logs. */
export type AttemptRow = {
  /** 1, 2, … over the attempts that stand. */
  readonly number: number;
  readonly pad: string;
  readonly seq: number;
  /** Milliseconds since go, as the pad said. */
  readonly at: number;
  /** What stands now. */
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  /** The first call was another one. */
  readonly reversed: boolean;
  /** Counted reps up to and with this attempt. */
  readonly counted: number;
  /** Seconds since the last attempt that stands, go, or the last marked break end; null after a break nobody ended. */
  readonly cycle: number | null;
  /** The cycle, where it is clean: counted rep to counted rep with neither a no-rep nor a break between. */
  readonly cleanCycle: number | null;
  /** Expected clean cycle here, seconds. */
  readonly expected: number | null;
  /** How far through the set, 0 to 1: see `progressThrough`. */
  readonly progress: number;
  /** A no-rep's part of its run's cost, seconds; null for counted reps and where not estimable. */
  readonly cost: number | null;
  /** Which run of no-reps it belongs to, 0, 1, … in order; null for counted reps. */
  readonly run: number | null;
};

/** The attempts of a set that stand, in order. */
export function attemptTable(state: SetState, options: SetCostOptions = {}): AttemptRow[] {
  const reading = readSet(state, options);
  return tableOfReading(reading, costOfReading(reading, { ...options, resamples: 1 }), options.goal);
}

/** As `attemptTable`, from a set that is read and costed already. */
export function tableOfReading({ course, expected }: SetReading, cost: SetCost, goal?: Goal): AttemptRow[] {
  const runOf = new Map(cost.runs.flatMap((run, index) => run.attempts.map((number) => [number, index] as const)));
  const costOf = new Map(
    cost.runs.flatMap((run) => run.noReps.map((noRep) => [noRep.number, noRep.seconds?.estimate ?? null] as const)),
  );
  let counted = 0;
  return course.laps.map((lap) => {
    const countedBefore = counted;
    if (lap.counted) counted += 1;
    const { attempt, number } = lap;
    return {
      number,
      pad: attempt.ref.pad,
      seq: attempt.ref.seq,
      at: attempt.at,
      verdict: attempt.verdict,
      faults: attempt.faults,
      reversed: attempt.verdict !== attempt.first.verdict,
      counted,
      cycle: lap.own === null ? null : lap.own / 1000,
      cleanCycle: lap.clean ? lap.gap / 1000 : null,
      expected: expected.at(number),
      progress: progressThrough(goal, { countedBefore, at: lap.at, number, attempts: course.laps.length }),
      cost: costOf.get(number) ?? null,
      run: runOf.get(number) ?? null,
    };
  });
}

/**
 * Progress at an attempt, 0 to 1: reps counted before it over the goal's reps; time over the goal's time; and for metres
 * and open sets, whose end is not known in reps, the attempt's place among the set's attempts.
 */
function progressThrough(
  goal: Goal | undefined,
  place: { countedBefore: number; at: number; number: number; attempts: number },
): number {
  if (goal?.kind === 'reps') return Math.min(1, place.countedBefore / goal.reps);
  if (goal?.kind === 'clock') return Math.min(1, place.at / goal.milliseconds);
  return (place.number - 0.5) / place.attempts;
}
