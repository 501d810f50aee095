import { oc } from '@orpc/contract';
import { z } from 'zod';
import { drill, task } from '../drills/drill.ts';
import { drillEvent } from '../drills/events.ts';
import { readyCriteria, readyVerdict } from '../drills/ready.ts';
import { person } from '../people.ts';
import { standardSheet } from '../sheets/sheet.ts';
import { detection, faultScore, placeGain, reaction, reasonScore, trialLine } from './drills/scores.ts';
import { failures } from './failures.ts';
import { acknowledgement } from './sets.ts';

const who = z.object({ id: z.uuid(), name: z.string() });
const kind = z.enum(['single', 'stream', 'line', 'place']);
const phase = z.enum(['ready', 'running', 'ended']);

/** All that a drill's screen needs to go on with it, or to show it again. */
export const drillRecord = z.object({
  drill,
  sheet: standardSheet,
  judge: person,
  events: z.array(drillEvent),
});
export type DrillRecord = z.infer<typeof drillRecord>;

/** Which drills are meant; an absent field does not narrow. Practice stays out unless asked for. */
export const drillFilter = z.object({
  judge: z.uuid().optional(),
  sheet: z.string().max(64).optional(),
  kind: kind.optional(),
  /** Milliseconds since 1970 UTC, `to` exclusive. */
  from: z.number().int().optional(),
  to: z.number().int().optional(),
  practice: z.enum(['without', 'with', 'only']).optional(),
});
export type DrillFilter = z.infer<typeof drillFilter>;

export const drillLine = z.object({
  id: z.uuid(),
  judge: who,
  sheet: z.object({ id: z.string(), version: z.number().int(), station: z.string() }),
  task,
  practice: z.boolean(),
  createdAt: z.number().int(),
  phase,
  /** Reps shown, spoilt ones left out; reps called; right calls. */
  shown: z.number().int(),
  called: z.number().int(),
  right: z.number().int(),
});
export type DrillLine = z.infer<typeof drillLine>;

export const drillReport = z.object({
  drill,
  judge: who,
  station: z.string(),
  phase,
  endedBecause: z.enum(['all-shown', 'narrow-enough', 'most-trials', 'stopped']).nullable(),
  counts: z.object({
    shown: z.number().int(),
    called: z.number().int(),
    unanswered: z.number().int(),
    spoilt: z.number().int(),
    /** Calls of a stream that belong to no rep. */
    extraCalls: z.number().int(),
    slips: z.number().int(),
  }),
  /** Called right, over all reps. */
  right: z.object({ count: z.number().int(), of: z.number().int() }),
  detection,
  reasons: reasonScore,
  reaction: z.object({ all: reaction, hits: reaction, wrong: reaction }),
  /** The faults of the drill, each from every place together and, where there are several, from each. */
  faults: z.array(faultScore),
  /** Only of a drill on places. */
  gain: placeGain.nullable(),
  trials: z.array(trialLine),
  clashes: z.array(z.string()),
});
export type DrillReport = z.infer<typeof drillReport>;

/** One drill on a judge's history of one fault. */
const faultPoint = z.object({
  drill: z.uuid(),
  kind,
  at: z.number().int(),
  score: faultScore.omit({ curve: true, bins: true }),
});

export const judgeDrills = z.object({
  judge: who,
  sheet: z.object({ id: z.string(), station: z.string() }),
  drills: z.number().int(),
  trials: z.number().int(),
  detection,
  reasons: reasonScore,
  reaction,
  /** Every fault of the sheet that a figure can show, all drills since `since` together; poor places left out. */
  faults: z.array(z.object({ score: faultScore, verdict: readyVerdict, points: z.array(faultPoint) })),
  since: z.number().int(),
  /** Ready for the sheet: for every fault that is asked. */
  ready: z.boolean(),
});
export type JudgeDrills = z.infer<typeof judgeDrills>;

export const readyLine = z.object({
  judge: who,
  sheet: z.object({ id: z.string(), station: z.string() }),
  trials: z.number().int(),
  lastAt: z.number().int().nullable(),
  ready: z.boolean(),
  faults: z.array(
    z.object({
      code: z.string(),
      name: z.string(),
      unit: faultScore.shape.unit,
      trials: z.number().int(),
      dPrime: detection.shape.dPrime,
      criterion: detection.shape.criterion,
      strictness: faultScore.shape.strictness,
      precision: faultScore.shape.precision,
      verdict: readyVerdict,
    }),
  ),
});
export type ReadyLine = z.infer<typeof readyLine>;

/**
 * Drills of the judge's eye. A drill's log is kept like a set's: append-only, once by `(pad, seq)`, durable before it is
 * answered. Numbers of `pad` are counted apart from those of sets; a pad name of its own for every drill is safest.
 */
export const drills = {
  /** Idempotent: the same drill twice is one; the same id with another drill is a CONFLICT. */
  create: oc
    .errors(failures)
    .input(drill)
    .output(z.object({ outcome: z.enum(['new', 'already']) })),
  append: oc
    .errors(failures)
    .input(z.object({ events: z.array(drillEvent).min(1).max(1_000) }))
    .output(z.object({ acknowledgements: z.array(acknowledgement) })),
  get: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(drillRecord),
  /** Latest first; `next` is handed back as `after` for the following page. */
  list: oc
    .errors(failures)
    .input(
      z.object({ filter: drillFilter, after: z.string().max(40).nullable(), limit: z.number().int().min(1).max(200) }),
    )
    .output(z.object({ lines: z.array(drillLine), total: z.number().int(), next: z.string().nullable() })),
  report: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(drillReport),
  /** A judge's scores on one sheet, over time. */
  judge: oc
    .errors(failures)
    .input(z.object({ judge: z.uuid(), sheet: z.string().max(64) }))
    .output(judgeDrills),
  /** Who is ready: a line a judge and sheet with at least one drill; by the gym's own criteria unless others are given. */
  ready: oc
    .errors(failures)
    .input(z.object({ criteria: readyCriteria.optional() }))
    .output(z.array(readyLine)),
  criteria: oc.errors(failures).output(readyCriteria),
  setCriteria: oc.errors(failures).input(readyCriteria).output(readyCriteria),
  /** The drills of a filter as a file's text: CSV a row a rep; JSON the logs themselves; its JSON Schema. */
  export: oc
    .errors(failures)
    .input(
      z.object({
        filter: drillFilter,
        ids: z.array(z.uuid()).max(10_000).optional(),
        format: z.enum(['csv', 'json', 'json-schema']),
      }),
    )
    .output(z.object({ fileName: z.string(), mediaType: z.string(), text: z.string() })),
};
