import { oc } from '@orpc/contract';
import { z } from 'zod';
import { eventRef, verdict } from '../log/events.ts';
import { failures } from './failures.ts';

/** A figure with its interval, both in the unit of the field that holds it. */
export const estimate = z.object({ value: z.number(), low: z.number(), high: z.number() });
export type Estimate = z.infer<typeof estimate>;

/** One attempt of the ribbon and the table. Times in milliseconds since go, cycles and costs in seconds. */
export const attemptLine = z.object({
  ref: eventRef,
  /** 1, 2, … over the attempts that stand; null for a withdrawn one. */
  number: z.number().int().nullable(),
  at: z.number().int(),
  verdict,
  faults: z.array(z.string()),
  first: z.object({ verdict, faults: z.array(z.string()) }),
  withdrawn: z.boolean(),
  reversed: z.boolean(),
  cycleS: z.number().nullable(),
  clean: z.boolean(),
  expectedS: z.number().nullable(),
  costS: z.number().nullable(),
});
export type AttemptLine = z.infer<typeof attemptLine>;

const costFlag = z.enum([
  'long-pause',
  'unmarked-break-end',
  'below-zero',
  'set-running',
  'metres-unknown',
  'no-counted-rep',
]);

/** A run of no-reps between two counted reps and what it cost, seconds. */
const costRun = z.object({
  attempts: z.array(z.number().int()),
  where: z.enum(['start', 'within', 'end']),
  cost: estimate.nullable(),
  repeatS: z.number().nullable(),
  disruptionS: z.number().nullable(),
  /** Seconds of long pauses inside the run that nobody marked as a break; they stay in the cost. 0 if none. */
  unmarkedPauseS: z.number(),
  /** What a reader should know of this run: see `costFlag`. */
  flags: z.array(costFlag),
});

/** One fault of a set; a no-rep with two faults counts half for each. Code and name are empty for no-reps not explained. */
const reasonLine = z.object({
  code: z.string(),
  name: z.string(),
  noReps: z.number(),
  seconds: estimate.nullable(),
});

/** What to train first: the fault that costs most, and how sure that is. */
export const trainFirst = z.object({
  code: z.string(),
  name: z.string(),
  remedy: z.string(),
  cue: z.string(),
  noReps: z.number(),
  seconds: z.number().nullable(),
  /** Share of all the no-reps' seconds, 0 to 1; of the no-reps themselves where the cost cannot be estimated. */
  share: z.number(),
  /** Probability that this fault costs the most, 0 to 1, from draws of what each will cost again; null where not estimable. */
  sure: z.number().nullable(),
});

export const setReport = z.object({
  clockMs: z.number().int(),
  /** The clock with added seconds where the sheet adds them. */
  resultMs: z.number().int(),
  counts: z.object({
    attempts: z.number().int(),
    counted: z.number().int(),
    cautions: z.number().int(),
    noReps: z.number().int(),
    unexplained: z.number().int(),
    metres: z.number(),
  }),
  slips: z.number().int(),
  reversals: z.number().int(),
  clashes: z.array(z.string()),
  /** No-reps of attempts, 0 to 1, Wilson interval; null without an attempt. */
  rate: estimate.nullable(),
  reasons: z.array(reasonLine),
  /** Whole milliseconds; the four lines add up to `clockMs`. */
  ledger: z.object({
    startMs: z.number().int(),
    workMs: z.number().int(),
    noRepMs: z.number().int(),
    breakMs: z.number().int(),
  }),
  attempts: z.array(attemptLine),
  cost: z.object({
    method: z.enum(['local-fit', 'median', 'history', 'not-estimable']),
    cleanCycles: z.number().int(),
    total: estimate.nullable(),
    repeatS: z.number().nullable(),
    disruptionS: z.number().nullable(),
    /** Time for metres taken back, where the sheet takes them. */
    repeatedMetresS: z.number().nullable(),
    /** Seconds that the sheet adds to the result, not on the clock. */
    addedS: z.number(),
    /** In a set against the clock: reps that the time lost would have made. */
    repsLost: estimate.nullable(),
    runs: z.array(costRun),
  }),
  train: trainFirst.nullable(),
});
export type SetReport = z.infer<typeof setReport>;

export const reports = {
  set: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(setReport),
};
