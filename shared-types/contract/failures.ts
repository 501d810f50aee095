import { z } from 'zod';

/** The typed refusals of every call. Each message says what is wrong and what to do; `data` names the thing. */
export const failures = {
  NOT_FOUND: { status: 404, data: z.object({ what: z.string(), id: z.string() }) },
  CONFLICT: { status: 409, data: z.object({ what: z.string() }) },
  NOT_ALLOWED: { status: 403, data: z.object({ what: z.string() }) },
  STORAGE: { status: 507, data: z.object({ kind: z.string(), path: z.string() }) },
} as const;
