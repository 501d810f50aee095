import { ORPCError } from '@orpc/client';
import type { ContractRouterClient } from '@orpc/contract';
import type { PadContract, PadLane, PadSelf } from '../../../shared-types/contract/pad.ts';
import type { Acknowledgement } from '../../../shared-types/contract/sets.ts';
import type { SetEvent } from '../../../shared-types/log/events.ts';
import type { Person } from '../../../shared-types/people.ts';
import type { TimeSource } from '../clock.ts';
import { type ConnectionState, keepConnection, type Timings } from '../connection.ts';
import { type Observable, settable } from '../observable.ts';
import { createOutbox, type Outbox } from '../outbox.ts';
import { type SenderTimings, startSending } from '../sender.ts';
import { openSetLog, type SetLog } from '../set-log.ts';
import { type OutboxStore, openStore, type SetStart } from '../store.ts';
import { type StreamCall, subscribeTo } from '../subscription.ts';
import { type OpenTransport, openSocket } from '../transport.ts';
import { whyNoPad } from './entry.ts';
import { alignClock, type ExchangeTimings, type PadClock } from './pad-clock.ts';

/** The calls a pad may make, and no others. */
export type PadClient = ContractRouterClient<PadContract>;

/** What the desk wants of this pad. `waiting`: it has no place yet, or none any more; `words` are the desk's. */
export type Duty =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'waiting'; readonly words: string }
  | { readonly kind: 'placed'; readonly self: PadSelf; readonly lane: PadLane | null };

/** A pad's one way to the desk. */
export interface PadLink {
  readonly client: PadClient;
  readonly state: Observable<ConnectionState>;
  /** What is wrong with the connection, in words for the judge; null while it holds. */
  readonly trouble: Observable<string | null>;
  readonly duty: Observable<Duty>;
  readonly clock: PadClock;
  /** As the desk's own screen has it: calls are shown at once, kept here, and sent until the desk has them. */
  readonly outbox: Outbox;
  /** The log of the set on the pad's lane. Close it when its screen goes. */
  readonly openSet: (lane: PadLane) => SetLog;
  /** Listens to a stream and opens it again after each break, from its beginning. */
  readonly subscribe: <I, O>(call: StreamCall<I, O>, input: I, onItem: (item: O) => void) => () => void;
  readonly close: () => void;
}

export interface PadLinkParts {
  readonly open: OpenTransport;
  readonly openStore: () => Promise<OutboxStore>;
  readonly timings?: Timings;
  readonly sending?: SenderTimings;
  readonly exchanges?: ExchangeTimings;
  readonly source?: TimeSource;
}

/** The Wi-Fi of a hall comes and goes within seconds: a dead line is noticed sooner than at the desk's own screen. */
const padTimings: Timings = { waitMs: 3_000, firstPauseMs: 100, longestPauseMs: 2_000, pulseMs: 5_000 };
/** How long after the desk had no place for this pad it is asked again, milliseconds. */
const againMs = 1_000;

/** The link of a pad's page. Call it once a page load, after the phone has joined. */
export function connectPad(): PadLink {
  const base = new URL('.', location.href);
  return padLinkOver({
    open: openSocket(base.href, whyNoPad),
    openStore: () => openStore(`plumbline pad ${base.pathname}`),
  });
}

/**
 * The same from given parts.
 * @internal exported for the tests, which give a transport and a store of their own
 */
export function padLinkOver(parts: PadLinkParts): PadLink {
  const ask = (client: PadClient): Promise<{ received: number; answered: number }> => client.pad.clock();
  const connection = keepConnection<PadClient>(parts.open, ask, parts.timings ?? padTimings);
  const { client, whenConnected } = connection;
  const queue = createOutbox(parts.openStore);
  const duty = settable<Duty>({ kind: 'unknown' });
  let over = false;

  function watchDuty(): void {
    // Ends with the connection: a stream that is given up just before its socket closes would speak into the closed one.
    subscribeTo(
      connection,
      (_input: undefined, options) => client.pad.duty(undefined, options),
      undefined,
      ({ self, lane }) => {
        if (!over) duty.set({ kind: 'placed', self, lane });
      },
      (refusal) => {
        duty.set({ kind: 'waiting', words: refusal.message });
        setTimeout(() => {
          if (!over) watchDuty();
        }, againMs);
      },
    );
  }
  watchDuty();

  const stopSending = startSending(
    queue,
    { whenConnected, create: refuseCreation, append: (events) => append(client, events) },
    parts.sending,
  );
  const stopSweeping = connection.state.subscribe(() => {
    if (connection.state.get() === 'connected') void queue.sweep();
  });
  const clock = alignClock(() => client.pad.clock(), whenConnected, parts.source, parts.exchanges);

  return {
    client,
    state: connection.state,
    trouble: connection.trouble,
    duty,
    clock,
    outbox: queue,
    openSet: (lane) => {
      const start = startOf(lane);
      const { id } = lane.setup;
      // Kept at once: after a reload the set is here before the desk has answered.
      queue.keep(start, []);
      return openSetLog(
        id,
        {
          whenConnected,
          get: async () => start,
          watch: (_input, options) => client.pad.log({ set: id }, options),
        },
        queue,
      );
    },
    subscribe: (call, input, onItem) => subscribeTo(connection, call, input, onItem),
    close: () => {
      over = true;
      clock.stop();
      stopSending();
      stopSweeping();
      connection.close();
      queue.close();
    },
  };
}

/** A pad never makes a set: the desk does, when it opens a heat. */
function refuseCreation(): Promise<never> {
  return Promise.reject(new ORPCError('NOT_ALLOWED', { status: 403, message: 'A pad makes no sets.' }));
}

/** The pad has no place just now, so the desk takes nothing from it. */
class NoPlace extends Error {
  override readonly name = 'NoPlace';
}

/**
 * Sends a batch. A refusal is believed only of a pad that has a place before and after it: one that was sent away by
 * mistake, or not yet placed after joining anew, keeps its calls and sends them when it has one.
 */
async function append(client: PadClient, events: readonly SetEvent[]): Promise<readonly Acknowledgement[]> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return (await client.pad.append({ events: [...events] })).acknowledgements;
    } catch (error) {
      if (!isNotAllowed(error)) throw error;
      if (!(await hasPlace(client))) throw new NoPlace(error.message);
      if (attempt > 1) throw error;
    }
  }
}

async function hasPlace(client: PadClient): Promise<boolean> {
  try {
    await client.pad.hello();
    return true;
  } catch (error) {
    if (isNotAllowed(error)) return false;
    throw error;
  }
}

function isNotAllowed(error: unknown): error is ORPCError<string, unknown> {
  return error instanceof ORPCError && error.code === 'NOT_ALLOWED';
}

/** What the set is judged under. A pad is told the people's names and nothing else of them. */
function startOf({ setup, sheet, athlete, judge }: PadLane): SetStart {
  const named = (id: string, name: string, is: 'athlete' | 'judge'): Person => ({
    id,
    name,
    nickname: '',
    athlete: is === 'athlete',
    judge: is === 'judge',
    notes: '',
    archivedAt: null,
    createdAt: 0,
  });
  return {
    setup,
    sheet,
    athlete: named(setup.athlete, athlete, 'athlete'),
    judge: named(setup.judge, judge, 'judge'),
  };
}
