import { z } from 'zod';
import { estimate } from '../reports.ts';
import { why } from './figures.ts';

/** `fading`: the cycles grow longer towards the end; `rising`: they grow shorter. */
const paceVerdict = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('even') }),
  z.object({ kind: z.literal('fading') }),
  z.object({ kind: z.literal('rising') }),
  z.object({ kind: z.literal('unclear') }),
  z.object({ kind: z.literal('too-few'), why }),
]);

/** Pace of one set, from its clean cycles. */
export const setPace = z.object({
  id: z.uuid(),
  at: z.number().int(),
  cleanCycles: z.number().int(),
  /** Median clean cycle of the first and of the last quarter of the set, seconds. */
  firstQuarterS: z.number().nullable(),
  lastQuarterS: z.number().nullable(),
  /** Change of the clean cycle from the first to the last, as a share of it: 0.1 is a tenth slower at the end. */
  change: estimate.nullable(),
  breaks: z.number().int(),
  breakMs: z.number().int().nullable(),
  verdict: paceVerdict,
});
export type SetPace = z.infer<typeof setPace>;

/** Pacing over the latest sets (as many as there are rows in the picture), oldest first. */
export const pacing = z.object({
  sets: z.array(setPace),
  overall: z.object({ change: estimate.nullable(), verdict: paceVerdict }),
  /**
   * Whether no-reps follow a fast start: no-rep rate after the first quarter of a set, over how much quicker the first
   * quarter was than the rest (logistic regression over sets with over-dispersion). `oddsRatio` is for a start a tenth
   * quicker.
   */
  fastStart: z.object({
    /** Sets whose first quarter was at least a twentieth quicker than the rest, and the others: what came after. */
    fast: z.object({ sets: z.number().int(), attempts: z.number().int(), noReps: z.number().int() }),
    others: z.object({ sets: z.number().int(), attempts: z.number().int(), noReps: z.number().int() }),
    oddsRatio: estimate.nullable(),
    pValue: z.number().nullable(),
    verdict: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('follow') }),
      z.object({ kind: z.literal('do-not-follow') }),
      z.object({ kind: z.literal('unclear') }),
      z.object({ kind: z.literal('too-few'), why }),
    ]),
  }),
});
export type Pacing = z.infer<typeof pacing>;
