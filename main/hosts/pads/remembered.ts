import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

/** A pad as it is remembered: its secret as a digest only, so that this file lets nobody in. */
const rememberedPad = z.object({
  id: z.uuid(),
  digest: z.string().max(64),
  callsItself: z.string().max(200),
  joinedAt: z.number().int(),
  from: z.string().max(64),
});
export type RememberedPad = z.infer<typeof rememberedPad>;

/**
 * What the pads' way in remembers from one run to the next, in a file that only the user may read. Port and base path
 * make the origin and place of the pads' pages: while they stay, so does what the pages keep and have not sent yet.
 */
const rememberedPads = z.object({
  base: z.string().regex(/^[A-Za-z0-9_-]{22}$/),
  port: z.number().int().min(1_024).max(65_535).nullable(),
  night: z.uuid().nullable(),
  pads: z.array(rememberedPad).max(500),
  /** Set while it is open: found at a start, it was open when the program was killed. */
  open: z.object({ address: z.ipv4(), since: z.number().int() }).nullable(),
});
export type RememberedPads = z.infer<typeof rememberedPads>;

/** Null where there is none, or none that can be read. */
export function readPads(file: string): RememberedPads | null {
  try {
    return rememberedPads.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return null;
  }
}

export function writePads(file: string, value: RememberedPads): void {
  const fresh = `${file}.${process.pid}`;
  writeFileSync(fresh, JSON.stringify(value), { mode: 0o600 });
  renameSync(fresh, file);
}
