import { once } from 'node:events';
import { MessageChannel, Worker } from 'node:worker_threads';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/message-port';
import type { RouterClient } from '@orpc/server';
import type { ThreadRouter } from './thread-calls.ts';

/** The long sums, computed in a thread of their own with a read-only connection, so that no tap waits for a report. */
export interface ReportsThread {
  readonly calls: RouterClient<ThreadRouter>;
  /** Lets the sum that runs end, closes the thread's connection and waits until the thread is gone. */
  close(): Promise<void>;
}

/** Starts the thread on the database at `path`, which this process holds open. */
export function startReportsThread(path: string): ReportsThread {
  const { port1: here, port2: there } = new MessageChannel();
  const worker = new Worker(new URL('./thread.ts', import.meta.url), {
    workerData: { path, port: there },
    transferList: [there],
  });
  const gone = once(worker, 'exit');
  const calls: RouterClient<ThreadRouter> = createORPCClient(new RPCLink({ port: here }));
  here.start();
  return {
    calls,
    close: async () => {
      // Ending the thread from outside while SQLite works in it would take the whole program down.
      worker.postMessage('close');
      await gone;
      here.close();
    },
  };
}
