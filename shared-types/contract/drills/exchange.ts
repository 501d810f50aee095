import { z } from 'zod';
import { drill } from '../../drills/drill.ts';
import { drillEvent } from '../../drills/events.ts';
import { person } from '../../people.ts';
import { standardSheet } from '../../sheets/sheet.ts';

/** What an exported file of drills holds: the logs themselves, so that every rep and every score can be made again from it. */
const drillsFile = z
  .strictObject({
    format: z.literal('plumbline-drills'),
    formatVersion: z.literal(1),
    /** Milliseconds since 1970 UTC. */
    exportedAt: z.number().int().min(0),
    people: z.array(person),
    sheets: z.array(standardSheet),
    drills: z.array(z.strictObject({ drill, events: z.array(drillEvent) })),
  })
  .describe('Drills of judges made with Plumbline: people, standard sheets, drills and append-only logs.');
export type DrillsFile = z.infer<typeof drillsFile>;

/** The JSON Schema (draft 2020-12) of an exported file. */
export function drillsFileSchema(): unknown {
  return z.toJSONSchema(drillsFile, { target: 'draft-2020-12', unrepresentable: 'any' });
}
