import { z } from 'zod';
import { before } from '../../log/setup.ts';
import { estimate } from '../reports.ts';

/**
 * Figures that the views of the Review area share. Rates are shares of attempts, 0 to 1; intervals are 95 % unless a field
 * says otherwise; `at` is milliseconds since 1970 UTC; fields in `…S` are seconds, in `…Ms` milliseconds, `per100S` seconds
 * per 100 counted reps. Null stands for "cannot be told", never for zero.
 */

/** Why a figure cannot be told. */
export const why = z.enum([
  /** No set matches. */
  'no-sets',
  /** The sets hold no attempt (of the kind that the figure needs). */
  'no-attempts',
  /** Fewer sets than the method needs. */
  'few-sets',
  /** Fewer attempts than the method needs. */
  'few-attempts',
  /** Not one no-rep among the attempts. */
  'no-no-reps',
  /** Not one attempt that counted. */
  'only-no-reps',
  /** All sets, or all attempts, lie at the same place of the scale. */
  'no-spread',
  /** No other judge has judged the same athletes. */
  'no-others',
  /** No set's cost or clean cycle could be estimated. */
  'no-cost',
  /** A goal without an end, or one that these sets say nothing of. */
  'goal-unknown',
  /** The method found no answer. */
  'not-computable',
]);
export type Why = z.infer<typeof why>;

/** Attempts still to come before a difference like the one seen could be told (power 80 %, 5 %); null beyond a million. */
const stillNeeded = z.number().int().min(0).nullable();

/** The four lines of a time ledger, whole milliseconds. */
const timeLedger = z.object({
  startMs: z.number().int(),
  workMs: z.number().int(),
  noRepMs: z.number().int(),
  breakMs: z.number().int(),
});

export const totals = z.object({
  sets: z.number().int(),
  /** Go of the first and of the last set; null without a set. */
  firstAt: z.number().int().nullable(),
  lastAt: z.number().int().nullable(),
  attempts: z.number().int(),
  counted: z.number().int(),
  cautions: z.number().int(),
  noReps: z.number().int(),
  unexplained: z.number().int(),
  reversals: z.number().int(),
  slips: z.number().int(),
  breaks: z.number().int(),
  clockMs: z.number().int(),
  ledger: timeLedger,
  /** Wilson interval, its size of sample divided by `designEffect` (Rao & Scott 1992); null without an attempt. */
  rate: estimate.nullable(),
  /** How many times wider than binomial the rates of the sets vary, as a ratio of variances; at least 1. */
  designEffect: z.number(),
});
export type ReviewTotals = z.infer<typeof totals>;

/** What the no-reps cost; sums over the sets whose cost could be estimated. */
export const cost = z.object({
  setsWithCost: z.number().int(),
  /** Seconds of those sets together. */
  totalS: estimate.nullable(),
  per100S: estimate.nullable(),
  /** Mean seconds of one no-rep. */
  perNoRepS: estimate.nullable(),
  repeatS: z.number().nullable(),
  disruptionS: z.number().nullable(),
});
export type ReviewCost = z.infer<typeof cost>;

/** One set on the chart of rates over time, and its line in the table of time ledgers. Views hold the latest 1,000, oldest first. */
export const setPoint = z.object({
  id: z.uuid(),
  at: z.number().int(),
  athlete: z.uuid(),
  judge: z.uuid(),
  sheet: z.string(),
  loadKg: z.number().nullable(),
  heightM: z.number().nullable(),
  before,
  attempts: z.number().int(),
  counted: z.number().int(),
  noReps: z.number().int(),
  unexplained: z.number().int(),
  breaks: z.number().int(),
  /** Wilson interval; null without an attempt. */
  rate: estimate.nullable(),
  /** Limits of the p'-chart (Laney 2002), 0 to 1; null with fewer than two sets or where all attempts ended alike. */
  limits: z.object({ low: z.number(), high: z.number() }).nullable(),
  outside: z.boolean(),
  clockMs: z.number().int(),
  ledger: timeLedger.nullable(),
  costS: estimate.nullable(),
  per100S: z.number().nullable(),
  /** Median clean cycle, seconds. */
  cleanS: z.number().nullable(),
});
export type SetPoint = z.infer<typeof setPoint>;

/** A span of the calendar (UTC) with all its sets together, where sets are too many to show one by one. */
export const spanPoint = setPoint
  .pick({ attempts: true, counted: true, noReps: true, rate: true, limits: true, outside: true })
  .extend({ from: z.number().int(), to: z.number().int(), sets: z.number().int(), per100S: z.number().nullable() });
export type SpanPoint = z.infer<typeof spanPoint>;

/** A place of a fitted curve with its pointwise band. `x` in the curve's own unit. */
const curvePoint = z.object({ x: z.number(), value: z.number(), low: z.number(), high: z.number() });

const fitMethod = z.enum(['maximum-likelihood', 'penalised-likelihood']);

/**
 * The rate over time: logistic regression on the date of the set, with over-dispersion (quasi-binomial, never below 1)
 * and Student's t; the test of Cochran and Armitage, which knows no over-dispersion, stands beside it as a check.
 */
export const trend = z.object({
  /** The centre line of the p'-chart. */
  centre: z.number().nullable(),
  sigmaZ: z.number().nullable(),
  /** `x` is the date in milliseconds since 1970 UTC; empty where nothing was fitted. */
  curve: z.array(curvePoint),
  fitted: z
    .object({
      method: fitMethod,
      fromAt: z.number().int(),
      toAt: z.number().int(),
      /** The fitted rate at the first set and at the last. */
      from: estimate,
      to: estimate,
      /** `to` less `from`: below 0 where no-reps have become rarer. */
      difference: estimate,
      dispersion: z.number(),
      pValue: z.number(),
      checkPValue: z.number().nullable(),
    })
    .nullable(),
  verdict: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('fewer') }),
    z.object({ kind: z.literal('more') }),
    z.object({ kind: z.literal('unclear'), stillNeeded }),
    z.object({ kind: z.literal('too-few'), why }),
  ]),
});
export type Trend = z.infer<typeof trend>;

