import { os } from '@orpc/server';
import { asFailure } from '../failures.ts';

/** The calls inside the thread of the reports; what goes wrong leaves as a typed refusal, as from the desk itself. */
export const threadOs = os.use(async ({ next }) => {
  try {
    return await next();
  } catch (error) {
    throw asFailure(error);
  }
});
