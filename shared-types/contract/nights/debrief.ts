import { z } from 'zod';
import { eventRef, verdict } from '../../log/events.ts';
import { goal } from '../../log/setup.ts';
import { estimate } from '../reports.ts';

const who = z.object({ id: z.uuid(), name: z.string() });

/** One athlete at one station. Finished sets have places; equal results share one ("2, 2, 4"). */
export const resultLine = z.object({
  place: z.number().int().nullable(),
  tied: z.boolean(),
  athlete: who,
  /** Null where the athlete did not start. */
  set: z.uuid().nullable(),
  heat: z.number().int().nullable(),
  lane: z.string().nullable(),
  state: z.enum(['finished', 'did-not-finish', 'did-not-start']),
  /** Go to the end; the same with added seconds where the sheet adds them. 0 without a set. */
  clockMs: z.number().int(),
  resultMs: z.number().int(),
  counted: z.number().int(),
  metres: z.number(),
  noReps: z.number().int(),
  /** Seconds that the no-reps cost; null where it cannot be estimated. */
  costS: z.number().nullable(),
});
export type ResultLine = z.infer<typeof resultLine>;

export const stationResults = z.object({
  station: z.object({ id: z.string(), name: z.string() }),
  goal,
  /** By time, or by counted reps or metres in a set against the clock or without a goal. */
  rankedBy: z.enum(['time', 'counted', 'metres']),
  lines: z.array(resultLine),
});
export type StationResults = z.infer<typeof stationResults>;

/** A coefficient with its interval, or why there is none, in words. */
const coefficient = z.object({ value: estimate.nullable(), why: z.string() });

/** What two judges, or all of them, made of the same attempts. Verdicts are the judge's own first ones. */
export const agreement = z.object({
  sets: z.number().int(),
  /** Attempts that both called. */
  pairs: z.number().int(),
  /** Attempts that the first (main) did not call and the second (shadow) did, and the other way round. */
  missedByFirst: z.number().int(),
  missedBySecond: z.number().int(),
  /** No-rep by both, by the first only, by the second only, by neither. */
  bothNoRep: z.number().int(),
  firstOnly: z.number().int(),
  secondOnly: z.number().int(),
  neither: z.number().int(),
  /** Same verdict (counted or not), share 0 to 1, Wilson interval; null without pairs. */
  agreed: estimate.nullable(),
  kappa: coefficient,
  ac1: coefficient,
  /** First less second, no-reps as a share of pairs (Newcombe's paired method 10); above 0: the first is stricter. */
  stricter: estimate.nullable(),
  /** McNemar's mid-p value; null where no pair differs. */
  mcNemarP: z.number().nullable(),
  /** Same fault named among the no-reps that both gave and explained. */
  sameReason: z.object({ count: z.number().int(), of: z.number().int() }),
  /** Seconds from the first judge's call to the second's: median and the middle half; null without pairs. */
  lagS: z.object({ median: z.number(), low: z.number(), high: z.number() }).nullable(),
});
export type Agreement = z.infer<typeof agreement>;

/** Alpha over the night: attempts as units, all judges; `withMisses` takes a missed call as a category of its own. */
const alpha = z.object({ verdicts: z.number().nullable(), withMisses: z.number().nullable(), why: z.string() });

const callAtLane = z.object({
  judge: who,
  ref: eventRef,
  at: z.number().int(),
  verdict,
  faults: z.array(z.string()),
});

/** An attempt worth talking about. Times in the sets' logs, milliseconds since each set's go. */
export const talkingPoint = z.object({
  heat: z.number().int(),
  lane: z.string(),
  athlete: who,
  station: z.string(),
  set: z.uuid(),
  shadowSet: z.uuid(),
  main: callAtLane.nullable(),
  shadow: callAtLane.nullable(),
  why: z.enum(['verdicts-differ', 'appealed', 'reasons-differ', 'missed']),
});
export type TalkingPoint = z.infer<typeof talkingPoint>;

export const debrief = z.object({
  night: z.object({ id: z.uuid(), name: z.string(), date: z.string() }),
  results: z.array(stationResults),
  overall: agreement,
  alpha,
  /** The matrix: two judges a line, the one whose id comes first is `first`; only those who stood together. */
  pairs: z.array(z.object({ first: who, second: who, agreement })),
  judges: z.array(
    z.object({
      judge: who,
      /** Lanes judged as main judge and as shadow. */
      asMain: z.number().int(),
      asShadow: z.number().int(),
      /** Against all partners together, this judge as first. */
      against: agreement,
    }),
  ),
  /** By fault, the one that divides the judges most first. */
  faults: z.array(
    z.object({
      sheet: z.string(),
      code: z.string(),
      name: z.string(),
      both: z.number().int(),
      /** Given by one judge of a pair and not by the other. */
      one: z.number().int(),
      /** Share of the attempts given this fault by anyone on which only one gave it, Wilson interval. */
      divided: estimate.nullable(),
    }),
  ),
  /** Up to three. */
  talk: z.array(talkingPoint),
});
export type Debrief = z.infer<typeof debrief>;
