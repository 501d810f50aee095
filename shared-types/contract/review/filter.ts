import { z } from 'zod';
import { before } from '../../log/setup.ts';

/**
 * Which sets a review is of: always ended sets of main judges, and no practice. An absent field does not narrow; a list
 * means any of its values. `from` and `to` are milliseconds since 1970 UTC by the set's go, `to` exclusive.
 */
export const reviewFilter = z.object({
  athlete: z.uuid().optional(),
  judge: z.uuid().optional(),
  /** A standard sheet in all its versions. */
  sheet: z.string().max(64).optional(),
  /** Kilograms; null for sets without a load. */
  loadsKg: z.array(z.number().nullable()).min(1).max(50).optional(),
  before: z.array(before).min(1).max(3).optional(),
  /** All of these tags. */
  tags: z.array(z.string().max(40)).max(12).optional(),
  from: z.number().int().optional(),
  to: z.number().int().optional(),
});
export type ReviewFilter = z.infer<typeof reviewFilter>;

/** One athlete at one station: cycles of different stations say nothing together. */
export const athleteFilter = reviewFilter.required({ athlete: true, sheet: true });
export type AthleteFilter = z.infer<typeof athleteFilter>;

export const judgeFilter = reviewFilter.required({ judge: true });
export type JudgeFilter = z.infer<typeof judgeFilter>;

const named = z.object({ id: z.uuid(), name: z.string() });

/** What a person has at one station, with the values that a filter can narrow by. Times: milliseconds since 1970 UTC. */
const subjectStation = z.object({
  sheet: z.string(),
  sets: z.number().int(),
  attempts: z.number().int(),
  noReps: z.number().int(),
  firstAt: z.number().int(),
  lastAt: z.number().int(),
  /** Rising; null (no load) first. */
  loadsKg: z.array(z.number().nullable()),
  before: z.array(before),
  /** The commonest first. */
  tags: z.array(z.object({ tag: z.string(), sets: z.number().int() })),
});

/** A person who has sets, the station with the latest set first. */
export const subject = z.object({ person: named, stations: z.array(subjectStation) });
export type Subject = z.infer<typeof subject>;

/** Who and what can be reviewed; the person with the latest set first. */
export const subjects = z.object({
  athletes: z.array(subject),
  judges: z.array(subject),
  /** Every sheet that has sets, by its latest version, with the values of all its sets. */
  stations: z.array(subjectStation.extend({ station: z.string(), repsName: z.string() })),
});
export type Subjects = z.infer<typeof subjects>;

/** The station as the answers name it, by the latest version of its sheet. */
export const stationName = z.object({ sheet: z.string(), station: z.string(), repsName: z.string() });
