import { z } from 'zod';

/** The typed refusals of every call. Each message says what is wrong and what to do; `data` names the thing. */
export const failures = {
  BAD_REQUEST: {
    status: 400,
    data: z.object({ issues: z.array(z.object({ path: z.string(), message: z.string() })) }),
  },
  NOT_FOUND: { status: 404, data: z.object({ what: z.string() }) },
  CONFLICT: { status: 409, data: z.object({ what: z.string() }) },
  NOT_ALLOWED: { status: 403, data: z.object({ what: z.string() }) },
  STORAGE: { status: 507, data: z.object({ kind: z.string() }) },
} as const;
