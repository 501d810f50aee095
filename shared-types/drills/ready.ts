import { z } from 'zod';
import type { estimate } from '../contract/reports.ts';

/** What a gym asks of a judge before they judge, for each fault of a sheet. Null: not asked. */
export const readyBounds = z.strictObject({
  /** Least sensitivity d' (in standard deviations). */
  leastDPrime: z.number().min(0).max(10).nullable(),
  /** Most bias: the criterion c lies within this much of 0 (in standard deviations). */
  mostCriterion: z.number().min(0).max(10).nullable(),
  /** The strictness lies within this much of the sheet's line, in the fault's unit. */
  mostStrictness: z.number().min(0).max(1_000).nullable(),
  /** The precision is at most this, in the fault's unit. */
  mostPrecision: z.number().min(0).max(1_000).nullable(),
});
export type ReadyBounds = z.infer<typeof readyBounds>;

export const readyCriteria = z.strictObject({
  /** Reps called of which the fault can be told, before anything is said. */
  leastTrials: z.number().int().min(1).max(10_000),
  /** Drills older than this say nothing any more. */
  days: z.number().int().min(1).max(10_000),
  /** `estimate`: the estimate keeps the bound. `interval`: the whole 95 % interval does. */
  by: z.enum(['estimate', 'interval']),
  /** By the unit of the fault's margin. */
  units: z.strictObject({ cm: readyBounds, ms: readyBounds, degrees: readyBounds }),
  /** In place of the unit's, for single faults of single sheets. `asked` false leaves the fault out. */
  faults: z
    .array(
      z.strictObject({ sheet: z.string().max(64), code: z.string().max(24), asked: z.boolean(), bounds: readyBounds }),
    )
    .max(500),
});
export type ReadyCriteria = z.infer<typeof readyCriteria>;

/** Our own choice, no source: a gym sets its own. */
export const usualCriteria: ReadyCriteria = {
  leastTrials: 30,
  days: 120,
  by: 'estimate',
  units: {
    cm: { leastDPrime: 1.5, mostCriterion: 0.6, mostStrictness: 4, mostPrecision: 6 },
    ms: { leastDPrime: 1, mostCriterion: 0.8, mostStrictness: 50, mostPrecision: 70 },
    degrees: { leastDPrime: 1.2, mostCriterion: 0.7, mostStrictness: 8, mostPrecision: 12 },
  },
  faults: [],
};

export const readyMeasure = z.enum(['d-prime', 'criterion', 'strictness', 'precision']);
export type ReadyMeasure = z.infer<typeof readyMeasure>;

/** What the criteria say of one fault. */
export const readyVerdict = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('ready') }),
  /** The measures that miss their bound. */
  z.object({ kind: z.literal('not-ready'), misses: z.array(readyMeasure) }),
  /** Nothing misses its bound for sure, but these cannot be told yet. */
  z.object({ kind: z.literal('unclear'), open: z.array(readyMeasure) }),
  z.object({ kind: z.literal('too-few'), trials: z.number().int(), needed: z.number().int() }),
  z.object({ kind: z.literal('not-asked') }),
]);
export type ReadyVerdict = z.infer<typeof readyVerdict>;

type Estimate = z.infer<typeof estimate>;

/** The measures of a fault that the criteria look at; null where the calls can't tell. */
export interface ReadyFigures {
  readonly trials: number;
  readonly dPrime: Estimate | null;
  readonly criterion: Estimate | null;
  readonly strictness: Estimate | null;
  readonly precision: Estimate | null;
}

/** The bounds for a fault, or null where the gym does not ask for it. */
export function boundsFor(
  criteria: ReadyCriteria,
  sheet: string,
  code: string,
  unit: 'cm' | 'ms' | 'degrees',
): ReadyBounds | null {
  const own = criteria.faults.find((item) => item.sheet === sheet && item.code === code);
  if (own === undefined) return criteria.units[unit];
  return own.asked ? own.bounds : null;
}

/** Whether a judge is ready for one fault. */
export function readyFor(figures: ReadyFigures, bounds: ReadyBounds | null, criteria: ReadyCriteria): ReadyVerdict {
  if (bounds === null) return { kind: 'not-asked' };
  if (figures.trials < criteria.leastTrials) {
    return { kind: 'too-few', trials: figures.trials, needed: criteria.leastTrials - figures.trials };
  }
  const sure = criteria.by === 'interval';
  const checks: [ReadyMeasure, 'kept' | 'missed' | 'open'][] = [
    ['d-prime', atLeast(figures.dPrime, bounds.leastDPrime, sure)],
    ['criterion', within(figures.criterion, bounds.mostCriterion, sure)],
    ['strictness', within(figures.strictness, bounds.mostStrictness, sure)],
    ['precision', within(figures.precision, bounds.mostPrecision, sure)],
  ];
  const named = (state: string) => checks.filter(([, found]) => found === state).map(([measure]) => measure);
  const [misses, open] = [named('missed'), named('open')];
  if (misses.length > 0) return { kind: 'not-ready', misses };
  return open.length > 0 ? { kind: 'unclear', open } : { kind: 'ready' };
}

function atLeast(figure: Estimate | null, bound: number | null, sure: boolean) {
  if (bound === null) return 'kept';
  if (figure === null) return 'open';
  if ((sure ? figure.low : figure.value) >= bound) return 'kept';
  return !sure || figure.high < bound ? 'missed' : 'open';
}

function within(figure: Estimate | null, bound: number | null, sure: boolean) {
  if (bound === null) return 'kept';
  if (figure === null) return 'open';
  if (!sure) return Math.abs(figure.value) <= bound ? 'kept' : 'missed';
  if (figure.low >= -bound && figure.high <= bound) return 'kept';
  return figure.low > bound || figure.high < -bound ? 'missed' : 'open';
}
