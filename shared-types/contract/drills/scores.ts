import { z } from 'zod';
import { place } from '../../drills/drill.ts';
import { verdict } from '../../log/events.ts';
import { estimate } from '../reports.ts';

/**
 * What the scores of drills hold. Margins, strictness and precision are in the fault's unit and counted from the sheet's
 * tolerance: below 0 the rep is a no-rep. Rates are 0 to 1 with Wilson intervals; every interval is 95 %. Null stands for
 * "cannot be told", never for zero.
 */
const unit = z.enum(['cm', 'ms', 'degrees']);

/** Why a score cannot be told. */
export const drillWhy = z.enum([
  /** No rep was called. */
  'no-calls',
  /** Not one rep with the fault, or not one without, among those called. */
  'one-kind',
  /** Fewer calls than the method needs. */
  'few-calls',
  /** Every rep was called the same way. */
  'all-alike',
  /** The calls do not change with the margin: the eye does not see this fault from here. */
  'no-slope',
  /** The line lies beyond what the figure can show. */
  'beyond-shown',
]);
export type DrillWhy = z.infer<typeof drillWhy>;

/** Hits: faults called. False alarms: good reps taken away. */
export const detection = z.object({
  hits: z.number().int(),
  misses: z.number().int(),
  falseAlarms: z.number().int(),
  correctRejections: z.number().int(),
  hitRate: estimate.nullable(),
  falseAlarmRate: estimate.nullable(),
  /** Sensitivity and criterion with the log-linear correction (Hautus 1995); null with only one kind of rep. */
  dPrime: estimate.nullable(),
  /** Above 0: lets faults pass; below 0: takes good reps away. */
  criterion: estimate.nullable(),
});
export type Detection = z.infer<typeof detection>;

/** Milliseconds from the moment at which the verdict could be seen; below 0 the call came before it. Quartiles. */
export const reaction = z.object({
  calls: z.number().int(),
  medianMs: z.number().nullable(),
  lowMs: z.number().nullable(),
  highMs: z.number().nullable(),
});

/** What the strictness says in plain words. */
export const lineVerdict = z.discriminatedUnion('kind', [
  /** Lets faults of up to `by` through (the interval lies below 0). */
  z.object({ kind: z.literal('lenient'), by: z.number() }),
  /** Takes reps away that are good by up to `by` (the interval lies above 0). */
  z.object({ kind: z.literal('strict'), by: z.number() }),
  /** The interval holds 0 and is no wider than the judge's own precision either way. */
  z.object({ kind: z.literal('on-the-line') }),
  /** The interval holds 0 but is too wide to say so; reps still needed for half its width, by the square-root rule. */
  z.object({ kind: z.literal('unclear'), stillNeeded: z.number().int() }),
  z.object({ kind: z.literal('cannot-tell'), why: drillWhy }),
]);
export type LineVerdict = z.infer<typeof lineVerdict>;

/** One fault, seen from places of one name (or all together where `place` is null). */
export const faultScore = z.object({
  code: z.string(),
  name: z.string(),
  unit,
  place: place.shape.name.nullable(),
  /** Reps called from which this fault's line can be told. */
  trials: z.number().int(),
  /** A hit: the rep had the fault and was called a no-rep for it. */
  detection,
  /** The margin at which half the reps are called a no-rep; the posterior median. */
  strictness: estimate.nullable(),
  /** Standard deviation of what the judge sees around what is there; the posterior median. */
  precision: estimate.nullable(),
  verdict: lineVerdict,
  /** The fitted curve's chance of a no-rep over the margins shown; empty where there is none. */
  curve: z.array(z.object({ margin: z.number(), chance: z.number() })),
  /** The calls in bins of the margin, for the picture. */
  bins: z.array(z.object({ from: z.number(), to: z.number(), calls: z.number().int(), noReps: z.number().int() })),
});
export type FaultScore = z.infer<typeof faultScore>;

/** Of the faulty reps called a no-rep, those whose reason was right: every fault named was there, and at least one was. */
export const reasonScore = z.object({
  right: z.number().int(),
  of: z.number().int(),
  /** No-reps called without a reason, not in `of`. */
  unexplained: z.number().int(),
  rate: estimate.nullable(),
  /** True fault and named fault of the wrong ones, commonest first. */
  confusions: z.array(z.object({ truth: z.string(), named: z.string(), count: z.number().int() })),
});
export type ReasonScore = z.infer<typeof reasonScore>;

/** The same reps from a poor place and from the advised one. */
export const placeGain = z.object({
  code: z.string(),
  unit,
  pairs: z.number().int(),
  poor: faultScore,
  advised: faultScore,
  /** Right calls of all, from each place. */
  rightPoor: estimate.nullable(),
  rightAdvised: estimate.nullable(),
  /** Advised less poor, as shares of the pairs (Newcombe 1998, paired). */
  gain: estimate.nullable(),
  /** McNemar's exact test. */
  pValue: z.number().nullable(),
  /** Precision from the poor place over that from the advised one: above 1 the advised place is sharper. */
  precisionRatio: estimate.nullable(),
  verdict: z.enum(['advised-better', 'poor-better', 'unclear', 'too-few']),
});
export type PlaceGain = z.infer<typeof placeGain>;

/** One rep and what became of it. */
export const trialLine = z.object({
  trial: z.number().int(),
  place,
  /** Signed margins counted from the tolerance; null where the rep gave no occasion. */
  margins: z.record(z.string(), z.number().nullable()),
  truth: z.array(z.string()),
  /** Milliseconds since the rep, or the stream, began. */
  dueMs: z.number().int(),
  call: z.object({ afterMs: z.number().int(), verdict, faults: z.array(z.string()) }).nullable(),
  reactionMs: z.number().int().nullable(),
  outcome: z.enum(['hit', 'miss', 'false-alarm', 'correct-rejection', 'unanswered', 'spoilt']),
  /** Null where there is no reason to judge. */
  reasonRight: z.boolean().nullable(),
});
export type TrialLine = z.infer<typeof trialLine>;
