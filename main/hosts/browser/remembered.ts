import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

/**
 * What the browser host remembers from one run to the next, in a file that only the user may read. The port and the base
 * path make the origin and place of the pages: while they stay, so does what the pages have kept and not yet sent.
 */
const remembered = z.object({
  port: z.number().int().min(1).max(65_535),
  base: z.string().regex(/^[A-Za-z0-9_-]{22}$/),
  sessions: z.array(z.string().max(64)).max(50),
  /** Lets a second start of the program ask the running one for a new address. */
  control: z.string().max(64),
});
export type Remembered = z.infer<typeof remembered>;

/** Null where there is none, or none that can be read. */
export function readRemembered(file: string): Remembered | null {
  try {
    return remembered.parse(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    return null;
  }
}

export function writeRemembered(file: string, value: Remembered): void {
  const fresh = `${file}.${process.pid}`;
  writeFileSync(fresh, JSON.stringify(value), { mode: 0o600 });
  renameSync(fresh, file);
}
