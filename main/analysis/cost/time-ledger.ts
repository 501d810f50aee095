import type { SetState } from '../../../shared-types/log/state.ts';
import { findRuns, type Lap, type Run } from './course.ts';
import { givenBack, type RunTerms } from './run-terms.ts';
import { readSet, type SetCostOptions, type SetReading } from './set-cost.ts';

/**
 * Where the set's time went, whole milliseconds; `start` + `work` + `noRep` + `break` = `clock`, and none is below zero.
 *
 * - `start`: from go to the first attempt's call, less breaks: the first clean cycle begins there at the earliest
 * - `break`: the breaks the judge marked; from one that a call closed an expected cycle goes back to the attempt's line
 * - `noRep`: what the no-reps cost on the clock, never below zero nor above a run's own time; with metres taken back, also
 *   the time of the jumps that repeated them, taken out of `work`
 * - `work`: the rest, from the first attempt to the end, the last unfinished attempt too
 *
 * `noRepBy` says how `noRep` was found: by the expected cycle, or, where that is not estimable, from the call before each
 * run (or the first no-rep's own call at the beginning) to its last no-rep's call.
 */
export type TimeLedger = {
  readonly clock: number;
  readonly start: number;
  readonly work: number;
  readonly noRep: number;
  readonly break: number;
  readonly noRepBy: 'expected-cycle' | 'calls';
  readonly running: boolean;
};

/** The time ledger of a set, up to `options.now` while it runs. Total: any state gives a ledger that adds up. */
export function timeLedger(state: SetState, options: SetCostOptions = {}): TimeLedger {
  return ledgerOfReading(readSet(state, options));
}

/** As `timeLedger`, from a set that is read already. */
export function ledgerOfReading({ course, expected, runs }: SetReading): TimeLedger {
  const { laps, tail, clock, running } = course;
  const at = (attempt: number) => expected.at(attempt) ?? 0;
  const active = laps.map((lap) => lap.gap - breakOf(lap, at));
  const start = laps.length > 0 ? (active[0] ?? 0) : tail.gap - tail.breaks;
  const breaks = laps.reduce((sum, lap) => sum + breakOf(lap, at), tail.breaks);
  const known = runs !== null && laps.some((lap) => lap.counted) ? runs : null;
  const runTime = known
    ? known.reduce((sum, terms) => sum + costOnClock(terms, active, at), 0)
    : findRuns(laps).reduce((sum, run) => sum + timeToLastCall(run, active), 0);
  const repeated = known?.reduce((sum, terms) => sum + terms.repeatedMetres * 1000, 0) ?? 0;
  const noRep = Math.min(runTime + Math.round(repeated), clock - start - breaks);
  return {
    clock,
    start,
    work: clock - start - breaks - noRep,
    noRep,
    break: breaks,
    noRepBy: known || laps.every((lap) => lap.counted) ? 'expected-cycle' : 'calls',
    running,
  };
}

function breakOf(lap: Lap, at: (attempt: number) => number): number {
  return lap.breaks - Math.min(lap.breaks, Math.round(givenBack(lap, at) * 1000));
}

/** A run's cost in whole milliseconds, between zero and the time that passed in it. */
function costOnClock(
  { run, fixed, terms, addedSeconds, repeatedMetres }: RunTerms,
  active: readonly number[],
  at: (attempt: number) => number,
): number {
  const cost = terms.reduce((sum, term) => sum + term.expected * at(term.place), fixed) - addedSeconds - repeatedMetres;
  return Math.max(0, Math.min(Math.round(cost * 1000), timeBetween(run, active, run.after ?? run.last)));
}

function timeToLastCall(run: Run, active: readonly number[]): number {
  return timeBetween(run, active, run.last);
}

/** Time of a run's laps up to and with lap `to`, less breaks; the first lap of the set belongs to the start. */
function timeBetween(run: Run, active: readonly number[], to: number): number {
  return active.slice(Math.max(1, run.first), to + 1).reduce((sum, gap) => sum + gap, 0);
}
