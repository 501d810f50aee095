import { ORPCError } from '@orpc/client';
import type { Connection } from './connection.ts';

/** A streaming call of the contract. */
export type StreamCall<I, O> = (
  input: I,
  options: { signal: AbortSignal },
) => Promise<AsyncIterator<O, unknown, unknown>>;

const againMs = 1_000;

/**
 * Listens to a stream of the desk and opens it again whenever it breaks, each time from its beginning.
 * A typed refusal (such as NOT_FOUND) ends it and goes to `onRefusal`. The answer ends the subscription.
 */
export function subscribeTo<I, O>(
  connection: Pick<Connection, 'whenConnected'>,
  call: StreamCall<I, O>,
  input: I,
  onItem: (item: O) => void,
  onRefusal: (error: ORPCError<string, unknown>) => void = () => {},
  onBreak: () => void = () => {},
): () => void {
  const stopped = new AbortController();
  const { signal } = stopped;

  async function run(): Promise<void> {
    while (!signal.aborted) {
      await connection.whenConnected();
      if (signal.aborted) return;
      try {
        const items = await call(input, { signal });
        for (let item = await items.next(); item.done !== true; item = await items.next()) {
          if (signal.aborted) return;
          onItem(item.value);
        }
      } catch (error) {
        if (signal.aborted) return;
        if (error instanceof ORPCError && error.status < 500) return onRefusal(error);
      }
      if (signal.aborted) return;
      onBreak();
      await new Promise((resolve) => setTimeout(resolve, againMs * Math.random()));
    }
  }

  void run();
  return () => stopped.abort();
}