/** One fault over all sets; a no-rep with two faults counts half for each. `code` is '' for no-reps not explained. */
export const reason = z.object({
  sheet: z.string(),
  code: z.string(),
  /** Name, cue and remedy by the sheet's latest version that knows the fault; '' where there is none. */
  name: z.string(),
  cue: z.string(),
  remedy: z.string(),
  noReps: z.number(),
  /** Share of all no-reps, 0 to 1. */
  share: z.number(),
  /** Sets in which it happened. */
  sets: z.number().int(),
  /** Seconds over the sets whose cost could be estimated. */
  seconds: z.number().nullable(),
  /** Over the counted reps of all sets with a cost, so that the lines add up to the cost's own `per100S`. */
  per100S: estimate.nullable(),
  /** The latest sets in which it happened, latest first, at most 20. */
  latest: z.array(z.uuid()),
});
export type Reason = z.infer<typeof reason>;

export const reasons = z.object({
  /** By `per100S`, dearest first; then by number of no-reps. */
  lines: z.array(reason),
  /**
   * Where the intervals come from: `between-sets`, the ratio of seconds to counted reps with its variance between sets
   * (Cochran 1977, 6.3, Student's t); `within-sets`, below five sets, the sets' own bootstrap intervals combined (squared
   * and added). Null without any.
   */
  intervals: z.enum(['between-sets', 'within-sets']).nullable(),
  setsWithCost: z.number().int(),
  counted: z.number().int(),
});
export type Reasons = z.infer<typeof reasons>;

/** A bin of a scale. `to` is null for the open last one. */
const bin = z.object({
  from: z.number(),
  to: z.number().nullable(),
  attempts: z.number().int(),
  noReps: z.number().int(),
  rate: estimate.nullable(),
});

/**
 * How the rate goes with a scale: counts in bins and a logistic curve whose band is robust to the attempts of one set
 * hanging together (Liang & Zeger 1986; for a judge's drift, those of one session).
 */
const dependence = z.object({
  bins: z.array(bin),
  curve: z.array(curvePoint),
  fitted: z
    .object({
      method: fitMethod,
      clusters: z.number().int(),
      /** The two places of the scale that `from` and `to` are given at. */
      fromX: z.number(),
      toX: z.number(),
      from: estimate,
      to: estimate,
      /** `to` less `from`. */
      difference: estimate,
      /** Odds of a no-rep at `toX` over those at `fromX`. */
      oddsRatio: estimate,
      pValue: z.number(),
    })
    .nullable(),
});

/** `flat`: the 90 % interval of the odds ratio lies within 2/3 to 3/2, two one-sided tests (Schuirmann 1987). */
export const slopeVerdict = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('rises') }),
  z.object({ kind: z.literal('falls') }),
  z.object({ kind: z.literal('flat') }),
  z.object({ kind: z.literal('unclear'), stillNeeded }),
  z.object({ kind: z.literal('too-few'), why }),
]);
export type SlopeVerdict = z.infer<typeof slopeVerdict>;

/** Where in the set: `x` runs from 0 at go to 1 at the end; ten bins; from 0 to 1. */
export const place = dependence.extend({ verdict: slopeVerdict });
export type Place = z.infer<typeof place>;

/**
 * No-rep by own pace: `x` is the attempt's own cycle over the clean cycle expected there, below 1 when quicker. Only
 * attempts after a counted rep are taken: a no-rep makes the next cycle longer. Fitted from 0.5 to 1.5; `fromX` is a tenth
 * quicker than expected (0.9), `toX` a tenth slower (1.1). `hurried`: the quicker, the more no-reps; `slow`: the slower.
 */
export const hurry = dependence.extend({
  verdict: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('hurried') }),
    z.object({ kind: z.literal('slow') }),
    z.object({ kind: z.literal('flat') }),
    z.object({ kind: z.literal('unclear'), stillNeeded }),
    z.object({ kind: z.literal('too-few'), why }),
  ]),
});
export type Hurry = z.infer<typeof hurry>;

/** What to train first: the fault that costs most, why, and how sure that is. */
export const train = z.object({
  sheet: z.string(),
  code: z.string(),
  name: z.string(),
  cue: z.string(),
  remedy: z.string(),
  noReps: z.number(),
  per100S: estimate.nullable(),
  /** Its share of all explained no-reps' seconds, 0 to 1; of the no-reps themselves where `by` is `no-reps`. */
  share: z.number(),
  /** Ordered by seconds, or by number where no cost could be estimated. */
  by: z.enum(['seconds', 'no-reps']),
  /**
   * Probability that it costs the most, 0 to 1: the share of bootstrap resamples of whole sets in which it stays first; below
   * five sets, from draws of the no-reps' number and costs. Null where not estimable.
   */
  sure: z.number().nullable(),
  /** The fault that comes second; null where there is only one. */
  next: z.object({ sheet: z.string(), code: z.string(), name: z.string(), per100S: estimate.nullable() }).nullable(),
});
export type Train = z.infer<typeof train>;

/** The attempts of one set as a row of a picture: a character an attempt as in `SetLine.ribbon`, and its own cycle. */
export const pictureRow = z.object({
  id: z.uuid(),
  at: z.number().int(),
  marks: z.string(),
  /** Seconds, one an attempt; null where the cycle tells nothing. */
  cyclesS: z.array(z.number().nullable()),
});
export type PictureRow = z.infer<typeof pictureRow>;
