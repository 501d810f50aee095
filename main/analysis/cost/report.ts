import type { EstimateWithInterval } from '../interval.ts';
import type { CostMethod } from './expected-cycle.ts';

/** What a reader should know of a run's cost:
 * - `long-pause`: a long pause inside it that nobody marked as a break; it stays in the cost
 * - `unmarked-break-end`: a break inside it was closed by a call, so one expected cycle of it was given back
 * - `below-zero`: the run took less than a clean rep was expected to
 * - `set-running`: the set still runs and the run may go on
 * - `metres-unknown`: metres were taken back, but no mark tells the metres of a jump; their time is not in the cost
 * - `no-counted-rep`: the set has no counted rep to measure against; not estimable
 */
export type CostFlag =
  | 'long-pause'
  | 'unmarked-break-end'
  | 'below-zero'
  | 'set-running'
  | 'metres-unknown'
  | 'no-counted-rep';

/** One no-rep's part of its run's cost, seconds; null when the run's cost is not estimable. */
export type NoRepCost = {
  readonly number: number;
  readonly faults: readonly string[];
  /** Part of the run's cost, 0 to 1; the parts of a run add up to 1. */
  readonly share: number;
  readonly seconds: EstimateWithInterval | null;
};

/** A run of no-reps and what it cost, seconds. `cost` = `repeat` + `disruption` + `repeatedMetres` + `addedSeconds`. */
export type RunCost = {
  readonly attempts: readonly number[];
  readonly where: 'start' | 'within' | 'end';
  readonly cost: EstimateWithInterval | null;
  /** The attempts that did not count, at most one expected cycle each. */
  readonly repeat: number | null;
  /** The rest: reset, argument, lost rhythm. */
  readonly disruption: number | null;
  /** Time for the metres taken back, at the set's own metres a jump; 0 unless the sheet takes metres back. */
  readonly repeatedMetres: number | null;
  /** Added to the result by the sheet, not on the clock. */
  readonly addedSeconds: number;
  /** Of the cost, the pauses that nobody marked: each gap over three expected cycles, less one cycle. */
  readonly unmarkedPause: number;
  readonly flags: readonly CostFlag[];
  readonly noReps: readonly NoRepCost[];
};

/** What one fault cost in the set, seconds. `fault` is null for no-reps without a reason given. */
export type FaultCost = {
  readonly fault: string | null;
  readonly noReps: number;
  readonly seconds: EstimateWithInterval | null;
  /** Part of the set's cost; of its no-reps where the cost is not estimable or not above zero. */
  readonly share: number;
};

/** What the no-reps of a set cost. Seconds; plain data, fit for JSON. Null stands for "not estimable", never for zero. */
export type SetCost = {
  readonly method: CostMethod;
  readonly cleanCycles: number;
  readonly setAside: number;
  readonly earlierSets: number;
  /** The expected clean cycle at each attempt that stands, for drawing; empty when not estimable. */
  readonly curve: readonly { readonly number: number; readonly seconds: number }[];
  readonly total: EstimateWithInterval | null;
  readonly repeat: number | null;
  readonly disruption: number | null;
  readonly repeatedMetres: number | null;
  readonly addedSeconds: number;
  /** In a set against the clock: the reps that the lost time would have made at the expected cycle of its end. */
  readonly repsLost: EstimateWithInterval | null;
  readonly runs: readonly RunCost[];
  /** Dearest first. */
  readonly faults: readonly FaultCost[];
  readonly level: number;
  readonly resamples: number;
};
