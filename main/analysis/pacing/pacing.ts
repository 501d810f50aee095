import type { AttemptRow } from '../cost/attempt-table.ts';
import { sampleMedian } from '../distributions/sample-quantile.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, type Interval, levelError } from '../interval.ts';
import { newcombeDifference } from '../proportions/newcombe.ts';
import { theilSen } from '../regression/theil-sen.ts';
import { type Computed, computed, failed } from '../result.ts';

/** Attempts that stand and breaks of one set; break times in milliseconds since go, `end` null while it lasts. */
export type PacedSet = {
  readonly rows: readonly Pick<AttemptRow, 'number' | 'verdict' | 'cleanCycle'>[];
  readonly breaks: readonly { readonly start: number; readonly end: number | null }[];
  /** The set's clock, milliseconds. */
  readonly clock: number;
};

export type PaceVerdict = 'even' | 'fading' | 'rising' | 'cannot-tell';

/** How a set was paced. Seconds; shares are of the set's median clean cycle. */
export type Pacing = {
  readonly cleanCycles: number;
  readonly medianCycle: number;
  /** Medians of the clean cycles of the first and the last quarter of the attempts; null where a quarter has fewer than three. */
  readonly firstQuarter: number | null;
  readonly lastQuarter: number | null;
  /** Last quarter over first, less 1. */
  readonly quarterChange: number | null;
  /** Drift of the clean cycle from the first attempt to the last, by Theil-Sen, as a share of the median cycle. */
  readonly drift: EstimateWithInterval;
  readonly verdict: PaceVerdict;
  readonly breaks: { readonly count: number; readonly seconds: number; readonly longest: number };
  readonly start: FastStart | null;
  /** The verdict rests on common practice: the best hold an even pace, beginners start too fast and fade. No source. */
  readonly basis: 'common-practice';
};

/** Whether the set began faster than it went on, and whether no-reps came after it. */
export type FastStart = {
  /** First quarter's median over that of the rest, less 1; below zero is faster. */
  readonly change: number;
  readonly isFast: boolean;
  readonly noRepsFirstQuarter: { readonly count: number; readonly total: number };
  readonly noRepsAfter: { readonly count: number; readonly total: number };
  /** No-rep rate after the first quarter less that in it (Newcombe's hybrid score interval). */
  readonly rise: EstimateWithInterval;
  /** `yes`: a fast start, and more no-reps after it than chance would bring; `no`: no fast start, or surely not more. */
  readonly followed: 'yes' | 'no' | 'cannot-tell';
};

/** A drift or a start of less than this share of the cycle passes for even (our choice; no source). */
export const EVEN_SHARE = 0.05;
/** Fewer clean cycles than this have no drift. */
const FEWEST_CLEAN_CYCLES = 8;
const FEWEST_IN_QUARTER = 3;

/**
 * Pacing of a set from its clean cycles. Errors: `too-few-data` below eight clean cycles, `no-variation` when they take
 * no time, `invalid-input` for a level that is none.
 */
export function pacing({ rows, breaks, clock }: PacedSet, level = DEFAULT_LEVEL): Computed<Pacing> {
  const error = levelError(level);
  if (error) return error;
  const clean = rows.flatMap((row) =>
    row.cleanCycle === null ? [] : [{ number: row.number, seconds: row.cleanCycle }],
  );
  if (clean.length < FEWEST_CLEAN_CYCLES) {
    return failed('too-few-data', `A pace needs ${FEWEST_CLEAN_CYCLES} clean cycles; there are ${clean.length}.`);
  }
  const medianCycle = sampleMedian(clean.map((cycle) => cycle.seconds)) ?? 0;
  if (medianCycle <= 0) return failed('no-variation', 'The clean cycles take no time.');
  const line = theilSen(
    clean.map((cycle) => cycle.number),
    clean.map((cycle) => cycle.seconds),
    level,
  );
  if (!line.ok) return line;
  const span = (rows.at(-1)?.number ?? 1) - (rows[0]?.number ?? 1);
  const { slope } = line.value;
  // With few pairs the line's limits are open; a cycle cannot change by more than all of itself ten times over.
  const share = (value: number) => Math.max(-10, Math.min(10, (value * span) / medianCycle));
  const drift = { estimate: share(slope.estimate), lower: share(slope.lower), upper: share(slope.upper), level };
  const firstQuarter = quarterMedian(clean, (place) => place <= 0.25, rows);
  const lastQuarter = quarterMedian(clean, (place) => place > 0.75, rows);
  const lengths = breaks.map((item) => Math.max(0, (item.end ?? clock) - item.start) / 1000);
  return computed({
    cleanCycles: clean.length,
    medianCycle,
    firstQuarter,
    lastQuarter,
    quarterChange:
      firstQuarter !== null && lastQuarter !== null && firstQuarter > 0 ? lastQuarter / firstQuarter - 1 : null,
    drift,
    verdict: verdictOf(drift.estimate, drift),
    breaks: {
      count: lengths.length,
      seconds: lengths.reduce((sum, seconds) => sum + seconds, 0),
      longest: Math.max(0, ...lengths),
    },
    start: fastStart(clean, rows, firstQuarter, level),
    basis: 'common-practice',
  });
}

/** Fading or rising where the drift is beyond chance and not small; even where it is surely within twice what passes. */
function verdictOf(drift: number, { lower, upper }: Interval): PaceVerdict {
  if (lower > 0 && drift >= EVEN_SHARE) return 'fading';
  if (upper < 0 && drift <= -EVEN_SHARE) return 'rising';
  return lower > -2 * EVEN_SHARE && upper < 2 * EVEN_SHARE ? 'even' : 'cannot-tell';
}

type Cycle = { readonly number: number; readonly seconds: number };

function placeOf(number: number, rows: PacedSet['rows']): number {
  return number / rows.length;
}

function quarterMedian(
  clean: readonly Cycle[],
  isIn: (place: number) => boolean,
  rows: PacedSet['rows'],
): number | null {
  const seconds = clean.filter((cycle) => isIn(placeOf(cycle.number, rows))).map((cycle) => cycle.seconds);
  return seconds.length >= FEWEST_IN_QUARTER ? (sampleMedian(seconds) ?? null) : null;
}

function fastStart(
  clean: readonly Cycle[],
  rows: PacedSet['rows'],
  first: number | null,
  level: number,
): FastStart | null {
  const rest = quarterMedian(clean, (place) => place > 0.25, rows);
  if (first === null || rest === null || rest <= 0) return null;
  const early = rows.filter((row) => placeOf(row.number, rows) <= 0.25);
  const later = rows.filter((row) => placeOf(row.number, rows) > 0.25);
  const noRepsFirstQuarter = { count: noRepsIn(early), total: early.length };
  const noRepsAfter = { count: noRepsIn(later), total: later.length };
  const rise = newcombeDifference(noRepsAfter, noRepsFirstQuarter, { level });
  if (!rise.ok) return null;
  const change = first / rest - 1;
  const isFast = change <= -EVEN_SHARE;
  const followed = !isFast || rise.value.upper <= 0 ? 'no' : rise.value.lower > 0 ? 'yes' : 'cannot-tell';
  return { change, isFast, noRepsFirstQuarter, noRepsAfter, rise: rise.value, followed };
}

function noRepsIn(rows: PacedSet['rows']): number {
  return rows.filter((row) => row.verdict === 'no-rep').length;
}
