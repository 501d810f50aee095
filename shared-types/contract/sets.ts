import { eventIterator, oc } from '@orpc/contract';
import { z } from 'zod';
import { eventRef, setEvent } from '../log/events.ts';
import { before, setSetup } from '../log/setup.ts';
import { person } from '../people.ts';
import { standardSheet } from '../sheets/sheet.ts';
import { failures } from './failures.ts';

/** What became of one appended event: written now, there already, or refused as another event of the same name. */
export const acknowledgement = z.object({ ...eventRef.shape, outcome: z.enum(['new', 'already', 'conflict']) });
export type Acknowledgement = z.infer<typeof acknowledgement>;

/** All that a set's screen needs: the log and what it was judged under. */
export const setRecord = z.object({
  setup: setSetup,
  sheet: standardSheet,
  athlete: person,
  judge: person,
  events: z.array(setEvent),
});
export type SetRecord = z.infer<typeof setRecord>;

export const phase = z.enum(['ready', 'running', 'finished', 'abandoned']);

/** Which sets are meant; an absent field does not narrow. Spans are milliseconds since 1970 UTC, `to` exclusive. */
export const setFilter = z.object({
  search: z.string().max(200).optional(),
  athlete: z.uuid().optional(),
  judge: z.uuid().optional(),
  sheet: z.string().max(64).optional(),
  loadKg: z.number().nullable().optional(),
  before: before.optional(),
  tag: z.string().max(40).optional(),
  from: z.number().int().optional(),
  to: z.number().int().optional(),
  phase: phase.optional(),
  unexplained: z.boolean().optional(),
  /** Practice sets stay out unless asked for. */
  practice: z.enum(['without', 'with', 'only']).optional(),
});
export type SetFilter = z.infer<typeof setFilter>;

/** One line of the list of sets; figures as of the last projection of its log. */
export const setLine = z.object({
  id: z.uuid(),
  athlete: z.object({ id: z.uuid(), name: z.string() }),
  judge: z.object({ id: z.uuid(), name: z.string() }),
  sheet: z.object({ id: z.string(), version: z.number().int(), station: z.string() }),
  loadKg: z.number().nullable(),
  heightM: z.number().nullable(),
  before,
  tags: z.array(z.string()),
  practice: z.boolean(),
  phase,
  startedAt: z.number().int().nullable(),
  createdAt: z.number().int(),
  clockMs: z.number().int(),
  attempts: z.number().int(),
  counted: z.number().int(),
  noReps: z.number().int(),
  unexplained: z.number().int(),
  /** Seconds that the no-reps cost, null where it cannot be estimated. */
  costS: z.number().nullable(),
  /** One character an attempt, in order: "." counted, "!" caution, else the initial of the no-rep's first fault, "?" none. */
  ribbon: z.string(),
});
export type SetLine = z.infer<typeof setLine>;

export const sets = {
  /** Idempotent: the same setup twice is one set; the same id with another setup is a CONFLICT. */
  create: oc
    .errors(failures)
    .input(setSetup)
    .output(z.object({ outcome: z.enum(['new', 'already']) })),
  /** Durable before it answers. A clash of rules is no refusal: the event is kept and the fold tells. */
  append: oc
    .errors(failures)
    .input(z.object({ events: z.array(setEvent).min(1).max(1_000) }))
    .output(z.object({ acknowledgements: z.array(acknowledgement) })),
  get: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(setRecord),
  list: oc
    .errors(failures)
    .input(
      z.object({ filter: setFilter, after: z.string().max(200).nullable(), limit: z.number().int().min(1).max(200) }),
    )
    .output(z.object({ lines: z.array(setLine), total: z.number().int(), next: z.string().nullable() })),
  /** Sets that began and neither finished nor were abandoned, latest first. */
  unfinished: oc.errors(failures).output(z.array(setLine)),
  /** The events of a set, first those there already, then each batch as it is written. */
  watch: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(eventIterator(z.object({ events: z.array(setEvent) }))),
  /** The sets of a filter as a file's text: CSV a row an attempt; JSON the logs themselves; its JSON Schema. */
  export: oc
    .errors(failures)
    .input(
      z.object({
        filter: setFilter,
        ids: z.array(z.uuid()).max(10_000).optional(),
        format: z.enum(['csv', 'json', 'json-schema']),
      }),
    )
    .output(z.object({ fileName: z.string(), mediaType: z.string(), text: z.string() })),
};
