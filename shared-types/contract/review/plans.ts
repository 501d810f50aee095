import { z } from 'zod';
import { goal } from '../../log/setup.ts';
import { estimate } from '../reports.ts';
import { cost, reason, totals, why } from './figures.ts';
import { athleteFilter, stationName } from './filter.ts';

/** What is asked of two spans or conditions. */
export const compareInput = z.object({ a: athleteFilter, b: athleteFilter });

const side = z.object({
  totals,
  cost,
  /** Median of the sets' median clean cycles, seconds. */
  cleanS: z.number().nullable(),
  /** The latest sets, latest first, at most 50. */
  latest: z.array(z.uuid()),
});

export const comparison = z.object({
  a: side,
  b: side,
  /** Sets that both sides hold: above 0 the two are not independent, and nothing is concluded from the difference. */
  shared: z.number().int(),
  /** Rate of a less rate of b: hybrid score interval (Newcombe 1998) on samples divided by their design effects. */
  difference: estimate.nullable(),
  /** Seconds per 100 counted reps of a less those of b. */
  per100S: estimate.nullable(),
  verdict: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('fewer-in-a') }),
    z.object({ kind: z.literal('fewer-in-b') }),
    /** `stillNeeded`: attempts more in b; null where no number, or none below a million, would do. */
    z.object({ kind: z.literal('unclear'), stillNeeded: z.number().int().min(0).nullable() }),
    z.object({ kind: z.literal('shared-sets') }),
    z.object({ kind: z.literal('too-few'), side: z.enum(['a', 'b']), why }),
  ]),
});
export type Comparison = z.infer<typeof comparison>;

/** `rate`: no-reps of attempts, 0 to below 1, to ask "if the rate were". */
export const forecastInput = z.object({ filter: athleteFilter, goal, rate: z.number().min(0).max(0.95).optional() });

/** A goal at one rate, from the latest 60 sets. Figures hold the mean of the draws and a 95 % prediction interval. */
export const scenario = z.object({
  name: z.enum(['present', 'half', 'given']),
  /** The present rate with its interval; half of it; or the given one, low and high alike. */
  rate: estimate,
  /** Attempts that will not count before the goal is reached. */
  noReps: estimate,
  /** Seconds that they will cost; null where a no-rep's cost is not known. */
  seconds: estimate.nullable(),
  /** For a goal against the clock: the reps that those seconds would have made. */
  repsLost: estimate.nullable(),
});
export type Scenario = z.infer<typeof scenario>;

export const forecast = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('forecast'),
    /** Counted reps that the goal takes: metres by the athlete's own metres a rep; against the clock those that will be made. */
    reps: z.number().int(),
    scenarios: z.array(scenario),
    perNoRepS: estimate.nullable(),
    from: z.object({ sets: z.number().int(), attempts: z.number().int(), noReps: z.number().int() }),
  }),
  z.object({ kind: z.literal('too-few'), why }),
]);
export type Forecast = z.infer<typeof forecast>;

export const raceCardInput = z.object({
  filter: athleteFilter,
  goal,
  /** The time wished for the whole station; null for one at the own usual pace. */
  wishedMs: z.number().int().min(1_000).max(86_400_000).nullable(),
});

/** Where the athlete should be: `reps` counted at `atMs` after go, then a break of `breakMs` (0 for none). */
const split = z.object({ reps: z.number().int(), atMs: z.number().int(), breakMs: z.number().int() });

export const racePlan = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('plan'),
    /** `easy`: no quicker than the own usual clean cycle; `stretch`: between that and the own quickest set. */
    effort: z.enum(['easy', 'stretch']),
    reps: z.number().int(),
    /** Seconds a rep, from call to call. */
    targetS: z.number(),
    totalMs: z.number().int(),
    startMs: z.number().int(),
    /** Time that the no-reps will take at the present rate, part of `totalMs`. */
    noRepMs: z.number().int(),
    splits: z.array(split),
  }),
  z.object({
    kind: z.literal('out-of-reach'),
    reps: z.number().int(),
    /** What the wished time would ask for; null where not even the no-reps and the start would fit in. */
    targetS: z.number().nullable(),
    /** The quickest total at the own quickest set's clean cycle, without a break. */
    quickestMs: z.number().int(),
  }),
  z.object({ kind: z.literal('too-few'), why }),
]);
export type RacePlan = z.infer<typeof racePlan>;

export const raceCard = z.object({
  athlete: z.string(),
  station: stationName,
  /** What the plan rests on: seconds, from the latest sets (at most 20). */
  own: z.object({
    sets: z.number().int(),
    /** Middle of the sets' median clean cycles, and the quickest of them. */
    cleanS: z.number().nullable(),
    quickestS: z.number().nullable(),
    startMs: z.number().int().nullable(),
    breaksPer100: z.number().nullable(),
    breakMs: z.number().int().nullable(),
  }),
  plan: racePlan,
  /** The athlete's own faults, dearest first, with the cue to shout. */
  faults: z.array(reason.pick({ code: true, name: true, cue: true, noReps: true, share: true, per100S: true })),
  forecast,
});
export type RaceCard = z.infer<typeof raceCard>;
