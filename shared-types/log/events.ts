import { z } from 'zod';

/**
 * The vocabulary of a set's log. Every event carries its set, the pad that wrote it, the pad's own running number and
 * `at`: whole milliseconds since the set's go on the pad's monotonic clock (0 or more). Nothing is updated or deleted;
 * what happened later is a further event. The rules stand in README.md beside this file.
 */

/** The event that a later one speaks of. `(pad, seq)` names one event, whatever the set. */
export const eventRef = z.strictObject({
  pad: z.string().min(1).max(64),
  seq: z.number().int().min(1).max(Number.MAX_SAFE_INTEGER),
});
export type EventRef = z.infer<typeof eventRef>;

export const verdict = z.enum(['counted', 'no-rep', 'caution']);
/** `caution` is "counted with caution": valid, but warned. */
export type Verdict = z.infer<typeof verdict>;

const faultCode = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,23}$/, 'a fault code is a short lower-case word, such as "depth"');
/** Faults of one call, each at most once; empty while the reason is not yet given. */
const faultCodes = z
  .array(faultCode)
  .max(12)
  .refine((codes) => new Set(codes).size === codes.length, 'a fault is named once');
const note = z.string().max(10_000);

const base = {
  set: z.uuid(),
  ...eventRef.shape,
  /** Corrections may come long after the set; ten years is the limit. */
  at: z.number().int().min(0).max(315_576_000_000),
};

function agrees(call: { verdict: Verdict; faults: readonly string[] }): boolean {
  return call.verdict !== 'counted' || call.faults.length === 0;
}

const go = z.strictObject({
  ...base,
  kind: z.literal('go'),
  /** Wall clock at go, milliseconds since 1970 UTC: for the calendar only, never for durations. */
  wallClock: z.number().int().min(0),
});
const call = z
  .strictObject({ ...base, kind: z.literal('call'), verdict, faults: faultCodes })
  .refine(agrees, 'a counted rep has no fault; call it a no-rep or counted with caution');
const explain = z.strictObject({ ...base, kind: z.literal('explain'), of: eventRef, faults: faultCodes });
const reverse = z
  .strictObject({
    ...base,
    kind: z.literal('reverse'),
    of: eventRef,
    verdict,
    faults: faultCodes,
    /** Who changed the call; the set's judge if null. */
    by: z.uuid().nullable(),
    reason: note,
  })
  .refine(agrees, 'a counted rep has no fault; reverse to a no-rep or counted with caution');
/** Withdraws an earlier event that was pressed by mistake; a slip of a slip restores what the first withdrew. */
const slip = z.strictObject({ ...base, kind: z.literal('slip'), of: eventRef });
const breakStart = z.strictObject({ ...base, kind: z.literal('break-start') });
const breakEnd = z.strictObject({ ...base, kind: z.literal('break-end') });
/** Metres reached in all, as seen by the judge at a mark on the lane. */
const mark = z.strictObject({ ...base, kind: z.literal('mark'), metres: z.number().min(0).max(100_000) });
const finish = z.strictObject({ ...base, kind: z.literal('finish') });
const abandon = z.strictObject({ ...base, kind: z.literal('abandon'), reason: note });
const signOff = z.strictObject({ ...base, kind: z.literal('sign-off'), by: z.uuid().nullable(), name: note });
/** The athlete disputes a call; the head judge answers with a reversal or lets it stand (`outcome`). */
const appeal = z.strictObject({
  ...base,
  kind: z.literal('appeal'),
  of: eventRef,
  reason: note,
  by: z.uuid().nullable(),
  outcome: z.enum(['open', 'upheld', 'refused']),
});

export const setEvent = z.discriminatedUnion('kind', [
  go,
  call,
  explain,
  reverse,
  slip,
  breakStart,
  breakEnd,
  mark,
  finish,
  abandon,
  signOff,
  appeal,
]);
export type SetEvent = z.infer<typeof setEvent>;
export type EventKind = SetEvent['kind'];
export type EventOf<K extends EventKind> = Extract<SetEvent, { kind: K }>;

/** One key for one event: equal for two events exactly if they are the same event. */
export function refKey(ref: EventRef): string {
  return `${ref.pad}#${ref.seq}`;
}

/** Whether two events are the same to the byte, apart from the order of their fields. */
export function sameEvent(one: SetEvent, other: SetEvent): boolean {
  return canonical(one) === canonical(other);
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
