import { eventIterator, oc } from '@orpc/contract';
import { z } from 'zod';
import { setEvent } from '../log/events.ts';
import { role, setSetup } from '../log/setup.ts';
import { padRole } from '../night/events.ts';
import { standardSheet } from '../sheets/sheet.ts';
import { failures } from './failures.ts';
import { boardChange } from './nights/board.ts';
import { acknowledgement } from './sets.ts';

/** What a pad may know of itself. */
export const padSelf = z.object({
  night: z.object({ id: z.uuid(), name: z.string() }),
  name: z.string(),
  role: padRole,
  /** Null for a board, and while the desk has given no lane. */
  lane: z.object({ id: z.string(), name: z.string() }).nullable(),
});
export type PadSelf = z.infer<typeof padSelf>;

/** The set that a pad is to judge now: names and the sheet, nothing of the athlete's other sets. */
export const padLane = z.object({
  heat: z.number().int(),
  heatPhase: z.enum(['open', 'running', 'closed']),
  /** Go of the heat on the desk's clock; null while it has not been given, or where lanes start by themselves. */
  goAt: z.number().nullable(),
  role,
  setup: setSetup,
  sheet: standardSheet,
  athlete: z.string(),
  judge: z.string(),
});
export type PadLane = z.infer<typeof padLane>;

/**
 * All that a pad on the gym's network may ask. The host knows which device asks and hands its name on as the context
 * `{ night, device }`; nothing in a call can name another device, lane or night. A device that was revoked, or has no role yet, is
 * refused (NOT_ALLOWED). Joining comes before, and is the host's.
 */
const pad = {
  hello: oc.errors(failures).output(padSelf),
  /** What the pad is and is to judge, at once and whenever it changes; `lane` is null before the first heat, for a board, and where nobody is on the lane; it stays until the next heat is opened. */
  duty: oc.errors(failures).output(eventIterator(z.object({ self: padSelf, lane: padLane.nullable() }))),
  /**
   * Durable before it answers. Only events of sets that were opened at this night on the pad's lane in its role, or on a lane
   * and role it had before (a pad swapped in mid-set sends what it kept); others are refused, the whole batch.
   */
  append: oc
    .errors(failures)
    .input(z.object({ events: z.array(setEvent).min(1).max(1_000) }))
    .output(z.object({ acknowledgements: z.array(acknowledgement) })),
  /** The events of the set on the pad's lane, first those there, then each batch as it is written. */
  log: oc
    .errors(failures)
    .input(z.object({ set: z.uuid() }))
    .output(eventIterator(z.object({ events: z.array(setEvent) }))),
  /** For boards only. */
  board: oc.errors(failures).output(eventIterator(boardChange)),
  /** One half of an exchange of RFC 5905: when the desk received and when it answers, milliseconds on its wall clock. */
  clock: oc.errors(failures).output(z.object({ received: z.number(), answered: z.number() })),
  /** Keeps with the set how well this pad's clock is aligned, milliseconds. */
  aligned: oc
    .errors(failures)
    .input(z.object({ set: z.uuid(), offsetMs: z.number(), uncertaintyMs: z.number().min(0) }))
    .output(z.object({})),
};

/** The contract of the pads' listener: this and no other call can be made there. */
export const padContract = { pad };
export type PadContract = typeof padContract;
