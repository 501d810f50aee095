import type { ORPCError } from '@orpc/client';
import { type ConnectionState, type DeskClient, keepConnection, type Timings } from './connection.ts';
import type { Observable } from './observable.ts';
import { createOutbox, type Outbox } from './outbox.ts';
import { startSending } from './sender.ts';
import { openSetLog, type SetLog, type SetSource } from './set-log.ts';
import { type OutboxStore, openStore } from './store.ts';
import { type StreamCall, subscribeTo } from './subscription.ts';
import { type OpenTransport, openPort, openSocket } from './transport.ts';

/** A screen's one way to the desk. */
export interface Link {
  /** The calls of the contract. While the desk is away a call waits some seconds, then rejects with `DeskAway`. */
  readonly client: DeskClient;
  readonly state: Observable<ConnectionState>;
  /** What is wrong with the connection, in words for the user; null while it holds. */
  readonly trouble: Observable<string | null>;
  /**
   * Listens to a stream, e.g. `subscribe(link.client.desk.changes, undefined, onChange)`; opens it again after a break,
   * from its beginning. A typed refusal ends it. The answer ends the subscription.
   */
  readonly subscribe: <I, O>(
    call: StreamCall<I, O>,
    input: I,
    onItem: (item: O) => void,
    onRefusal?: (error: ORPCError<string, unknown>) => void,
  ) => () => void;
  readonly outbox: Outbox;
  /** The log of a set, from outbox and desk. Close it when its screen goes. */
  readonly openSet: (id: string) => SetLog;
  readonly close: () => void;
}

export interface LinkParts {
  readonly open: OpenTransport;
  readonly openStore: () => Promise<OutboxStore>;
  readonly timings?: Timings;
}

/** The link of this page: a MessagePort in the desktop window, a WebSocket elsewhere. Call it once a page load. */
export function connect(): Link {
  const base = new URL('.', location.href);
  const desktop = location.protocol === 'app:';
  return linkOver({
    open: desktop ? openPort(window) : openSocket(base.href),
    // Each ledger has its own base address, so that a demonstration's events never reach the user's own ledger.
    openStore: () => openStore(`plumbline ${base.pathname}`),
  });
}

/**
 * The same from given parts.
 * @internal exported for the tests, which give a transport and a store of their own
 */
export function linkOver(parts: LinkParts): Link {
  const connection = keepConnection<DeskClient>(parts.open, (client) => client.desk.time(), parts.timings);
  const queue = createOutbox(parts.openStore);
  const source: SetSource = {
    whenConnected: connection.whenConnected,
    get: (input) => connection.client.sets.get(input),
    watch: (input, options) => connection.client.sets.watch(input, options),
  };
  const stopSending = startSending(queue, {
    whenConnected: connection.whenConnected,
    create: (setup) => connection.client.sets.create(setup),
    append: async (events) => (await connection.client.sets.append({ events: [...events] })).acknowledgements,
  });
  const stopSweeping = connection.state.subscribe(() => {
    if (connection.state.get() === 'connected') void queue.sweep();
  });
  return {
    client: connection.client,
    state: connection.state,
    trouble: connection.trouble,
    subscribe: (call, input, onItem, onRefusal) => subscribeTo(connection, call, input, onItem, onRefusal),
    outbox: queue,
    openSet: (id) => openSetLog(id, source, queue),
    close: () => {
      stopSending();
      stopSweeping();
      connection.close();
      queue.close();
    },
  };
}
