import type { SetEvent } from '../../shared-types/log/events.ts';
import type { LogReads } from '../ledger/log.ts';
import type { Changes } from './changes.ts';

/** The events of a set: those written already, then each batch as it is written; none is missed in between. */
export async function* watchSet(
  log: LogReads,
  changes: Changes,
  set: string,
  signal: AbortSignal | undefined,
): AsyncGenerator<{ events: SetEvent[] }> {
  // Listening begins before reading: a batch written meanwhile comes twice, and the same event twice is one event.
  const coming = changes.watch(set, signal);
  yield { events: log.events(set) };
  yield* coming;
}
