import { z } from 'zod';
import { eventRef, verdict } from '../log/events.ts';
import { athlete, place, shownFault } from './drill.ts';

/**
 * The vocabulary of a drill's log. Every event carries its drill, the pad that wrote it, the pad's own running number and
 * `at`: whole milliseconds since the drill's beginning on the pad's monotonic clock. Nothing is updated or deleted.
 */
const base = {
  drill: z.uuid(),
  ...eventRef.shape,
  at: z.number().int().min(0).max(315_576_000_000),
};
const milliseconds = z.number().int().min(0).max(86_400_000);
const seed = z.number().int().min(0).max(0xffff_ffff);
/** Measured margins by fault, signed, positive while the standard is met; null where the rep gives no occasion. */
const margins = z.partialRecord(shownFault, z.number().nullable());

/** What of a `RepSpecification` the drill itself does not fix. */
const repSpecification = z.strictObject({
  athlete,
  cadence: z.number().min(1).max(120),
  margins: z.partialRecord(shownFault, z.number()),
  fatigue: z.number().min(0).max(1),
  variation: z.number().min(0).max(1),
  seed,
  styleSeed: seed,
  first: z.boolean(),
});

/** What of a `StreamSpecification` the drill itself does not fix. */
const streamSpecification = z.strictObject({
  athlete,
  cadence: z.number().min(1).max(120),
  reps: z.number().int().min(1).max(200),
  fatigue: z.number().min(0).max(1),
  variation: z.number().min(0).max(1),
  seed,
  plan: z.strictObject({
    rate: z.number().min(0).max(1),
    rateAtEnd: z.number().min(0).max(1),
    codes: z.array(shownFault),
    second: z.number().min(0).max(1),
    nearMisses: z.number().min(0).max(1),
    sizes: z.strictObject({
      cm: z.tuple([z.number(), z.number()]),
      ms: z.tuple([z.number(), z.number()]),
      degrees: z.tuple([z.number(), z.number()]),
    }),
  }),
});

/** One rep of a stream as it was shown: milliseconds since the stream began; `dueMs` and `seenMs` as for a single rep. */
const streamRep = z.strictObject({
  startMs: milliseconds,
  endMs: milliseconds,
  dueMs: milliseconds,
  seenMs: milliseconds,
  margins,
});

const begin = z.strictObject({
  ...base,
  kind: z.literal('begin'),
  /** Wall clock, milliseconds since 1970 UTC: for the calendar only. */
  wallClock: z.number().int().min(0),
});
/** A single rep was shown, with what was true of it. */
const rep = z.strictObject({
  ...base,
  kind: z.literal('rep'),
  /** 0, 1, … in the order shown. */
  trial: z.number().int().min(0).max(10_000),
  specification: repSpecification,
  place,
  margins,
  durationMs: milliseconds,
  /** When what decides the verdict has been seen, milliseconds since the rep began: reaction times count from here. */
  dueMs: milliseconds,
  /** When every standard of the rep has been seen, milliseconds since the rep began; equal to `dueMs` in a clean rep. */
  seenMs: milliseconds,
});
/** A live stream began. Its reps are the drill's trials 0, 1, … */
const stream = z.strictObject({
  ...base,
  kind: z.literal('stream'),
  specification: streamSpecification,
  place,
  reps: z.array(streamRep).min(1).max(200),
});
const call = z
  .strictObject({
    ...base,
    kind: z.literal('call'),
    /** The rep that is called; null in a stream, where calls are aligned with reps afterwards. */
    trial: z.number().int().min(0).max(10_000).nullable(),
    /** Milliseconds since the rep, or the stream, began, on the clock that moved the figure. */
    afterMs: milliseconds,
    verdict,
    faults: z.array(z.string().max(24)).max(12),
    /** Where the judge stood at the call, when not at the place given. */
    place: place.nullable(),
  })
  .refine(({ verdict: called, faults }) => called !== 'counted' || faults.length === 0, 'a counted rep has no fault');
/** Withdraws a call pressed by mistake, before its truth was shown. */
const slip = z.strictObject({ ...base, kind: z.literal('slip'), of: eventRef });
/** What was shown could not be judged: the page was hidden, or the drawing stuck. A rep is shown again. */
const spoil = z.strictObject({
  ...base,
  kind: z.literal('spoil'),
  /** The rep; null in a stream, where the reps that touch the span are left out. */
  trial: z.number().int().min(0).max(10_000).nullable(),
  fromMs: milliseconds,
  toMs: milliseconds,
  why: z.enum(['hidden', 'stuck', 'asked']),
});
const end = z.strictObject({
  ...base,
  kind: z.literal('end'),
  why: z.enum(['all-shown', 'narrow-enough', 'most-trials', 'stopped']),
});

export const drillEvent = z.discriminatedUnion('kind', [begin, rep, stream, call, slip, spoil, end]);
export type DrillEvent = z.infer<typeof drillEvent>;
export type DrillEventKind = DrillEvent['kind'];
export type DrillEventOf<K extends DrillEventKind> = Extract<DrillEvent, { kind: K }>;
export type ShownMargins = DrillEventOf<'rep'>['margins'];
