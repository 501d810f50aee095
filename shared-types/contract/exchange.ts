import { z } from 'zod';
import { setEvent } from '../log/events.ts';
import { setSetup } from '../log/setup.ts';
import { person } from '../people.ts';
import { standardSheet } from '../sheets/sheet.ts';

/**
 * What an exported file of sets holds: the logs themselves and all that they point at, so that every figure can be
 * computed again from the file alone. Times are milliseconds; `wallClock`, `createdAt` and `exportedAt` since 1970 UTC,
 * `at` since the set's go.
 */
export const setsFile = z
  .strictObject({
    format: z.literal('plumbline-sets'),
    formatVersion: z.literal(1),
    exportedAt: z.number().int().min(0),
    people: z.array(person),
    sheets: z.array(standardSheet),
    sets: z.array(z.strictObject({ setup: setSetup, events: z.array(setEvent) })),
  })
  .describe('Sets judged with Plumbline: people, standard sheets, set-ups and append-only logs.');
export type SetsFile = z.infer<typeof setsFile>;

/** The JSON Schema (draft 2020-12) of an exported file. */
export function setsFileSchema(): unknown {
  return z.toJSONSchema(setsFile, { target: 'draft-2020-12', unrepresentable: 'any' });
}
