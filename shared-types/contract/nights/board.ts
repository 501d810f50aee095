import { z } from 'zod';
import { goal } from '../../log/setup.ts';
import { phase } from '../sets.ts';

/** One lane as the big screen shows it. */
export const boardLane = z.object({
  lane: z.object({ id: z.string(), name: z.string() }),
  /** Null while nobody is on the lane in this heat; all counts are then 0. */
  athlete: z.string().nullable(),
  station: z.string(),
  goal: goal.nullable(),
  phase,
  /** Go on the desk's wall clock, milliseconds since 1970 UTC; null before. The lane's clock is the desk's time less this. */
  startedAt: z.number().nullable(),
  /** Milliseconds from go to the end; null while the set runs. */
  endedMs: z.number().int().nullable(),
  counted: z.number().int(),
  noReps: z.number().int(),
  unexplained: z.number().int(),
  metres: z.number(),
  /** Reason of the last no-rep; empty name where none is named yet; null without a no-rep. */
  lastReason: z.object({ code: z.string(), name: z.string(), initial: z.string() }).nullable(),
  /** Appeals not decided yet. */
  openAppeals: z.number().int(),
});
export type BoardLane = z.infer<typeof boardLane>;

export const board = z.object({
  night: z.object({ id: z.uuid(), name: z.string() }),
  phase: z.enum(['planned', 'open', 'closed']),
  /** The heat shown: the last that was opened; null before the first. */
  heat: z
    .object({
      number: z.number().int(),
      phase: z.enum(['planned', 'open', 'running', 'closed']),
      goAt: z.number().nullable(),
    })
    .nullable(),
  /** The names of the heat that comes next, by lane; empty after the last. */
  next: z.array(z.object({ lane: z.string(), athlete: z.string() })),
  lanes: z.array(boardLane),
  /** Milliseconds since 1970 UTC at the desk when this was sent. */
  now: z.number(),
});
export type Board = z.infer<typeof board>;

/** The whole board first and whenever the heat changes; in between the one lane on which something happened. */
export const boardChange = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('whole'), board }),
  z.object({ kind: z.literal('lane'), lane: boardLane, now: z.number() }),
]);
export type BoardChange = z.infer<typeof boardChange>;
