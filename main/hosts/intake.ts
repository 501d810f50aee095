import { ORPCError } from '@orpc/server';

/** Counts the calls under way, so that none is cut off half-way when the program ends. */
export interface Intake {
  /** Goes round every call of a handler. */
  readonly around: (options: { next: () => Promise<unknown>; path: readonly string[] }) => Promise<unknown>;
  /** Refuses further calls and resolves when those under way have been answered, or after `milliseconds`. */
  readonly stop: (milliseconds: number) => Promise<void>;
}

/** @param report hears of faults of the program itself; the caller is told only that there was one */
export function createIntake(report: (error: unknown, call: string) => void = logFault): Intake {
  let underWay = 0;
  let stopped = false;
  let empty = (): void => {};
  return {
    around: async ({ next, path }) => {
      if (stopped) throw new ORPCError('SERVICE_UNAVAILABLE', { message: 'The program is closing.' });
      underWay += 1;
      try {
        return await next();
      } catch (error) {
        const isAnswer = error instanceof ORPCError && error.code !== 'INTERNAL_SERVER_ERROR';
        if (!isAnswer) report(error, path.join('.'));
        throw error;
      } finally {
        underWay -= 1;
        if (underWay === 0) empty();
      }
    },
    stop: async (milliseconds) => {
      stopped = true;
      if (underWay > 0) await allAnswered(milliseconds);
      // The last answer is written in the turn after its call has ended.
      await new Promise((resolve) => setImmediate(resolve));
    },
  };

  function allAnswered(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const late = setTimeout(resolve, milliseconds);
      empty = () => {
        clearTimeout(late);
        resolve();
      };
    });
  }
}

function logFault(error: unknown, call: string): void {
  console.error(`plumbline: the call ${call} failed:`, error);
}
