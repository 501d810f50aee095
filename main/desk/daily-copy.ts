import type { Copies } from '../ledger/ledger.ts';

const LOOK_EVERY_MS = 3_600_000;
const FIRST_LOOK_MS = 60_000;

export interface DailyCopy {
  /** Waits for a copy under way and takes no more. */
  close(): Promise<void>;
}

/** Takes the day's copy of the database soon after the start and then once a day while the program runs. */
export function keepDailyCopy(copies: Copies, firstLookMs = FIRST_LOOK_MS): DailyCopy {
  let running: Promise<void> = Promise.resolve();
  const look = () => {
    running = running.then(async () => {
      try {
        await copies.daily();
      } catch (error) {
        // A day without a copy is told and tried again an hour later; judging goes on.
        process.stderr.write(`Today's copy of the database could not be taken: ${String(error)}\n`);
      }
    });
  };
  const first = setTimeout(look, firstLookMs);
  const timer = setInterval(look, LOOK_EVERY_MS);
  return {
    close: async () => {
      clearTimeout(first);
      clearInterval(timer);
      await running;
    },
  };
}
