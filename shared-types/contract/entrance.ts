import { eventIterator, oc } from '@orpc/contract';
import { z } from 'zod';
import { failures } from './failures.ts';

/**
 * A phone or tablet that has joined, as the host knows it; its role and lane stand in the night's log, under `id` as
 * device. Times are milliseconds since 1970 UTC.
 */
const joinedPad = z.object({
  id: z.uuid(),
  /** What it calls itself; empty where it said nothing. The desk names it in the night's log. */
  callsItself: z.string(),
  joinedAt: z.number().int(),
  /** Network address it was last seen at. */
  from: z.string(),
  /** Open connections to the desk: 0 while its page is closed or the Wi-Fi is gone. */
  connections: z.number().int(),
  /** Null where it was not seen since the program started. */
  lastSeenAt: z.number().int().nullable(),
});

/** The pads' way in. */
export const entranceState = z.object({
  /** Null while it is closed, which it is unless the desk has opened it. */
  open: z
    .object({
      night: z.uuid(),
      address: z.string(),
      port: z.number().int(),
      /** What a judge types: `http://address:port/`. */
      url: z.string(),
      since: z.number().int(),
    })
    .nullable(),
  /** What is wrong, in words: a network that is gone, codes that are being guessed. Null while nothing is. */
  trouble: z.string().nullable(),
  pads: z.array(joinedPad),
});
export type EntranceState = z.infer<typeof entranceState>;

/** Pads join the gym's evening over its own network: the desk opens, lets in and sends away. */
export const entrance = {
  /** Addresses that this computer has on its networks, the likeliest first. */
  addresses: oc.errors(failures).output(z.array(z.object({ address: z.string(), network: z.string() }))),
  /** Opens the way in for the pads of one night. The port is the usual one unless given. */
  open: oc
    .errors(failures)
    .input(
      z.object({
        night: z.uuid(),
        address: z.ipv4(),
        port: z.number().int().min(1_024).max(65_535).nullable(),
      }),
    )
    .output(entranceState),
  /** Closes it and every pad's connection; pads keep their calls and go on when it is opened again. */
  close: oc.errors(failures).output(entranceState),
  state: oc.errors(failures).output(entranceState),
  /** The state now, and again whenever it changes. */
  watch: oc.errors(failures).output(eventIterator(entranceState)),
  /** A new code, good for one pad and a few minutes; `link` is what a QR code carries. */
  code: oc.errors(failures).output(z.object({ code: z.string(), link: z.string(), expiresAt: z.number().int() })),
  /**
   * Sends a pad away: its connections end, its secret is no longer good, and it must join with a new code. What it has
   * not sent stays on it. The `revoke` in the night's log says so to everybody else.
   */
  forget: oc
    .errors(failures)
    .input(z.object({ pad: z.uuid() }))
    .output(entranceState),
};

/** What a pad sends to join, as JSON. */
export const joining = z.object({ code: z.string().max(32), name: z.string().trim().max(80) });
export type Joining = z.infer<typeof joining>;

/** What the host tells a pad of itself, as JSON; `words` say what to do. */
export const padStanding = z.discriminatedUnion('standing', [
  z.object({ standing: z.literal('stranger'), words: z.string() }),
  /** It may speak to the desk, which decides what it may do. `device` is its name in the night's log. */
  z.object({ standing: z.literal('joined'), device: z.string() }),
]);
export type PadStanding = z.infer<typeof padStanding>;
