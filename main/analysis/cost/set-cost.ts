import type { Goal } from '../../../shared-types/log/setup.ts';
import type { SetState } from '../../../shared-types/log/state.ts';
import type { Consequence } from '../../../shared-types/sheets/sheet.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval } from '../interval.ts';
import { type Course, findRuns, readCourse } from './course.ts';
import { type CycleHistory, type ExpectedCycle, expectedCycle } from './expected-cycle.ts';
import { faultCosts } from './fault-cost.ts';
import { intervalAround, type RunPart, replicateRuns } from './replicates.ts';
import type { RunCost, SetCost } from './report.ts';
import { knownRun, unknownRun } from './run-cost.ts';
import { metresPerJump, type RunTerms, runTerms } from './run-terms.ts';

/** What the sums of a set need beside its log. */
export type SetCostOptions = {
  /** Milliseconds since go, for a set that still runs; its latest event otherwise. */
  readonly now?: number;
  /** What a no-rep entails by the sheet; `repeat` unless told otherwise. */
  readonly consequence?: Consequence;
  readonly goal?: Goal;
  /** The athlete's earlier clean cycles at this station and load, asked when the set has fewer than three of its own. */
  readonly history?: CycleHistory;
  /** Coverage of the intervals, above 0 and below 1; 0.95. */
  readonly level?: number;
  /** Bootstrap resamples, at least 1; 999. */
  readonly resamples?: number;
  readonly seed?: number;
};

const DEFAULT_RESAMPLES = 999;
const REPEAT: Consequence = { kind: 'repeat' };

/** The course of a set, its expected cycle and the sums of its runs: what ledger, cost and table are all read from. */
export type SetReading = {
  readonly course: Course;
  readonly expected: ExpectedCycle;
  /** Null when the expected cycle is not estimable. */
  readonly runs: readonly RunTerms[] | null;
};

/** Reads a set once for all its sums. */
export function readSet(state: SetState, options: SetCostOptions = {}): SetReading {
  const course = readCourse(state, options.now);
  const clean = course.laps.filter((lap) => lap.clean);
  const expected = expectedCycle(
    clean.map((lap) => ({ number: lap.number, seconds: lap.gap / 1000 })),
    options.history,
  );
  if (expected.method === 'not-estimable') return { course, expected, runs: null };
  const consequence = options.consequence ?? REPEAT;
  const perJump = consequence.kind === 'metres-back' ? metresPerJump(course, state.marks, consequence.metres) : null;
  const at = (attempt: number) => expected.at(attempt) ?? 0;
  const runs = findRuns(course.laps).map((run) => runTerms(course, run, at, consequence, perJump));
  return { course, expected, runs };
}

/** What the no-reps of a set cost on the clock, run by run and fault by fault (design of the sums in README.md). */
export function setCost(state: SetState, options: SetCostOptions = {}): SetCost {
  return costOfReading(readSet(state, options), options);
}

/** As `setCost`, from a set that is read already. */
export function costOfReading({ course, expected, runs }: SetReading, options: SetCostOptions = {}): SetCost {
  const level = options.level ?? DEFAULT_LEVEL;
  const resamples = Math.max(1, Math.floor(options.resamples ?? DEFAULT_RESAMPLES));
  const head = {
    method: expected.method,
    cleanCycles: expected.cleanCycles,
    setAside: expected.setAside,
    earlierSets: expected.earlierSets,
    level,
    resamples,
  };
  if (runs === null || (runs.length > 0 && !course.laps.some((lap) => lap.counted))) {
    const unknown = findRuns(course.laps).map((run) => unknownRun(course, run, options.consequence ?? REPEAT));
    return {
      ...head,
      curve: [],
      total: unknown.length === 0 ? { estimate: 0, lower: 0, upper: 0, level } : null,
      repeat: null,
      disruption: null,
      repeatedMetres: null,
      addedSeconds: sumOf(unknown, (run) => run.addedSeconds),
      repsLost: null,
      runs: unknown,
      faults: faultCosts(unknown, null, () => null),
    };
  }
  const at = (attempt: number) => expected.at(attempt) ?? 0;
  const estimates = runs.map((run) => run.terms.reduce((sum, term) => sum + term.expected * at(term.place), run.fixed));
  const replicates = replicateRuns(runs, expected, { level, resamples, seed: options.seed ?? 1 });
  const around = (parts: readonly RunPart[]): EstimateWithInterval => {
    const estimate = parts.reduce((sum, part) => sum + part.weight * (estimates[part.run] ?? 0), 0);
    return intervalAround(estimate, replicates, parts, level);
  };
  const costs = runs.map((terms, run) => knownRun(course, terms, around([{ run, weight: 1 }])));
  const total = around(runs.map((_, run) => ({ run, weight: 1 })));
  const last = course.laps.at(-1);
  const atEnd = last === undefined ? 0 : at(last.number);
  const isTimed = options.goal?.kind === 'clock' && atEnd > 0;
  return {
    ...head,
    curve: course.laps.map((lap) => ({ number: lap.number, seconds: at(lap.number) })),
    total,
    repeat: sumOf(costs, (cost) => cost.repeat),
    disruption: sumOf(costs, (cost) => cost.disruption),
    repeatedMetres: sumOf(costs, (cost) => cost.repeatedMetres),
    addedSeconds: sumOf(costs, (cost) => cost.addedSeconds),
    repsLost: isTimed ? around(runs.map((_, run) => ({ run, weight: 1 / atEnd }))) : null,
    runs: costs,
    faults: faultCosts(costs, total.estimate, around),
  };
}

function sumOf(runs: readonly RunCost[], part: (run: RunCost) => number | null): number {
  return runs.reduce((sum, run) => sum + (part(run) ?? 0), 0);
}
