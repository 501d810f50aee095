import type { Verdict } from '../../shared-types/log/events.ts';
import type { Phase } from '../../shared-types/log/state.ts';

/** The sums of one set, as the reports read them: derived from its log, and built again whenever that has grown. */
export interface SetFacts {
  readonly phase: Phase;
  /** Wall clock at go, milliseconds since 1970 UTC; null before go. */
  readonly startedAt: number | null;
  /** Milliseconds from go to the end, or to the last event while there is none. */
  readonly clockMs: number;
  readonly attempts: number;
  readonly counted: number;
  readonly cautions: number;
  readonly noReps: number;
  readonly unexplained: number;
  readonly metres: number;
  readonly reversals: number;
  readonly slips: number;
  readonly breaks: number;
  /** The time ledger's four lines in milliseconds; null until the set has ended. */
  readonly ledger: {
    readonly startMs: number;
    readonly workMs: number;
    readonly noRepMs: number;
    readonly breakMs: number;
  } | null;
  readonly cleanCycles: number;
  /** Median clean cycle in milliseconds; null without one. */
  readonly cleanMedianMs: number | null;
  /** What all no-reps of the set cost, in seconds; null where it cannot be estimated. Bounds are null without an interval. */
  readonly cost: {
    readonly seconds: number;
    readonly low: number | null;
    readonly high: number | null;
    readonly repeatSeconds: number;
    readonly disruptionSeconds: number;
  } | null;
}

/** A fault's share of one set. `seconds` is null where the cost cannot be estimated. */
export interface ReasonFact {
  readonly fault: string;
  readonly noReps: number;
  readonly seconds: number | null;
}

/** One attempt that stands (slips are left out), numbered from 1. */
export interface AttemptFact {
  readonly number: number;
  /** Milliseconds since go. */
  readonly at: number;
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  /** Time since the previous attempt (or since go), milliseconds; null where it tells nothing. */
  readonly cycleMs: number | null;
  /** The clean cycle expected at this point, milliseconds; null where it cannot be estimated. */
  readonly expectedMs: number | null;
  /** Whether a clean cycle ends here. */
  readonly clean: boolean;
  /** Place in the set, 0 at go and 1 at the end. */
  readonly progress: number;
  /** This no-rep's share of the cost in seconds; null where it is none or cannot be estimated. */
  readonly costSeconds: number | null;
}

/**
 * Counts of attempts are also kept in bins, so that a report over everyone need not read every attempt. `progress`: twenty
 * equal parts of the set, 0 to 19. `pace`: the attempt's own cycle over the one expected there, in steps of 0.05, the last bin (40, twice as long) open; only
 * for attempts after a counted rep, because a no-rep makes the next cycle longer.
 */
export const scales = {
  progress: { bins: 20, width: 0.05 },
  pace: { bins: 41, width: 0.05 },
} as const;
export type Scale = keyof typeof scales;

/** The bin of an attempt on a scale; null where it has no place there. `previous`: the attempt before it, for `pace`. */
export function binOf(attempt: AttemptFact, scale: Scale, previous?: AttemptFact): number | null {
  const value = valueOn(scale, attempt, previous);
  if (value === null) return null;
  const { bins, width } = scales[scale];
  return Math.min(bins - 1, Math.max(0, Math.floor(value / width + 1e-9)));
}

function valueOn(scale: Scale, attempt: AttemptFact, previous: AttemptFact | undefined): number | null {
  const { progress, cycleMs, expectedMs } = attempt;
  switch (scale) {
    case 'progress':
      return progress;
    case 'pace':
      if (previous === undefined || previous.verdict === 'no-rep') return null;
      return cycleMs === null || expectedMs === null || expectedMs <= 0 ? null : cycleMs / expectedMs;
  }
}

/** Columns of `set_facts` that hold the sums, in the words of the table. */
export interface FactColumns {
  phase: string;
  started_at: number | null;
  clock_ms: number;
  attempts: number;
  counted: number;
  cautions: number;
  no_reps: number;
  unexplained: number;
  metres: number;
  reversals: number;
  slips: number;
  breaks: number;
  start_ms: number | null;
  work_ms: number | null;
  no_rep_ms: number | null;
  break_ms: number | null;
  clean_cycles: number;
  clean_median_ms: number | null;
  cost_s: number | null;
  cost_low_s: number | null;
  cost_high_s: number | null;
  repeat_s: number | null;
  disruption_s: number | null;
}

export const factColumns = [
  'phase',
  'started_at',
  'clock_ms',
  'set_facts.attempts',
  'counted',
  'cautions',
  'no_reps',
  'unexplained',
  'metres',
  'reversals',
  'slips',
  'breaks',
  'start_ms',
  'work_ms',
  'no_rep_ms',
  'break_ms',
  'clean_cycles',
  'clean_median_ms',
  'cost_s',
  'cost_low_s',
  'cost_high_s',
  'repeat_s',
  'disruption_s',
] as const;

export function asFacts(row: FactColumns): SetFacts {
  const { start_ms: startMs, work_ms: workMs, no_rep_ms: noRepMs, break_ms: breakMs } = row;
  const split = startMs !== null && workMs !== null && noRepMs !== null && breakMs !== null;
  return {
    phase: row.phase as Phase,
    startedAt: row.started_at,
    clockMs: row.clock_ms,
    attempts: row.attempts,
    counted: row.counted,
    cautions: row.cautions,
    noReps: row.no_reps,
    unexplained: row.unexplained,
    metres: row.metres,
    reversals: row.reversals,
    slips: row.slips,
    breaks: row.breaks,
    ledger: split ? { startMs, workMs, noRepMs, breakMs } : null,
    cleanCycles: row.clean_cycles,
    cleanMedianMs: row.clean_median_ms,
    cost:
      row.cost_s === null
        ? null
        : {
            seconds: row.cost_s,
            low: row.cost_low_s,
            high: row.cost_high_s,
            repeatSeconds: row.repeat_s ?? 0,
            disruptionSeconds: row.disruption_s ?? 0,
          },
  };
}

export function asColumns(facts: SetFacts): FactColumns {
  return {
    phase: facts.phase,
    started_at: facts.startedAt,
    clock_ms: facts.clockMs,
    attempts: facts.attempts,
    counted: facts.counted,
    cautions: facts.cautions,
    no_reps: facts.noReps,
    unexplained: facts.unexplained,
    metres: facts.metres,
    reversals: facts.reversals,
    slips: facts.slips,
    breaks: facts.breaks,
    start_ms: facts.ledger?.startMs ?? null,
    work_ms: facts.ledger?.workMs ?? null,
    no_rep_ms: facts.ledger?.noRepMs ?? null,
    break_ms: facts.ledger?.breakMs ?? null,
    clean_cycles: facts.cleanCycles,
    clean_median_ms: facts.cleanMedianMs,
    cost_s: facts.cost?.seconds ?? null,
    cost_low_s: facts.cost?.low ?? null,
    cost_high_s: facts.cost?.high ?? null,
    repeat_s: facts.cost?.repeatSeconds ?? null,
    disruption_s: facts.cost?.disruptionSeconds ?? null,
  };
}
