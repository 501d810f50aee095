import { type ClientContext, type ClientLink, createORPCClient, type NestedClient, ORPCError } from '@orpc/client';
import type { ContractRouterClient } from '@orpc/contract';
import type { Contract } from '../../shared-types/contract/contract.ts';
import { DeskAway } from './desk-away.ts';
import { type Observable, settable } from './observable.ts';
import type { OpenTransport, Transport } from './transport.ts';

/** Every call of the contract, typed. A call rejects with `DeskAway`, or with one of the contract's typed failures. */
export type DeskClient = ContractRouterClient<Contract>;
export type ConnectionState = 'connecting' | 'connected' | 'lost';

export interface Timings {
  /** How long a call made while the desk is away waits for it, milliseconds. */
  readonly waitMs: number;
  /** First and longest pause between attempts to connect, milliseconds. */
  readonly firstPauseMs: number;
  readonly longestPauseMs: number;
  /** How often the desk is asked whether it is there, and how long it may take to answer, milliseconds. */
  readonly pulseMs: number;
}

const usualTimings: Timings = { waitMs: 4_000, firstPauseMs: 100, longestPauseMs: 3_000, pulseMs: 20_000 };

export interface Connection<Client = DeskClient> {
  readonly client: Client;
  readonly state: Observable<ConnectionState>;
  /** What is wrong with the connection, in words for the user; null while it holds. */
  readonly trouble: Observable<string | null>;
  /** Resolves at once while connected, else when the desk is back. */
  readonly whenConnected: () => Promise<void>;
  readonly close: () => void;
}

/**
 * Keeps one connection to the desk, opening it anew with growing pauses whenever it ends.
 * @param ask the smallest call of the contract: any answer to it shows that the desk is there
 */
export function keepConnection<Client extends NestedClient<ClientContext>>(
  open: OpenTransport,
  ask: (client: Client) => Promise<unknown>,
  timings: Timings = usualTimings,
): Connection<Client> {
  const state = settable<ConnectionState>('connecting');
  const trouble = settable<string | null>(null);
  let transport: Transport | null = null;
  let over = false;
  let wake: () => void = () => {};

  const link: ClientLink<ClientContext> = {
    call: async (path, input, options) => {
      const now = transport ?? (await transportWithin(timings.waitMs));
      try {
        return await now.link.call(path, input, options);
      } catch (error) {
        // What oRPC throws when its peer closes is not typed; a typed failure of the desk is an ORPCError.
        if (now.over.aborted && !(error instanceof ORPCError)) throw new DeskAway(true);
        throw error;
      }
    },
  };
  const client: Client = createORPCClient(link);

  async function transportWithin(milliseconds: number): Promise<Transport> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, milliseconds);
    });
    await Promise.race([whenConnected(), late]);
    clearTimeout(timer);
    if (transport === null) throw new DeskAway(false);
    return transport;
  }

  function whenConnected(): Promise<void> {
    if (transport !== null) return Promise.resolve();
    return new Promise((resolve) => {
      const stop = state.subscribe(() => {
        if (state.get() !== 'connected') return;
        stop();
        resolve();
      });
    });
  }

  async function run(): Promise<void> {
    let pause = timings.firstPauseMs;
    while (!over) {
      try {
        const opened = await open();
        if (over) return opened.close();
        transport = opened;
        pause = timings.firstPauseMs;
        trouble.set(null);
        state.set('connected');
        const stopPulse = keepPulse(opened);
        await ended(opened.over);
        stopPulse();
        trouble.set('The program does not answer. Calls are kept here and sent when it is back.');
      } catch (error) {
        trouble.set(error instanceof Error ? error.message : String(error));
      }
      transport = null;
      if (over) return;
      state.set('lost');
      await new Promise<void>((resolve) => {
        wake = resolve;
        setTimeout(resolve, pause * (0.75 + 0.5 * Math.random()));
      });
      pause = Math.min(pause * 2, timings.longestPauseMs);
    }
  }

  /** A peer that hangs looks open for minutes: one that does not answer in time is given up. */
  function keepPulse(held: Transport): () => void {
    const timer = setInterval(() => {
      const late = setTimeout(() => held.close(), timings.pulseMs);
      void ask(client).then(
        () => clearTimeout(late),
        () => clearTimeout(late),
      );
    }, timings.pulseMs);
    return () => clearInterval(timer);
  }

  void run();
  return {
    client,
    state,
    trouble,
    whenConnected,
    close: () => {
      over = true;
      wake();
      transport?.close();
    },
  };
}

function ended(signal: AbortSignal): Promise<void> {
  if (signal.aborted) return Promise.resolve();
  return new Promise((resolve) => signal.addEventListener('abort', () => resolve(), { once: true }));
}
