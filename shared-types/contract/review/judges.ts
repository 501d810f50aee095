import { z } from 'zod';
import { estimate } from '../reports.ts';
import {
  cost,
  hurry,
  place,
  reasons,
  setPoint,
  slopeVerdict,
  spanPoint,
  totals,
  train,
  trend,
  why,
} from './figures.ts';

/**
 * A judge's rate of no-reps beside the other judges' on the same athletes at the same stations. The difference is Mantel and
 * Haenszel's, stratified by athlete and station (Greenland & Robins 1985; variance by Sato 1989), times the over-dispersion
 * between sets. It is no proof of strictness: the athletes may have been in other form.
 */
export const beside = z.object({
  /** No-reps and attempts of the strata that both have. */
  own: z.object({ noReps: z.number(), attempts: z.number().int(), rate: z.number().nullable() }),
  others: z.object({ noReps: z.number(), attempts: z.number().int(), rate: z.number().nullable() }),
  strata: z.number().int(),
  /** Own less others', as a share of attempts, -1 to 1. */
  difference: estimate.nullable(),
  dispersion: z.number(),
  pValue: z.number().nullable(),
  /** `alike`: the 90 % interval lies within two no-reps in a hundred attempts either way (our own margin). */
  verdict: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('more') }),
    z.object({ kind: z.literal('fewer') }),
    z.object({ kind: z.literal('alike') }),
    /** `stillNeeded`: attempts more by this judge; null beyond a million. */
    z.object({ kind: z.literal('unclear'), stillNeeded: z.number().int().min(0).nullable() }),
    z.object({ kind: z.literal('too-few'), why }),
  ]),
});
export type Beside = z.infer<typeof beside>;

const share = z.object({ count: z.number().int(), per100: estimate.nullable() });

export const judgeView = z.object({
  judge: z.object({ id: z.uuid(), name: z.string() }),
  totals,
  points: z.array(setPoint),
  overall: beside,
  /** By fault, the most frequent first. */
  reasons: z.array(beside.extend({ sheet: z.string(), code: z.string(), name: z.string() })),
  /**
   * Over a session: sets of the judge less than three hours apart. `x` is hours since the session's first go; logistic
   * regression with the athlete's own rate under all judges beside it, robust by session; from 0 to the longest.
   */
  drift: place.extend({ verdict: slopeVerdict, sessions: z.number().int() }),
  /** Slips and reversals; `per100` attempts with Wilson interval. */
  slips: share,
  reversals: share,
  athletes: z.array(
    z.object({
      id: z.uuid(),
      name: z.string(),
      sets: z.number().int(),
      attempts: z.number().int(),
      noReps: z.number().int(),
    }),
  ),
});
export type JudgeView = z.infer<typeof judgeView>;

/** One athlete, judge or station in the gym's view. */
export const groupLine = z.object({
  id: z.string(),
  name: z.string(),
  sets: z.number().int(),
  attempts: z.number().int(),
  noReps: z.number().int(),
  /** Wilson interval on the attempts. */
  rate: estimate.nullable(),
  per100S: z.number().nullable(),
  lastAt: z.number().int(),
});
export type GroupLine = z.infer<typeof groupLine>;

export const gymView = z.object({
  totals,
  cost,
  /** The span of a point, chosen so that there are at most 130. */
  span: z.enum(['day', 'week', 'month', 'quarter']),
  points: z.array(spanPoint),
  trend,
  reasons,
  place,
  hurry,
  /** Which standard the gym must teach. */
  train: train.nullable(),
  athletes: z.array(groupLine),
  judges: z.array(groupLine),
  stations: z.array(groupLine),
});
export type GymView = z.infer<typeof gymView>;
