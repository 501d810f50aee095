import { oc } from '@orpc/contract';
import { z } from 'zod';
import { failures } from './failures.ts';
import { cost, hurry, pictureRow, place, reasons, setPoint, totals, train, trend } from './review/figures.ts';
import { athleteFilter, judgeFilter, reviewFilter, stationName, subjects } from './review/filter.ts';
import { gymView, judgeView } from './review/judges.ts';
import { pacing } from './review/pacing.ts';
import { compareInput, comparison, forecast, forecastInput, raceCard, raceCardInput } from './review/plans.ts';

export const athleteInput = z.object({
  filter: athleteFilter,
  /** How many of the latest sets have their attempts in `picture` and their pace in `pacing`. */
  rows: z.number().int().min(1).max(200).default(40),
});
export const judgeInput = z.object({ filter: judgeFilter });
export const gymInput = z.object({ filter: reviewFilter });

export const athleteView = z.object({
  athlete: z.object({ id: z.uuid(), name: z.string() }),
  station: stationName,
  totals,
  cost,
  points: z.array(setPoint),
  trend,
  reasons,
  place,
  hurry,
  /** The latest sets, oldest first. */
  picture: z.array(pictureRow),
  pacing,
  train: train.nullable(),
});
export type AthleteView = z.infer<typeof athleteView>;

/** A view and what was asked of it, to be written to a file. */
export const exportInput = z.object({
  format: z.enum(['csv', 'json']),
  of: z.discriminatedUnion('view', [
    z.object({ view: z.literal('athlete'), ...athleteInput.shape }),
    z.object({ view: z.literal('judge'), ...judgeInput.shape }),
    z.object({ view: z.literal('gym'), ...gymInput.shape }),
    z.object({ view: z.literal('comparison'), ...compareInput.shape }),
    z.object({ view: z.literal('forecast'), ...forecastInput.shape }),
    z.object({ view: z.literal('race-card'), ...raceCardInput.shape }),
  ]),
});
export type ReviewExport = z.infer<typeof exportInput>;

/**
 * The Review area: figures over many sets. Every view answers an empty selection with zeros, nulls and a typed reason; an
 * athlete, judge or sheet that is not there is NOT_FOUND. Sums are as new as the figures of the sets, which follow the logs
 * within about a second. The same data give the same answer to the last digit.
 */
export const review = {
  subjects: oc.errors(failures).output(subjects),
  athlete: oc.errors(failures).input(athleteInput).output(athleteView),
  judge: oc.errors(failures).input(judgeInput).output(judgeView),
  gym: oc.errors(failures).input(gymInput).output(gymView),
  compare: oc.errors(failures).input(compareInput).output(comparison),
  forecast: oc.errors(failures).input(forecastInput).output(forecast),
  raceCard: oc.errors(failures).input(raceCardInput).output(raceCard),
  /**
   * The figures of a view as a file's text: JSON the view itself with what was asked; CSV a row a figure (`part`, `item`,
   * `figure`, `value`, `low`, `high`), RFC 4180.
   */
  export: oc
    .errors(failures)
    .input(exportInput)
    .output(z.object({ fileName: z.string(), mediaType: z.string(), text: z.string() })),
};
