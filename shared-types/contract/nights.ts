import { eventIterator, oc } from '@orpc/contract';
import { z } from 'zod';
import { nightEntry, nightEvent } from '../night/events.ts';
import { arrangement, night, nightPlan } from '../night/night.ts';
import { person } from '../people.ts';
import { standardSheet } from '../sheets/sheet.ts';
import { failures } from './failures.ts';
import { boardChange } from './nights/board.ts';
import { debrief } from './nights/debrief.ts';

const id = z.object({ id: z.uuid() });

/** A hard rule that a plan breaks: see `night/breach.ts`. */
const breach = z.object({
  rule: z.string(),
  heat: z.number().int().nullable(),
  lane: z.string().nullable(),
  people: z.array(z.string()),
  message: z.string(),
  aim: z.boolean(),
});

/** All that a night's screen needs: its log, to be folded, and the people and sheets it names. */
const nightRecord = z.object({
  night,
  events: z.array(nightEvent),
  people: z.array(person),
  sheets: z.array(standardSheet),
});
export type NightRecord = z.infer<typeof nightRecord>;

export const nightLine = z.object({
  night,
  phase: z.enum(['planned', 'open', 'closed']),
  athletes: z.number().int(),
  judges: z.number().int(),
  stations: z.array(z.string()),
  heats: z.number().int(),
  heatsClosed: z.number().int(),
});
export type NightLine = z.infer<typeof nightLine>;

/**
 * What planning came to. `planned`: no hard rule is broken (aims may be missed). `impossible`: proven; `reasons` say why, "4 judges short in heat 3".
 * `not-found`: neither a plan nor a proof in the time given. With the last two `heats` may hold the nearest plan, and
 * `breaches` what it breaks.
 */
export const planAnswer = z.object({
  outcome: z.enum(['planned', 'impossible', 'not-found']),
  heats: nightPlan.nullable(),
  breaches: z.array(breach),
  reasons: z.array(z.string()),
});
export type PlanAnswer = z.infer<typeof planAnswer>;

export const nights = {
  /** Idempotent: the same night twice is one; the same id with another name or day is a CONFLICT. */
  create: oc
    .errors(failures)
    .input(z.object({ night, arrangement }))
    .output(z.object({ outcome: z.enum(['new', 'already']) })),
  /** Latest day first. */
  list: oc.errors(failures).output(z.array(nightLine)),
  get: oc.errors(failures).input(id).output(nightRecord),
  /**
   * Writes one event, durable before it answers; one that could have no effect is refused (NOT_ALLOWED) and not written.
   * A plan by hand may break rules of fairness, which are answered; it may not name what the night does not have. `heat-open`
   * makes the sets of the heat and links them in the same transaction.
   */
  append: oc
    .errors(failures)
    .input(z.object({ id: z.uuid(), entry: nightEntry }))
    .output(z.object({ events: z.array(nightEvent), breaches: z.array(breach) })),
  /** Plans all that has not begun; writes nothing. Hand the heats back with `append` to make them the plan. */
  plan: oc.errors(failures).input(id).output(planAnswer),
  /** The hard rules that a plan breaks, for one changed by hand; writes nothing. */
  check: oc
    .errors(failures)
    .input(z.object({ id: z.uuid(), heats: nightPlan }))
    .output(z.array(breach)),
  /** The night's events, first those there already, then each batch as it is written. */
  watch: oc
    .errors(failures)
    .input(id)
    .output(eventIterator(z.object({ events: z.array(nightEvent) }))),
  board: oc.errors(failures).input(id).output(eventIterator(boardChange)),
  debrief: oc.errors(failures).input(id).output(debrief),
  /** Results a row an athlete and station; calls a row an attempt of a lane with both judges side by side; JSON the logs. */
  export: oc
    .errors(failures)
    .input(z.object({ id: z.uuid(), format: z.enum(['results-csv', 'calls-csv', 'json']) }))
    .output(z.object({ fileName: z.string(), mediaType: z.string(), text: z.string() })),
};
