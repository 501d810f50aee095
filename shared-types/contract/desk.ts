import { eventIterator, oc } from '@orpc/contract';
import { z } from 'zod';
import { failures } from './failures.ts';

const about = z.object({
  version: z.string(),
  host: z.enum(['electron', 'browser']),
  /** Where the database lies, for the user's own copies. */
  databasePath: z.string(),
  demo: z.boolean(),
});

/** What changed at the desk, so that a screen reads it again. */
export const change = z.object({
  topic: z.enum(['people', 'sets', 'standards', 'settings', 'drills', 'nights']),
  id: z.string().nullable(),
});
export type Change = z.infer<typeof change>;

export const desk = {
  about: oc.errors(failures).output(about),
  /** Milliseconds since 1970 UTC at the desk: for aligning a pad's clock, and to see that the desk is there. */
  time: oc.errors(failures).output(z.object({ now: z.number() })),
  changes: oc.errors(failures).output(eventIterator(change)),
};
