import { z } from 'zod';
import { eventRef } from '../log/events.ts';
import { role } from '../log/setup.ts';
import { arrangement, nightPlan } from './night.ts';

/**
 * The vocabulary of a night's log. The desk alone writes it, so it is read in the order of recording; `at` is the desk's
 * wall clock, milliseconds since 1970 UTC, for people to read. Nothing is updated or deleted. Heats are counted from 1.
 */
const base = { night: z.uuid(), ...eventRef.shape, at: z.number().int().min(0) };
const heat = z.number().int().min(1).max(60);
const lane = z.string().min(1).max(32);
const device = z.string().min(1).max(64);

/** What a pad may be at a night. */
export const padRole = z.enum(['judge', 'shadow', 'board']);
export type PadRole = z.infer<typeof padRole>;

/** How the night is meant to go; the last one stands. Refused by the fold if a begun heat would lose its lane, station or people. */
const arrange = z.strictObject({ ...base, kind: z.literal('arrange'), arrangement });
/** All heats of the night; the last one stands. Heats that have begun must be in it as they are. */
const plan = z.strictObject({
  ...base,
  kind: z.literal('plan'),
  why: z.enum(['made', 'by-hand', 'again']),
  heats: nightPlan,
});
/** Where somebody turned out to be; the last word on a person stands. `expected` takes an earlier word back. */
const presence = z.strictObject({
  ...base,
  kind: z.literal('presence'),
  person: z.uuid(),
  state: z.enum(['expected', 'arrived', 'no-show', 'left']),
});
/** A device that the desk has let in gets its role, and its lane unless it is a board; the last word stands. */
const pad = z.strictObject({
  ...base,
  kind: z.literal('pad'),
  device,
  name: z.string().max(80),
  role: padRole,
  /** Without meaning for a board. */
  lane: lane.nullable(),
});
const revoke = z.strictObject({ ...base, kind: z.literal('revoke'), device });
const open = z.strictObject({ ...base, kind: z.literal('open') });
const close = z.strictObject({ ...base, kind: z.literal('close') });
/** The heat's sets are ready on the pads; from here on its plan is fixed. */
const heatOpen = z.strictObject({ ...base, kind: z.literal('heat-open'), heat });
/** Go for the whole heat; `at` is go on the desk's clock. A lane may start by itself without it. */
const heatGo = z.strictObject({ ...base, kind: z.literal('heat-go'), heat });
const heatClose = z.strictObject({ ...base, kind: z.literal('heat-close'), heat });
/** A set that is judged on a lane of an opened heat. */
const set = z.strictObject({ ...base, kind: z.literal('set'), heat, lane, role, set: z.uuid() });
/** Noted by the head judge; the appeal itself and its outcome are in the set's log. */
const appeal = z.strictObject({
  ...base,
  kind: z.literal('appeal'),
  set: z.uuid(),
  of: eventRef,
  note: z.string().max(10_000),
});

/** How well the pad's clock was aligned to the desk's when the set began, milliseconds: desk's less pad's, and within what. */
const aligned = z.strictObject({
  ...base,
  kind: z.literal('aligned'),
  set: z.uuid(),
  device,
  offsetMs: z.number(),
  uncertaintyMs: z.number().min(0),
});

export const nightEvent = z.discriminatedUnion('kind', [
  arrange,
  plan,
  presence,
  pad,
  revoke,
  open,
  close,
  heatOpen,
  heatGo,
  heatClose,
  set,
  appeal,
  aligned,
]);
export type NightEvent = z.infer<typeof nightEvent>;
export type NightEventKind = NightEvent['kind'];
export type NightEventOf<K extends NightEventKind> = Extract<NightEvent, { kind: K }>;

/** What a screen asks the desk to write; the desk adds the night, its own name, the running number and its clock. */
const own = { night: true, pad: true, seq: true, at: true } as const;
export const nightEntry = z.discriminatedUnion('kind', [
  arrange.omit(own),
  plan.omit(own),
  presence.omit(own),
  pad.omit(own),
  revoke.omit(own),
  open.omit(own),
  close.omit(own),
  heatOpen.omit(own),
  heatGo.omit(own),
  heatClose.omit(own),
  appeal.omit(own),
]);
export type NightEntry = z.infer<typeof nightEntry>;
